import type { Day } from './day.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import type { Coins } from './money.ts';

/** What a job's materials have cost so far. */
export interface JobCost {
  /** The sum of its movements' costs, reversals taken off. */
  readonly cost: Coins;
  /** How many of its movements are of lots without a cost; the sum misses them. */
  readonly withoutCost: number;
}

/** What was drawn for a job up to a day, at the cost of the lots. */
export function costOfJob(ledger: Ledger, job: string, day: Day): JobCost {
  let cost = 0n;
  let withoutCost = 0;
  for (const { postings } of ledger.accounts.values()) {
    for (const { movement, cost: own } of postings) {
      if (movement.job === null || keyOf(movement.job) !== keyOf(job) || movement.day > day) continue;
      if (own === null) withoutCost += 1;
      else cost += own;
    }
  }
  return { cost, withoutCost };
}
