import { addDays, type Day, isoDay } from '../core/day.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import { accountIn, type Ledger, post } from '../core/ledger.ts';
import { leftOn } from '../core/lot-account.ts';
import type { Movement } from '../core/movement.ts';
import { nameForMovement } from '../core/movement-name.ts';
import type { CountRecord } from '../core/records.ts';
import { openStocktake, stocktakesOf } from '../core/stocktake.ts';
import {
  type CountDifference,
  countMovement,
  differencesOf,
  NO_DIFFERENCE,
} from '../core/stocktake-differences.ts';
import type { Lot } from '../core/studio.ts';
import { appendRows, dayCell, type NewRow, quantityCell, setCell, textCell } from '../workbook/cell-write.ts';
import { RECORD_TABLES } from '../workbook/known-tables.ts';
import type { Change, WorkbookSnapshot } from '../workbook/port.ts';
import { asCounted, type Found, type LotCounted, whatWasFound } from './lots-found.ts';
import { nearest } from './nearest-name.ts';
import {
  movementChanges,
  newPosting,
  openDesk,
  openMovements,
  type Refusal,
  refuse,
  tableNamed,
  type Written,
} from './writing-desk.ts';

const COUNTS = RECORD_TABLES.counts;

/** What was counted, to be kept until it is posted. */
export interface LotsToCount {
  /** Null for the stocktake under way, else for a new one named after the day and the place. */
  readonly stocktake: string | null;
  /** The place that a new stocktake is named after; where it isn't given, the one that all lots counted share. */
  readonly place?: string | null;
  readonly counted: readonly LotCounted[];
  readonly date: Day;
  readonly by: string | null;
}

/** What counting, or posting what was counted, did. */
export interface CountWritten extends Written {
  readonly stocktake: string;
  /** Per lot of this call what was counted, what was expected and what differs. */
  readonly differences: readonly CountDifference[];
}

/**
 * Writes what was counted into the table Counts, where it waits to be posted; a lot that is counted again replaces its
 * row. No figure of stock changes.
 */
export function countLots(
  snapshot: WorkbookSnapshot,
  request: LotsToCount,
  today: Day,
  random: Random,
): CountWritten | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  if (!desk.tables.has(COUNTS.name.toLowerCase())) return refuse(NO_COUNTS);
  const table = tableNamed(desk, COUNTS.name);
  if ('ok' in table) return table;
  const { ledger } = desk;
  const found = whatWasFound(ledger, request, today);
  if ('ok' in found) return found;
  const stocktake = nameOfStocktake(ledger, request, found);
  const dayBefore = addDays(request.date, -1);
  const changes: Change[] = [];
  const rows: NewRow[] = [];
  for (const { lot, quantity, unit, gross, note } of found) {
    const account = accountIn(ledger, lot);
    const cells = {
      countedOn: dayCell(request.date),
      quantity: quantityCell(quantity),
      unit: textCell(unit.name),
      gross: quantityCell(gross),
      leftThen: quantityCell(leftOn(account, request.date)),
      leftDayBefore: quantityCell(leftOn(account, dayBefore)),
      by: textCell(request.by),
      note: textCell(note),
    };
    const waiting = waitingRow(ledger, stocktake, lot);
    if (waiting === undefined) {
      const names = { count: textCell(desk.newIdentifier(COUNTS.letter ?? '')), lot: textCell(lot.name) };
      rows.push({ ...names, stocktake: textCell(stocktake), ...cells });
      continue;
    }
    for (const [field, cell] of Object.entries(cells)) {
      const { header } = COUNTS.columns[field as keyof typeof cells];
      changes.push(...setCell(table, waiting.place.row, header, cell));
    }
  }
  return {
    ok: true,
    stocktake,
    differences: found.map((each) => asCounted(ledger, stocktake, each, request.date)),
    posting: null,
    drawing: { ledger, movements: [], entries: [], shortfalls: [] },
    changes: [...desk.changes, ...changes, ...appendRows(table, rows)],
    remarks: [],
  };
}

const NO_COUNTS =
  'This workbook has no table Counts, in which what is counted waits to be posted: bring the tables up to date, ' +
  'or count and post in one go.';

/** The row of a lot in a stocktake that is not posted yet. */
function waitingRow(ledger: Ledger, stocktake: string, lot: Lot): CountRecord | undefined {
  return ledger.studio.counts.find(
    (record) =>
      record.posting === null &&
      keyOf(record.stocktake) === keyOf(stocktake) &&
      keyOf(record.lot) === keyOf(lot.name),
  );
}

/** The name under which something is counted: the one given, that of the stocktake under way, or a new one. */
function nameOfStocktake(ledger: Ledger, request: LotsToCount, found: readonly Found[]): string {
  const given = request.stocktake?.trim() ?? '';
  const names = stocktakesOf(ledger).map(({ name }) => name);
  if (given !== '') return names.find((name) => keyOf(name) === keyOf(given)) ?? given;
  return openStocktake(ledger) ?? newName(names, request, found);
}

