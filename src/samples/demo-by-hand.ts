import type { Day } from '../core/day.ts';
import { type Exact, exact, ONE, ratio, roundQuantity, ZERO } from '../core/exact-number.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import { accountIn } from '../core/ledger.ts';
import { isExpiredOn, isUsableOn, openedOn } from '../core/life.ts';
import { stateOn } from '../core/lot-account.ts';
import type { Movement } from '../core/movement.ts';
import type { MovementKind } from '../core/records.ts';
import { type Lot, STUDIO_JOB } from '../core/studio.ts';
import { unitNamed } from '../core/unit.ts';
import type { DemoBench } from './demo-bench.ts';
import { dayOf } from './demo-jobs.ts';

/** What was done to the stock besides the treatment log: cleared away, counted, spilt, taken by hand. */

const NEARLY_USED_CM2 = exact(45);
const OVERDRAWN_BY = exact(4);
const ERASER_LEFT = exact(2);

const G = unitNamed('g');
const CM2 = unitNamed('cm2');

type TakenByHand = readonly [
  day: string,
  material: string,
  quantity: number,
  unit: string,
  job: string,
  note: string,
  kind?: MovementKind,
];

/** What no usage rate reckons with: taken from a lot by name. */
const TAKEN_BY_HAND: readonly TakenByHand[] = [
  ['2025-11-21', 'linen thread', 1.2, 'm', 'J-2014', 'sewing the centrefold'],
  ['2025-12-09', 'clear corner', 4, 'each', 'J-2015', 'mounting'],
  ['2025-12-12', 'clear corner', 2, 'each', 'J-2015', 'not needed after all', 'Put back'],
  ['2026-02-24', 'toned tissue 5 g', 180, 'cm2', 'J-2018', 'lower edge'],
  ['2026-02-26', 'kozo paper 20 g', 1400, 'cm2', 'J-2018', 'false margins'],
  ['2026-04-14', 'remoistenable tissue', 220, 'cm2', 'J-2020', 'spine, nothing wet'],
  ['2026-05-12', 'cotton tape', 130, 'cm', 'J-2021', 'tying the portfolio'],
  ['2026-06-11', 'clear corner', 8, 'each', 'J-2022', 'mounting'],
  ['2026-08-20', 'kozo paper 20 g', 900, 'cm2', 'J-2028', 'hinges'],
  ['2026-09-10', 'linen thread', 0.9, 'm', 'J-2026', 'sewing the centrefold'],
  ['2026-10-22', 'cotton tape', 90, 'cm', 'J-2034', 'tying the bundle'],
];

export function takeByHand(bench: DemoBench, day: Day): void {
  const { studio } = bench.ledger;
  for (const [on, name, quantity, unit, job, note, kind] of TAKEN_BY_HAND) {
    if (dayOf(on) !== day) continue;
    const material = studio.materialsByKey.get(keyOf(name));
    const lots = material === undefined ? [] : (studio.lotsOfMaterial.get(material) ?? []);
    const lot = lots.find((each) => isUsableOn(accountIn(bench.ledger, each), day));
    if (lot === undefined) throw new Error(`there is no lot of ${name} on ${on}`);
    bench.change(lot, day, {
      kind: kind ?? 'Use',
      quantity: exact(quantity),
      unit: unitNamed(unit),
      note,
      job,
    });
  }
}

const CUT_TO_SIZE = new Set(['polyester film 75 µm', 'alkaline board', 'infill paper 80 g']);

/** What falls off when film, board and infills are cut. */
export function trim(bench: DemoBench, cut: readonly Movement[], day: Day, random: Random): void {
  for (const { lot, unit, job } of cut) {
    if (unit.name !== CM2.name || job === null || !CUT_TO_SIZE.has(lot.material.name)) continue;
    const quantity = exact(40 + 10 * Math.floor(random() * 12));
    bench.change(lot, day, { kind: 'Waste', quantity, unit: CM2, note: 'trimmings', job });
  }
}

/** What has gone off is thrown away. */
export function clearAway(bench: DemoBench, day: Day): void {
  for (const [lot, account] of bench.ledger.accounts) {
    const left = roundQuantity(bench.left(lot, day));
    if (lot.record.received > day || !isExpiredOn(account, day) || left.compare(0) <= 0) continue;
    if (stateOn(account, day) !== 'Usable') continue;
    bench.change(lot, day, {
      kind: 'Waste',
      quantity: left,
      unit: lot.record.unit,
      note: 'past its last day',
    });
  }
}

/** Opened lots are measured until so many were found a little off the books. */
export function countSome(bench: DemoBench, day: Day, random: Random, howMany: number): void {
  const open = bench.ledger.studio.lots.filter((lot) => {
    const account = accountIn(bench.ledger, lot);
    return (
      openedOn(account, day) !== null &&
      stateOn(account, day) === 'Usable' &&
      !isExpiredOn(account, day) &&
      isMeasured(lot) &&
      bench.left(lot, day).div(lot.record.quantity).compare(ratio(1, 10)) > 0
    );
  });
  const wanted = bench.written.length + howMany;
  const inTurn = open.map((lot) => ({ lot, turn: random() })).toSorted((a, b) => a.turn - b.turn);
  for (const { lot } of inTurn) {
    if (bench.written.length >= wanted) return;
    const off = ONE.add(ratio(Math.floor(random() * 21) - 13, 1000));
    bench.count(lot, day, roundTo(bench.left(lot, day).mul(off), lot), 'stocktake');
  }
}

function isMeasured(lot: Lot): boolean {
  return lot.material.unit.dimension !== 'each';
}

/** As finely as one weighs, pours or counts: 0.1 g, 1 ml, a use, a fiftieth of a sheet. */
function roundTo(value: Exact, lot: Lot): Exact {
  const ofUnit = { g: ratio(1, 10), ml: ONE, l: ratio(1, 100) }[lot.record.unit.name];
  const step = ofUnit ?? lot.material.record.usesPerUnit?.inverse() ?? ratio(1, 50);
  return value.div(step).round().mul(step);
}

export function countNearlyUsed(bench: DemoBench, lot: Lot, day: Day): void {
  const factor = lot.converter.factor(lot.record.unit, CM2);
  if (factor === null) throw new Error(`the sheet of lot ${lot.name} has no size`);
  const quantity = roundQuantity(NEARLY_USED_CM2.sub(bench.left(lot, day).mul(factor)));
  bench.change(lot, day, { kind: 'Count', quantity, unit: CM2, note: 'the last strip measured' });
}

/** More was written down by hand than the jar held. */
export function overdraw(bench: DemoBench, lot: Lot, day: Day): void {
  const quantity = bench.left(lot, day).add(OVERDRAWN_BY);
  bench.change(lot, day, { kind: 'Use', quantity, unit: G, note: 'sizing trials', job: STUDIO_JOB }, true);
}

export function spill(bench: DemoBench, lot: Lot, day: Day): void {
  const quantity = bench.left(lot, day).sub(ERASER_LEFT);
  if (quantity.compare(ZERO) <= 0) throw new Error('nothing of the eraser is left to spill');
  bench.change(lot, day, { kind: 'Waste', quantity, unit: G, note: 'jar knocked over' });
}
