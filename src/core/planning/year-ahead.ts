import { cheapestOrderQuantity, type OrderQuantity } from '../buying/order-quantity.ts';
import { type OrderTogether, orderTogether } from '../buying/order-together.ts';
import { USUAL_CLASS_LIMITS, type ValueClass, valueClasses } from '../buying/value-classes.ts';
import { DAYS_PER_WEEK } from '../day.ts';
import { keyOf } from '../identifier.ts';
import type { MaterialProblem, PlanProblem, SupplierProblem } from './plan-problem.ts';

const DAYS_PER_YEAR = 365;
const WEEKS_PER_YEAR = DAYS_PER_YEAR / DAYS_PER_WEEK;

/** What a year of each material comes to if it is used as forecast; quantities in the stock unit, money in coins. */
export interface YearAhead {
  /** Those that are used and have a price, the dearest first. */
  readonly materials: readonly MaterialYear[];
  /** The suppliers that charge carriage and have something that is used. */
  readonly suppliers: readonly SupplierYear[];
}

export interface MaterialYear {
  readonly material: string;
  readonly unit: string;
  readonly quantity: number;
  readonly value: number;
  /** In % of the value of all. */
  readonly percent: number;
  readonly valueClass: ValueClass;
  /** How much at a time makes the year cheapest; null where it is made here, or there is no best. */
  readonly atATime: (OrderQuantity & { readonly supplier: string }) | null;
}

export interface SupplierYear {
  readonly supplier: string;
  readonly ways: OrderTogether;
}

/** What the year costs at the pace of the forecast, and how it is ordered cheapest. */
export function yearAheadOf(
  { materials, suppliers, holdingPercent }: PlanProblem,
  perWeek: ReadonlyMap<string, number>,
): YearAhead {
  const used = materials
    .map((problem) => ({ problem, quantity: (perWeek.get(problem.material) ?? 0) * WEEKS_PER_YEAR }))
    .filter(({ quantity }) => quantity > 0);
  const supplierOf = new Map(suppliers.map((each) => [keyOf(each.supplier), each]));
  // What is made here is in the value of its ingredients.
  const bought = used.filter(({ problem }) => problem.recipe === null);
  const valued = valueClasses(
    bought.map(({ problem, quantity }) => ({
      material: problem.material,
      quantity,
      unitCost: problem.unitCost,
    })),
    USUAL_CLASS_LIMITS,
  );
  return {
    materials: valued.materials.flatMap(({ material, value, percent, valueClass }) => {
      const own = bought.find(({ problem }) => problem.material === material);
      if (own === undefined) return [];
      const { problem, quantity } = own;
      const atATime = cheapestOf(problem, quantity, supplierOf, holdingPercent);
      return [{ material, unit: problem.unit, quantity, value, percent, valueClass, atATime }];
    }),
    suppliers: suppliers.flatMap((supplier) => {
      const regular = bought.flatMap(({ problem, quantity }) => {
        const price = problem.unitCost;
        const isOurs = problem.supplier !== null && keyOf(problem.supplier) === keyOf(supplier.supplier);
        return isOurs && price !== null
          ? [{ material: problem.material, yearlyUse: quantity, price, ownOrderCost: 0 }]
          : [];
      });
      const ways = orderTogether(regular, supplier.carriage, holdingPercent);
      return ways === null || regular.length < 2 ? [] : [{ supplier: supplier.supplier, ways }];
    }),
  };
}

/** The order quantity that makes the year cheapest among the suppliers of a material. */
function cheapestOf(
  { offers, lifeSealedDays }: MaterialProblem,
  yearlyUse: number,
  suppliers: ReadonlyMap<string, SupplierProblem>,
  holdingPercent: number,
): MaterialYear['atATime'] {
  const names = [...new Set(offers.map(({ supplier }) => supplier))];
  const ways = names.flatMap((supplier) => {
    const own = offers.filter((offer) => keyOf(offer.supplier) === keyOf(supplier));
    const answer = cheapestOrderQuantity({
      yearlyUse,
      orderCost: suppliers.get(keyOf(supplier))?.carriage ?? 0,
      holdingPercent,
      breaks: own.map(({ packQuantity, packPrice, fromPacks }) => ({
        from: fromPacks * packQuantity,
        price: packPrice / packQuantity,
      })),
      mostAtOnce: lifeSealedDays === null ? null : (yearlyUse / DAYS_PER_YEAR) * lifeSealedDays,
    });
    return answer.kind === 'cheapest' ? [{ ...answer.best, supplier }] : [];
  });
  return ways.toSorted((a, b) => a.yearlyCost - b.yearlyCost)[0] ?? null;
}
