import type { Coins } from '../../core/money.ts';

/** What is less than this of a unit is nothing: planned figures are not exact. */
const LEAST = 1e-6;

/** Whether a planned quantity is anything at all. */
export function isSome(quantity: number): boolean {
  return quantity > LEAST;
}

/** Coins as planning has them, as the ledger has them. */
export function coinsOf(coins: number): Coins;
export function coinsOf(coins: number | null): Coins | null;
export function coinsOf(coins: number | null): Coins | null {
  return coins === null ? null : BigInt(Math.round(coins));
}
