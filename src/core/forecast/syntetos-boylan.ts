import { croston } from './croston.ts';
import type { Smoothed } from './smoothed.ts';

/**
 * Croston's method, which forecasts too much on average, lowered by the factor 1 − weight ÷ 2 of the intervals.
 * Source: Syntetos & Boylan, International Journal of Forecasting 21 (2005), from memory.
 * @param values one for each period, the earliest first; 0 where nothing was used
 */
export function syntetosBoylan(values: readonly number[], weight: number): Smoothed {
  const { forecast, fitted } = croston(values, weight);
  const factor = 1 - weight / 2;
  return { forecast: factor * forecast, fitted: fitted.map((value) => factor * value) };
}