/** The day and the place; with a number behind it where an earlier stocktake has that name. */
function newName(
  names: readonly string[],
  { date, place }: Pick<LotsToCount, 'date' | 'place'>,
  found: readonly Found[],
): string {
  const kept = new Set(found.map(({ lot }) => lot.record.storedAt ?? ''));
  const [only = ''] = kept.size === 1 ? kept : [];
  const wanted = `${isoDay(date)} ${place ?? only}`.trim();
  const taken = new Set(names.map(keyOf));
  let name = wanted;
  for (let number = 2; taken.has(keyOf(name)); number += 1) name = `${wanted} (${number})`;
  return name;
}

/**
 * Posts what a stocktake found: one Count for each lot that differs, all in one posting; its rows say which. Rows
 * that can't be posted stay waiting, and the remarks say why.
 */
export function postStocktake(
  snapshot: WorkbookSnapshot,
  { stocktake, by }: { readonly stocktake: string | null; readonly by: string | null },
  today: Day,
  random: Random,
): CountWritten | Refusal {
  const desk = openMovements(snapshot, today, random, ['Posting']);
  if (!desk.ok) return desk;
  if (!desk.tables.has(COUNTS.name.toLowerCase())) return refuse(NO_COUNTS);
  const table = tableNamed(desk, COUNTS.name, ['Posting']);
  if ('ok' in table) return table;
  const name = stocktakeMeant(desk.ledger, stocktake);
  if (typeof name !== 'string') return name;
  const { differences, obstacles } = differencesOf(desk.ledger, today, name);
  const counts = differences.map((each) => ({ each, count: countOf(desk, each) }));
  const movements = counts.flatMap(({ count }) => count ?? []);
  const written = postCounts(desk, movements, by);
  const marks = counts.flatMap(({ each, count }) => {
    const mark = count === null ? NO_DIFFERENCE : written.posting;
    return setCell(table, each.record.place.row, 'Posting', textCell(mark));
  });
  return {
    ...written,
    stocktake: name,
    differences,
    changes: [...desk.changes, ...marks, ...written.changes],
    remarks: obstacles.map(({ message }) => `Not posted: ${message}`),
  };
}

/** The stocktake to post: the one named, else the one under way; '' where nothing waits. */
function stocktakeMeant(ledger: Ledger, stocktake: string | null): string | Refusal {
  const given = stocktake?.trim() ?? '';
  if (given === '') return openStocktake(ledger) ?? '';
  const names = stocktakesOf(ledger).map(({ name }) => name);
  const known = names.find((name) => keyOf(name) === keyOf(given));
  if (known !== undefined) return known;
  const near = nearest(given, names);
  const hint = near.length === 0 ? 'Count something in it first.' : `Did you mean ${near.join(' or ')}?`;
  return refuse(`There is no stocktake called ${given} in Counts. ${hint}`);
}

/** Posts counts at once, without keeping them in the table Counts: the difference to what is left on their day. */
export function countNow(
  snapshot: WorkbookSnapshot,
  request: LotsToCount,
  today: Day,
  random: Random,
): CountWritten | Refusal {
  const desk = openMovements(snapshot, today, random, []);
  if (!desk.ok) return desk;
  const found = whatWasFound(desk.ledger, request, today);
  if ('ok' in found) return found;
  const stocktake = request.stocktake?.trim() || newName([], request, found);
  const differences = found.map((each) => asCounted(desk.ledger, stocktake, each, request.date));
  const movements = differences.flatMap((each) => countOf(desk, each) ?? []);
  const written = postCounts(desk, movements, request.by);
  return { ...written, stocktake, differences, changes: [...desk.changes, ...written.changes], remarks: [] };
}

type MovementsDesk = Extract<ReturnType<typeof openMovements>, { readonly ok: true }>;

/** The Count that a difference is posted as; null where nothing differs. */
function countOf({ ledger, newIdentifier }: MovementsDesk, difference: CountDifference): Movement | null {
  const { lot, record } = difference;
  const name = nameForMovement(accountIn(ledger, lot), record.countedOn, newIdentifier);
  return countMovement(difference, name);
}

function postCounts(
  desk: MovementsDesk,
  movements: readonly Movement[],
  by: string | null,
): Omit<Written, 'remarks'> {
  const ledger = post(desk.ledger, movements);
  const posting = newPosting(desk, desk.movementsTable, movements);
  return {
    ok: true,
    posting,
    drawing: { ledger, movements, entries: [], shortfalls: [] },
    changes: movementChanges(desk, desk.movementsTable, ledger, movements, { name: posting, by }),
  };
}
