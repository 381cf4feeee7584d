import type { Day } from './day.ts';
import { cover } from './draw-order.ts';
import { rateQuantity } from './entry-needs.ts';
import { type Exact, ONE, ratio, roundHalfAway, sum, ZERO } from './exact-number.ts';
import { accountIn, costIn, type Ledger, post } from './ledger.ts';
import { type Coins, toCoins } from './money.ts';
import { type Movement, movementOf } from './movement.ts';
import { replacementPrice } from './replacement-price.ts';
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

/** A part of what a rate takes, with its cost on one basis. */
interface Portion {
  readonly quantity: Exact;
  readonly amount: Coins | null;
  readonly basis: CostBasis | null;
  readonly lots: readonly string[];
  readonly how: string;
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
  const drawn = drawForQuote(ledger, rate, quantity, today);
  const portions = portionsOf(ledger, rate, quantity, drawn);
  const { extentUnit } = row.treatment.record;
  const taken = howMuch(rate, row.record.extent, extentUnit, withFixed);
  return {
    lines: portions.map((portion) => ({
      ...portion,
      what: `${row.treatment.name}: ${rate.material.name}`,
      item: row.record.item,
      treatment: row.treatment.name,
      material: rate.material,
      unit: rate.record.unit,
      each: portion.amount === null ? null : roundHalfAway(ratio(portion.amount, 1).div(portion.quantity)),
      how: `${taken} = ${spokenQuantity(quantity, rate.record.unit)}; ${portion.how}`,
    })),
    missing: drawn.missing,
    ledger: drawn.ledger,
  };
}

function howMuch(rate: UsageRate, extent: Exact, extentUnit: string, withFixed: boolean): string {
  const { quantityPerExtent, fixedQuantity, waste, whole, unit } = rate.record;
  const parts = [
    `${spokenQuantity(quantityPerExtent, unit)} × ${spokenNumber(extent)} ${extentUnit}`,
    ...(withFixed && fixedQuantity !== null && fixedQuantity.compare(0) > 0
      ? [`+ ${spokenQuantity(fixedQuantity, unit)} per ${rate.fixedPer}`]
      : []),
    ...(waste !== null && waste.compare(0) > 0 ? [`+ ${spokenNumber(waste)} % waste`] : []),
    ...(whole === true ? ['in whole units'] : []),
  ];
  return parts.join(' ');
}

interface DrawnForQuote {
  /** The uses of lots whose cost is known, with it. */
  readonly costed: readonly { readonly movement: Movement; readonly cost: Coins }[];
  readonly missing: Exact;
  readonly ledger: Ledger;
}

/** Sorts after every identifier: what is only imagined comes after what has been used that day, and in turn. */
const AFTER_ALL_OTHERS = '\uffff';

function drawForQuote(ledger: Ledger, rate: UsageRate, quantity: Exact, today: Day): DrawnForQuote {
  const { material } = rate;
  if (!material.counted) return { costed: [], missing: ZERO, ledger };
  const { unit, whole } = rate.record;
  const covered = cover(ledger, { material, quantity, unit, whole: whole ?? false, lot: null }, today);
  const movements = covered.takes.flatMap((take) => {
    const imagined = {
      date: today,
      kind: 'Use',
      unit,
      job: null,
      item: null,
      entry: null,
      lotIs: null,
      note: null,
    } as const;
    const place = accountIn(ledger, take.lot).postings.length;
    const name = `${AFTER_ALL_OTHERS}${String(place).padStart(9, '0')}`;
    const links = { name, reverses: null, record: null };
    return movementOf({ ...imagined, ...links, lot: take.lot, quantity: take.quantity }) ?? [];
  });
  const after = post(ledger, movements);
  const costed = movements.flatMap((movement) => {
    const cost = costIn(after, movement);
    return cost === null ? [] : [{ movement, cost }];
  });
  return { costed, missing: covered.missing, ledger: after };
}

function portionsOf(ledger: Ledger, rate: UsageRate, quantity: Exact, drawn: DrawnForQuote): Portion[] {
  const replaced = (part: Exact): Portion | null => replacementPortion(ledger, rate, part);
  if (ledger.studio.settings.costBasis === 'replacement') {
    const whole = replaced(quantity);
    if (whole !== null) return [whole];
  }
  const fromLots = lotsPortion(rate, drawn);
  const rest = quantity.sub(fromLots?.quantity ?? ZERO);
  const others = rest.compare(0) > 0 ? [replaced(rest) ?? unknownPortion(rest)] : [];
  return fromLots === null ? others : [fromLots, ...others];
}

function lotsPortion(rate: UsageRate, { costed }: DrawnForQuote): Portion | null {
  if (costed.length === 0) return null;
  const shares = costed.map(
    ({ movement }) => `${spokenQuantity(movement.quantity, rate.record.unit)} from lot ${movement.lot.name}`,
  );
  return {
    quantity: sum(costed.map(({ movement }) => movement.quantity)),
    amount: costed.reduce((total, { cost }) => total + cost, 0n),
    basis: 'lots',
    lots: costed.map(({ movement }) => movement.lot.name),
    how: `at cost, ${shares.join(', ')}`,
  };
}

function replacementPortion(ledger: Ledger, rate: UsageRate, part: Exact): Portion | null {
  const { material } = rate;
  const factor = material.converter.factor(rate.record.unit, material.unit);
  const price = replacementPrice(material, part.mul(factor ?? ONE));
  if (price === null || (factor === null && !price.pricePerUnit.equals(ZERO))) return null;
  return {
    quantity: part,
    amount: toCoins(price.pricePerUnit.mul(part).mul(factor ?? ONE), ledger.studio.settings.currency),
    basis: 'replacement',
    lots: [],
    how: `${spokenQuantity(part, rate.record.unit)} at today's price, ${price.how}`,
  };
}

function unknownPortion(part: Exact): Portion {
  return {
    quantity: part,
    amount: null,
    basis: null,
    lots: [],
    how: 'no lot and no offer says what it costs',
  };
}
