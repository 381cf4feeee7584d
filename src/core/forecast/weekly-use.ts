import { DAYS_PER_WEEK } from '../day.ts';

/**
 * What was used in each whole week of seven days, the last ending with the last day. The days before the first whole
 * week are left out.
 * @param daily one figure a day, the earliest first
 */
export function weeklyUse(daily: readonly number[]): number[] {
  const weeks = Math.floor(daily.length / DAYS_PER_WEEK);
  const first = daily.length - weeks * DAYS_PER_WEEK;
  return Array.from({ length: weeks }, (_, week) => {
    const start = first + week * DAYS_PER_WEEK;
    return daily.slice(start, start + DAYS_PER_WEEK).reduce((total, quantity) => total + quantity, 0);
  });
}
