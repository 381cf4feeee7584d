import type { PlacedNotice } from '../../actions/check-workbook.ts';
import type { Basket } from '../../core/buying/basket.ts';
import type { BuyNeed } from '../../core/buying/basket-problem.ts';
import { type Day, isoDay } from '../../core/day.ts';
import type { Currency } from '../../core/money.ts';
import { currencyCode, noticesJson } from '../answers-json.ts';
import { plannedMoney, plannedNumber } from '../plan-words.ts';

/** The order that was written for a supplier, and the text to send. */
export interface OrderWritten {
  readonly supplier: string;
  readonly order: string;
  readonly text: string;
}

/** A basket as other programs read it; `order` and `text` are null where no order was written. */
export function buyJson(
  today: Day,
  needs: readonly BuyNeed[],
  basket: Basket,
  written: readonly OrderWritten[],
  currency: Currency,
  notices: readonly PlacedNotice[],
) {
  return {
    asOf: isoDay(today),
    currency: currencyCode(currency),
    needs: needs.map(({ material, unit, by, most, because }) => ({
      material,
      unit,
      by: by.map(({ day, quantity, job }) => ({ day: isoDay(day), quantity: plannedNumber(quantity), job })),
      most: most === null ? null : plannedNumber(most),
      because,
    })),
    orders: basket.orders.map((order) => {
      const own = written.find(({ supplier }) => supplier === order.supplier);
      return {
        supplier: order.supplier,
        expected: isoDay(order.expected),
        order: own?.order ?? null,
        text: own?.text ?? null,
        lines: order.lines.map((line) => ({
          offer: line.offer,
          material: line.material,
          packs: line.packs,
          packQuantity: plannedNumber(line.packQuantity),
          unit: line.unit,
          packPrice: plannedMoney(line.packPrice, currency),
          amount: plannedMoney(line.amount, currency),
          byHand: line.byHand,
          reasons: line.reasons,
        })),
        goods: plannedMoney(order.goods, currency),
        carriage: plannedMoney(order.carriage, currency),
        reasons: order.reasons,
      };
    }),
    goods: plannedMoney(basket.goods, currency),
    carriage: plannedMoney(basket.carriage, currency),
    total: plannedMoney(basket.total, currency),
    remarks: basket.remarks.map(({ material, kind, sentence }) => ({ material, kind, sentence })),
    notices: noticesJson(notices),
  };
}
