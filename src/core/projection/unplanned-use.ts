import { DAYS_PER_WEEK, type Day } from '../day.ts';
import type { KnownDemand } from '../planning/plan-problem.ts';

/** The share of a week's use that is nothing: the rest of a sum of numbers that aren't exact. */
const NOISE = 1e-9;

/**
 * What will probably be used on each day beyond what is planned. In each week from today what is planned takes the
 * place of as much of the forecast; the rest falls evenly on the week's seven days, those after the last day looked at
 * as well, so that a day's figure doesn't depend on how far one looks.
 * What the log has not drawn was used before, and leaves the forecast as it is.
 * @returns one quantity for each day from today to the last, none where the last is over
 */
export function unplannedUse({
  today,
  until,
  demands,
  forecastPerWeek,
}: {
  readonly today: Day;
  readonly until: Day;
  readonly demands: readonly KnownDemand[];
  readonly forecastPerWeek: number;
}): number[] {
  const planned = new Map<number, number>();
  for (const { kind, day, quantity } of demands) {
    const week = weekOf(Math.max(day - today, 0));
    if (kind === 'planned') planned.set(week, (planned.get(week) ?? 0) + quantity);
  }
  return Array.from({ length: Math.max(until - today + 1, 0) }, (_, place) => {
    const rest = forecastPerWeek - (planned.get(weekOf(place)) ?? 0);
    return rest <= forecastPerWeek * NOISE ? 0 : rest / DAYS_PER_WEEK;
  });
}

function weekOf(place: number): number {
  return Math.floor(place / DAYS_PER_WEEK);
}
