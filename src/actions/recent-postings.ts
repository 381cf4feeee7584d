import type { Day } from '../core/day.ts';
import { keyOf } from '../core/identifier.ts';
import type { Ledger } from '../core/ledger.ts';
import { isReversedBy, type Posting, totalCost } from '../core/lot-account.ts';
import type { Coins } from '../core/money.ts';
import type { MovementKind } from '../core/records.ts';
import type { Entry } from '../core/studio.ts';
import { isUnmaking } from '../core/unmake.ts';

/** Rows of Movements that were written together, as a person looks back on them. */
export interface RecentPosting {
  readonly posting: string;
  /** The day on which it was written; where that isn't said, the day of its latest movement. */
  readonly posted: Day;
  readonly kinds: readonly MovementKind[];
  readonly entries: readonly Entry[];
  /** The materials it touched, by name. */
  readonly materials: readonly string[];
  readonly movements: number;
  /** What its movements cost in all; null as soon as a lot of them has no cost. */
  readonly cost: Coins | null;
  /** Every movement of it that can be reversed has been. */
  readonly reversed: boolean;
  /** It took another posting back, and nothing else. */
  readonly isReversal: boolean;
  /** It took something back and drew it again. */
  readonly isDrawnAgain: boolean;
}

const END_OF_TIME = Number.POSITIVE_INFINITY as Day;

/** The latest postings, the latest first. */
export function recentPostings(ledger: Ledger, most: number): RecentPosting[] {
  const byKey = new Map<string, Posting[]>();
  for (const { postings } of ledger.accounts.values()) {
    for (const posting of postings) {
      const name = posting.movement.record?.posting ?? null;
      if (name === null) continue;
      const together = byKey.get(keyOf(name));
      if (together === undefined) byKey.set(keyOf(name), [posting]);
      else together.push(posting);
    }
  }
  return [...byKey.values()]
    .map((postings) => ({
      postings,
      posted: Math.max(...postings.map(({ movement }) => movement.record?.posted ?? movement.date)) as Day,
      row: Math.max(...postings.map(({ movement }) => movement.record?.place.row ?? 0)),
    }))
    .toSorted((a, b) => b.posted - a.posted || b.row - a.row)
    .slice(0, most)
    .map(({ postings, posted }) => recentPosting(ledger, postings, posted));
}

function recentPosting(ledger: Ledger, postings: readonly Posting[], posted: Day): RecentPosting {
  const movements = postings.map(({ movement }) => movement);
  const entries = new Set(movements.flatMap(({ entry }) => (entry === null ? [] : [keyOf(entry)])));
  const reversible = postings.filter(
    ({ movement }) => movement.reverses === null && !isUnmaking(movement, movements),
  );
  return {
    posting: movements[0]?.record?.posting ?? '',
    posted,
    kinds: [...new Set(movements.map(({ kind }) => kind))],
    entries: ledger.studio.entries.filter(({ key }) => key !== null && entries.has(key)),
    materials: [...new Set(movements.map(({ lot }) => lot.material.name))],
    movements: movements.length,
    cost: totalCost(postings.map(({ cost }) => cost)),
    reversed: reversible.length > 0 && reversible.every((posting) => isReversedBy(posting, END_OF_TIME)),
    isReversal: reversible.length === 0,
    isDrawnAgain: reversible.length > 0 && reversible.length < postings.length,
  };
}
