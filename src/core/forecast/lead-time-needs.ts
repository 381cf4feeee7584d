import quantile from '@stdlib/stats-base-dists-normal-quantile';
import { DAYS_PER_WEEK } from '../day.ts';
import type { Random } from '../identifier.ts';
import { seededRandom } from '../seeded-random.ts';

/** How long it takes until what is ordered can be used, in days. */
export interface LeadTime {
  readonly leadDays: number;
  /** The standard deviation of the lead time. */
  readonly leadSpreadDays: number;
  /** How long it may take until somebody looks at the stock again. */
  readonly reviewDays: number;
}

/** What the needs within a lead time are drawn from; quantities in one unit. */
export interface NeedSource extends LeadTime {
  /** What was used on each day, the earliest first; none below 0. */
  readonly daily: readonly number[];
  /** What is planned on each day from today on. */
  readonly planned: readonly number[];
  readonly seed: number;
}

/** With 2000 a chance of 95 % is met to within half a point. */
const SAMPLES = 2000;
/** Ten years: whatever takes longer is no lead time. */
const LONGEST_DAYS = 3650;
const SEEDS = 2 ** 32;

/** The days after today until what is ordered now can be used, and one has looked again; whole. */
export function usualDays({ leadDays, reviewDays }: LeadTime): number {
  return wholeDays(leadDays, reviewDays);
}

/** What is planned today and on the days after it. */
export function plannedWithin(planned: readonly number[], days: number): number {
  return planned.slice(0, days + 1).reduce((total, quantity) => total + quantity, 0);
}

/**
 * Draws what may be needed from today until what is ordered can be used, many times over. The lead time is normal,
 * where one below 0 counts as none, in whole days. What is used in each week of it is drawn as seven consecutive days
 * of the history, so that the week's rhythm and jobs of several days stay together; the history's end is joined to its
 * beginning, so that every day counts alike. In each week what is planned takes the place of as much of what is drawn:
 * the larger of the two is needed.
 *
 * Every sample has a stream of random numbers of its own, so that with the same seed a longer lead time or a larger use
 * never needs less.
 * Source: the moving block bootstrap, Künsch 1989, made circular, Politis & Romano 1992; from memory.
 * @returns the needs, rising
 */
export function leadTimeNeeds(source: NeedSource): Float64Array {
  const history = source.daily.length === 0 ? [0] : source.daily;
  const used = runningTotals([...history, ...wrapped(history, DAYS_PER_WEEK)]);
  const planned = runningTotals(source.planned);
  const seeds = seededRandom(source.seed);
  const needs = new Float64Array(SAMPLES);
  for (let sample = 0; sample < SAMPLES; sample += 1) {
    const random = seededRandom(seeds() * SEEDS);
    needs[sample] = needWithin(drawnDays(source, random), random, history.length, used, planned);
  }
  return needs.sort();
}

function drawnDays({ leadDays, leadSpreadDays, reviewDays }: LeadTime, random: Random): number {
  const share = random();
  return wholeDays(leadSpreadDays > 0 ? quantile(share, leadDays, leadSpreadDays) : leadDays, reviewDays);
}

function wholeDays(leadDays: number, reviewDays: number): number {
  return Math.min(Math.round(Math.max(leadDays, 0) + reviewDays), LONGEST_DAYS);
}

/** @param used running totals of the history and of its first week again */
function needWithin(
  days: number,
  random: Random,
  historyDays: number,
  used: readonly number[],
  planned: readonly number[],
): number {
  const plannedUntil = (day: number): number => planned[Math.min(day + 1, planned.length - 1)] ?? 0;
  let need = 0;
  // Today's use is history; what is planned for today is done in the first week.
  let before = 0;
  for (let from = 1; from <= days; from += DAYS_PER_WEEK) {
    const until = Math.min(from + DAYS_PER_WEEK - 1, days);
    const start = Math.floor(random() * historyDays);
    const drawn = (used[start + until - from + 1] ?? 0) - (used[start] ?? 0);
    need += Math.max(drawn, plannedUntil(until) - before);
    before = plannedUntil(until);
  }
  return days < 1 ? plannedUntil(0) : need;
}

/** Totals before the first, before the second, … and after the last. */
function runningTotals(values: readonly number[]): number[] {
  const totals = [0];
  let total = 0;
  for (const value of values) {
    total += value;
    totals.push(total);
  }
  return totals;
}

/** The first values again, from the beginning as often as it takes. */
function wrapped(values: readonly number[], length: number): number[] {
  return Array.from({ length }, (_, place) => values[place % values.length] ?? 0);
}
