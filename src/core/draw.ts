import type { Day } from './day.ts';
import { cover, type Need } from './draw-order.ts';
import { compareEntries, entryNeeds, entryStatus, extentDrawn } from './entry-needs.ts';
import type { Exact } from './exact-number.ts';
import type { IdentifierMaker } from './identifier.ts';
import { accountIn, type Ledger, markPart, post } from './ledger.ts';
import { type Movement, movementOf } from './movement.ts';
import { nameForMovement } from './movement-name.ts';
import { stillNeeded } from './still-needed.ts';
import type { Entry, Lot, Material } from './studio.ts';
import type { Unit } from './unit.ts';

/** What no lot covers of a material for an entry. */
export interface Shortfall {
  readonly entry: Entry;
  readonly material: Material;
  readonly missing: Exact;
  readonly unit: Unit;
}

/** An entry as it has been drawn: in full, in part for want of stock, or not while it waits for its day (null). */
export interface DrawnEntry {
  readonly entry: Entry;
  readonly drawn: 'yes' | 'part' | null;
  /** The extent that it was drawn for. */
  readonly extent: Exact;
}

/** What drawing gave: movements still to be written, and the ledger with them in it. */
export interface Drawing {
  readonly ledger: Ledger;
  readonly entries: readonly DrawnEntry[];
  readonly movements: readonly Movement[];
  readonly shortfalls: readonly Shortfall[];
}

/**
 * Draws every entry that is not drawn yet, or in part only; entries after today wait.
 * @param isMeant confines it to some of the entries
 */
export function drawAll(
  ledger: Ledger,
  today: Day,
  newIdentifier: IdentifierMaker,
  isMeant: (entry: Entry) => boolean = () => true,
): Drawing {
  const due = ledger.studio.entries
    .filter((entry) => entry.key !== null && isMeant(entry))
    .toSorted(compareEntries);
  let drawing: Drawing = { ledger, entries: [], movements: [], shortfalls: [] };
  for (const entry of due) {
    const status = entryStatus(drawing.ledger, entry, today);
    if (status !== 'not drawn' && status !== 'part') continue;
    drawing = joined(drawing, drawEntry(drawing.ledger, entry, today, newIdentifier));
  }
  return drawing;
}

function joined(first: Drawing, second: Drawing): Drawing {
  return {
    ledger: second.ledger,
    entries: [...first.entries, ...second.entries],
    movements: [...first.movements, ...second.movements],
    shortfalls: [...first.shortfalls, ...second.shortfalls],
  };
}

/**
 * Draws what an entry still lacks, as of its date. Movements are uses in the unit of the rate, or in that of the
 * amount that a person gave.
 */
export function drawEntry(ledger: Ledger, entry: Entry, today: Day, newIdentifier: IdentifierMaker): Drawing {
  const extent = extentDrawn(ledger, entry, today);
  const movements: Movement[] = [];
  const shortfalls: Shortfall[] = [];
  let after = ledger;
  const needs = entryNeeds(ledger, entry, today).filter((need) => need.quantity.compare(0) > 0);
  for (const { need, missing: quantity } of stillNeeded(ledger, entry, needs, today)) {
    const { takes, missing } = cover(after, { ...need, quantity }, entry.record.date);
    const taken = takes.map((take) => {
      const name = nameForMovement(accountIn(after, take.lot), entry.record.date, newIdentifier);
      return useOf(entry, need, take, name);
    });
    after = post(after, taken);
    movements.push(...taken);
    if (missing.compare(0) > 0) shortfalls.push({ entry, material: need.material, missing, unit: need.unit });
  }
  const drawn = shortfalls.length > 0 ? 'part' : 'yes';
  if (entry.key !== null) after = markPart(after, entry.key, drawn === 'part');
  return { ledger: after, entries: [{ entry, drawn, extent }], movements, shortfalls };
}

function useOf(
  entry: Entry,
  need: Need,
  take: { readonly lot: Lot; readonly quantity: Exact; readonly lotIs: 'assumed' | 'confirmed' },
  name: string,
): Movement {
  const { date, job, item } = entry.record;
  const movement = movementOf({
    name,
    date,
    kind: 'Use',
    lot: take.lot,
    quantity: take.quantity,
    unit: need.unit,
    job,
    item,
    entry: entry.record.entry,
    lotIs: take.lotIs,
    into: null,
    note: null,
    reverses: null,
    record: null,
  });
  if (movement === null) throw new Error(`${need.unit.name} leads to no unit of lot ${take.lot.name}`);
  return movement;
}
