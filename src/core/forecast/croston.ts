import type { Smoothed } from './smoothed.ts';

/**
 * Croston's method for what is used now and then: the sizes of the uses and the intervals between them are smoothed
 * apart, and only when something is used; the forecast per period is size ÷ interval. It starts from the first size
 * and the first interval, counted from the start of the series; before that nothing is forecast.
 * Source: Croston, Operational Research Quarterly 23 (1972), from memory.
 * @param values one for each period, the earliest first; 0 where nothing was used
 * @returns the forecast 0 where nothing was ever used
 */
export function croston(values: readonly number[], weight: number): Smoothed {
  let smoothed: { readonly size: number; readonly interval: number } | null = null;
  let sinceLast = 1;
  const fitted: number[] = [];
  for (const value of values) {
    fitted.push(smoothed === null ? 0 : smoothed.size / smoothed.interval);
    if (value <= 0) {
      sinceLast += 1;
      continue;
    }
    smoothed =
      smoothed === null
        ? { size: value, interval: sinceLast }
        : {
            size: smoothed.size + weight * (value - smoothed.size),
            interval: smoothed.interval + weight * (sinceLast - smoothed.interval),
          };
    sinceLast = 1;
  }
  return { forecast: smoothed === null ? 0 : smoothed.size / smoothed.interval, fitted };
}
