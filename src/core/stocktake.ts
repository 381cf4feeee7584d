import type { Day } from './day.ts';
import { type Exact, roundQuantity } from './exact-number.ts';
import { groupBy } from './group-by.ts';
import { keyOf } from './identifier.ts';
import { accountIn, type Ledger } from './ledger.ts';
import { leftOn, stateOn } from './lot-account.ts';
import { hasOpenCount } from './lot-notices.ts';
import { compareText } from './notice.ts';
import type { CountRecord } from './records.ts';
import { isWaiting, NO_DIFFERENCE, rowsOf } from './stocktake-differences.ts';
import type { Lot } from './studio.ts';

/** A lot to be counted, with what the ledger expects of it. */
export interface LotToCount {
  readonly lot: Lot;
  /** What is left of it today by its movements, in the lot's unit. */
  readonly expected: Exact;
  /** What was counted of it already in the stocktake under way; null where it is still to be counted. */
  readonly counted: CountRecord | null;
  /** What somebody typed over its Left and has not posted, in the lot's unit. */
  readonly typed: Exact | null;
}

/** The lots of one place, by material and lot. */
export interface PlaceToCount {
  /** As its row in Places spells it, or the lot where there is none; null for lots of which no place is known. */
  readonly place: string | null;
  readonly lots: readonly LotToCount[];
}

/** A stocktake by the name that its rows bear. */
export interface Stocktake {
  readonly name: string;
  /** Rows that wait to be posted. */
  readonly waiting: number;
  /** Rows that are posted. */
  readonly posted: number;
  readonly firstDay: Day;
  readonly lastDay: Day;
  /** Every movement that it posted has been taken back: it changes nothing any more. */
  readonly takenBack: boolean;
}

/** The list for a walk through the studio. */
export interface StocktakeList {
  /** The stocktake under way, of which `counted` speaks; null where none is. */
  readonly stocktake: string | null;
  /** In walking order. */
  readonly places: readonly PlaceToCount[];
  /** Every stocktake of the workbook, the latest first. */
  readonly stocktakes: readonly Stocktake[];
}

/** The name of the stocktake under way: that of the last row that waits to be posted; null where none does. */
export function openStocktake(ledger: Ledger): string | null {
  return ledger.studio.counts.findLast(({ posting }) => posting === null)?.stocktake ?? null;
}

/**
 * The lots to count, in walking order, with what is expected of each and what was counted of it already in the
 * stocktake under way. Lots that are not there (received later, discarded, empty) and materials that are not counted
 * are left out, unless a count of them waits.
 * @param place the name of one place; null for all
 */
export function stocktakeList(ledger: Ledger, today: Day, place: string | null): StocktakeList {
  const stocktake = openStocktake(ledger);
  const counted = stocktake === null ? new Map<string, CountRecord>() : countedIn(ledger, stocktake);
  const lots = ledger.studio.lots.flatMap((lot): LotToCount[] => {
    const account = accountIn(ledger, lot);
    const expected = leftOn(account, today);
    const record =
      ledger.studio.lotsByKey.get(keyOf(lot.name)) === lot ? counted.get(keyOf(lot.name)) : undefined;
    const isThere =
      lot.material.counted &&
      lot.record.received <= today &&
      stateOn(account, today) !== 'Discarded' &&
      roundQuantity(expected).compare(0) !== 0;
    if (!isThere && record?.posting !== null) return [];
    if (place !== null && keyOf(lot.record.storedAt ?? '') !== keyOf(place)) return [];
    const typed = hasOpenCount(account, today) ? lot.record.left : null;
    return [{ lot, expected, counted: record ?? null, typed }];
  });
  const byPlace = groupBy(lots.toSorted(inWalkingOrder), ({ lot }) => keyOf(lot.record.storedAt ?? ''));
  const places = [...byPlace.values()].map((some): PlaceToCount => {
    const record = some[0]?.lot;
    return { place: record?.place?.storage ?? record?.record.storedAt ?? null, lots: some };
  });
  return { stocktake, places, stocktakes: stocktakesOf(ledger) };
}

/** The row that speaks for each lot in a stocktake, by the lot's key: one that waits before one that is posted. */
function countedIn(ledger: Ledger, stocktake: string): Map<string, CountRecord> {
  const rows = rowsOf(ledger, stocktake);
  const waitingLast = [...rows.filter(({ posting }) => posting !== null), ...rows.filter(isWaiting)];
  return new Map(waitingLast.map((record) => [keyOf(record.lot), record]));
}

/** By place in walking order (places without one behind, then what has no place), then material, then lot. */
function inWalkingOrder({ lot: a }: LotToCount, { lot: b }: LotToCount): number {
  const [first, second] = [a.place?.walkingOrder ?? null, b.place?.walkingOrder ?? null];
  const isPlaceless = (lot: Lot): number => Number(lot.record.storedAt === null);
  return (
    isPlaceless(a) - isPlaceless(b) ||
    Number(first === null) - Number(second === null) ||
    (first !== null && second !== null ? first.compare(second) : 0) ||
    compareText(keyOf(a.record.storedAt ?? ''), keyOf(b.record.storedAt ?? '')) ||
    compareText(a.material.name, b.material.name) ||
    compareText(a.name, b.name)
  );
}

/** Every stocktake of the workbook, the latest first. */
export function stocktakesOf(ledger: Ledger): Stocktake[] {
  const standing = standingPostings(ledger);
  const groups = groupBy(ledger.studio.counts, ({ stocktake }) => keyOf(stocktake));
  return [...groups.values()]
    .map((rows): Stocktake => {
      const days = rows.map(({ countedOn }) => countedOn);
      const postings = rows.flatMap(({ posting }) =>
        posting === null || keyOf(posting) === NO_DIFFERENCE ? [] : [keyOf(posting)],
      );
      return {
        name: rows[0]?.stocktake ?? '',
        waiting: rows.filter(isWaiting).length,
        posted: rows.filter((row) => !isWaiting(row)).length,
        firstDay: Math.min(...days) as Day,
        lastDay: Math.max(...days) as Day,
        takenBack: postings.length > 0 && postings.every((posting) => standing.get(posting) === false),
      };
    })
    .toReversed()
    .toSorted((a, b) => b.lastDay - a.lastDay);
}

/** For each posting, by its key, whether any movement of it still stands. */
function standingPostings(ledger: Ledger): ReadonlyMap<string, boolean> {
  const standing = new Map<string, boolean>();
  for (const { postings } of ledger.accounts.values()) {
    for (const each of postings) {
      const { record, reverses } = each.movement;
      if (record === null || record.posting === null || reverses !== null) continue;
      const key = keyOf(record.posting);
      standing.set(key, standing.get(key) === true || each.reversedOn === null);
    }
  }
  return standing;
}
