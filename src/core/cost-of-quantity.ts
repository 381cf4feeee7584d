import type { Day } from './day.ts';
import { cover } from './draw-order.ts';
import { type Exact, ONE, sum, ZERO } from './exact-number.ts';
import { accountIn, costIn, type Ledger, post } from './ledger.ts';
import { type Coins, toCoins } from './money.ts';
import { type Movement, movementOf } from './movement.ts';
import { replacementPrice } from './replacement-price.ts';
import type { CostBasis } from './settings.ts';
import type { Material } from './studio.ts';
import type { Unit } from './unit.ts';
import { spokenQuantity } from './wording.ts';

/** How much of what is costed. */
export interface ToCost {
  readonly material: Material;
  /** In `unit`, above 0, with at most 6 decimals. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** Only whole units are taken from each lot. */
  readonly whole: boolean;
}

/** A part of a quantity, with its cost on one basis. */
export interface Portion {
  readonly quantity: Exact;
  /** Null where nothing says what it costs. */
  readonly amount: Coins | null;
  readonly basis: CostBasis | null;
  /** The lots that it would be drawn from, where their cost is the basis. */
  readonly lots: readonly string[];
  /** How the amount came about. */
  readonly how: string;
}

/** A quantity in portions, what no lot covers of it, and the stock after it. */
export interface CostedQuantity {
  readonly portions: readonly Portion[];
  /** In the unit that was asked for. */
  readonly missing: Exact;
  readonly ledger: Ledger;
}

/**
 * What a quantity of a material costs on a day, on the basis that the settings say: what the lots would charge that
 * the draw order takes it from, or the price to get it again. Where that gives no figure for all or a part of it,
 * the other basis stands in, as a portion of its own.
 */
export function costOfQuantity(ledger: Ledger, asked: ToCost, today: Day): CostedQuantity {
  const drawn = drawForCost(ledger, asked, today);
  return { portions: portionsOf(ledger, asked, drawn), missing: drawn.missing, ledger: drawn.ledger };
}

interface DrawnForCost {
  /** The uses of lots whose cost is known, with it. */
  readonly costed: readonly { readonly movement: Movement; readonly cost: Coins }[];
  readonly missing: Exact;
  readonly ledger: Ledger;
}

/** Sorts after every identifier: what is only imagined comes after what has been used that day, and in turn. */
const AFTER_ALL_OTHERS = '\uffff';

function drawForCost(ledger: Ledger, asked: ToCost, today: Day): DrawnForCost {
  const { unit } = asked;
  if (!asked.material.counted) return { costed: [], missing: ZERO, ledger };
  const covered = cover(ledger, { ...asked, lot: null }, today);
  const movements = covered.takes.flatMap((take) => {
    const imagined = {
      date: today,
      kind: 'Use',
      unit,
      job: null,
      item: null,
      entry: null,
      lotIs: null,
      into: null,
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

function portionsOf(ledger: Ledger, asked: ToCost, drawn: DrawnForCost): Portion[] {
  const replaced = (part: Exact): Portion | null => replacementPortion(ledger, asked, part);
  if (ledger.studio.settings.costBasis === 'replacement') {
    const whole = replaced(asked.quantity);
    if (whole !== null) return [whole];
  }
  const fromLots = lotsPortion(asked.unit, drawn);
  const rest = asked.quantity.sub(fromLots?.quantity ?? ZERO);
  const others = rest.compare(0) > 0 ? [replaced(rest) ?? unknownPortion(rest)] : [];
  return fromLots === null ? others : [fromLots, ...others];
}

function lotsPortion(unit: Unit, { costed }: DrawnForCost): Portion | null {
  if (costed.length === 0) return null;
  const shares = costed.map(
    ({ movement }) => `${spokenQuantity(movement.quantity, unit)} from lot ${movement.lot.name}`,
  );
  return {
    quantity: sum(costed.map(({ movement }) => movement.quantity)),
    amount: costed.reduce((total, { cost }) => total + cost, 0n),
    basis: 'lots',
    lots: costed.map(({ movement }) => movement.lot.name),
    how: `at cost, ${shares.join(', ')}`,
  };
}

function replacementPortion(ledger: Ledger, { material, unit }: ToCost, part: Exact): Portion | null {
  const factor = material.converter.factor(unit, material.unit);
  const price = replacementPrice(material, part.mul(factor ?? ONE));
  if (price === null || (factor === null && !price.pricePerUnit.equals(ZERO))) return null;
  return {
    quantity: part,
    amount: toCoins(price.pricePerUnit.mul(part).mul(factor ?? ONE), ledger.studio.settings.currency),
    basis: 'replacement',
    lots: [],
    how: `${spokenQuantity(part, unit)} at today's price, ${price.how}`,
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
