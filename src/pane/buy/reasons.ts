import type { BasketLine } from '../../core/buying/basket.ts';
import type { BuyNeed } from '../../core/buying/basket-problem.ts';

/** Why a line is in the basket: why the material is needed, then why so much, and why there. */
export function lineReasons({ reasons }: BasketLine, need: BuyNeed | undefined): string[] {
  return [...new Set([...(need === undefined ? [] : [need.because]), ...reasons])];
}
