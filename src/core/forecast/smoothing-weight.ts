import type { Smoothing } from './smoothed.ts';

/** The grid of weights: 0.05, 0.1, … 0.5. A quicker one would follow every chance use. */
const WEIGHT_STEPS_PER_UNIT = 20;
const LARGEST_WEIGHT_STEPS = 10;

/** A share of the squared values: errors that differ by less differ by the noise of the arithmetic. */
const NOISE = 1e-9;

/**
 * The smoothing weight, of 0.05, 0.1, … 0.5, with which a method's forecasts one period ahead would have missed least:
 * by the mean of their squared errors. Among equals the smallest, which follows chance least.
 * @param values one for each period, the earliest first
 */
export function smoothingWeight(values: readonly number[], smoothing: Smoothing): number {
  const noise = NOISE * squaredError(values, []);
  let chosen = 1 / WEIGHT_STEPS_PER_UNIT;
  let least = Number.POSITIVE_INFINITY;
  for (let steps = 1; steps <= LARGEST_WEIGHT_STEPS; steps += 1) {
    const weight = steps / WEIGHT_STEPS_PER_UNIT;
    const error = squaredError(values, smoothing(values, weight).fitted);
    if (error >= least - noise) continue;
    chosen = weight;
    least = error;
  }
  return chosen;
}

/** The number of periods is the same for every weight, so that the least sum is the least mean. */
function squaredError(values: readonly number[], fitted: readonly number[]): number {
  return values.reduce((total, value, period) => total + (value - (fitted[period] ?? 0)) ** 2, 0);
}
