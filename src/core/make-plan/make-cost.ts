import { roundPlanned } from '../forecast/round-planned.ts';
import type { RecipeProblem } from '../planning/plan-problem.ts';
import { inMillionths, ofMillionths } from './millionths.ts';

/** What making costs, and what is thrown away of it. */
export interface MakeCost {
  readonly batches: number;
  readonly minutes: number;
  /** What the minutes cost, in coins; null where bench time isn't charged. */
  readonly effort: number | null;
  /** What is thrown away, in the stock unit. */
  readonly waste: number;
  /** What that costs, in coins; null where the ingredients have no price. */
  readonly wasteCost: number | null;
}

/** In coins; null where nothing gives a figure. */
export interface MakePrices {
  /** What a minute at the bench costs; null where bench time isn't charged. */
  readonly minuteCost: number | null;
  /** What the ingredients of one stock unit cost. */
  readonly unitCost: number | null;
}

/** What batches cost, each given by how much of it is used. */
export function makeCostOf(
  used: readonly number[],
  { minutes, smallestBatch }: Pick<RecipeProblem, 'minutes' | 'smallestBatch'>,
  { minuteCost, unitCost }: MakePrices,
): MakeCost {
  const allMinutes = used.length * minutes;
  const waste = ofMillionths(used.reduce((sum, part) => sum + wastedOf(part, smallestBatch), 0));
  return {
    batches: used.length,
    minutes: roundPlanned(allMinutes),
    effort: minuteCost === null ? null : roundPlanned(allMinutes * minuteCost),
    waste,
    wasteCost: unitCost === null ? null : roundPlanned(waste * unitCost),
  };
}

function wastedOf(used: number, smallestBatch: number): number {
  return Math.max(0, inMillionths(smallestBatch) - inMillionths(used));
}
