import { type DemandClass, demandPattern } from './demand-class.ts';
import { exponentialSmoothing } from './exponential-smoothing.ts';
import { forecastSentence } from './forecast-sentence.ts';
import { netUse } from './net-use.ts';
import { roundPlanned } from './round-planned.ts';
import type { Smoothing } from './smoothed.ts';
import { smoothingWeight } from './smoothing-weight.ts';
import { syntetosBoylan } from './syntetos-boylan.ts';
import { startingUse, teunterSyntetosBabai } from './teunter-syntetos-babai.ts';
import { weeklyUse } from './weekly-use.ts';

export type { DemandClass } from './demand-class.ts';

export type ForecastMethod =
  | 'none'
  | 'mean'
  | 'simple exponential smoothing'
  | 'Syntetos–Boylan'
  | 'Teunter–Syntetos–Babai';

/** What a material will probably be used of, in its stock unit. */
export interface Forecast {
  readonly demandClass: DemandClass;
  readonly method: ForecastMethod;
  /** The smoothing weight; null where the method has none. */
  readonly weight: number | null;
  /** Per week of 7 days, all use together, planned or not. */
  readonly perWeek: number;
  /** Weeks between uses, on average; null without use. */
  readonly meanInterval: number | null;
  /** The squared coefficient of variation of the amounts used; null with fewer than two. */
  readonly sizeVariation: number | null;
  /** What was used in each whole week up to and with today, the earliest first. */
  readonly weekly: readonly number[];
  /** What was chosen, and why, for a person. */
  readonly sentence: string;
}

const METHODS: Readonly<Record<DemandClass, ForecastMethod>> = {
  none: 'none',
  'too little': 'mean',
  smooth: 'simple exponential smoothing',
  erratic: 'simple exponential smoothing',
  intermittent: 'Syntetos–Boylan',
  lumpy: 'Syntetos–Boylan',
  'died away': 'Teunter–Syntetos–Babai',
};

/**
 * Forecasts what a material is used of from what was used: in whole weeks, by the method that suits how its use runs
 * (see demandPattern), with the smoothing weight that would have missed least so far.
 * @param daily what was used on each day up to and with today, the earliest first, in the stock unit. A day below 0 is
 *   what came back of earlier use (see netUse).
 * @param unit the name of the stock unit
 */
export function forecastOf(daily: readonly number[], unit: string): Forecast {
  const weekly = weeklyUse(netUse(daily));
  const pattern = demandPattern(weekly);
  const method = METHODS[pattern.demandClass];
  const { weight, perWeek } = applied(method, weekly);
  return {
    demandClass: pattern.demandClass,
    method,
    weight,
    perWeek: roundPlanned(perWeek),
    meanInterval: pattern.meanInterval,
    sizeVariation: pattern.sizeVariation,
    weekly: weekly.map(roundPlanned),
    sentence: forecastSentence(pattern, { method, weight, perWeek, weeks: weekly.length, unit }),
  };
}

function applied(
  method: ForecastMethod,
  weekly: readonly number[],
): { readonly weight: number | null; readonly perWeek: number } {
  if (method === 'none') return { weight: null, perWeek: 0 };
  if (method === 'mean') {
    const total = weekly.reduce((sum, quantity) => sum + quantity, 0);
    return { weight: null, perWeek: total / weekly.length };
  }
  const smoothing = SMOOTHINGS[method];
  const weight = smoothingWeight(weekly, smoothing);
  return { weight, perWeek: smoothing(weekly, weight).forecast };
}

const SMOOTHINGS: Readonly<Record<Exclude<ForecastMethod, 'none' | 'mean'>, Smoothing>> = {
  'simple exponential smoothing': exponentialSmoothing,
  'Syntetos–Boylan': syntetosBoylan,
  'Teunter–Syntetos–Babai': (values, weight) => teunterSyntetosBabai(values, weight, startingUse(values)),
};
