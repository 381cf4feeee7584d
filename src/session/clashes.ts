import type { Day } from '../core/day.ts';
import { keyOf } from '../core/identifier.ts';
import type { Ledger } from '../core/ledger.ts';
import { isReversedBy, leftOn } from '../core/lot-account.ts';
import type { Entry, Lot } from '../core/studio.ts';

/** A lot in which there is less than was drawn, and an entry that a session drew from it. */
export interface Clash {
  readonly lot: Lot;
  readonly entry: Entry;
}

/**
 * The lots that a session's own postings drew on and that are overdrawn: somebody else drew on them at the same time.
 * @param postings the keys of the session's postings
 */
export function clashesIn(ledger: Ledger, postings: ReadonlySet<string>, today: Day): Clash[] {
  if (postings.size === 0) return [];
  return [...ledger.accounts.values()].flatMap((account) => {
    const own = account.postings.filter(
      (posting) =>
        posting.movement.reverses === null &&
        postings.has(keyOf(posting.movement.record?.posting ?? '')) &&
        !isReversedBy(posting, today),
    );
    if (own.length === 0 || leftOn(account, today).compare(0) >= 0) return [];
    const keys = new Set(own.map(({ movement }) => keyOf(movement.entry ?? '')));
    const entry = ledger.studio.entries.findLast(({ key }) => key !== null && keys.has(key));
    return entry === undefined ? [] : [{ lot: account.lot, entry }];
  });
}
