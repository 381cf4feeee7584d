import { roundQuantity, ZERO } from './exact-number.ts';
import { type IdentifierMaker, keyOf } from './identifier.ts';
import { accountIn, type Ledger, post } from './ledger.ts';
import { type Movement, movementOf } from './movement.ts';
import { isSplit } from './split.ts';
import type { Lot } from './studio.ts';

/** A lot that came to be by some movements: a batch that was made, or a container that was split off. */
export interface LotMadeBy {
  readonly lot: Lot;
  /** One of the movements that went into it; null where it was written with them, and nothing countable went in. */
  readonly from: Movement | null;
}

/** The lots that came to be by movements of one posting. */
export function lotsMadeBy(ledger: Ledger, posting: string, movements: readonly Movement[]): LotMadeBy[] {
  const { studio } = ledger;
  const from = new Map<Lot, Movement | null>();
  for (const movement of movements) {
    const lot = movement.into === null ? undefined : studio.lotsByKey.get(keyOf(movement.into));
    if (lot !== undefined && !from.has(lot)) from.set(lot, movement);
  }
  for (const lot of studio.lots) {
    const { posting: own } = lot.record;
    if (own !== null && keyOf(own) === keyOf(posting) && !from.has(lot)) from.set(lot, null);
  }
  return [...from].map(([lot, movement]) => ({ lot, from: movement }));
}

/**
 * What stands on a lot, or went into it, besides the movements that are to be taken back: while there is any, the
 * lot can't be as if it had never been.
 */
export function standingBesides(ledger: Ledger, lot: Lot, takenBack: readonly Movement[]): Movement[] {
  return [...ledger.accounts.values()].flatMap((account) =>
    account.postings
      .filter(
        ({ movement, reversedOn }) =>
          movement.reverses === null &&
          reversedOn === null &&
          !takenBack.includes(movement) &&
          (account.lot === lot || (movement.into !== null && keyOf(movement.into) === keyOf(lot.name))),
      )
      .map(({ movement }) => movement),
  );
}

/**
 * Counts what is left of lots that came to be by movements taken back as nothing, on the day they came to be: with
 * their ingredients back in stock they hold nothing and are worth nothing.
 * @param ledger with the movements reversed
 */
export function unmake(
  ledger: Ledger,
  made: readonly LotMadeBy[],
  newIdentifier: IdentifierMaker,
): { readonly ledger: Ledger; readonly movements: readonly Movement[] } {
  const movements = made.flatMap(({ lot, from }): Movement[] => {
    const left = roundQuantity(accountIn(ledger, lot).postings.at(-1)?.left ?? lot.record.quantity);
    if (left.equals(ZERO)) return [];
    const nobodys = { job: null, item: null, entry: null, into: null, reverses: null, record: null };
    const count = movementOf({
      ...nobodys,
      name: newIdentifier('M'),
      date: from?.date ?? lot.record.received,
      kind: 'Count',
      lot,
      quantity: left.neg(),
      unit: lot.record.unit,
      lotIs: 'confirmed',
      note: noteOf(lot, from),
    });
    if (count === null) throw new Error(`${lot.record.unit.name} is the unit of lot ${lot.name} itself`);
    return [count];
  });
  return { ledger: post(ledger, movements), movements };
}

/** By which a Count is known that takes back what was received; nothing goes into such a lot that could be reversed. */
const NOT_RECEIVED = 'not received after all';

function noteOf(lot: Lot, from: Movement | null): string {
  if (from !== null) return isSplit(from) ? 'not opened after all' : 'not made after all';
  if (!isReceived(lot)) return 'not made after all';
  const { order, orderLine } = lot.record;
  const line = orderLine === null ? '' : ` (${orderLine})`;
  return order === null ? NOT_RECEIVED : `${NOT_RECEIVED}: order ${order}${line}`;
}

/** Whether a lot came from outside, as far as its row says. */
export function isReceived({ record }: Lot): boolean {
  return record.recipe === null;
}

/** Whether a movement counts a lot as not received after all: all of it, on the day on which it came. */
export function isUnreceiving({ kind, reverses, lot, note, quantity, date }: Movement): boolean {
  return (
    kind === 'Count' &&
    reverses === null &&
    isReceived(lot) &&
    date === lot.record.received &&
    quantity.equals(lot.record.quantity.neg()) &&
    (note ?? '').startsWith(NOT_RECEIVED)
  );
}

/**
 * Whether a movement counts a lot as not made or not received after all: a Count beside rows that reverse what went
 * into the lot, or of a lot into which nothing went.
 * @param together the movements of its posting
 */
export function isUnmaking(movement: Movement, together: readonly Movement[]): boolean {
  const { kind, reverses, lot } = movement;
  if (kind !== 'Count' || reverses !== null) return false;
  if (isUnreceiving(movement)) return true;
  return together.some((other) => {
    const original = other.reverses?.record?.posting ?? null;
    return (
      other.reverses !== null &&
      ((other.into !== null && keyOf(other.into) === keyOf(lot.name)) ||
        (original !== null && lot.record.posting !== null && keyOf(original) === keyOf(lot.record.posting)))
    );
  });
}
