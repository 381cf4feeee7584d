import type { Day } from './day.ts';
import type { IdentifierMaker } from './identifier.ts';
import type { LotAccount } from './lot-account.ts';
import { compareText } from './notice.ts';

/** Enough that the first that fits is not far, and a day's many movements don't use the room up. */
const CANDIDATES = 32;

/**
 * An identifier for a movement that is about to be written, such that it sorts after the lot's other movements of
 * its day wherever chance allows: then it takes no coin from, and gives none to, what these have charged, which the
 * cost of a batch that was made of them has been frozen by.
 */
export function nameForMovement(account: LotAccount, date: Day, newIdentifier: IdentifierMaker): string {
  const { received } = account.lot.record;
  const day = date < received ? received : date;
  const last = account.postings
    .filter(({ movement }) => movement.day === day && movement.reverses === null)
    .map(({ movement }) => movement.name ?? '')
    .reduce((latest, name) => (compareText(name, latest) > 0 ? name : latest), '');
  // The first of a day is an early one too, so that there is room after it.
  const candidates = Array.from({ length: CANDIDATES }, () => newIdentifier('M')).toSorted(compareText);
  return candidates.find((name) => compareText(name, last) > 0) ?? newIdentifier('M');
}
