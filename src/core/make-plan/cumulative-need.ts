import type { Day } from '../day.ts';
import { inMillionths } from './millionths.ts';

/** So much is needed on a day. */
export interface DayNeed {
  readonly day: Day;
  readonly quantity: number;
}

/** What is needed of one day, and all that is needed up to its end; in millionths. */
export interface NeedOfDay {
  readonly day: Day;
  readonly before: number;
  readonly upTo: number;
}

/** What is needed, summed by day, the earliest first; days that need nothing are left out. */
export function cumulativeNeed(needs: readonly DayNeed[]): NeedOfDay[] {
  const byDay = new Map<Day, number>();
  for (const { day, quantity } of needs) byDay.set(day, (byDay.get(day) ?? 0) + inMillionths(quantity));
  const days: NeedOfDay[] = [];
  let before = 0;
  for (const [day, quantity] of [...byDay].toSorted(([a], [b]) => a - b)) {
    if (quantity <= 0) continue;
    days.push({ day, before, upTo: before + quantity });
    before += quantity;
  }
  return days;
}

/** A point on the way from nothing served to everything served. */
export interface ServedPoint {
  /** What is served up to here, in millionths. */
  readonly served: number;
  /** The day of the last that is served; minus infinity at the start. */
  readonly lastDay: number;
  /** The day of the next to be served; infinity at the end. */
  readonly nextDay: number;
  /** The days of all that is served, counted from a first day and each weighed by its quantity. */
  readonly weightedDays: number;
}

/** Finds the points of what is needed. The days of the points are counted from the first day. */
export function pointsOf(days: readonly NeedOfDay[], firstDay: Day): (served: number) => ServedPoint {
  const weighted: number[] = [];
  let sum = 0;
  for (const { day, before, upTo } of days) {
    weighted.push(sum);
    sum += (day - firstDay) * (upTo - before);
  }
  return (served) => {
    const last = firstIndex(days, (need) => need.upTo >= served);
    const need = days[last];
    const isEndOfDay = need?.upTo === served;
    return {
      served,
      lastDay: served === 0 || need === undefined ? Number.NEGATIVE_INFINITY : need.day,
      nextDay: (isEndOfDay ? days[last + 1] : need)?.day ?? Number.POSITIVE_INFINITY,
      weightedDays:
        need === undefined ? sum : (weighted[last] ?? 0) + (need.day - firstDay) * (served - need.before),
    };
  };
}

/** The first index from which on a condition holds, found by halving; the length where it never does. */
function firstIndex<T>(values: readonly T[], holds: (value: T) => boolean): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const value = values[middle];
    if (value !== undefined && holds(value)) high = middle;
    else low = middle + 1;
  }
  return low;
}
