import type { Day } from '../day.ts';
import { cumulativeNeed, type DayNeed, pointsOf, type ServedPoint } from './cumulative-need.ts';
import { inMillionths, ofMillionths } from './millionths.ts';
import { splitPoints } from './split-points.ts';

/** When to make how much of something that keeps for so long. No quantity or cost is below 0. */
export interface LotSizingProblem {
  /** No batch is made before it. */
  readonly firstDay: Day;
  /** In any order, several on a day too. */
  readonly needs: readonly DayNeed[];
  /** What a batch costs, whatever its size: on every day the same, or as the day asks. */
  readonly setUpCost: number | ((day: Day) => number);
  /** What a unit costs that nobody needs. */
  readonly wasteCost: number;
  /** What a unit that somebody needs costs for each day from the day it is ready to the day it is used. */
  readonly holdingCost: number;
  /** How many days after it was begun a batch is ready. */
  readonly readyDays: number;
  /** How many days after it was begun a batch may still be used; null where it keeps. */
  readonly lifeDays: number | null;
  /** 0 where there is no least. */
  readonly smallestBatch: number;
  /** Of one batch: there may be several on a day. null where there is no limit. */
  readonly largestBatch: number | null;
}

export interface LotSizes {
  readonly cost: number;
  /** In the order of their days, which is that in which they are used. */
  readonly batches: readonly SizedBatch[];
}

export interface SizedBatch {
  readonly makeOn: Day;
  readonly quantity: number;
  /** It serves what is needed, counted by day, from here … */
  readonly from: number;
  /** … up to here. What is left of it nobody needs. */
  readonly upTo: number;
}

/** A point with the best way that leads to it. */
interface Stage extends ServedPoint {
  way: Way | null;
}

interface Way extends Figures {
  /** null at the start, where nothing is made yet. */
  readonly last: { readonly from: Stage; readonly makeOn: Day } | null;
}

/** What a plan is judged by, the first that differs: see isBetter. Waste is in millionths, age in days of millionths. */
interface Figures {
  readonly cost: number;
  readonly batches: number;
  readonly waste: number;
  /** How old what is used is on its day, in days each weighed by its quantity. */
  readonly age: number;
}

/** Costs closer than this share are the same. */
const SAME = 1e-9;

/**
 * The batches that cost least; among these plans one with the fewest batches, then the least waste, then one whose
 * material is freshest when it is used. Exact: batches may share a need of a day between them, see splitPoints.
 * @returns null where no batches serve everything: something is needed before a batch of the first day is ready, a
 * batch does not keep until it is ready, or the largest is below the smallest
 */
export function sizeLots(problem: LotSizingProblem): LotSizes | null {
  const { firstDay, readyDays, lifeDays, setUpCost, holdingCost } = problem;
  const days = cumulativeNeed(problem.needs);
  const smallest = inMillionths(problem.smallestBatch);
  const largest =
    problem.largestBatch === null ? Number.POSITIVE_INFINITY : inMillionths(problem.largestBatch);
  const spanDays = lifeDays === null ? Number.POSITIVE_INFINITY : lifeDays - readyDays;
  const firstNeed = days[0];
  if (firstNeed === undefined) return { cost: 0, batches: [] };
  if (firstNeed.day < firstDay + readyDays || spanDays < 0 || largest < Math.max(smallest, 1)) return null;

  const rules = {
    smallest,
    largest,
    spanDays,
    daysAreAlike: typeof setUpCost === 'number' && holdingCost === 0,
  };
  const stages: Stage[] = splitPoints(days, pointsOf(days, firstDay), rules).map((point) => ({
    ...point,
    way: point.served === 0 ? { cost: 0, batches: 0, waste: 0, age: 0, last: null } : null,
  }));
  for (const [index, from] of stages.entries()) {
    if (from.way === null) continue;
    for (let ahead = index + 1; ahead < stages.length; ahead += 1) {
      const to = stages[ahead];
      if (to === undefined || to.lastDay - from.nextDay > spanDays) break;
      const used = to.served - from.served;
      if (used > largest) break;
      const { makeOn, cost } = cheapestDay(problem, from, to);
      const wasted = Math.max(0, smallest - used);
      const age = to.weightedDays - from.weightedDays - (makeOn - firstDay) * used;
      const figures = {
        cost:
          from.way.cost +
          cost +
          problem.wasteCost * ofMillionths(wasted) +
          holdingCost * ofMillionths(age - readyDays * used),
        batches: from.way.batches + 1,
        waste: from.way.waste + wasted,
        age: from.way.age + age,
      };
      if (to.way === null || isBetter(figures, to.way)) {
        to.way = { ...figures, last: { from, makeOn } };
      }
    }
  }
  const end = stages.at(-1);
  return end === undefined || end.way === null
    ? null
    : { cost: end.way.cost, batches: batchesOf(end, smallest) };
}

function isBetter(one: Figures, other: Figures): boolean {
  if (Math.abs(one.cost - other.cost) > SAME * Math.max(one.cost, other.cost)) return one.cost < other.cost;
  if (one.batches !== other.batches) return one.batches < other.batches;
  if (one.waste !== other.waste) return one.waste < other.waste;
  return one.age < other.age;
}

/** The day on which a batch for what lies between two points costs least, set-up and holding together; the latest of these. */
function cheapestDay(
  { firstDay, readyDays, lifeDays, setUpCost, holdingCost }: LotSizingProblem,
  from: ServedPoint,
  to: ServedPoint,
): { readonly makeOn: Day; readonly cost: number } {
  const latest = (from.nextDay - readyDays) as Day;
  if (typeof setUpCost === 'number') return { makeOn: latest, cost: setUpCost };
  const earliest = lifeDays === null ? firstDay : Math.max(firstDay, to.lastDay - lifeDays);
  const perDay = holdingCost * ofMillionths(to.served - from.served);
  let best = { makeOn: latest, cost: setUpCost(latest) };
  let leastSum = best.cost;
  for (let day = latest - 1; day >= earliest; day -= 1) {
    const cost = setUpCost(day as Day);
    const sum = cost + perDay * (latest - day);
    if (sum >= leastSum - SAME * leastSum) continue;
    best = { makeOn: day as Day, cost };
    leastSum = sum;
  }
  return best;
}

/** The batches of a plan, in the order in which they are used. */
function batchesOf(end: Stage, smallest: number): SizedBatch[] {
  const batches: SizedBatch[] = [];
  let upTo = end.served;
  for (let last = end.way?.last ?? null; last !== null; last = last.from.way?.last ?? null) {
    const { from, makeOn } = last;
    batches.push({
      makeOn,
      quantity: ofMillionths(Math.max(smallest, upTo - from.served)),
      from: ofMillionths(from.served),
      upTo: ofMillionths(upTo),
    });
    upTo = from.served;
  }
  return batches.toReversed();
}
