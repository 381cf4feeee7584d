import fc from 'fast-check';
import { addDays, type Day, isoDay } from '../../../src/core/day.ts';
import type { Movement } from '../../../src/core/movement.ts';
import type { LotRecord, MovementRecord, Records, UsageRateRecord } from '../../../src/core/records.ts';
import { lot, material, movement, on, recipe, rowOf } from './stock-records.ts';
import { recordsOf } from './studio-of.ts';
import { entry, job, rate, treatment } from './work-records.ts';

/** The seed and the number of all random runs; a failing run prints its own path besides. */
export const SEED = 20_260_401;

export function runs(count: number): { readonly seed: number; readonly numRuns: number } {
  return { seed: SEED, numRuns: count };
}

/** The first of the days on which anything happens, and the last. */
export const FIRST: Day = on('2026-01-01');
export const SPAN = 40;
export const LAST: Day = addDays(FIRST, SPAN);

export function dayAfter(offset: number): Day {
  return addDays(FIRST, offset);
}

function text(offset: number): string {
  return isoDay(dayAfter(offset));
}

const offset = fc.integer({ min: 0, max: SPAN });
const amount = fc.integer({ min: 1, max: 60_000 }).map((thousandths) => `${thousandths}e-3`);
/** Something in one of so many cases, else nothing. */
function sometimes<T>(value: fc.Arbitrary<T>, oneOf = 4): fc.Arbitrary<T | undefined> {
  return fc.oneof({ weight: oneOf - 1, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: value });
}

/** Paste is kept in mass, tissue in sheets of 30 × 40 cm (10 g/m2), so that all units lead to each other. */
const UNITS = { Paste: ['g', 'kg', 'mg', 'oz'], Tissue: ['sheet', 'cm2', 'g', 'sq in'] } as const;
const LOT_UNITS = { Paste: ['g', 'g', 'kg', 'oz'], Tissue: ['sheet', 'sheet', 'cm2', 'dm2'] } as const;
type Kept = keyof typeof UNITS;
const KEPT: readonly Kept[] = ['Paste', 'Tissue'];

interface RandomLot {
  readonly record: LotRecord;
  readonly kept: Kept;
}

function someLot(place: number): fc.Arbitrary<RandomLot> {
  return fc
    .record({
      kept: fc.constantFrom(...KEPT),
      letter: fc.constantFrom('A', 'b', 'C', 'z'),
      received: fc.integer({ min: 0, max: 30 }),
      amount,
      unit: fc.nat(3),
      cost: fc.option(
        fc.integer({ min: 0, max: 9_999_999 }).map((value) => `${value}e-3`),
        { nil: undefined },
      ),
      useBy: sometimes(offset),
      opened: sometimes(offset),
      state: sometimes(fc.constantFrom('Usable', 'Set aside', 'Discarded')),
      since: sometimes(offset, 2),
      recipe: sometimes(fc.constantFrom('R3', 'R0', 'none')),
      size: sometimes(fc.integer({ min: 10, max: 70 })),
      doubtful: fc.nat(12).map((value) => value === 0),
    })
    .map(({ kept, letter, ...plain }) => {
      const { useBy, opened, state, since, size } = plain;
      const record = lot(`${letter}${place}`, kept, text(plain.received), plain.amount, {
        unit: LOT_UNITS[kept][plain.unit] ?? 'g',
        ...(plain.cost === undefined ? {} : { cost: plain.cost }),
        ...(useBy === undefined ? {} : { useBy: text(useBy) }),
        ...(opened === undefined ? {} : { opened: text(opened) }),
        ...(state === undefined ? {} : { state }),
        ...(since === undefined ? {} : { since: text(since) }),
        ...(plain.recipe === undefined ? {} : { recipe: plain.recipe }),
        ...(size === undefined ? {} : { width: size, height: 50 }),
        ...(plain.doubtful ? { unreadable: ['Use by'] } : {}),
      });
      return { record, kept };
    });
}

/** Movements on lots, of every kind; some are reversed, on their own day or later. */
function someMovements(lots: readonly RandomLot[]): fc.Arbitrary<MovementRecord[]> {
  if (lots.length === 0) return fc.constant([]);
  const plain = fc.record({
    of: fc.constantFrom(...lots),
    offset,
    kind: fc.constantFrom('Use', 'Use', 'Use', 'Waste', 'Make', 'Count', 'Put back', 'Carried'),
    amount: fc.integer({ min: 1, max: 30_000 }),
    minus: fc.boolean(),
    unit: fc.nat(3),
    name: fc.integer({ min: 100, max: 999 }),
    reversedAfter: sometimes(fc.integer({ min: 0, max: 5 }), 2),
  });
  return fc.array(plain, { maxLength: 14 }).map((all) =>
    all.flatMap((each, place) => {
      const { kept, record } = each.of;
      const quantity = each.kind === 'Count' && each.minus ? -each.amount : each.amount;
      const name = `M${each.name}-${place}`;
      const unitName = UNITS[kept][each.unit] ?? 'g';
      const date = text(each.offset);
      const of = record.lot ?? '';
      const original = movement(name, date, each.kind, of, `${quantity}e-3`, { unit: unitName });
      if (each.reversedAfter === undefined) return [original];
      const later = text(Math.min(each.offset + each.reversedAfter, SPAN + 5));
      const reversal = movement(`X${each.name}-${place}`, later, each.kind, of, `${-quantity}e-3`, {
        unit: unitName,
        reverses: name,
      });
      return [original, reversal];
    }),
  );
}

