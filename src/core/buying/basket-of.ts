import { addDays } from '../day.ts';
import { groupBy } from '../group-by.ts';
import type { Currency } from '../money.ts';
import type { Basket, BasketLine, BasketOrder } from './basket.ts';
import type { BasketProblem } from './basket-problem.ts';
import { basketModel } from './basket-programme.ts';
import { lineReasons, orderReasons } from './basket-reasons.ts';
import { basketRemarks } from './basket-remarks.ts';
import { type ChosenRow, choosePacks } from './choose-packs.ts';
import type { SolveProgramme } from './integer-programme.ts';
import { supplierTerms } from './offer-row.ts';
import { carriageFor, goodsOf, type Purchase } from './purchase.ts';

/**
 * The cheapest basket that covers what is needed: whole packs at the prices that hold for so many, no order below the
 * supplier's smallest, everything in time where anybody can be, nothing that would go off. Of baskets that cost the
 * same the one with fewest orders, then with most from the preferred suppliers, then with least left over.
 * What is set by hand stays as it is, whatever it costs; the rest is worked out around it.
 * @param problem whole counts by hand, 0 or more; a count that doesn't fit is a remark
 * @param solve solves integer programmes; where it fails, the basket is empty and the remarks say so
 * @param currency in which reasons and remarks name money
 */
export async function basketOf(
  problem: BasketProblem,
  solve: SolveProgramme,
  currency: Currency,
): Promise<Basket> {
  const model = basketModel(problem);
  const outcome = await choosePacks(model, solve);
  if (outcome.kind === 'failed') return unsolvedBasket(problem, outcome.message);
  const purchase: Purchase = { problem, needs: model.needs, chosen: outcome.rows, currency };
  const orders = [...groupBy(outcome.rows, ({ row }) => row.supplier)].map(([key, rows]) =>
    orderOf(purchase, key, rows),
  );
  const goods = orders.reduce((sum, order) => sum + order.goods, 0);
  const carriage = orders.reduce((sum, order) => sum + order.carriage, 0);
  return { orders, goods, carriage, total: goods + carriage, remarks: basketRemarks(purchase) };
}

function orderOf(purchase: Purchase, key: string, rows: readonly ChosenRow[]): BasketOrder {
  const terms = supplierTerms(purchase.problem, key);
  const goods = goodsOf(rows);
  return {
    supplier: rows[0]?.row.offer.supplier ?? terms.supplier,
    expected: addDays(purchase.problem.today, Math.ceil(terms.leadDays)),
    lines: rows.map((each) => lineOf(purchase, each)),
    goods,
    carriage: carriageFor(terms, goods),
    reasons: orderReasons(purchase, rows, terms),
  };
}

function lineOf(purchase: Purchase, chosen: ChosenRow): BasketLine {
  const { need, row, packs } = chosen;
  const { offer, packQuantity, packWords } = row.offer;
  return {
    offer,
    material: need.need.material,
    unit: need.need.unit,
    packs,
    packQuantity,
    packWords,
    packPrice: row.price,
    amount: packs * row.price,
    byHand: row.byHand !== null,
    reasons: lineReasons(purchase, chosen),
  };
}

function unsolvedBasket({ needs }: BasketProblem, message: string): Basket {
  const remarks = needs.map(({ material }) => ({
    material,
    kind: 'not solved' as const,
    sentence: `${material}: no basket could be worked out: ${message}.`,
  }));
  return { orders: [], goods: 0, carriage: 0, total: 0, remarks };
}
