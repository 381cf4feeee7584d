import type { Day } from './day.ts';
import { type Exact, ratio, roundHalfAway, smaller, ZERO } from './exact-number.ts';
import { type Coins, type Currency, toCoins } from './money.ts';
import { compareMovements, type Movement } from './movement.ts';
import type { LotState } from './records.ts';
import type { Lot } from './studio.ts';

/** One movement in its place among those of its lot. */
export interface Posting {
  readonly movement: Movement;
  /** What is left after it, in the lot's unit; below 0 where more was used than recorded. */
  readonly left: Exact;
  /** What it costs; null for a lot without a cost. */
  readonly cost: Coins | null;
  /** What the lot has charged up to and with it. */
  readonly charged: Coins;
  /** The day on which a later row reverses it; null if none does. */
  readonly reversedOn: Day | null;
}

/** A lot with all its movements in order: every figure of a lot on any day comes from here. */
export interface LotAccount {
  readonly lot: Lot;
  readonly postings: readonly Posting[];
  /** The lot's cost in coins; null if it has none. */
  readonly cost: Coins | null;
}

/** What is less than this part of its quantity is nothing left of a lot. */
export const MILLIONTH = ratio(1, 1_000_000);

/**
 * Folds a lot's movements into its account. Each movement costs round(cost × drawn after it ÷ quantity) less what
 * the lot had charged before, so that a lot used up has charged exactly its cost; a reversal costs exactly minus
 * what it reverses.
 */
export function accountOf(lot: Lot, movements: readonly Movement[], currency: Currency): LotAccount {
  const { quantity } = lot.record;
  const cost = lot.record.cost === null ? null : toCoins(lot.record.cost, currency);
  const ordered = movements.toSorted(compareMovements);
  const reversedOn = new Map<Movement, Day>();
  for (const { reverses, day } of ordered) if (reverses !== null) reversedOn.set(reverses, day);
  const costOf = new Map<Movement, Coins>();
  const postings: Posting[] = [];
  let running = quantity;
  let rounding = ZERO;
  let charged = 0n;
  for (const movement of ordered) {
    running = running.add(movement.change);
    if (movement.rounding.compare(rounding) > 0) rounding = movement.rounding;
    const left = settled(running, quantity, rounding);
    let own: Coins | null = null;
    if (cost !== null) {
      const before = charged;
      charged =
        movement.reverses === null
          ? shareOf(cost, quantity.sub(left), quantity)
          : before - (costOf.get(movement.reverses) ?? 0n);
      own = charged - before;
      costOf.set(movement, own);
    }
    postings.push({ movement, left, cost: own, charged, reversedOn: reversedOn.get(movement) ?? null });
  }
  return { lot, postings, cost };
}

/** The part of a lot's cost that falls on what was drawn of it, to the coin. */
function shareOf(cost: Coins, drawn: Exact, quantity: Exact): Coins {
  return roundHalfAway(ratio(cost, 1).mul(drawn).div(quantity));
}

/** What is left, where less than can be written is nothing. */
function settled(left: Exact, quantity: Exact, rounding: Exact): Exact {
  const size = left.abs();
  return size.compare(quantity.mul(MILLIONTH)) < 0 || size.compare(rounding) <= 0 ? ZERO : left;
}

/** The last posting on or before a day. */
function lastBy(account: LotAccount, day: Day): Posting | undefined {
  return account.postings.findLast(({ movement }) => movement.day <= day);
}

/** What is left at the end of a day, in the lot's unit: 0 before it was received. */
export function leftOn(account: LotAccount, day: Day): Exact {
  if (day < account.lot.record.received) return ZERO;
  return lastBy(account, day)?.left ?? account.lot.record.quantity;
}

/** The least that is left at the end of a day or of any later one: what can still be drawn on that day. */
export function smallestLeftFrom(account: LotAccount, day: Day): Exact {
  return account.postings.reduce(
    (least, { movement, left }, place) => {
      const isLastOfDay = account.postings[place + 1]?.movement.day !== movement.day;
      return movement.day > day && isLastOfDay ? smaller(least, left) : least;
    },
    leftOn(account, day),
  );
}

/** What a lot is still worth at the end of a day: its cost less what it charged. Null for a lot without a cost. */
export function worthOn(account: LotAccount, day: Day): Coins | null {
  return account.cost === null ? null : account.cost - (lastBy(account, day)?.charged ?? 0n);
}

/** The lot's state on a day; one that begins later isn't reached yet. */
export function stateOn(account: LotAccount, day: Day): LotState {
  const { state, stateSince } = account.lot.record;
  return state === null || (stateSince !== null && stateSince > day) ? 'Usable' : state;
}

/** Whether a posting has been taken back by a day. */
export function isReversedBy(posting: Posting, day: Day): boolean {
  return posting.reversedOn !== null && posting.reversedOn <= day;
}

/** A sum of costs; null as soon as one is not known. */
export function totalCost(costs: readonly (Coins | null)[]): Coins | null {
  return costs.reduce<Coins | null>(
    (total, cost) => (total === null || cost === null ? null : total + cost),
    0n,
  );
}
