import { QUANTITY_DECIMALS } from '../exact-number.ts';

const PER_UNIT = 10 ** QUANTITY_DECIMALS;

/**
 * A quantity in whole millionths, the finest that is ever written. Sums and differences of these are exact, so that
 * batches that meet at the same point of what is needed are seen to do so.
 */
export function inMillionths(quantity: number): number {
  return Math.round(quantity * PER_UNIT);
}

/** The quantity of so many millionths. */
export function ofMillionths(millionths: number): number {
  return millionths / PER_UNIT;
}
