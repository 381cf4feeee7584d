import { costOfQuantity } from './cost-of-quantity.ts';
import type { Day } from './day.ts';
import { rateQuantity, takesWhole } from './entry-needs.ts';
import { type Exact, ratio, roundHalfAway, ZERO } from './exact-number.ts';
import type { Ledger } from './ledger.ts';
import type { Coins } from './money.ts';
import type { CostBasis } from './settings.ts';
import type { Material, PlanRow, UsageRate } from './studio.ts';
import type { Unit } from './unit.ts';
import { spokenNumber, spokenQuantity } from './wording.ts';

/** One line of a quote: what a plan row takes of a material, costed in one way. */
export interface QuoteLine {
  readonly what: string;
  readonly item: string | null;
  readonly treatment: string;
  readonly material: Material;
  readonly quantity: Exact;
  readonly unit: Unit;
  /** What one unit comes to; null where nothing says what it costs. */
  readonly each: Coins | null;
  /** Null where nothing says what it costs; sums miss it then. */
  readonly amount: Coins | null;
  readonly basis: CostBasis | null;
  /** The lots that it would be drawn from, where their cost is the basis. */
  readonly lots: readonly string[];
  /** How the quantity and the amount came about. */
  readonly how: string;
}

/** The lines of one plan row and rate, what no lot covers, and the stock after it. */
export interface CostedRate {
  readonly lines: readonly QuoteLine[];
  readonly missing: Exact;
  readonly ledger: Ledger;
}

/**
 * Costs what a plan row takes by one rate on the basis that the settings say. Where that gives no figure for all or
 * a part of it, the other basis stands in, on a line of its own.
 */
export function costLine(
  ledger: Ledger,
  row: PlanRow,
  rate: UsageRate,
  withFixed: boolean,
  today: Day,
): CostedRate {
  const quantity = rateQuantity(rate, row.record.extent, withFixed);
  if (quantity.compare(0) <= 0) return { lines: [], missing: ZERO, ledger };
  const { material } = rate;
  const { unit } = rate.record;
  const costed = costOfQuantity(ledger, { material, quantity, unit, whole: takesWhole(rate) }, today);
  const { extentUnit } = row.treatment.record;
  const taken = howMuch(rate, row.record.extent, extentUnit, withFixed);
  return {
    lines: costed.portions.map((portion) => ({
      ...portion,
      what: `${row.treatment.name}: ${material.name}`,
      item: row.record.item,
      treatment: row.treatment.name,
      material,
      unit,
      each: portion.amount === null ? null : roundHalfAway(ratio(portion.amount, 1).div(portion.quantity)),
      how: `${taken} = ${spokenQuantity(quantity, unit)}; ${portion.how}`,
    })),
    missing: costed.missing,
    ledger: costed.ledger,
  };
}

function howMuch(rate: UsageRate, extent: Exact, extentUnit: string, withFixed: boolean): string {
  const { quantityPerExtent, fixedQuantity, waste, unit } = rate.record;
  const parts = [
    `${spokenQuantity(quantityPerExtent, unit)} × ${spokenNumber(extent)} ${extentUnit}`,
    ...(withFixed && fixedQuantity !== null && fixedQuantity.compare(0) > 0
      ? [`+ ${spokenQuantity(fixedQuantity, unit)} per ${rate.fixedPer}`]
      : []),
    ...(waste !== null && waste.compare(0) > 0 ? [`+ ${spokenNumber(waste)} % waste`] : []),
    ...(takesWhole(rate) ? ['in whole units'] : []),
  ];
  return parts.join(' ');
}
