import type { Day } from './day.ts';
import type { IdentifierMaker } from './identifier.ts';
import type { LotAccount } from './lot-account.ts';
import { compareText } from './notice.ts';

/** Enough that the first that fits is not far, and a day's many movements don't use the room up. */
const CANDIDATES = 32;

/**
 * An identifier for a movement that is about to be written, such that it sorts after those of the lot's movements
 * that stand on its day, wherever chance allows: then it takes no coin from, and gives none to, what these have
 * charged, which the cost of a batch that was made of them has been frozen by. One that is reversed gives back whatever
 * it charges, so its place doesn't matter.
 */
export function nameForMovement(account: LotAccount, date: Day, newIdentifier: IdentifierMaker): string {
  const { received } = account.lot.record;
  const day = date < received ? received : date;
  const last = account.postings
    .filter(
      ({ movement, reversedOn }) => movement.day === day && movement.reverses === null && reversedOn === null,
    )
    .map(({ movement }) => movement.name ?? '')
    .reduce((latest, name) => (compareText(name, latest) > 0 ? name : latest), '');
  // The first of a day is an early one too, so that there is room after it.
  const candidates = Array.from({ length: CANDIDATES }, () => newIdentifier('M')).toSorted(compareText);
  return candidates.find((name) => compareText(name, last) > 0) ?? newIdentifier('M');
}
