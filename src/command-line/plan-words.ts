import { exact, quantityNumber } from '../core/exact-number.ts';
import { type Currency, moneyText } from '../core/money.ts';

/** Planned figures for people and for other programs; quantities are numbers in a named unit, money is in coins. */

/** With at most 6 decimals. */
export function plannedNumber(quantity: number): number {
  return quantityNumber(exact(quantity));
}

export function plannedMoney(coins: number, currency: Currency): string {
  return moneyText(BigInt(Math.round(coins)), currency);
}

export function plannedMoneyOrNull(coins: number | null, currency: Currency): string | null {
  return coins === null ? null : plannedMoney(coins, currency);
}
