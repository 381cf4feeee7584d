import { inMillionths, ofMillionths } from '../make-plan/millionths.ts';

/** A planned figure with as many decimals as a quantity is ever written with. */
export function roundPlanned(quantity: number): number {
  return ofMillionths(inMillionths(quantity));
}
