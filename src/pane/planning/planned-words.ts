import { exact } from '../../core/exact-number.ts';
import type { Coins } from '../../core/money.ts';
import { unitNamed } from '../../core/unit.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../../core/wording.ts';

/** What is less than this of a unit is nothing: planned figures are not exact. */
const LEAST = 1e-6;

const DIGITS = 3;

/** Whether a planned quantity is anything at all. */
export function isSome(quantity: number): boolean {
  return quantity > LEAST;
}

/**
 * A quantity that rests on what will probably be used, for people: with three digits in all, or without decimals, as
 * it promises no more.
 * @param unit the name of a unit
 */
export function plannedWords(quantity: number, unit: string): string {
  const number = plannedNumber(quantity);
  return `${number} ${unitFor(number, unitNamed(unit))}`;
}

/** A quantity as it was worked out, with at most three decimals: what is to be made, what a job needs. */
export function exactWords(quantity: number, unit: string): string {
  return spokenQuantity(exact(quantity), unitNamed(unit));
}

function plannedNumber(quantity: number): string {
  if (!isSome(Math.abs(quantity))) return '0';
  const rounded = Number(quantity.toPrecision(DIGITS));
  return spokenNumber(exact(Math.abs(quantity) >= 10 ** (DIGITS - 1) ? Math.round(quantity) : rounded));
}

/** Coins as planning has them, as the ledger has them. */
export function coinsOf(coins: number): Coins;
export function coinsOf(coins: number | null): Coins | null;
export function coinsOf(coins: number | null): Coins | null {
  return coins === null ? null : BigInt(Math.round(coins));
}