const someRates: fc.Arbitrary<UsageRateRecord[]> = fc
  .array(
    fc.record({
      of: fc.constantFrom('Lining', 'Mending'),
      kept: fc.constantFrom(...KEPT),
      amount: fc.integer({ min: 0, max: 3000 }),
      unit: fc.nat(3),
      fixed: sometimes(fc.integer({ min: 1, max: 3000 }), 2),
      per: fc.constantFrom('entry', 'day', 'job'),
      waste: sometimes(fc.integer({ min: 0, max: 30 })),
      whole: fc.nat(4).map((value) => value === 0),
    }),
    { maxLength: 4 },
  )
  .map((all) =>
    all.map(({ of, kept, whole, fixed, waste, per, ...plain }, place) => {
      // What stands drawn of a material doesn't tell two fixed quantities apart that entries share.
      const isSecond = all.slice(0, place).some((other) => other.of === of && other.kept === kept);
      return rate(of, kept, `${plain.amount}e-3`, {
        unit: UNITS[kept][plain.unit] ?? 'g',
        per: isSecond ? 'entry' : per,
        whole,
        ...(fixed === undefined ? {} : { fixed: `${fixed}e-3` }),
        ...(waste === undefined ? {} : { waste }),
      });
    }),
  );

const someEntries = fc
  .array(
    fc.record({
      offset,
      of: fc.constantFrom('Lining', 'Mending'),
      extent: fc.integer({ min: 0, max: 12_000 }),
      job: fc.constantFrom('J1', 'J2', 'STUDIO'),
    }),
    { maxLength: 6 },
  )
  .map((all) =>
    all.map((plain, place) =>
      entry(`E${place}`, text(plain.offset), plain.of, `${plain.extent}e-3`, { job: plain.job }),
    ),
  );

const lives = sometimes(fc.integer({ min: 0, max: 25 }));

/** Studios with paste and tissue, lots and movements of every kind, two treatments and a log that is not drawn. */
export const someStudio: fc.Arbitrary<Records> = fc
  .tuple(fc.integer({ min: 0, max: 6 }), fc.tuple(lives, lives, lives, lives))
  .chain(([count, [sealed, opened, sealedTissue, openedTissue]]) =>
    fc
      .tuple(...Array.from({ length: count }, (_, place) => someLot(place)))
      .chain((lots) =>
        fc.record({
          lots: fc.constant(lots.map(({ record }) => record)),
          movements: someMovements(lots),
          usageRates: someRates,
          entries: someEntries,
        }),
      )
      .map((some) =>
        recordsOf({
          materials: [
            material('Paste', 'g', { lifeSealedDays: sealed ?? null, lifeOpenedDays: opened ?? null }),
            tissue(sealedTissue ?? null, openedTissue ?? null),
          ],
          recipes: [
            recipe('R3', 'Paste', 10, { life: 3 }),
            recipe('R0', 'Tissue', 10, { life: 0, unit: 'sheet' }),
          ],
          treatments: [treatment('Lining'), treatment('Mending')],
          jobs: [job('J1'), job('J2', 'Enquiry')],
          ...some,
        }),
      ),
  );

function tissue(lifeSealedDays: number | null, lifeOpenedDays: number | null): Records['materials'][number] {
  const { sheetWidth, sheetHeight, grammage } = lot('', '', '2026-01-01', 1, {
    width: 30,
    height: 40,
    grammage: 10,
  });
  return material('Tissue', 'sheet', {
    kind: 'Tissue',
    sheetWidth,
    sheetHeight,
    grammage,
    lifeSealedDays,
    lifeOpenedDays,
  });
}

/** The rows that movements are once they are written. */
export function written(movements: readonly Movement[]): MovementRecord[] {
  return movements.map(
    ({ name, date, kind, lot: of, quantity, unit, job: of_, item, entry: by, lotIs, ...rest }) => ({
      movement: name,
      date,
      kind,
      lot: of.name,
      quantity,
      unit,
      job: of_,
      item,
      entry: by,
      lotIs,
      into: null,
      offcut: null,
      reverses: rest.reverses?.name ?? null,
      by: null,
      posted: null,
      posting: null,
      note: rest.note,
      ...rowOf('Movements'),
    }),
  );
}
