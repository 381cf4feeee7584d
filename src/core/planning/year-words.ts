import { exactWords } from '../forecast/planned-words.ts';
import { type Currency, moneyText } from '../money.ts';
import { counted } from '../wording.ts';
import type { MaterialYear, SupplierYear, YearAhead } from './year-ahead.ts';

/** What is forecast for a year is no more exact than this many digits. */
const YEAR_DIGITS = 2;

/** The materials that take most of the money, the dearest first. */
export function dearestOf({ materials }: YearAhead): MaterialYear[] {
  return materials.filter(({ valueClass }) => valueClass === 'A');
}

/** What is used of a material in a year: 350 g. */
export function yearlyUseWords({ quantity, unit }: MaterialYear): string {
  return roughly(quantity, unit);
}

/** How much at a time makes the year cheapest: 900 g; '' where there is no best. */
export function bestAtATimeWords({ atATime, unit }: MaterialYear): string {
  return atATime === null ? '' : roughly(atATime.quantity, unit);
}

function roughly(quantity: number, unit: string): string {
  return exactWords(Number(quantity.toPrecision(YEAR_DIGITS)), unit);
}

/** What ordering everything together from a supplier costs in a year, beside each material by itself. */
export function togetherWords({ supplier, ways }: SupplierYear, currency: Currency): string {
  const money = (coins: number) => moneyText(BigInt(Math.round(coins)), currency);
  const often = ways.together.materials[0]?.ordersPerYear ?? 0;
  return (
    `${supplier}: everything in one order, about ${counted(Math.max(Math.round(often), 1), 'time')} a year, costs ` +
    `${money(ways.together.yearlyCost)} a year in carriage and in stock that is kept; ` +
    `each material by itself ${money(ways.alone.yearlyCost)}.`
  );
}
