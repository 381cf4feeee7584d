import type { Day } from '../day.ts';
import type { DatedNeed } from './dated-needs.ts';
import { inMillionths, ofMillionths } from './millionths.ts';

/** What a batch gives to one job on one day. */
export interface Serving {
  readonly day: Day;
  readonly job: string;
  readonly what: string;
  readonly quantity: number;
}

/** A serving of a need as a whole. */
export function servingOf({ demand, quantity }: DatedNeed, day: Day): Serving {
  return { day, job: demand.job, what: demand.what, quantity };
}

/**
 * What of the needs lies between two points of what is served, in their order: a batch may give a part of a need, and
 * the next one the rest.
 */
export function servingsBetween(needs: readonly DatedNeed[], from: number, upTo: number): Serving[] {
  const servings: Serving[] = [];
  let before = 0;
  for (const need of needs) {
    const after = before + inMillionths(need.quantity);
    const part = Math.min(after, inMillionths(upTo)) - Math.max(before, inMillionths(from));
    if (part > 0) servings.push({ ...servingOf(need, need.day), quantity: ofMillionths(part) });
    before = after;
  }
  return servings;
}
