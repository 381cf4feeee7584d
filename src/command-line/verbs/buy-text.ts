import type { Basket, BasketLine, BasketOrder } from '../../core/buying/basket.ts';
import type { BuyNeed } from '../../core/buying/basket-problem.ts';
import { spokenDay } from '../../core/day.ts';
import { exactWords } from '../../core/forecast/planned-words.ts';
import type { Currency } from '../../core/money.ts';
import { inCurrency } from '../check-text.ts';
import { plannedMoney } from '../plan-words.ts';
import { heading, listed, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const LINE_COLUMNS: readonly TextColumn[] = [
  { header: 'material', align: 'left' },
  { header: 'packs', align: 'right' },
  { header: 'of', align: 'left' },
  { header: 'each', align: 'right' },
  { header: 'amount', align: 'right' },
  { header: 'offer', align: 'left' },
];

/** What is needed and why, and the basket that covers it, one block per supplier. */
export function buyText(
  needs: readonly BuyNeed[],
  basket: Basket,
  currency: Currency,
  terminal: Terminal,
): string[] {
  if (needs.length === 0) return ['Nothing has to be bought now.'];
  return [
    heading('Needed', terminal),
    ...needs.flatMap((need) => listed(needWords(need), terminal)),
    ...basket.orders.flatMap((order) => ['', ...orderLines(order, needs, currency, terminal)]),
    ...(basket.remarks.length === 0
      ? []
      : [
          '',
          heading('To mind', terminal),
          ...basket.remarks.flatMap(({ sentence }) => listed(sentence, terminal)),
        ]),
    '',
    `Goods ${plannedMoney(basket.goods, currency)}, carriage ${plannedMoney(basket.carriage, currency)}: ` +
      `in all ${plannedMoney(basket.total, currency)}.`,
  ];
}

function needWords({ material, unit, by, because }: BuyNeed): string {
  const last = by.at(-1);
  const quantity = last === undefined ? '' : `: ${exactWords(last.quantity, unit)}`;
  return `${material}${quantity}. ${because}`;
}

function orderLines(
  { supplier, expected, lines, goods, carriage, reasons }: BasketOrder,
  needs: readonly BuyNeed[],
  currency: Currency,
  terminal: Terminal,
): string[] {
  return [
    heading(`From ${supplier}, here about ${spokenDay(expected)}${inCurrency(currency)}`, terminal),
    ...textTable(
      LINE_COLUMNS,
      lines.map((line) => lineRow(line, currency)),
      terminal.width,
    ),
    ...lines.flatMap((line) =>
      line.reasons
        .filter((reason) => needs.every(({ because }) => because !== reason))
        .flatMap((reason) => listed(`${line.material}: ${reason}`, terminal)),
    ),
    ...reasons.flatMap((reason) => listed(reason, terminal)),
    ...wrapped(
      `Goods ${plannedMoney(goods, currency)}, carriage ${plannedMoney(carriage, currency)}.`,
      terminal.width,
      0,
    ),
  ];
}

function lineRow(line: BasketLine, currency: Currency): string[] {
  return [
    line.material,
    `${line.packs}${line.byHand ? ' (by hand)' : ''}`,
    line.packWords,
    plannedMoney(line.packPrice, currency),
    plannedMoney(line.amount, currency),
    line.offer,
  ];
}
