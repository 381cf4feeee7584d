import { code as findCurrency } from 'currency-codes';
import { type Exact, percentOf, ratio, roundHalfAway } from './exact-number.ts';

/** An amount of money as a whole number of the currency's coins (cents, pence, …). */
export type Coins = bigint;

/** A currency and how many decimals its coin has: 2 for the cent, 0 for the yen. */
export interface Currency {
  readonly code: string;
  readonly decimals: number;
}

const USUAL_DECIMALS = 2;

/**
 * A currency by its code, case and spacing around it ignored. The decimals are those given, else ISO 4217's,
 * else 2 for a code that is not listed; the list is the one that the package currency-codes carries.
 */
export function currencyOf(code: string, decimals: number | null): Currency {
  const listed = findCurrency(code.trim());
  return { code: listed?.code ?? code.trim(), decimals: decimals ?? listed?.digits ?? USUAL_DECIMALS };
}

/** An exact amount in the currency's main unit, rounded to the coin, halves away from zero. */
export function toCoins(amount: Exact, currency: Currency): Coins {
  return roundHalfAway(amount.mul(ratio(10n ** BigInt(currency.decimals), 1)));
}

/** Coins as an exact amount in the currency's main unit. */
export function fromCoins(coins: Coins, currency: Currency): Exact {
  return ratio(coins, 10n ** BigInt(currency.decimals));
}

/** A percentage of an amount, rounded to the coin, halves away from zero. */
export function percentOfCoins(coins: Coins, percent: Exact): Coins {
  return roundHalfAway(percentOf(ratio(coins, 1), percent));
}

/** An amount as decimal text in the currency's coin: 12.40, -0.05, 300. */
export function moneyText(coins: Coins, currency: Currency): string {
  const digits = (coins < 0n ? -coins : coins).toString().padStart(currency.decimals + 1, '0');
  const cut = digits.length - currency.decimals;
  const text = currency.decimals === 0 ? digits : `${digits.slice(0, cut)}.${digits.slice(cut)}`;
  return coins < 0n ? `-${text}` : text;
}
