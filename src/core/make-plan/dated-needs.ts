import type { Day } from '../day.ts';
import type { KnownDemand } from '../planning/plan-problem.ts';
import { inMillionths, ofMillionths } from './millionths.ts';

/** What is needed for a job, with the day on which it can be given. */
export interface DatedNeed {
  readonly demand: KnownDemand;
  /** The day on which it is needed, or the first on which it can be ready where that is later. */
  readonly day: Day;
  /** In whole millionths, as a number of stock units. */
  readonly quantity: number;
}

/** What is needed, in the order in which it is served. */
export function datedNeeds(demands: readonly KnownDemand[], readyOn: Day): DatedNeed[] {
  return demands
    .map((demand) => ({
      demand,
      day: Math.max(demand.day, readyOn) as Day,
      quantity: ofMillionths(inMillionths(demand.quantity)),
    }))
    .filter(({ quantity }) => quantity > 0)
    .toSorted((a, b) => inTurn(a.demand, b.demand));
}

/** Compares in the order in which what is needed is served: by day, what the log has not drawn first. */
export function inTurn(a: KnownDemand, b: KnownDemand): number {
  return a.day - b.day || turn(a) - turn(b);
}

function turn({ kind }: KnownDemand): number {
  return kind === 'not drawn' ? 0 : 1;
}
