import type { Day } from '../day.ts';
import { groupBy } from '../group-by.ts';
import { keyOf } from '../identifier.ts';
import type { RecipeProblem } from '../planning/plan-problem.ts';
import type { DatedNeed } from './dated-needs.ts';
import { type MakeCost, type MakePrices, makeCostOf } from './make-cost.ts';

const DAYS_OF_WEEK = 7;

/** Another way of making what is needed, to be set beside the plan. */
export interface OtherWay {
  readonly cost: MakeCost;
  /** The days on which nothing fresh enough would be there. What is late in the plan is as late here, and not named. */
  readonly unserved: readonly Day[];
}

/** A batch for each job on each of its days, as late as can be. */
export function forEachJobOf(
  needs: readonly DatedNeed[],
  recipe: RecipeProblem,
  prices: MakePrices,
): OtherWay {
  const jobs = groupBy(needs, ({ day, demand }) => `${day} ${keyOf(demand.job)}`);
  return { cost: makeCostOf([...jobs.values()].map(sumOf), recipe, prices), unserved: [] };
}

/**
 * A batch every seventh day from today on, of what is needed from the day it is ready until the next one is, as far as
 * it keeps; none where that is nothing.
 * @param lastDayOf the last day on which a batch may be used that is made on a day and first drawn on another
 */
export function weeklyOf(
  needs: readonly DatedNeed[],
  today: Day,
  recipe: RecipeProblem,
  prices: MakePrices,
  lastDayOf: (makeOn: Day, firstUse: Day) => Day | null,
): OtherWay {
  const weeks = groupBy(needs, ({ day }) => Math.floor((day - today - recipe.readyDays) / DAYS_OF_WEEK));
  const used: number[] = [];
  const unserved = new Set<Day>();
  for (const [week, ofWeek] of weeks) {
    const makeOn = (today + week * DAYS_OF_WEEK) as Day;
    const lastDay = lastDayOf(makeOn, ofWeek[0]?.day ?? makeOn);
    const [reached, missed] = [true, false].map((isReached) =>
      ofWeek.filter(({ day }) => (lastDay === null || day <= lastDay) === isReached),
    );
    if (reached !== undefined && reached.length > 0) used.push(sumOf(reached));
    for (const { day } of missed ?? []) unserved.add(day);
  }
  return { cost: makeCostOf(used, recipe, prices), unserved: [...unserved] };
}

function sumOf(needs: readonly DatedNeed[]): number {
  return needs.reduce((sum, { quantity }) => sum + quantity, 0);
}
