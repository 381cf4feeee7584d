import type { Day } from '../core/day.ts';
import { keyOf } from '../core/identifier.ts';
import { dayOfSerial } from '../core/serial-date.ts';
import type { Lot } from '../core/studio.ts';
import { RECORD_TABLES } from '../workbook/known-tables.ts';
import { locate } from '../workbook/located-table.ts';
import type { CellValue, CellWrite, Change, ColumnSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { identifierColumn, type TableDefinition } from '../workbook/table-definition.ts';
import { withChanges } from '../workbook/with-changes.ts';
import { lotCells } from '../workbook/written-cells.ts';
import { booksOf, readingOnly } from './books.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** A row that is to stand in the workbook, by the headers of its table. */
export interface RowToWrite {
  readonly definition: TableDefinition;
  /** Its identifier, by which it is known to stand there already. */
  readonly identifier: string;
  readonly cells: Readonly<Record<string, CellWrite>>;
}

/** The tables whose rows are records of what was done: what vanishes from them is missed. */
const RECORDS_OF_WORK: readonly TableDefinition[] = [RECORD_TABLES.entries, RECORD_TABLES.movements];

/** The rows of the treatment log and of Movements that stood in one snapshot and stand no longer in another. */
export function rowsGone(before: WorkbookSnapshot, after: WorkbookSnapshot): RowToWrite[] {
  return RECORDS_OF_WORK.flatMap((definition) => {
    const still = new Set(rowsOf(after, definition).map(({ identifier }) => keyOf(identifier)));
    return rowsOf(before, definition).filter(({ identifier }) => !still.has(keyOf(identifier)));
  });
}

/** The rows of a table that have an identifier, as they could be written again. */
function rowsOf(snapshot: WorkbookSnapshot, definition: TableDefinition): RowToWrite[] {
  const table = snapshot.tables.find(({ name }) => keyOf(name) === keyOf(definition.name));
  const own = identifierColumn(definition);
  if (table === undefined || own === null) return [];
  const identifiers = locate(definition, table, snapshot.dateSystem).columns.get(own.header)?.column;
  return Array.from({ length: table.rowCount }, (_, row) => row).flatMap((row) => {
    const identifier = identifiers?.values[row];
    if (typeof identifier !== 'string' || identifier.trim() === '') return [];
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
 */
export function writeAgain(
  snapshot: WorkbookSnapshot,
  rows: readonly RowToWrite[],
  today: Day,
): { readonly ok: true; readonly changes: readonly Change[]; readonly written: number } | Refusal {
  const obstacle = readingOnly(booksOf(snapshot).reading);
  if (obstacle !== null) return refuse(obstacle);
  const appends: Change[] = [];
  let written = 0;
  for (const definition of RECORDS_OF_WORK) {
    const table = snapshot.tables.find(({ name }) => keyOf(name) === keyOf(definition.name));
    const there = new Set(rowsOf(snapshot, definition).map(({ identifier }) => keyOf(identifier)));
    const missing = rows.filter((row) => row.definition === definition && !there.has(keyOf(row.identifier)));
    if (missing.length === 0) continue;
    if (table === undefined) return refuse(`The table ${definition.name} is not here any more.`);
    const headers = new Set(
      table.columns.filter(({ calculated }) => !calculated).map(({ header }) => header),
    );
    written += missing.length;
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
    written,
    changes: [...appends, ...lotCells(after.reading.tables, after.ledger, lots, today)],
  };
}
