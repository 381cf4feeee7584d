import { QUANTITY_DECIMALS } from '../exact-number.ts';

const PER_UNIT = 10 ** QUANTITY_DECIMALS;

/** A planned figure with as many decimals as a quantity is ever written with. */
export function roundPlanned(quantity: number): number {
  return Math.round(quantity * PER_UNIT) / PER_UNIT;
}
