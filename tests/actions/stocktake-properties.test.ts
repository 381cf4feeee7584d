import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import type { LotCounted } from '../../src/actions/lots-found.ts';
import { countLots, postStocktake } from '../../src/actions/stocktake.ts';
import type { Day } from '../../src/core/day.ts';
import { exact, quantityNumber, ratio } from '../../src/core/exact-number.ts';
import { keyOf } from '../../src/core/identifier.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { leftOn } from '../../src/core/lot-account.ts';
import type { Change, WorkbookSnapshot } from '../../src/workbook/port.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import { randomFrom } from '../helpers/bench.ts';
import { dayOf, type Literal } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';

const FIRST = dayOf('2026-03-01');
const LAST = 12;
const today = (FIRST + LAST) as Day;
const LOTS = ['P-1', 'P-2', 'P-3'] as const;
const MICRO = 1_000_000n;

const STUDIO: Literal = {
  Materials: [{ Material: 'Paste', Kind: 'Paste', 'Stock unit': 'g' }],
  Paste: LOTS.map((lot, place) => ({
    Lot: lot,
    Material: 'Paste',
    Received: { value: { day: FIRST }, look: 'date' as const },
    Quantity: place === 1 ? 2 : 1000 * (place + 1),
    Unit: place === 1 ? 'kg' : 'g',
    Cost: 7,
  })),
  Movements: [],
  Counts: [],
};
/** Grams in the unit of each lot. */
const GRAMS: Readonly<Record<string, bigint>> = { 'P-1': 1n, 'P-2': 1000n, 'P-3': 1n };

/** Something entered in Movements: millionths of a gram, which change a lot on a day. */
interface Entered {
  readonly lot: (typeof LOTS)[number];
  /** Days since the lots came. */
  readonly day: number;
  readonly kind: 'Use' | 'Waste' | 'Put back' | 'Count';
  readonly milligrams: number;
  readonly unit: 'g' | 'kg' | 'mg';
}
interface Counted {
  readonly lot: (typeof LOTS)[number];
  readonly day: number;
  readonly milligrams: number;
}

const lots = fc.constantFrom(...LOTS);
const days = fc.integer({ min: 0, max: LAST });
/** In hundredths of a gram, since less than a millionth of a lot counts as nothing left. */
const milligrams = fc.integer({ min: 1, max: 90_000 }).map((amount) => amount * 10);
const entered: fc.Arbitrary<Entered> = fc.record({
  lot: lots,
  day: days,
  kind: fc.constantFrom('Use', 'Waste', 'Put back', 'Count'),
  milligrams,
  unit: fc.constantFrom('g', 'kg', 'mg'),
});
const counted: fc.Arbitrary<Counted> = fc.record({
  lot: lots,
  day: days,
  milligrams: fc.integer({ min: 0, max: 300_000 }).map((amount) => amount * 10),
});

const UNITS = { g: 1e-3, kg: 1e-6, mg: 1 };
let names = 0;

function enter(snapshot: WorkbookSnapshot, rows: readonly Entered[]): WorkbookSnapshot {
  const text = (value: string) => ({ kind: 'text' as const, text: value });
  const changes: Change[] = [
    {
      kind: 'append',
      table: 'Movements',
      rows: rows.map(({ lot, day, kind, milligrams: amount, unit }) => {
        names += 1;
        return {
          Movement: text(`X-${names}`),
          Date: { kind: 'day' as const, day: (FIRST + day) as Day },
          Kind: text(kind),
          Lot: text(lot),
          Quantity: { kind: 'number' as const, number: Number((amount * UNITS[unit]).toPrecision(12)) },
          Unit: text(unit),
        };
      }),
    },
  ];
  return rows.length === 0 ? snapshot : withChanges(snapshot, changes);
}

function signed({ kind, milligrams: amount }: Entered): bigint {
  return BigInt(kind === 'Put back' || kind === 'Count' ? amount : -amount) * 1000n;
}

const random = randomFrom(3);

function count(snapshot: WorkbookSnapshot, found: readonly Counted[], stocktake = 'S'): WorkbookSnapshot {
  let after = snapshot;
  for (const { lot, day, milligrams: amount } of found) {
    const quantity = ratio(amount, 1000).div(ratio(GRAMS[lot] ?? 1n, 1n));
    const one: LotCounted = { lot, quantity, unit: null, gross: null, note: null };
    const date = (FIRST + day) as Day;
    const answer = countLots(after, { stocktake, counted: [one], date, by: null }, today, random);
    if (!answer.ok) throw new Error(answer.message);
    after = withChanges(after, answer.changes);
  }
  return after;
}

function posted(snapshot: WorkbookSnapshot): WorkbookSnapshot {
  const answer = postStocktake(snapshot, { stocktake: 'S', by: null }, today, random);
  if (!answer.ok) throw new Error(answer.message);
  expect(answer.remarks).toEqual([]);
  const after = withChanges(snapshot, answer.changes);
  const again = postStocktake(after, { stocktake: 'S', by: null }, today, random);
  expect(again).toMatchObject({ ok: true, changes: [], posting: null });
  return after;
}

/** What is left of a lot at the end of a day, in millionths of a gram. */
function leftIn(snapshot: WorkbookSnapshot, lot: string, day: number): bigint {
  const { ledger } = booksOf(snapshot);
  const found = ledger.studio.lotsByKey.get(keyOf(lot));
  if (found === undefined) throw new Error(`no lot ${lot}`);
  const left = leftOn(accountIn(ledger, found), (FIRST + day) as Day).mul(
    ratio((GRAMS[lot] ?? 1n) * MICRO, 1n),
  );
  if (left.d !== 1n) throw new Error(`${left.toString()} is no whole number of millionths`);
  return left.s * left.n;
}

