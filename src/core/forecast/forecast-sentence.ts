import { counted } from '../wording.ts';
import type { ForecastMethod } from './choose-forecast.ts';
import { type DemandPattern, hasEvenAmounts } from './demand-class.ts';
import { plannedWords } from './planned-words.ts';

/** What was chosen for a pattern, and what came of it. */
export interface ChosenForecast {
  readonly method: ForecastMethod;
  readonly weight: number | null;
  readonly perWeek: number;
  /** How many weeks were looked at. */
  readonly weeks: number;
  /** The name of the stock unit. */
  readonly unit: string;
}

/** Says for a person how a material is used, what that means for the forecast, and the forecast. */
export function forecastSentence(pattern: DemandPattern, chosen: ChosenForecast): string {
  const { weeks } = chosen;
  if (pattern.uses === 0) {
    return weeks === 0
      ? 'There is no whole week to look back on: nothing is forecast.'
      : `Not used in the last ${counted(weeks, 'week')}: nothing is forecast.`;
  }
  const forecast = `about ${plannedWords(chosen.perWeek, chosen.unit)} a week`;
  return `Used in ${pattern.uses} of ${counted(weeks, 'week')}, ${reason(pattern, chosen)}: ${forecast}.`;
}

function reason(pattern: DemandPattern, { method, weight }: ChosenForecast): string {
  const often = `about every ${spokenInterval(pattern.meanInterval ?? 0)}`;
  const alike = hasEvenAmounts(pattern) ? 'in similar amounts' : 'in very different amounts';
  switch (method) {
    case 'none':
    case 'mean':
      return 'too seldom to see a rhythm, so the plain mean of all weeks is taken';
    case 'simple exponential smoothing':
      return (
        `${often}, ${alike}, so later weeks count more than earlier ones ` +
        `(simple exponential smoothing, weight ${weight})`
      );
    case 'Syntetos–Boylan':
      return (
        `${often}, ${alike}, so how much and how often are followed apart ` +
        `(Croston's method as corrected by Syntetos and Boylan, weight ${weight})`
      );
    case 'Teunter–Syntetos–Babai':
      return (
        `${often}, but not in the last ${counted(pattern.sinceLast ?? 0, 'week')}: it seems to have died away, so ` +
        `the forecast sinks with every week without use (Teunter, Syntetos and Babai's method, weight ${weight})`
      );
  }
}

function spokenInterval(weeks: number): string {
  const whole = Math.round(weeks);
  return whole <= 1 ? 'week' : `${whole} weeks`;
}
