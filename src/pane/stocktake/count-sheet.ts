import { keyOf } from '../../core/identifier.ts';
import { accountIn } from '../../core/ledger.ts';
import { leftOn } from '../../core/lot-account.ts';
import { type LotToCount, stocktakeList } from '../../core/stocktake.ts';
import { type CountDifference, differencesOf } from '../../core/stocktake-differences.ts';
import type { Lot } from '../../core/studio.ts';
import type { Books } from '../../session/session-state.ts';
import type { CountedPlace } from './count-state.ts';

/** One lot of the list. */
export interface CountRow {
  /** By which it is told apart from the others. */
  readonly key: string;
  readonly lot: Lot;
  /** What it came to, once it is counted; null before. */
  readonly difference: CountDifference | null;
  /** Why its count can't be posted as it stands; null where it can. */
  readonly obstacle: string | null;
  /** Counted and posted already. */
  readonly posted: boolean;
}

export interface CountGroup {
  readonly title: string;
  readonly rows: readonly CountRow[];
}

/** The list that is walked along, with what has been counted so far. */
export interface CountSheet {
  /** The stocktake under way; null where none is. */
  readonly stocktake: string | null;
  readonly groups: readonly CountGroup[];
  /** Of all places, what posting would come to. */
  readonly differences: readonly CountDifference[];
  readonly obstacles: readonly string[];
  /** The places that can be chosen, null for none, in walking order. */
  readonly places: readonly (string | null)[];
}

const NO_PLACE = 'No place is known';

/**
 * The list of a stocktake.
 * @param besides the keys of lots that were found although the list of the place doesn't have them
 */
export function countSheet(books: Books, chosen: CountedPlace, besides: readonly string[]): CountSheet {
  const { ledger, today } = books;
  const all = stocktakeList(ledger, today, null);
  const { stocktake } = all;
  const { differences, obstacles } =
    stocktake === null ? { differences: [], obstacles: [] } : differencesOf(ledger, today, stocktake);
  const differenceOf = new Map(differences.map((each) => [each.lot, each]));
  const obstacleOf = new Map(obstacles.map(({ record, message }) => [keyOf(record.lot), message]));
  const rowOf = ({ lot, counted }: Pick<LotToCount, 'lot' | 'counted'>): CountRow => ({
    key: rowKey(lot),
    lot,
    difference: differenceOf.get(lot) ?? null,
    obstacle: counted === null ? null : (obstacleOf.get(keyOf(lot.name)) ?? null),
    posted: counted !== null && counted.posting !== null,
  });
  const wanted = all.places.filter(({ place }) => chosen.kind === 'all' || samePlace(place, chosen.place));
  const groups = wanted.map(({ place, lots }) => ({ title: place ?? NO_PLACE, rows: lots.map(rowOf) }));
  const listed = new Set(groups.flatMap(({ rows }) => rows.map(({ key }) => key)));
  const listedElsewhere = all.places.flatMap(({ lots }) => lots);
  const extra = besides.flatMap((key) => {
    const lot = ledger.studio.lotsByKey.get(key);
    if (lot === undefined || listed.has(rowKey(lot))) return [];
    return [rowOf(listedElsewhere.find((each) => each.lot === lot) ?? { lot, counted: null })];
  });
  return {
    stocktake,
    groups: extra.length === 0 ? groups : [...groups, { title: 'Found besides', rows: extra }],
    differences,
    obstacles: obstacles.map(({ message }) => message),
    places: all.places.map(({ place }) => place),
  };
}

function samePlace(a: string | null, b: string | null): boolean {
  return keyOf(a ?? '') === keyOf(b ?? '');
}

/** Rows that share a name are told apart by where they stand. */
function rowKey({ name, record: { place } }: Lot): string {
  return `${keyOf(name)} ${place.table} ${place.sheetRow}`;
}

export function rowsOf({ groups }: CountSheet): CountRow[] {
  return groups.flatMap(({ rows }) => rows);
}

/** Whether a row has been counted in this stocktake. */
export function isCounted({ difference, obstacle, posted }: CountRow): boolean {
  return difference !== null || obstacle !== null || posted;
}

/** The next row that is still to be counted, after a given one and then from the top; null where none is left. */
export function nextToCount(
  rows: readonly CountRow[],
  after: string,
  done: ReadonlySet<string>,
): string | null {
  const place = rows.findIndex(({ key }) => key === after);
  const round = [...rows.slice(place + 1), ...rows.slice(0, place + 1)];
  return round.find((row) => row.key !== after && !isCounted(row) && !done.has(row.key))?.key ?? null;
}

/** Why a lot that was found is not in the list, in words; null where it is in that of another place. */
export function besidesWords(lot: Lot, { ledger, today }: Books): string {
  if (leftOn(accountIn(ledger, lot), today).compare(0) <= 0) return 'by the workbook it is empty';
  return `by the workbook it is kept in ${lot.record.storedAt ?? 'no place that is known'}`;
}
