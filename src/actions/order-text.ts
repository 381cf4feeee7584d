import { spokenDay } from '../core/day.ts';
import type { Exact } from '../core/exact-number.ts';
import { type Currency, fromCoins, moneyText, toCoins } from '../core/money.ts';
import { counted, spokenNumber, spokenQuantity } from '../core/wording.ts';
import type { PlacedLine, PlacedOrder } from './place-order.ts';

/**
 * An order as a plain text to send to the supplier: what is wanted at which price, what it comes to with the carriage
 * that is expected, and a wish for the safety data sheets of what is hazardous. It names nobody.
 */
export function orderText(order: PlacedOrder): string {
  const { order: name, orderedOn, lines, currency } = order;
  return [
    `Order ${name} of ${spokenDay(orderedOn)}`,
    '',
    'Please deliver:',
    '',
    ...lines.map((line, place) => `${place + 1}. ${lineText(line, currency)}`),
    '',
    ...sumLines(order),
    '',
    `${sheetsWanted(lines)}Thank you.`,
  ].join('\n');
}

function lineText(
  { material, packs, packQuantity, unit, packPrice, amount }: PlacedLine,
  currency: Currency,
): string {
  const description = oneLine(material.record.description ?? '');
  const what = oneLine(material.name) + (description === '' ? '' : ` (${description})`);
  const wanted = `${counted(packs.valueOf(), 'pack')} of ${spokenQuantity(packQuantity, unit)}`;
  const price =
    packPrice === null || amount === null
      ? 'please tell us the price'
      : `${priceText(packPrice, currency)} each, ${moneyText(amount, currency)}`;
  return `${what}: ${wanted}, ${price}`;
}

/** A price for people; one that no coin pays exactly is not rounded. */
function priceText(price: Exact, currency: Currency): string {
  const coins = toCoins(price, currency);
  return fromCoins(coins, currency).equals(price) ? moneyText(coins, currency) : spokenNumber(price);
}

function sumLines({ goods, carriage, supplier, currency }: PlacedOrder): string[] {
  if (goods === null || carriage === null) return ['Please tell us what it comes to in all.'];
  const money = (coins: bigint): string => `${moneyText(coins, currency)} ${currency.code}`.trim();
  return [
    `Goods: ${money(goods)}`,
    ...(supplier.carriage === null ? [] : [`Carriage, as we expect it: ${money(carriage)}`]),
    `Total: ${money(goods + carriage)}`,
  ];
}

function sheetsWanted(lines: readonly PlacedLine[]): string {
  const hazardous = lines.filter(({ material }) => material.record.hazards !== null);
  const names = [...new Set(hazardous.map(({ material }) => oneLine(material.name)))];
  if (names.length === 0) return '';
  const sheets = names.length === 1 ? 'sheet' : 'sheets';
  const list = new Intl.ListFormat('en-GB').format(names);
  return `Please send the current safety data ${sheets} of ${list} with it. `;
}

/** A cell may hold line breaks. */
function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
