import type { Day } from './day.ts';
import type { Exact } from './exact-number.ts';
import { accountIn, type Ledger, post } from './ledger.ts';
import type { LotAccount } from './lot-account.ts';
import { lotMovement } from './lot-movement.ts';
import type { Coins } from './money.ts';
import type { Movement } from './movement.ts';
import type { Lot } from './studio.ts';

/** What is split off one lot to be a lot of its own: a container that is opened, sheets that are set aside wet. */
export interface SplitOff {
  /** In the lot's unit, with at most 6 decimals, above 0 and below what is left. */
  readonly quantity: Exact;
  readonly date: Day;
  /** The identifier of the new lot. */
  readonly into: string;
  readonly note: string;
  /** The identifier of the movement. */
  readonly name: string;
}

/**
 * Takes a part out of a lot by a Count that names the new lot in Into: nothing is used, nothing is lost.
 * @returns what the new lot costs: what the lot charges more, by all that was ever split off it, than it did before.
 *   That is what the Count costs, and an odd coin where the Count sorts before another of the same day.
 */
export function splitOff(
  ledger: Ledger,
  lot: Lot,
  { quantity, date, into, note, name }: SplitOff,
): { readonly ledger: Ledger; readonly count: Movement; readonly cost: Coins | null } {
  const count = lotMovement(lot, { name, date, kind: 'Count', quantity: quantity.neg(), into, note });
  const after = post(ledger, [count]);
  const account = accountIn(after, lot);
  const cost =
    account.cost === null ? null : chargedBySplits(account) - chargedBySplits(accountIn(ledger, lot));
  return { ledger: after, count, cost };
}

/** Whether a movement moves a part of its lot into a lot of its own. */
export function isSplit({ kind, into }: Pick<Movement, 'kind' | 'into'>): boolean {
  return kind === 'Count' && into !== null;
}

function chargedBySplits({ postings }: LotAccount): Coins {
  return postings
    .filter(({ movement }) => isSplit(movement))
    .reduce((total, { cost }) => total + (cost ?? 0n), 0n);
}
