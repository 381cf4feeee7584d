import type { Day } from '../core/day.ts';
import type { Drawing } from '../core/draw.ts';
import { keyOf } from '../core/identifier.ts';
import { dayOfSerial } from '../core/serial-date.ts';
import type { Lot } from '../core/studio.ts';
import { text } from '../workbook/cell.ts';
import { quantityCell } from '../workbook/cell-write.ts';
import { RECORD_TABLES } from '../workbook/known-tables.ts';
import { locate } from '../workbook/located-table.ts';
import type { CellValue, CellWrite, Change, ColumnSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { identifierColumn, type TableDefinition } from '../workbook/table-definition.ts';
import { withChanges } from '../workbook/with-changes.ts';
import { drawnCells, lotCells } from '../workbook/written-cells.ts';
import { booksOf, readingOnly, type WorkbookBooks } from './books.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** A row that is to stand in the workbook, by the headers of its table. */
export interface RowToWrite {
  readonly definition: TableDefinition;
  /** Its identifier, by which it is known to stand there already. */
  readonly identifier: string;
  readonly cells: Readonly<Record<string, CellWrite>>;
}

/** How far a log entry is drawn, and for which extent: see Drawing. */
export type EntryMark = Drawing['entries'][number];

/** The tables whose rows are records of what was done: what vanishes from them is missed. */
const RECORDS_OF_WORK: readonly TableDefinition[] = [RECORD_TABLES.entries, RECORD_TABLES.movements];

/** The rows of the treatment log and of Movements that stood in one snapshot and stand no longer in another. */
export function rowsGone(before: WorkbookSnapshot, after: WorkbookSnapshot): RowToWrite[] {
  return RECORDS_OF_WORK.flatMap((definition) => {
    const still = new Set(rowsOf(after, definition).map(({ identifier }) => keyOf(identifier)));
    return rowsOf(before, definition).filter(({ identifier }) => !still.has(keyOf(identifier)));
  });
}

/** Those of some rows that stand nowhere in a snapshot: one that vanished may have come back. */
export function rowsMissing(rows: readonly RowToWrite[], snapshot: WorkbookSnapshot): RowToWrite[] {
  return RECORDS_OF_WORK.flatMap((definition) => {
    const there = new Set(rowsOf(snapshot, definition).map(({ identifier }) => keyOf(identifier)));
    return rows.filter((row) => row.definition === definition && !there.has(keyOf(row.identifier)));
  });
}

/** The rows of a table that have an identifier, as they could be written again. */
function rowsOf(snapshot: WorkbookSnapshot, definition: TableDefinition): RowToWrite[] {
  const table = snapshot.tables.find(({ name }) => keyOf(name) === keyOf(definition.name));
  const own = identifierColumn(definition);
  if (table === undefined || own === null) return [];
  const identifiers = locate(definition, table, snapshot.dateSystem).columns.get(own.header)?.column;
  return Array.from({ length: table.rowCount }, (_, row) => row).flatMap((row) => {
    const identifier = identifierIn(identifiers?.values[row]);
    if (identifier === null) return [];
    return [
      {
        definition,
        identifier,
        // Worked out only where it is wanted: most rows are still there.
        get cells() {
          return Object.fromEntries(
            table.columns.flatMap((column) => {
              const cell = column.hasFormula(row) ? null : cellAgain(column, row, snapshot);
              return cell === null ? [] : [[column.header, cell]];
            }),
          );
        },
      },
    ];
  });
}

/** The identifier in a cell, as it is read: one that was typed as a number is text all the same. */
function identifierIn(value: CellValue | undefined): string | null {
  const read = text.safeParse(value ?? null);
  return read.success ? read.data : null;
}

function cellAgain(column: ColumnSnapshot, row: number, { dateSystem }: WorkbookSnapshot): CellWrite | null {
  const value: CellValue = column.values[row] ?? null;
  if (typeof value === 'string') return { kind: 'text', text: value };
  if (typeof value === 'boolean') return { kind: 'text', text: value ? 'TRUE' : 'FALSE' };
  if (typeof value !== 'number') return null;
  const day = column.look(row) === 'date' ? dayOfSerial(value, dateSystem) : null;
  return day === null ? { kind: 'number', number: value } : { kind: 'day', day };
}

/** The rows that changes append, as far as they have an identifier: what a posting means to write. */
export function rowsAppended(changes: readonly Change[]): RowToWrite[] {
  return RECORDS_OF_WORK.flatMap((definition) => {
    const own = identifierColumn(definition);
    return changes
      .filter((change) => change.kind === 'append' && keyOf(change.table) === keyOf(definition.name))
      .flatMap((change) => (change.kind === 'append' ? change.rows : []))
      .flatMap((cells) => {
        const cell = Object.entries(cells).find(
          ([header]) => keyOf(header) === keyOf(own?.header ?? ''),
        )?.[1];
        return cell?.kind === 'text' ? [{ definition, identifier: cell.text, cells }] : [];
      });
  });
}

/**
 * The changes that write rows which are not there, and bring the written cells of the lots of these rows up to date.
 * Rows that are there already are left alone, so nothing is written twice.
 * @param marks what the log entries that stand there already are to say of how far they are drawn
 */
export function writeAgain(
  snapshot: WorkbookSnapshot,
  rows: readonly RowToWrite[],
  today: Day,
  marks: readonly EntryMark[] = [],
): { readonly ok: true; readonly changes: readonly Change[]; readonly written: number } | Refusal {
  const before = booksOf(snapshot);
  const obstacle = readingOnly(before.reading);
  if (obstacle !== null) return refuse(obstacle);
  const appends: Change[] = [];
  const missingAll = rowsMissing(rows, snapshot);
  for (const definition of RECORDS_OF_WORK) {
    const table = snapshot.tables.find(({ name }) => keyOf(name) === keyOf(definition.name));
    const missing = missingAll.filter((row) => row.definition === definition);
    if (missing.length === 0) continue;
    if (table === undefined) return refuse(`The table ${definition.name} is not here any more.`);
    const headers = new Set(
      table.columns.filter(({ calculated }) => !calculated).map(({ header }) => header),
    );
    appends.push({
      kind: 'append',
      table: table.name,
      rows: missing.map(({ cells }) =>
        Object.fromEntries(Object.entries(cells).filter(([header]) => headers.has(header))),
      ),
    });
  }
  const after = booksOf(withChanges(snapshot, appends));
  const identifiers = new Set(rows.map(({ identifier }) => keyOf(identifier)));
  const lots = new Set<Lot>();
  for (const { lot, postings } of after.ledger.accounts.values()) {
    if (postings.some(({ movement }) => movement.name !== null && identifiers.has(keyOf(movement.name)))) {
      lots.add(lot);
    }
  }
  return {
    ok: true,
    written: missingAll.length,
    changes: [
      ...appends,
      ...markChanges(before, marks),
      ...lotCells(after.reading.tables, after.ledger, lots, today),
    ],
  };
}

/** The marks on the entries that stand in the treatment log; an entry whose row is missing brings its own. */
function markChanges({ ledger, reading }: WorkbookBooks, marks: readonly EntryMark[]): Change[] {
  return marks.flatMap(({ entry: { key }, drawn, extent }) => {
    const entry = key === null ? undefined : ledger.studio.entries.find((each) => each.key === key);
    if (entry === undefined) return [];
    return drawnCells(reading.tables, entry, drawn, quantityCell(drawn === null ? null : extent));
  });
}
