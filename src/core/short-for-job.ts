import type { Day } from './day.ts';
import { drawOrder } from './draw-order.ts';
import { type Exact, larger, smaller, ZERO } from './exact-number.ts';
import type { Ledger } from './ledger.ts';
import { leftOn } from './lot-account.ts';
import type { Expected } from './on-order.ts';
import type { PlannedUse, UndrawnUse } from './planned-use.ts';
import type { Lot, Material } from './studio.ts';

/** A plan row that will find less of a material than it needs. */
export interface JobShortage {
  readonly use: PlannedUse;
  /** In the material's stock unit. */
  readonly missing: Exact;
}

/**
 * The planned uses that a material's stock won't cover on their day. Log entries that are not drawn take first, then
 * the planned uses in turn; each draws the lots that may be used on its day, in draw order, then what is expected by
 * then. What no lot covers of a log entry is owed, and comes off what the planned uses find.
 * What could still be made doesn't count.
 * @param planned the material's planned uses, earliest first
 */
export function shortagesOf(
  ledger: Ledger,
  material: Material,
  planned: readonly PlannedUse[],
  undrawn: readonly UndrawnUse[],
  expected: readonly Expected[],
): JobShortage[] {
  if (planned.length === 0) return [];
  const takenOf = new Map<Lot, Exact>();
  let takenOfExpected = ZERO;
  const takeOn = (day: Day, quantity: Exact): Exact => {
    let missing = quantity;
    for (const account of drawOrder(ledger, material, day)) {
      const factor = account.lot.converter.factor(account.lot.record.unit, material.unit);
      if (factor === null) continue;
      const taken = takenOf.get(account.lot) ?? ZERO;
      const got = smaller(missing, larger(leftOn(account, day).mul(factor).sub(taken), ZERO));
      takenOf.set(account.lot, taken.add(got));
      missing = missing.sub(got);
    }
    return missing;
  };
  let owed = ZERO;
  for (const { entry, quantity } of undrawn) owed = owed.add(takeOn(entry.record.date, quantity));
  const shortages: JobShortage[] = [];
  for (const use of planned) {
    owed = takeOn(use.day, owed);
    const afterLots = takeOn(use.day, use.quantity);
    const arrived = expected.reduce(
      (total, { day, quantity }) => (day !== null && day <= use.day ? total.add(quantity) : total),
      ZERO,
    );
    const fromExpected = smaller(afterLots, larger(arrived.sub(takenOfExpected).sub(owed), ZERO));
    takenOfExpected = takenOfExpected.add(fromExpected);
    const missing = afterLots.sub(fromExpected);
    if (missing.compare(0) > 0) shortages.push({ use, missing });
  }
  return shortages;
}
