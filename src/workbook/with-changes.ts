import { serialOfDay } from '../core/serial-date.ts';
import type {
  CellValue,
  CellWrite,
  Change,
  ColumnSnapshot,
  NewColumn,
  NumberLook,
  TableSnapshot,
  WorkbookSnapshot,
} from './port.ts';

/**
 * The snapshot that a workbook would give after changes, formulas that grow with a table aside: their cells are
 * blank, as nothing here calculates.
 * @throws where a table, column or row isn't there: a mistake of the caller
 */
export function withChanges(snapshot: WorkbookSnapshot, changes: readonly Change[]): WorkbookSnapshot {
  const drafts = new Map<string, TableDraft>();
  for (const change of changes) {
    const table = snapshot.tables.find(({ name }) => name === change.table);
    if (table === undefined) throw new Error(`There is no table ${change.table}`);
    const draft = drafts.get(change.table) ?? draftOf(table);
    drafts.set(change.table, draft);
    if (change.kind === 'append') append(draft, change.rows, snapshot);
    else if (change.kind === 'add column') addColumn(draft, change.column);
    else set(draft, change.row, change.column, change.cell, snapshot);
  }
  return {
    ...snapshot,
    tables: snapshot.tables.map((table) => {
      const draft = drafts.get(table.name);
      return draft === undefined ? table : tableOf(draft);
    }),
  };
}

interface ColumnDraft {
  readonly before: ColumnSnapshot;
  readonly values: CellValue[];
  /** Of the cells that were written; the others look as before. */
  readonly looks: Map<number, NumberLook>;
}

interface TableDraft {
  readonly before: TableSnapshot;
  readonly columns: ColumnDraft[];
}

function draftOf(before: TableSnapshot): TableDraft {
  return {
    before,
    columns: before.columns.map((column) => ({
      before: column,
      values: [...column.values],
      looks: new Map(),
    })),
  };
}

function append(
  draft: TableDraft,
  rows: readonly Readonly<Record<string, CellWrite>>[],
  snapshot: WorkbookSnapshot,
): void {
  let next = lengthWithoutBlankEnd(draft);
  for (const row of rows) {
    for (const column of draft.columns) if (next >= column.values.length) column.values.push(null);
    for (const [header, cell] of Object.entries(row)) set(draft, next, header, cell, snapshot);
    next += 1;
  }
}

function addColumn({ before, columns }: TableDraft, { header, format }: NewColumn): void {
  if (columns.some((each) => each.before.header.toLowerCase() === header.toLowerCase())) {
    throw new Error(`There is a column ${header} in ${before.name} already`);
  }
  const look = lookOfNewColumn(format);
  const values: CellValue[] = Array.from(
    { length: columns[0]?.values.length ?? before.rowCount },
    () => null,
  );
  const column = { header, values, look: () => look, hasFormula: () => false, calculated: false };
  columns.push({ before: column, values: [...values], looks: new Map() });
}

/** How numbers are shown in a column that was added. */
export function lookOfNewColumn(format: NewColumn['format']): NumberLook {
  if (format === 'day') return 'date';
  return format === 'percent' ? 'percent' : 'plain';
}

/** How many rows there are up to the last that holds anything. */
function lengthWithoutBlankEnd({ columns }: TableDraft): number {
  return Math.max(0, ...columns.map(({ values }) => values.findLastIndex((value) => value !== null) + 1));
}

function set(
  { before, columns }: TableDraft,
  row: number,
  header: string,
  cell: CellWrite,
  { dateSystem }: WorkbookSnapshot,
): void {
  const column = columns.find((each) => each.before.header === header);
  if (column === undefined || row < 0 || row >= column.values.length) {
    throw new Error(`There is no cell ${header} in row ${row} of ${before.name}`);
  }
  if (cell.kind === 'text') column.values[row] = cell.text;
  else if (cell.kind === 'number') column.values[row] = cell.number;
  else column.values[row] = cell.kind === 'day' ? serialOfDay(cell.day, dateSystem) : null;
  if (cell.kind === 'day') column.looks.set(row, 'date');
}

function tableOf({ before, columns }: TableDraft): TableSnapshot {
  const { below: _, ...rest } = before;
  const rowCount = columns[0]?.values.length ?? before.rowCount;
  return {
    ...(rowCount === before.rowCount ? before : rest),
    rowCount,
    columns: columns.map(({ before: column, values, looks }) => ({
      header: column.header,
      values,
      look: (row) => looks.get(row) ?? (row < before.rowCount ? column.look(row) : 'plain'),
      hasFormula: (row) => (row < before.rowCount ? column.hasFormula(row) : column.calculated),
      calculated: column.calculated,
    })),
  };
}
