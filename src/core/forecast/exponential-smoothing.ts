import type { Smoothed } from './smoothed.ts';

/**
 * Simple exponential smoothing: each forecast is the one before, moved by the weight towards what was seen.
 * It starts from the first value, which is also what is fitted to the first period.
 * Source: Brown 1956, Holt 1957, from memory.
 * @param values one for each period, the earliest first
 * @returns the forecast 0 where there are no values
 */
export function exponentialSmoothing(values: readonly number[], weight: number): Smoothed {
  let level = values[0] ?? 0;
  const fitted: number[] = [];
  for (const value of values) {
    fitted.push(level);
    level += weight * (value - level);
  }
  return { forecast: level, fitted };
}
