import { exact } from '../exact-number.ts';
import { type Currency, moneyText } from '../money.ts';
import { unitNamed } from '../unit.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../wording.ts';
import type { BuyNeed } from './basket-problem.ts';

/** Coins as text: 12.40. */
export function moneyWords(coins: number, currency: Currency): string {
  return moneyText(BigInt(Math.round(coins)), currency);
}

/** A quantity of a material with its unit: 3 sheets. */
export function quantityWords(quantity: number, { unit }: BuyNeed): string {
  return spokenQuantity(exact(quantity), unitNamed(unit));
}

/** So much more of a material: 2 more sheets, 500 g more. */
export function moreWords(quantity: number, need: BuyNeed): string {
  const number = spokenNumber(exact(quantity));
  const unit = unitFor(number, unitNamed(need.unit));
  return need.inPieces ? `${number} more ${unit}` : `${number} ${unit} more`;
}
