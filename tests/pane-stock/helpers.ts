import type { LotFigures } from '../../src/core/stock.ts';
import type { Deed, DeedTexts } from '../../src/pane/lot-deeds/deed.ts';
import { deedsFor } from '../../src/pane/lot-deeds/lot-deeds.ts';
import type { Session } from '../../src/session/session.ts';
import type { Done } from '../../src/session/session-state.ts';
import { date, type Literal } from '../helpers/literal.ts';
import { booksIn } from '../helpers/opened-session.ts';
import { STUDIO } from '../helpers/studio.ts';

/** The small studio with columns for everything, a tare, a bath that has a pH, a paste that has gone off, and blotters. */
export const SHELVES: Literal = {
  ...STUDIO,
  Settings: [...STUDIO.Settings.slice(1), { Setting: 'tables version', Value: 2 }],
  Materials: [
    ...STUDIO.Materials,
    {
      Material: 'Gelatine',
      Kind: 'Paste',
      'Stock unit': 'g',
      'Life opened days': 90,
      Disposal: 'with the household waste',
    },
    { Material: 'Chalk bath', Kind: 'Buffer', 'Stock unit': 'ml', 'pH low': 7.5, 'pH high': 9 },
    { Material: 'Blotter', Kind: 'Release paper', 'Stock unit': 'sheet', 'Uses per unit': 10 },
  ],
  Offers: [
    ...STUDIO.Offers,
    {
      Supplier: 'Paper mill',
      Material: 'Gelatine',
      'Pack quantity': 50,
      Unit: 'g',
      'Pack price': 9,
    },
  ],
  Paste: [
    { ...STUDIO.Paste[0], Place: 'Fridge', State: null, 'State since': null, Notes: null, Posting: null },
    STUDIO.Paste[1],
    {
      Lot: 'G-1',
      Material: 'Gelatine',
      Received: date('2026-02-01'),
      Quantity: 150,
      Unit: 'g',
      Cost: 30,
      Supplier: 'Paper mill',
      Opened: null,
      'Tare g': 112.4,
      Place: 'Drawer',
    },
    {
      Lot: 'P-0',
      Material: 'Wheat starch paste',
      Received: date('2026-03-01'),
      Quantity: 50,
      Unit: 'g',
      Cost: 0.6,
      Recipe: 'Paste, thick',
    },
  ],
  Buffers: [
    {
      Lot: 'B-1',
      Material: 'Chalk bath',
      Received: date('2026-03-20'),
      Quantity: 900,
      Unit: 'ml',
      'Use by': date('2026-04-30'),
      pH: 6.9,
      Retested: null,
      'Retested until': null,
      'Retested by': null,
    },
  ],
  ReleasePaper: [
    { ...STUDIO.ReleasePaper[0], State: null, 'State since': null, Notes: null },
    {
      Lot: 'R-2',
      Material: 'Blotter',
      Received: date('2026-01-05'),
      Quantity: 4,
      Unit: 'sheet',
      Cost: 8,
      Place: 'Drawer',
    },
  ],
  Places: [
    { Place: 'Fridge', Cold: 'yes', 'Walking order': 2 },
    { Place: 'Drawer', 'Walking order': 1 },
  ],
  Movements: [
    {
      Movement: 'M-1',
      Date: date('2026-03-02'),
      Kind: 'Use',
      Lot: 'R-2',
      Quantity: 6,
      Unit: 'use',
      Job: '26-014',
      Into: null,
      Posting: null,
      By: null,
      Note: null,
    },
  ],
  Counts: [],
};

export function figuresOf(session: Session, lot: string): LotFigures {
  const found = booksIn(session).stock.lots.find((each) => each.lot.name === lot);
  if (found === undefined) throw new Error(`there is no lot ${lot}`);
  return found;
}

/** What can be done with a lot now, by the labels of the buttons. */
export function deedsOn(session: Session, lot: string): string[] {
  return deedsFor(figuresOf(session, lot), booksIn(session)).map(({ label }) => label);
}

export function deedOn(session: Session, lot: string, name: string): Deed {
  const deed = deedsFor(figuresOf(session, lot), booksIn(session)).find((each) => each.name === name);
  if (deed === undefined) throw new Error(`${name} does not fit lot ${lot}`);
  return deed;
}

/** Fills in the form of a deed, beginning with what stands in it, and does it. */
export async function doDeed(
  session: Session,
  lot: string,
  name: string,
  texts: DeedTexts = {},
): Promise<Extract<Done, { readonly kind: 'done' }>> {
  const deed = deedOn(session, lot, name);
  const starts = Object.fromEntries(deed.fields.map((field) => [field.name, field.start]));
  const read = deed.read({ ...starts, ...texts });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const refusal = read.refusalIn(booksIn(session));
  if (refusal !== null) throw new Error(refusal);
  const done = await read.carryOut(session);
  if (done.kind !== 'done') throw new Error(done.message);
  return done;
}
