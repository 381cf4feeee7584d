const PERCENT = 100;

/** A price that holds for the whole order from a quantity on. */
export interface PriceBreak {
  readonly from: number;
  /** Of one unit. */
  readonly price: number;
}

/** What the cheapest order quantity follows from: quantities in one unit, money in one unit. */
export interface OrderQuantityProblem {
  /** What is used in a year. */
  readonly yearlyUse: number;
  /** What an order costs, whatever its size. */
  readonly orderCost: number;
  /** What holding stock costs in a year, in % of what it is worth. */
  readonly holdingPercent: number;
  /** In any order. */
  readonly breaks: readonly PriceBreak[];
  /** What can be used before it goes off: use per day × life. null where there is no such limit. */
  readonly mostAtOnce: number | null;
}

/** A quantity ordered again and again, with what a year of it costs. */
export interface OrderQuantity {
  readonly quantity: number;
  readonly price: number;
  readonly ordersPerYear: number;
  readonly goods: number;
  readonly ordering: number;
  readonly holding: number;
  /** The three together. */
  readonly yearlyCost: number;
}

export type CheapestOrderQuantity =
  | {
      readonly kind: 'cheapest';
      readonly best: OrderQuantity;
      /** The best at each price, the smallest quantity first; the cheapest is one of them. */
      readonly ways: readonly OrderQuantity[];
    }
  | {
      readonly kind: 'none';
      /**
       * Nothing is used; no price holds for so little as can be used before it goes off; or there is no best, as holding
       * costs nothing and more is always cheaper, or an order costs nothing and less always is.
       */
      readonly because: 'not used' | 'no price' | 'no best';
    };

/**
 * The order quantity that makes a year cheapest where a price holds for the whole order (all-units discounts). At each
 * price it is the economic order quantity √(2·D·S ÷ (i·C)) where the price holds for so much, else the least for which
 * it holds; a limit by what can be used in time comes before both. A price that is no lower than one for less is left
 * out, as that one still holds.
 * Source: Nahmias, Production and Operations Analysis, on quantity discounts.
 */
export function cheapestOrderQuantity(problem: OrderQuantityProblem): CheapestOrderQuantity {
  const { yearlyUse, orderCost, holdingPercent, mostAtOnce } = problem;
  if (!(yearlyUse > 0)) return { kind: 'none', because: 'not used' };
  const most = mostAtOnce ?? Number.POSITIVE_INFINITY;
  const steps = fallingPrices(problem.breaks).filter(({ from }) => from <= most && most > 0);
  if (steps.length === 0) return { kind: 'none', because: 'no price' };
  const quantities = steps.flatMap(({ from, price }, place) => {
    const holding = unitHolding(price, holdingPercent);
    const economic =
      holding > 0 ? Math.sqrt((2 * yearlyUse * orderCost) / holding) : Number.POSITIVE_INFINITY;
    const quantity = Math.min(Math.max(economic, from), most);
    const next = steps[place + 1];
    return next === undefined || quantity < next.from ? [{ quantity, price }] : [];
  });
  if (quantities.some(({ quantity }) => quantity === 0 || !Number.isFinite(quantity))) {
    return { kind: 'none', because: 'no best' };
  }
  const ways = quantities.map(({ quantity, price }) => yearOf(problem, quantity, price));
  const [best] = ways.toSorted((a, b) => a.yearlyCost - b.yearlyCost);
  return best === undefined ? { kind: 'none', because: 'no price' } : { kind: 'cheapest', best, ways };
}

/** The prices by the quantity from which they hold, as far as each is lower than all before it. */
function fallingPrices(breaks: readonly PriceBreak[]): PriceBreak[] {
  const falling: PriceBreak[] = [];
  for (const step of breaks.toSorted((a, b) => a.from - b.from || a.price - b.price)) {
    const before = falling.at(-1);
    if (before === undefined || step.price < before.price) falling.push(step);
  }
  return falling;
}

/** What holding one unit for a year costs. */
function unitHolding(price: number, holdingPercent: number): number {
  return (holdingPercent / PERCENT) * price;
}

/** A year of orders of one size; on average half of an order is in stock. */
function yearOf(
  { yearlyUse, orderCost, holdingPercent }: OrderQuantityProblem,
  quantity: number,
  price: number,
): OrderQuantity {
  const ordersPerYear = yearlyUse / quantity;
  const goods = yearlyUse * price;
  const ordering = ordersPerYear * orderCost;
  const holding = (quantity / 2) * unitHolding(price, holdingPercent);
  return { quantity, price, ordersPerYear, goods, ordering, holding, yearlyCost: goods + ordering + holding };
}
