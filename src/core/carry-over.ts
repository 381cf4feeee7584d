import { closedEntries, isClosedJob, sharingKeys } from './carry-entries.ts';
import { Fold, opens } from './carry-fold.ts';
import { type CarryOverFacts, doubts, limitsOf } from './carry-limits.ts';
import { addDays, type Day } from './day.ts';
import { LONGEST_WINDOW_DAYS } from './demand.ts';
import { groupBy } from './group-by.ts';
import { keyOf } from './identifier.ts';
import { accountIn, type Ledger } from './ledger.ts';
import { isExpiredOn } from './life.ts';
import type { LotAccount } from './lot-account.ts';
import type { Coins } from './money.ts';
import type { Movement } from './movement.ts';
import type { Entry, Lot } from './studio.ts';

/** Why movements stay, for people. */
export const KEPT_BECAUSE = {
  recent: `of the last ${LONGEST_WINDOW_DAYS} days, on which the reorder figures rest`,
  'entry to draw': 'not before a log entry that is still to be drawn, or a count that is not posted',
  'open job': 'of jobs that are not handed back or declined',
  entry: 'of log entries that stay, as something of them is still open',
  into: 'into lots that are still in use',
  bath: 'of lots made here that are still good, whose rest falls on the jobs that used them',
  reversal: 'that reverse a row that stays, or are reversed by one',
  doubt: 'with something to be mended first',
  opened: 'that alone say when a lot was opened, where Opened can’t be written',
  behind: 'after one of these in the same lot',
  exact: 'for which one movement can’t stand to the coin and the day',
  carried: 'carried over before, with nothing to add',
} as const;

export type KeptBecause = keyof typeof KEPT_BECAUSE;

/** A lot of which the first movements are replaced by one. */
export interface CarriedLot {
  readonly lot: Lot;
  /** In the lot's order. */
  readonly folded: readonly Movement[];
  /** What stands for them; its name is new. */
  readonly carried: Movement;
  /** What it costs: what they have charged together. Null for a lot without a cost. */
  readonly cost: Coins | null;
  /** What has to be written into Opened, as the movements that told it are gone; null for nothing. */
  readonly opened: Day | null;
}

/** A year carried over: what a new workbook can do without, and what stands for it. */
export interface CarryOver {
  readonly lots: readonly CarriedLot[];
  /** The log entries that go. */
  readonly entries: readonly Entry[];
  /** How many movements stay, by the reason. */
  readonly kept: readonly { readonly why: KeptBecause; readonly count: number }[];
}

/**
 * Folds the movements of each lot, from its first one on, into one Carried movement, as far as nothing that the
 * workbook answers on `day` or later depends on them: not the reorder figures of the last 365 days, nor the trace of
 * jobs that are not over, nor what made the lots still in use, nor any figure to the coin.
 */
export function carryOver(ledger: Ledger, day: Day, facts: CarryOverFacts): CarryOver {
  const windowStart = addDays(day, 1 - LONGEST_WINDOW_DAYS);
  const book = new FoldingBook(ledger, day, windowStart, facts);
  let entries = closedEntries(ledger, day, windowStart, facts.isInDoubt);
  for (let before = -1; before !== book.count + entries.length; ) {
    before = book.count + entries.length;
    entries = book.keepEntries(entries);
    book.keepReversals();
    book.keepWhatWentInto();
  }
  return { lots: book.carried(facts), entries, kept: book.kept() };
}

/** Every lot's fold, narrowed until all of them agree. */
class FoldingBook {
  readonly #ledger: Ledger;
  readonly #folds: ReadonlyMap<Lot, Fold>;
  readonly #placeOf = new Map<Movement, number>();
  readonly #why = new Map<Movement, KeptBecause>();
  readonly #ofEntry: ReadonlyMap<string, readonly Movement[]>;
  readonly #links: readonly Movement[];
  readonly #into: readonly Movement[];
  readonly #leftOut: number;

