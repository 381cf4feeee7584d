import { type CarriedLot, type CarryOver, carryOver } from '../core/carry-over.ts';
import { check } from '../core/check.ts';
import { type Day, spokenDay } from '../core/day.ts';
import { groupBy } from '../core/group-by.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import type { Currency } from '../core/money.ts';
import type { Notice } from '../core/notice.ts';
import type { Row } from '../core/records.ts';
import type { Stock } from '../core/stock.ts';
import type { Lot } from '../core/studio.ts';
import { dayCell, setCell } from '../workbook/cell-write.ts';
import type { Change, WorkbookSnapshot } from '../workbook/port.ts';
import { withChanges } from '../workbook/with-changes.ts';
import { type TableRows, withoutRows } from '../workbook/without-rows.ts';
import type { Tables } from '../workbook/written-cells.ts';
import { booksOf } from './books.ts';
import { movementRows, newPosting, openMovements, type Refusal, refuse } from './writing-desk.ts';

/** A year carried over: what makes the new workbook out of the old one. Changes come first, then rows go. */
export interface CarriedOver {
  readonly ok: true;
  readonly day: Day;
  readonly currency: Currency;
  /** Null where nothing was folded, or Movements has no column for it. */
  readonly posting: string | null;
  readonly lots: readonly CarriedLot[];
  /** How many movements are folded into the Carried ones. */
  readonly folded: number;
  /** How many log entries go. */
  readonly entries: number;
  readonly kept: CarryOver['kept'];
  readonly changes: readonly Change[];
  /** Body rows as they are numbered before and after the changes, which only append. */
  readonly removed: readonly TableRows[];
  /** Notices of the old workbook on that day that the new one no longer gives, as what they are about is gone. */
  readonly gone: readonly Notice[];
}

/**
 * Carries a workbook's movements over to a new workbook as of a day: each lot keeps what it is, and one Carried
 * movement stands for what the new workbook can do without (see core/carry-over.ts).
 * @param from the name of the old file, which each Carried names
 */
export function carryYearOver(
  snapshot: WorkbookSnapshot,
  { from, day, by = null }: { readonly from: string; readonly day: Day; readonly by?: string | null },
  random: Random,
): CarriedOver | Refusal {
  const desk = openMovements(snapshot, day, random, ['Note']);
  if (!desk.ok) return desk;
  const { ledger, movementsTable, tables } = desk;
  const before = booksOf(snapshot);
  const doubtful = new Set(before.notices.map(({ at }) => placeKey(at)));
  const { lots, entries, kept } = carryOver(ledger, day, {
    file: from,
    newIdentifier: desk.newIdentifier,
    isInDoubt: (row) => doubtful.has(placeKey(row)),
    movements: before.reading.records.movements,
    canWriteOpened: (lot) => canWrite(tables, lot, 'Opened'),
  });
  const movements = lots.map(({ carried }) => carried);
  const costs = new Map(lots.map(({ carried, cost }) => [carried, cost]));
  const posting = newPosting(desk, movementsTable, movements);
  const changes = [
    ...desk.changes,
    ...movementRows(desk, movementsTable, movements, (movement) => costs.get(movement) ?? null, {
      name: posting,
      by,
    }),
    ...lots.flatMap(({ lot, opened }) => openedCell(tables, lot, opened)),
  ];
  const removed = [
    ...rowsOf(lots.flatMap(({ folded }) => folded.flatMap(({ record }) => record ?? []))),
    ...rowsOf(entries.map(({ record }) => record)),
  ];
  const after = booksOf(withoutRows(withChanges(snapshot, changes), removed));
  const old = check(ledger, day, before.notices);
  const fresh = check(after.ledger, day, after.notices);
  const differing = differenceBetween(old.stock, fresh.stock);
  if (differing !== null) {
    return refuse(
      `Carried over to ${spokenDay(day)}, ${differing} would not stay as it is, so nothing was written. ` +
        'Keep working in the old workbook, and report this with the workbook.',
    );
  }
  const said = new Set(fresh.notices.map(noticeKey));
  return {
    ok: true,
    day,
    currency: ledger.studio.settings.currency,
    posting,
    lots,
    folded: lots.reduce((count, { folded }) => count + folded.length, 0),
    entries: entries.length,
    kept,
    changes,
    removed,
    gone: old.notices.filter((each) => !said.has(noticeKey(each))),
  };
}

function placeKey({ place: { table, row } }: Pick<Row, 'place'>): string {
  return `${keyOf(table)} ${row}`;
}

function noticeKey({ code, subject, message }: Notice): string {
  return `${code} ${subject} ${message}`;
}

function canWrite(tables: Tables, { record }: Lot, header: string): boolean {
  const column = tables.get(record.place.table.toLowerCase())?.columns.get(header)?.column;
  return (
    column !== undefined &&
    !column.calculated &&
    !column.hasFormula(record.place.row) &&
    !record.unreadable.has(header)
  );
}

function openedCell(tables: Tables, { record }: Lot, opened: Day | null): Change[] {
  const table = tables.get(record.place.table.toLowerCase());
  if (table === undefined || opened === null) return [];
  return setCell(table, record.place.row, 'Opened', dayCell(opened));
}

/** The rows of records, table by table and from the top. */
function rowsOf(records: readonly Row[]): TableRows[] {
  return [...groupBy(records, ({ place }) => place.table)].map(([table, own]) => ({
    table,
    rows: own.map(({ place }) => place.row).toSorted((a, b) => a - b),
  }));
}

/** The first figure that is not the same in both, in words; null where all are. */
function differenceBetween(one: Stock, other: Stock): string | null {
  const lot = one.lots.find((figures, place) => {
    const same = other.lots[place];
    return same === undefined || lotText(figures) !== lotText(same);
  });
  if (lot !== undefined) return `lot ${lot.lot.name}`;
  const material = one.materials.find((figures, place) => {
    const same = other.materials[place];
    return same === undefined || materialText(figures) !== materialText(same);
  });
  return material === undefined ? null : `the material ${material.material.name}`;
}

function lotText({ lot, left, goodUntil, state, usable, worth }: Stock['lots'][number]): string {
  return [lot.name, left.toFraction(), goodUntil, state, usable, worth].join(' ');
}

function materialText(figures: Stock['materials'][number]): string {
  const { material, left, usable, onOrder, reorder, goodUntil, worth, shortages } = figures;
  return [material.name, left?.toFraction(), usable?.toFraction(), onOrder.toFraction(), goodUntil, worth]
    .concat(
      Object.values(reorder).map(String),
      shortages.map(({ missing }) => missing.toFraction()),
    )
    .join(' ');
}
