import fc from 'fast-check';
import { emptyBath } from '../../../src/actions/bath.ts';
import { discardExpired } from '../../../src/actions/discard-expired.ts';
import { logTreatment } from '../../../src/actions/log-treatment.ts';
import { makeBatch } from '../../../src/actions/make-batch.ts';
import { openLot } from '../../../src/actions/open-lot.ts';
import { bringBack, retireSheet, setWet } from '../../../src/actions/reuse-lot.ts';
import { countLots, postStocktake } from '../../../src/actions/stocktake.ts';
import { undoPosting } from '../../../src/actions/undo-posting.ts';
import type { Refusal, Written } from '../../../src/actions/writing-desk.ts';
import { addDays, type Day } from '../../../src/core/day.ts';
import { exact } from '../../../src/core/exact-number.ts';
import { unitNamed } from '../../../src/core/unit.ts';
import type { WorkbookSnapshot } from '../../../src/workbook/port.ts';
import { withChanges } from '../../../src/workbook/with-changes.ts';
import { randomFrom } from '../../helpers/bench.ts';
import { dayOf } from '../../helpers/literal.ts';
import { plainBook } from './plain-book.ts';

/** A studio in which some weeks go by, act after act; each act is what a person asks of the program. */

const FIRST_DAY = dayOf('2026-03-02');

const place = fc.nat(40);
const thousandths = (most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 1, max: most * 1000 }).map((value) => value / 1000);

const act = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('make' as const),
      recipe: fc.constantFrom('paste', 'thin paste', 'size', 'lime bath'),
      amount: thousandths(400),
      /** In hundredths of what was meant. */
      yielded: fc.integer({ min: 40, max: 120 }),
      where: fc.constantFrom('Bench', 'Cold box', 'Cupboard', null),
      pour: fc.boolean(),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('log' as const),
      treatment: fc.constantFrom('mend', 'bathe', 'press'),
      extent: fc.integer({ min: 1, max: 9 }),
      job: fc.constantFrom('J-1', 'J-2', 'STUDIO'),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('open' as const),
      lot: place,
      part: fc.integer({ min: 5, max: 100 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('retire' as const),
      lot: place,
      presses: fc.option(fc.integer({ min: 0, max: 10 })),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('wet' as const),
      lot: place,
      sheets: fc.option(fc.constant(1)),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('back' as const),
      lot: place,
      uses: fc.option(fc.integer({ min: 1, max: 8 })),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('discard' as const) }) },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('count' as const), lot: place, found: thousandths(500) }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('post counts' as const) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('empty' as const), lot: place }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('undo' as const), posting: place }) },
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant('next day' as const), days: fc.integer({ min: 1, max: 5 }) }),
  },
);

export const someWeeks = fc.array(act, { minLength: 4, maxLength: 24 });
export type Act = typeof act extends fc.Arbitrary<infer A> ? A : never;

/** The studio as it stands, and the day that it is there. */
export class Weeks {
  snapshot: WorkbookSnapshot;
  today: Day = FIRST_DAY;
  /** How often each kind of act was done, and how often it was refused. */
  readonly done = new Map<string, number>();
  /** Whether anything was written for an earlier day, or taken back. */
  hasGoneBack = false;
  readonly #random = randomFrom(7);
  readonly #postings: string[] = [];

  constructor(snapshot: WorkbookSnapshot) {
    this.snapshot = snapshot;
  }

  /** Does an act; one that the program refuses changes nothing. */
  do(next: Act): void {
    if (next.kind === 'next day') {
      this.today = addDays(this.today, next.days);
      return;
    }
    const written = this.#write(next);
    if (!written.ok) return;
    this.done.set(next.kind, (this.done.get(next.kind) ?? 0) + 1);
    this.hasGoneBack ||= next.kind === 'undo' || next.kind === 'post counts';
    this.snapshot = withChanges(this.snapshot, written.changes);
    if (written.posting !== null) this.#postings.push(written.posting);
  }

  #lot(number: number): string {
    const { lots } = plainBook(this.snapshot);
    return String(lots[number % lots.length]?.['Lot']);
  }

  #write(next: Exclude<Act, { kind: 'next day' }>): Written | Refusal {
    const { snapshot, today } = this;
    const random = this.#random;
    const on = { date: today, by: null };
    switch (next.kind) {
      case 'make': {
        const amount = exact(next.amount);
        const pour = { job: 'J-1', item: null, treatment: 'bathe', extent: exact(2), amount: null };
        return makeBatch(
          snapshot,
          {
            ...on,
            recipe: next.recipe,
            amount,
            unit: unitNamed(next.recipe.includes('paste') ? 'g' : 'ml'),
            yielded: amount.mul(exact(next.yielded)).div(100),
            storedAt: next.where,
            asUsed: [],
            notes: null,
            pour: next.pour && next.recipe === 'lime bath' ? pour : null,
          },
          today,
          random,
        );
      }
      case 'log':
        return logTreatment(
          snapshot,
          {
            ...on,
            job: next.job,
            item: null,
            treatment: next.treatment,
            extent: exact(next.extent),
            minutes: null,
            notes: null,
            asUsed: [],
          },
          today,
          random,
        );
      case 'open': {
        const lot = this.#lot(next.lot);
        const row = plainBook(snapshot).lots.find((each) => each['Lot'] === lot);
        const part = exact(Number(row?.['Quantity'])).mul(next.part).div(100);
        const quantity = next.part === 100 ? null : part.round(3);
        return openLot(snapshot, { ...on, lot, quantity, unit: null }, today, random);
      }
      case 'retire': {
        const presses = next.presses === null ? null : exact(next.presses);
        return retireSheet(snapshot, { ...on, lot: this.#lot(next.lot), presses }, today, random);
      }
      case 'wet': {
        const sheets = next.sheets === null ? null : exact(next.sheets);
        return setWet(snapshot, { ...on, lot: this.#lot(next.lot), sheets }, today, random);
      }
      case 'back': {
        const uses = next.uses === null ? null : exact(next.uses);
        return bringBack(snapshot, { ...on, lot: this.#lot(next.lot), uses, how: 'dried' }, today, random);
      }
      case 'discard':
        return discardExpired(snapshot, null, today, random, null);
      case 'count': {
        const counted = {
          lot: this.#lot(next.lot),
          quantity: exact(next.found),
          unit: null,
          gross: null,
          note: null,
        };
        return countLots(snapshot, { ...on, stocktake: null, counted: [counted] }, today, random);
      }
      case 'post counts':
        return postStocktake(snapshot, { stocktake: null, by: null }, today, random);
      case 'empty':
        return emptyBath(snapshot, { ...on, lot: this.#lot(next.lot) }, today, random);
      case 'undo': {
        const posting = this.#postings[next.posting % Math.max(this.#postings.length, 1)] ?? '';
        return undoPosting(snapshot, posting, today, random);
      }
    }
  }
}
