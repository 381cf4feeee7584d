import type { Day } from './day.ts';
import { type Exact, roundQuantity, sum, ZERO } from './exact-number.ts';
import { groupBy } from './group-by.ts';
import { accountIn, accountsOf, type Ledger } from './ledger.ts';
import { goodUntilOn, isUsableOn } from './life.ts';
import { type LotAccount, leftOn, stateOn, totalCost, worthOn } from './lot-account.ts';
import type { Coins } from './money.ts';
import { type Expected, expectedOf } from './on-order.ts';
import { type PlannedUse, plannedUses, type UndrawnUse, undrawnUses } from './planned-use.ts';
import type { LotState } from './records.ts';
import { type ReorderAnswer, reorderAnswer } from './reorder.ts';
import { type JobShortage, shortagesOf } from './short-for-job.ts';
import type { Lot, Material } from './studio.ts';

/** A lot's figures on a day, quantities in the lot's unit. */
export interface LotFigures {
  readonly lot: Lot;
  readonly left: Exact;
  /** Null where it keeps, or where that can't be told. */
  readonly goodUntil: Day | null;
  readonly state: LotState;
  readonly usable: boolean;
  /** Null for a lot without a cost. */
  readonly worth: Coins | null;
}

/** A material's figures on a day, quantities in its stock unit. */
export interface MaterialFigures {
  readonly material: Material;
  /** Null where the material isn't counted. */
  readonly left: Exact | null;
  /** Null where the material isn't counted. */
  readonly usable: Exact | null;
  readonly onOrder: Exact;
  readonly reorder: ReorderAnswer;
  /** The day on which the first of its usable lots goes off; null where they keep, or there are none. */
  readonly goodUntil: Day | null;
  /** Null as soon as a lot with something left in it has no cost, or the material isn't counted. */
  readonly worth: Coins | null;
  readonly shortages: readonly JobShortage[];
}

/** What the stock looks like on a day. */
export interface Stock {
  readonly today: Day;
  readonly materials: readonly MaterialFigures[];
  readonly lots: readonly LotFigures[];
  readonly undrawn: readonly UndrawnUse[];
}

/** The figures of all lots and materials on a day. */
export function stockOn(ledger: Ledger, today: Day): Stock {
  const planned = groupBy(plannedUses(ledger, today), (use) => use.material);
  const undrawn = undrawnUses(ledger, today);
  const undrawnOf = groupBy(undrawn, (use) => use.material);
  return {
    today,
    lots: ledger.studio.lots.map((lot) => lotFigures(accountIn(ledger, lot), today)),
    materials: ledger.studio.materials.map((material) =>
      materialFigures(ledger, material, planned.get(material) ?? [], undrawnOf.get(material) ?? [], today),
    ),
    undrawn,
  };
}

/** A lot's figures on a day. */
export function lotFigures(account: LotAccount, today: Day): LotFigures {
  return {
    lot: account.lot,
    left: leftOn(account, today),
    goodUntil: goodUntilOn(account, today),
    state: stateOn(account, today),
    usable: isUsableOn(account, today),
    worth: worthOn(account, today),
  };
}

const NO_REORDER: ReorderAnswer = {
  planned: ZERO,
  reorderPoint: ZERO,
  position: ZERO,
  isLow: false,
  wanted: ZERO,
  suggestedOrder: ZERO,
};

function materialFigures(
  ledger: Ledger,
  material: Material,
  planned: readonly PlannedUse[],
  undrawn: readonly UndrawnUse[],
  today: Day,
): MaterialFigures {
  const expected: Expected[] = expectedOf(ledger.studio, material, today);
  const onOrder = roundQuantity(sum(expected.map(({ quantity }) => quantity)));
  if (!material.counted) {
    const nothing = { left: null, usable: null, goodUntil: null, worth: null, shortages: [] };
    return { material, onOrder, reorder: NO_REORDER, ...nothing };
  }
  const kept = accountsOf(ledger, material).filter(
    (account) => account.lot.record.received <= today && stateOn(account, today) !== 'Discarded',
  );
  const usableLots = kept.filter((account) => isUsableOn(account, today));
  const usable = leftIn(usableLots, material, today);
  const days = usableLots.map((account) => goodUntilOn(account, today)).filter((day) => day !== null);
  return {
    material,
    left: leftIn(kept, material, today),
    usable,
    onOrder,
    reorder: reorderAnswer(ledger, material, { usable, onOrder, planned, undrawn }, today),
    goodUntil: days.length === 0 ? null : (Math.min(...days) as Day),
    worth: totalCost(
      kept
        .filter((account) => account.cost !== null || leftOn(account, today).compare(0) !== 0)
        .map((account) => worthOn(account, today)),
    ),
    shortages: shortagesOf(ledger, material, planned, undrawn, expected),
  };
}

/** What is left in lots, in the material's stock unit; a lot whose unit doesn't lead to it is missed, and noticed. */
function leftIn(accounts: readonly LotAccount[], material: Material, day: Day): Exact {
  return roundQuantity(
    sum(
      accounts.map((account) => {
        const factor = account.lot.converter.factor(account.lot.record.unit, material.unit);
        return factor === null ? ZERO : leftOn(account, day).mul(factor);
      }),
    ),
  );
}
