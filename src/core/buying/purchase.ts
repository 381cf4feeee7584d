import type { Day } from '../day.ts';
import type { Currency } from '../money.ts';
import type { SupplierProblem } from '../planning/plan-problem.ts';
import type { BasketProblem } from './basket-problem.ts';
import type { ChosenRow } from './choose-packs.ts';
import { supplierTerms } from './offer-row.ts';
import type { SettledNeed } from './settle-need.ts';

/** What was chosen, together with all that it is judged by. */
export interface Purchase {
  readonly problem: BasketProblem;
  readonly needs: readonly SettledNeed[];
  readonly chosen: readonly ChosenRow[];
  readonly currency: Currency;
}

/** What is bought of a need. */
export function chosenOf({ chosen }: Purchase, { need }: SettledNeed): ChosenRow[] {
  return chosen.filter((each) => each.need.need === need);
}

/** How much some rows bring by the end of a day, in the stock unit; all that they bring where no day is given. */
export function broughtBy(rows: readonly ChosenRow[], day = Infinity as Day): number {
  return rows.reduce(
    (sum, { row, packs }) => (row.arrives <= day ? sum + packs * row.offer.packQuantity : sum),
    0,
  );
}

/** What some rows cost, in coins, without carriage. */
export function goodsOf(rows: readonly ChosenRow[]): number {
  return rows.reduce((sum, { row, packs }) => sum + packs * row.price, 0);
}

/** The goods of each order, in coins, by the supplier's key. */
export function goodsBySupplier(rows: readonly ChosenRow[]): Map<string, number> {
  const goods = new Map<string, number>();
  for (const each of rows) {
    goods.set(each.row.supplier, (goods.get(each.row.supplier) ?? 0) + goodsOf([each]));
  }
  return goods;
}

/** What the carriage of an order costs; coins. */
export function carriageFor({ carriage, carriageFreeOver }: SupplierProblem, goods: number): number {
  return carriageFreeOver !== null && goods >= carriageFreeOver ? 0 : carriage;
}

/** Goods and carriage of all orders, in coins; null where one stays below the supplier's smallest. */
export function totalOf(problem: BasketProblem, goods: ReadonlyMap<string, number>): number | null {
  let total = 0;
  for (const [key, coins] of goods) {
    const terms = supplierTerms(problem, key);
    if (coins < terms.minimumOrder) return null;
    total += coins + carriageFor(terms, coins);
  }
  return total;
}
