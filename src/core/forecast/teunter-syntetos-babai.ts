import type { Smoothed } from './smoothed.ts';

/** What is believed of a series before its first period. */
export interface StartingUse {
  /** How much is used when something is used. */
  readonly size: number;
  /** The chance that something is used in a period, from 0 to 1. */
  readonly chance: number;
}

/**
 * The method of Teunter, Syntetos and Babai for what may no longer be used: the chance of a use is smoothed in every
 * period, so that it sinks while nothing is used; the size only when something is. The forecast is chance × size.
 * Source: Teunter, Syntetos & Babai, European Journal of Operational Research 214 (2011) 606; formula from memory.
 * @param values one for each period, the earliest first; 0 where nothing was used
 * @param weight of the sizes and of the chance
 */
export function teunterSyntetosBabai(
  values: readonly number[],
  weight: number,
  start: StartingUse,
): Smoothed {
  let { size, chance } = start;
  const fitted: number[] = [];
  for (const value of values) {
    fitted.push(chance * size);
    if (value > 0) size += weight * (value - size);
    chance += weight * ((value > 0 ? 1 : 0) - chance);
  }
  return { forecast: chance * size, fitted };
}

/** The start that the series itself gives: its first size, and one use in its first interval. Nothing where it has no use. */
export function startingUse(values: readonly number[]): StartingUse {
  const first = values.findIndex((value) => value > 0);
  return first < 0 ? { size: 0, chance: 0 } : { size: values[first] ?? 0, chance: 1 / (first + 1) };
}
