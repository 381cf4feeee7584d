const PERCENT = 100;
/** How far above a whole number a quotient may lie and still be it. */
const NOISE = 1e-9;

/** A material that is ordered from a supplier again and again; quantities in its unit, money in one unit for all. */
export interface RegularMaterial {
  readonly material: string;
  /** What is used in a year. */
  readonly yearlyUse: number;
  /** What one unit costs. */
  readonly price: number;
  /** What this material adds to the cost of an order that it is part of. */
  readonly ownOrderCost: number;
}

/** One way of ordering, with what it costs. */
export interface OrderingWay {
  readonly materials: readonly RegularOrder[];
  /** What ordering and holding cost in a year; the goods cost the same in every way. */
  readonly yearlyCost: number;
}

export interface RegularOrder {
  readonly material: string;
  readonly ordersPerYear: number;
  /** Of each order. */
  readonly quantity: number;
  /** It is part of every so-manieth order to the supplier: 1 of each, 2 of every other. null where it is ordered alone. */
  readonly everyOrders: number | null;
}

export interface OrderTogether {
  /** Each on its own, with an order of its own every time. */
  readonly alone: OrderingWay;
  /** All in every order. */
  readonly together: OrderingWay;
  /** The one that is wanted most often in every order, the others in every so-manieth. */
  readonly tailored: OrderingWay;
}

/**
 * Whether several materials of one supplier are better ordered together: what a year costs where each is ordered alone,
 * all in every order, and each in as many orders as suits it.
 * Source: Chopra & Meindl, Supply Chain Management, on lots ordered and delivered jointly. The tailored way is a rule
 * of thumb: near the best, not proven to be it.
 * @param orderCost what an order costs, whatever is in it
 * @param holdingPercent what holding stock costs in a year, in % of what it is worth
 * @returns null where no material is used and costs something to hold, or orders cost nothing: then no way is best
 */
export function orderTogether(
  materials: readonly RegularMaterial[],
  orderCost: number,
  holdingPercent: number,
): OrderTogether | null {
  const regular = materials
    .map((each) => ({ ...each, holding: each.yearlyUse * each.price * (holdingPercent / PERCENT) }))
    .filter(({ holding }) => holding > 0);
  if (regular.length === 0 || orderCost <= 0) return null;
  return {
    alone: orderedAlone(regular, orderCost),
    together: orderedJointly(regular, orderCost, () => 1),
    tailored: orderedJointly(regular, orderCost, multiples(regular, orderCost)),
  };
}

interface Held extends RegularMaterial {
  /** What it costs to hold a year's use for a year. */
  readonly holding: number;
}

/** How often a year something is best ordered, where a year's use costs so much to hold and an order so much. */
function bestFrequency(holding: number, orderCost: number): number {
  return Math.sqrt(holding / (2 * orderCost));
}

function yearlyCost(holding: number, orderCost: number, ordersPerYear: number): number {
  return ordersPerYear * orderCost + holding / (2 * ordersPerYear);
}

function orderedAlone(materials: readonly Held[], orderCost: number): OrderingWay {
  const orders = materials.map(({ material, yearlyUse, holding, ownOrderCost }) => {
    const cost = orderCost + ownOrderCost;
    const ordersPerYear = bestFrequency(holding, cost);
    const order: RegularOrder = {
      material,
      ordersPerYear,
      quantity: yearlyUse / ordersPerYear,
      everyOrders: null,
    };
    return { order, cost: yearlyCost(holding, cost, ordersPerYear) };
  });
  return {
    materials: orders.map(({ order }) => order),
    yearlyCost: orders.reduce((total, { cost }) => total + cost, 0),
  };
}

/** Orders to the supplier at the best frequency, where each material is part of every so-manieth. */
function orderedJointly(
  materials: readonly Held[],
  orderCost: number,
  everyOf: (material: Held) => number,
): OrderingWay {
  const cost = materials.reduce((total, each) => total + each.ownOrderCost / everyOf(each), orderCost);
  const holding = materials.reduce((total, each) => total + each.holding * everyOf(each), 0);
  const frequency = bestFrequency(holding, cost);
  return {
    materials: materials.map((each) => {
      const everyOrders = everyOf(each);
      const ordersPerYear = frequency / everyOrders;
      const { material, yearlyUse } = each;
      return { material, ordersPerYear, quantity: yearlyUse / ordersPerYear, everyOrders };
    }),
    yearlyCost: yearlyCost(holding, cost, frequency),
  };
}

/**
 * How many orders apart each material is ordered: the frequency of the one that is wanted most often, as if it bore
 * the whole order, over its own as if it only bore what it adds; rounded up.
 */
function multiples(materials: readonly Held[], orderCost: number): (material: Held) => number {
  const frequencies = materials.map(({ holding, ownOrderCost }) =>
    bestFrequency(holding, orderCost + ownOrderCost),
  );
  const highest = Math.max(...frequencies);
  return ({ holding, ownOrderCost }) =>
    Math.max(Math.ceil(highest / bestFrequency(holding, ownOrderCost) - NOISE), 1);
}