  constructor(ledger: Ledger, day: Day, windowStart: Day, facts: CarryOverFacts) {
    this.#ledger = ledger;
    const limits = limitsOf(ledger, day, windowStart);
    const isDoubtful = doubts(ledger, facts);
    const folds = new Map<Lot, Fold>();
    const all: Movement[] = [];
    for (const [lot, account] of ledger.accounts) {
      const limit = limits(lot);
      const isBath = lot.recipe !== null && !isExpiredOn(account, day) && !isUsedUp(account);
      account.postings.forEach((posting, place) => {
        const { movement } = posting;
        all.push(movement);
        this.#placeOf.set(movement, place);
        const why: KeptBecause | null = isDoubtful(movement)
          ? 'doubt'
          : movement.day >= windowStart
            ? 'recent'
            : movement.day >= limit
              ? 'entry to draw'
              : !isClosedJob(ledger.studio, movement.job)
                ? 'open job'
                : isBath && movement.kind === 'Use'
                  ? 'bath'
                  : lot.record.opened === null && opens(posting) && !facts.canWriteOpened(lot)
                    ? 'opened'
                    : null;
        if (why !== null) this.#why.set(movement, why);
      });
      const first = account.postings.findIndex(({ movement }) => this.#why.has(movement));
      const most = first < 0 ? account.postings.length : first;
      folds.set(lot, new Fold(account, ledger.studio.settings.currency, most));
    }
    this.#folds = folds;
    this.#ofEntry = groupBy(
      all.filter(({ entry }) => entry !== null),
      ({ entry }) => keyOf(entry ?? ''),
    );
    this.#links = all.filter(({ reverses }) => reverses !== null);
    this.#into = all.filter(({ into }) => into !== null);
    const worked = new Set(all.map(({ record }) => record?.place.row));
    this.#leftOut = facts.movements.filter(({ place }) => !worked.has(place.row)).length;
  }

  /** How many movements are folded. */
  get count(): number {
    let count = 0;
    for (const fold of this.#folds.values()) count += fold.count;
    return count;
  }

  #isFolded(movement: Movement): boolean {
    return (this.#placeOf.get(movement) ?? 0) < (this.#folds.get(movement.lot)?.count ?? 0);
  }

  #keep(movement: Movement, why: KeptBecause): void {
    if (!this.#isFolded(movement)) return;
    this.#why.set(movement, why);
    this.#folds.get(movement.lot)?.keepFrom(this.#placeOf.get(movement) ?? 0);
  }

  /** Of entries that might go, those of which every movement is folded; no movement of any other is. */
  keepEntries(closed: readonly Entry[]): Entry[] {
    const staying = new Set(this.#ledger.studio.entries);
    for (const entry of closed) {
      if ((this.#ofEntry.get(entry.key ?? '') ?? []).every((movement) => this.#isFolded(movement)))
        staying.delete(entry);
    }
    const shared = new Set([...staying].flatMap(sharingKeys));
    const going = closed.filter(
      (entry) => !staying.has(entry) && !sharingKeys(entry).some((key) => shared.has(key)),
    );
    const goingKeys = new Set(going.map(({ key }) => key));
    for (const [key, movements] of this.#ofEntry) {
      if (goingKeys.has(key)) continue;
      for (const movement of movements) this.#keep(movement, 'entry');
    }
    return going;
  }

  /** A reversal and its row go together or stay together. */
  keepReversals(): void {
    for (const reversal of this.#links) {
      const { reverses } = reversal;
      if (reverses !== null && !this.#isFolded(reversal)) this.#keep(reverses, 'reversal');
    }
  }

  /** What went into a lot that is still in use stays. */
  keepWhatWentInto(): void {
    for (const movement of this.#into) {
      const lot = this.#ledger.studio.lotsByKey.get(keyOf(movement.into ?? ''));
      if (lot === undefined || this.#isInUse(lot)) this.#keep(movement, 'into');
    }
  }

  #isInUse(lot: Lot): boolean {
    const account = accountIn(this.#ledger, lot);
    return !isUsedUp(account) || (this.#folds.get(lot)?.count ?? 0) < account.postings.length;
  }

  carried({ newIdentifier, file }: CarryOverFacts): CarriedLot[] {
    return [...this.#folds.values()].flatMap((fold) => {
      if (fold.count === 0) return [];
      const carried = fold.carried(newIdentifier('M'), file);
      const { lot } = fold.account;
      const folded = fold.folded.map(({ movement }) => movement);
      const cost = fold.account.cost === null ? null : (fold.folded.at(-1)?.charged ?? 0n);
      return carried === null ? [] : [{ lot, folded, carried, cost, opened: fold.openedByFolded }];
    });
  }

  kept(): CarryOver['kept'] {
    const counts = new Map<KeptBecause, number>();
    const add = (why: KeptBecause, count = 1): void => {
      if (count > 0) counts.set(why, (counts.get(why) ?? 0) + count);
    };
    for (const { account, count } of this.#folds.values()) {
      let isBehind = false;
      for (const { movement } of account.postings.slice(count)) {
        const own = this.#why.get(movement);
        isBehind ||= own !== undefined;
        add(own ?? (isBehind ? 'behind' : movement.kind === 'Carried' ? 'carried' : 'exact'));
      }
    }
    add('doubt', this.#leftOut);
    return (Object.keys(KEPT_BECAUSE) as KeptBecause[]).flatMap((why) => {
      const count = counts.get(why);
      return count === undefined ? [] : [{ why, count }];
    });
  }
}

/** Whether nothing is left of a lot once all its movements are over. */
function isUsedUp({ lot, postings }: LotAccount): boolean {
  return (postings.at(-1)?.left ?? lot.record.quantity).equals(0);
}