/** A day's plain reckoning: what was counted holds for the end of its day; what is entered since for then or later follows. */
function plainLeft(
  lot: string,
  day: number,
  before: readonly Entered[],
  found: Counted | undefined,
  since: readonly Entered[],
): bigint {
  const own = (rows: readonly Entered[]) => rows.filter((each) => each.lot === lot && each.day <= day);
  const add = (start: bigint, rows: readonly Entered[]) =>
    rows.reduce((sum, row) => sum + signed(row), start);
  if (found === undefined || day < found.day) {
    const grams = BigInt(1000 * (LOTS.indexOf(lot as (typeof LOTS)[number]) + 1));
    return add(grams * MICRO, [...own(before), ...own(since)]);
  }
  return add(BigInt(found.milligrams) * 1000n, [
    ...own(before).filter((row) => row.day > found.day),
    ...own(since).filter((row) => row.day >= found.day),
  ]);
}

describe('a stocktake', () => {
  test('leaves exactly what was counted, whatever the ledger holds', () => {
    fc.assert(
      fc.property(
        fc.array(entered, { maxLength: 12 }),
        fc.array(counted, { minLength: 1, maxLength: 4 }),
        (before, found) => {
          const after = posted(count(enter(snapshotOf(STUDIO), before), found));
          for (const lot of LOTS) {
            const last = found.findLast((each) => each.lot === lot);
            if (last !== undefined)
              expect(leftIn(after, lot, last.day)).toBe(BigInt(last.milligrams) * 1000n);
          }
        },
      ),
      { numRuns: 80 },
    );
  });

  test('leaves what was counted to the millionth, in units that never come out even', () => {
    const oz = fc.integer({ min: 1, max: 30_000_000 }).map((millionths) => millionths / 1e6);
    fc.assert(
      fc.property(
        fc.array(oz, { maxLength: 5 }),
        fc.integer({ min: 10_000, max: 2_000_000_000 }),
        (uses, amount) => {
          const quantity = exact(amount / 1e6);
          const rows = uses.map((ounces, place) => ({
            Movement: `M-${place}`,
            Date: { value: { day: FIRST }, look: 'date' as const },
            Kind: 'Use',
            Lot: 'P-1',
            Quantity: ounces,
            Unit: 'oz',
          }));
          const snapshot = snapshotOf({ ...STUDIO, Movements: rows });
          const one: LotCounted = { lot: 'P-1', quantity, unit: null, gross: null, note: null };
          const request = { stocktake: 'S', counted: [one], date: today, by: null };
          const answer = countLots(snapshot, request, today, random);
          if (!answer.ok) throw new Error(answer.message);
          const { ledger } = booksOf(posted(withChanges(snapshot, answer.changes)));
          const lot = ledger.studio.lots[0];
          if (lot === undefined) throw new Error('no lot');
          expect(quantityNumber(leftOn(accountIn(ledger, lot), today))).toBe(quantityNumber(quantity));
        },
      ),
      { numRuns: 80 },
    );
  });

  test('reckons with what is entered between counting and posting, as a plain account does', () => {
    const rows = fc.array(entered, { maxLength: 10 });
    fc.assert(
      fc.property(
        rows,
        fc.array(counted, { minLength: 1, maxLength: 3 }),
        rows,
        rows,
        (before, found, since, later) => {
          const own = LOTS.flatMap((lot) => found.findLast((each) => each.lot === lot) ?? []);
          const counting = count(enter(snapshotOf(STUDIO), before), own);
          const after = enter(posted(enter(counting, since)), later);
          for (const lot of LOTS) {
            const one = own.find((each) => each.lot === lot);
            const first = one?.day ?? 0;
            for (let day = first; day <= LAST; day += 1) {
              // After posting the ledger goes on as ever: a row of any day moves all days from it on.
              const moved = later.filter((each) => each.lot === lot && each.day <= day);
              const expected = moved.reduce(
                (sum, row) => sum + signed(row),
                plainLeft(lot, day, before, one, since),
              );
              expect([lot, day, leftIn(after, lot, day)]).toEqual([lot, day, expected]);
            }
          }
        },
      ),
      { numRuns: 80 },
    );
  });

  test('that is stopped, posted in between and taken up again gives the same as in one go', () => {
    fc.assert(
      fc.property(
        fc.array(entered, { maxLength: 10 }),
        fc.array(counted, { minLength: 1, maxLength: 5 }),
        fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
        (before, found, stops) => {
          const start = enter(snapshotOf(STUDIO), before);
          const own = LOTS.flatMap((lot) => found.findLast((each) => each.lot === lot) ?? []);
          const atOnce = posted(count(start, own));
          let inPieces = start;
          own.forEach((each, place) => {
            inPieces = count(inPieces, [each]);
            if (stops[place] === true) inPieces = posted(inPieces);
          });
          inPieces = posted(inPieces);
          for (const lot of LOTS) {
            for (let day = 0; day <= LAST; day += 1) {
              expect(leftIn(inPieces, lot, day)).toBe(leftIn(atOnce, lot, day));
            }
          }
        },
      ),
      { numRuns: 50 },
    );
  });
});
