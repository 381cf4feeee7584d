import type { Day } from '../core/day.ts';
import { groupBy } from '../core/group-by.ts';
import { keyOf } from '../core/identifier.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { isReversedBy, type Posting, totalCost } from '../core/lot-account.ts';
import { type Coins, toCoins } from '../core/money.ts';
import type { MovementKind } from '../core/records.ts';
import type { Entry, Lot } from '../core/studio.ts';
import { isReceived, isUnmaking, isUnreceiving } from '../core/unmake.ts';

/** Rows that were written together, as a person looks back on them: movements, or the lots that came of an order. */
export interface RecentPosting {
  readonly posting: string;
  /** The day on which it was written; where that isn't said, the day of its latest movement. */
  readonly posted: Day;
  readonly kinds: readonly MovementKind[];
  readonly entries: readonly Entry[];
  /** The materials it touched, by name. */
  readonly materials: readonly string[];
  readonly movements: number;
  /** The lots that came in with it, which no movement has; none of a posting of movements. */
  readonly received: readonly Lot[];
  /** What its movements or lots cost in all; null as soon as a lot of them has no cost. */
  readonly cost: Coins | null;
  /** Every movement of it that can be reversed has been. */
  readonly reversed: boolean;
  /** It took another posting back, and nothing else. */
  readonly isReversal: boolean;
  /** It took something back and drew it again. */
  readonly isDrawnAgain: boolean;
}

const END_OF_TIME = Number.POSITIVE_INFINITY as Day;

/** The latest postings, the latest first; of one day what came in first, as its rows stand in other tables. */
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
  const ofMovements = [...byKey.values()].map((postings) => {
    const posted = Math.max(
      ...postings.map(({ movement }) => movement.record?.posted ?? movement.date),
    ) as Day;
    return {
      posted,
      row: Math.max(...postings.map(({ movement }) => movement.record?.place.row ?? 0)),
      look: () => recentPosting(ledger, postings, posted),
    };
  });
  const ofLots = [
    ...groupBy(ledger.studio.lots.filter(isReceived), ({ record }) => postingKey(record.posting)),
  ]
    .filter(([key]) => key !== '' && !byKey.has(key))
    .toReversed()
    .map(([, lots]) => ({
      posted: Math.max(...lots.map(({ record }) => record.received)) as Day,
      row: Number.MAX_SAFE_INTEGER,
      look: () => recentReceipt(ledger, lots),
    }));
  return [...ofMovements, ...ofLots]
    .toSorted((a, b) => b.posted - a.posted || b.row - a.row)
    .slice(0, most)
    .map(({ look }) => look());
}

function postingKey(posting: string | null): string {
  return posting === null ? '' : keyOf(posting);
}

/** What came in together: lots, of which a Count says where they were taken back. */
function recentReceipt(ledger: Ledger, received: readonly Lot[]): RecentPosting {
  const { currency } = ledger.studio.settings;
  return {
    posting: received[0]?.record.posting ?? '',
    posted: Math.max(...received.map(({ record }) => record.received)) as Day,
    kinds: [],
    entries: [],
    materials: [...new Set(received.map(({ material }) => material.name))],
    movements: 0,
    received,
    cost: totalCost(received.map(({ record: { cost } }) => (cost === null ? null : toCoins(cost, currency)))),
    reversed: received.every((lot) =>
      accountIn(ledger, lot).postings.some(({ movement }) => isUnreceiving(movement)),
    ),
    isReversal: false,
    isDrawnAgain: false,
  };
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
    received: [],
    cost: totalCost(postings.map(({ cost }) => cost)),
    reversed: reversible.length > 0 && reversible.every((posting) => isReversedBy(posting, END_OF_TIME)),
    isReversal: reversible.length === 0,
    isDrawnAgain: reversible.length > 0 && reversible.length < postings.length,
  };
}
