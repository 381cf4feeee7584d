import type { Day } from './day.ts';
import { type Exact, roundQuantity, sum, ZERO } from './exact-number.ts';
import { accountsOf, type Ledger } from './ledger.ts';
import { goodUntilOn, isExpiredOn } from './life.ts';
import { type LotAccount, leftOn, stateOn, worthOn } from './lot-account.ts';
import type { Coins, Currency } from './money.ts';
import type { LotState } from './records.ts';
import type { Lot, Material } from './studio.ts';
import type { Unit } from './unit.ts';

/** A lot of the closing stock. */
export interface ClosingLot {
  readonly lot: Lot;
  /** In the lot's unit; below 0 where more was used than recorded. */
  readonly left: Exact;
  readonly unit: Unit;
  /** What one unit of it cost, in the currency's main unit; null for a lot without a cost. */
  readonly unitCost: Exact | null;
  /** Its cost less what it has charged; null for a lot without a cost. Not written down when it goes off. */
  readonly worth: Coins | null;
  /** Null where it keeps, or where that can't be told. */
  readonly goodUntil: Day | null;
  readonly state: LotState;
  /** Its last day is over. */
  readonly expired: boolean;
}

/** What is left of a material, lot by lot. */
export interface ClosingMaterial {
  readonly material: Material;
  /** In the material's stock unit. */
  readonly left: Exact;
  readonly unit: Unit;
  /** Null as soon as a lot with something left has no cost. */
  readonly worth: Coins | null;
  readonly lots: readonly ClosingLot[];
}

/** The stock at the end of a day, at cost. */
export interface ClosingStock {
  readonly day: Day;
  readonly currency: Currency;
  /** Those of which there is something, in the order of the workbook. */
  readonly materials: readonly ClosingMaterial[];
  /** Null as soon as a lot with something left has no cost. */
  readonly total: Coins | null;
  /** The worth of the lots whose cost is known. */
  readonly known: Coins;
  /** How many lots have something left and no cost. */
  readonly unknown: number;
}

/**
 * The stock at the end of a day, valued at what each lot itself cost (specific identification, IAS 2.23). In it are the
 * lots received by then and not discarded with something left, overdrawn ones too, and one used up on which coins are
 * still to be settled. What has gone off or is set aside is in it at full worth: writing down to what it would fetch
 * (the lower of the two, IAS 2.9) is for the accountant. Materials that are not counted are no stock.
 */
export function closingStock(ledger: Ledger, day: Day): ClosingStock {
  const materials = ledger.studio.materials.flatMap((material) => {
    const lots = material.counted
      ? accountsOf(ledger, material).filter((account) => isThere(account, day))
      : [];
    return lots.length === 0 ? [] : [closingMaterial(material, lots, day)];
  });
  const lots = materials.flatMap((each) => each.lots);
  const known = lots.reduce((total, { worth }) => total + (worth ?? 0n), 0n);
  const unknown = lots.filter(({ worth }) => worth === null).length;
  return {
    day,
    currency: ledger.studio.settings.currency,
    materials,
    total: unknown === 0 ? known : null,
    known,
    unknown,
  };
}

function isThere(account: LotAccount, day: Day): boolean {
  if (account.lot.record.received > day || stateOn(account, day) === 'Discarded') return false;
  return !leftOn(account, day).equals(0) || (worthOn(account, day) ?? 0n) !== 0n;
}

function closingMaterial(material: Material, accounts: readonly LotAccount[], day: Day): ClosingMaterial {
  const lots = accounts.map((account) => closingLot(account, day));
  return {
    material,
    left: roundQuantity(
      sum(lots.map(({ lot, left, unit }) => left.mul(lot.converter.factor(unit, material.unit) ?? ZERO))),
    ),
    unit: material.unit,
    worth: lots.reduce<Coins | null>(
      (total, { worth }) => (total === null || worth === null ? null : total + worth),
      0n,
    ),
    lots,
  };
}

function closingLot(account: LotAccount, day: Day): ClosingLot {
  const { lot } = account;
  const { cost, quantity, unit } = lot.record;
  return {
    lot,
    left: leftOn(account, day),
    unit,
    unitCost: cost === null ? null : cost.div(quantity),
    worth: worthOn(account, day),
    goodUntil: goodUntilOn(account, day),
    state: stateOn(account, day),
    expired: isExpiredOn(account, day),
  };
}
