import { type Area, intersection } from './cell-area.ts';
import type { Editing } from './editing.ts';
import { HostError, invalidArgument, wrongArraySize } from './host-error.ts';
import { deleteUp, insertDown } from './insert-delete.ts';
import {
  bodyArea,
  cellAt,
  findTable,
  newId,
  rowBelowBody,
  type Sheet,
  setCell,
  type Table,
  tableArea,
  tablesIn,
} from './memory-workbook.ts';
import { isEmptyArea } from './sheet-cells.ts';
import { growTable } from './table-growth.ts';
import { uniqueHeader, writeCells } from './write-cells.ts';

const TABLE_NAME = /^[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}$/u;

/** Gives a table another name. Throws where it is none, or another table's. */
export function renameTable(editing: Editing, table: Table, name: unknown): void {
  if (typeof name !== 'string' || !TABLE_NAME.test(name) || /^(?:[a-z]{1,3}\d+|[rc])$/i.test(name)) {
    throw invalidArgument();
  }
  const other = findTable(editing.workbook, name);
  if (other && other !== table) throw new HostError('InvalidArgument', 'Another table has this name.');
  table.name = name;
}

/** Writes the headers of a table from its first row on, text and no two alike. */
function makeHeaders(sheet: Sheet, of: Area, texts: readonly string[]): Table['columns'] {
  const names: string[] = [];
  return texts.map((text, index) => {
    const name = uniqueHeader(text, names, index);
    names.push(name);
    const { numberFormat, format } = cellAt(sheet, of.row, of.column + index);
    const looks = { numberFormat, ...(format === undefined ? {} : { format }) };
    setCell(sheet, of.row, of.column + index, { value: name, ...looks });
    return { id: index + 1, name };
  });
}

/**
 * Makes a table of an area. Without headers a header row is put in above; a header alone gets one blank row.
 * Throws where it would overlap another table.
 */
export function addTable(editing: Editing, sheet: Sheet, of: Area, hasHeaders: boolean): Table {
  const { workbook } = editing;
  if (tablesIn(workbook, sheet, of).length > 0) {
    throw new HostError('InvalidArgument', 'A table cannot overlap another table.');
  }
  if (!hasHeaders) insertDown(editing, sheet, { ...of, rows: 1 });
  const below = { ...of, row: of.row + 1, rows: 1 };
  if (hasHeaders && of.rows === 1 && !isEmptyArea(sheet, below)) insertDown(editing, sheet, below);
  let number = 1;
  while (findTable(workbook, `Table${number}`)) number++;
  const texts = Array.from({ length: of.columns }, (_, index) =>
    hasHeaders ? String(cellAt(sheet, of.row, of.column + index).value) : '',
  );
  const table: Table = {
    id: newId(workbook),
    name: `Table${number}`,
    sheet,
    row: of.row,
    column: of.column,
    columns: makeHeaders(sheet, of, texts),
    bodyRows: Math.max(1, hasHeaders ? of.rows - 1 : of.rows),
    showHeaders: true,
    showTotals: false,
    style: 'TableStyleMedium2',
    showBandedRows: true,
    showBandedColumns: false,
    showFilterButton: true,
    highlightFirstColumn: false,
    highlightLastColumn: false,
  };
  workbook.tables.push(table);
  editing.tell({ kind: 'table-added', table });
  return table;
}

/**
 * Makes a table longer or shorter, wider or narrower. Documented for Table.resize: the header row must stay in the
 * same row, and the new range must overlap the old one. A totals row moves to the new end: what stood in its way is
 * overwritten only where that was blank, else it is refused here.
 */
export function resizeTable(editing: Editing, table: Table, to: Area): void {
  const { sheet } = table;
  const old = tableArea(table);
  const others = tablesIn(editing.workbook, sheet, to).filter((each) => each !== table);
  const fixed = (table.showHeaders ? 1 : 0) + (table.showTotals ? 1 : 0);
  const refused =
    to.row !== table.row || others.length > 0 || to.rows <= fixed || intersection(to, old) === null;
  if (refused) throw invalidArgument();
  if (to.column !== table.column)
    throw invalidArgument('This host resizes a table only to the right and down.');
  if (table.showTotals && (to.rows !== old.rows || to.columns !== old.columns)) {
    moveTotals(table, to);
  }
  const wider = Math.max(0, to.columns - table.columns.length);
  const bodyRows = to.rows - fixed;
  const longer = bodyRows - table.bodyRows;
  if (longer > 0) growTable(table, longer);
  else table.bodyRows = bodyRows;
  const kept = table.columns.slice(0, to.columns);
  const nextId = Math.max(...table.columns.map(({ id }) => id)) + 1;
  table.columns = kept;
  for (let index = kept.length; index < kept.length + wider; index++) {
    const at = to.column + index;
    const name = uniqueHeader(
      String(cellAt(sheet, table.row, at).value),
      table.columns.map((each) => each.name),
      index,
    );
    if (table.showHeaders) setCell(sheet, table.row, at, { ...cellAt(sheet, table.row, at), value: name });
    table.columns = [...table.columns, { id: nextId + index - kept.length, name }];
  }
}

function moveTotals(table: Table, to: Area): void {
  const { sheet } = table;
  const from = rowBelowBody(table);
  const end = to.row + to.rows - 1;
  if (to.columns !== table.columns.length)
    throw invalidArgument('This host moves a totals row only up or down.');
  if (end > from && !isEmptyArea(sheet, { ...to, row: from + 1, rows: end - from })) throw invalidArgument();
  table.columns.forEach((_, index) => {
    const column = table.column + index;
    const cell = cellAt(sheet, from, column);
    setCell(sheet, from, column, { value: '', numberFormat: 'General' });
    setCell(sheet, end, column, cell);
  });
}

/**
 * Puts rows into a table before a body row, or at its end (null), and gives the index of the first one.
 * Values may be one row or several; without values one blank row is put in.
 */
export function addTableRows(editing: Editing, table: Table, index: number | null, values: unknown): number {
  const columns = table.columns.length;
  const rows = readRows(values, columns);
  const at = index === null || index === -1 ? table.bodyRows : index;
  if (!Number.isInteger(at) || at < 0 || at > table.bodyRows) throw invalidArgument();
  const place = { ...bodyArea(table), row: bodyArea(table).row + at, rows: rows.length };
  const free = editing.workbook.tables.every(
    (each) => each === table || each.sheet !== table.sheet || intersection(tableArea(each), place) === null,
  );
  if (at === table.bodyRows && !table.showTotals) {
    if (!(free && isEmptyArea(table.sheet, place))) insertDown(editing, table.sheet, place);
    growTable(table, rows.length);
  } else {
    // Nobody is told of the shift as such, but once, below.
    insertDown({ ...editing, tell: () => undefined }, table.sheet, place);
  }
  writeCells({ ...editing, tell: () => undefined }, table.sheet, place, rows, false);
  editing.tell({
    kind: 'cells',
    sheet: table.sheet,
    area: place,
    changeType: 'RowInserted',
    shift: 'ShiftCellDown',
    tables: [{ table, changeType: 'RowInserted', area: place }],
  });
  return at;
}

function readRows(values: unknown, columns: number): readonly (readonly unknown[])[] {
  const blank = (): null[] => Array.from({ length: columns }, () => null);
  if (values === null || values === undefined) return [blank()];
  if (!Array.isArray(values)) return [Array.from({ length: columns }, () => values)];
  const rows: readonly unknown[] = Array.isArray(values[0]) ? values : [values];
  if (!rows.every((row) => Array.isArray(row) && row.length === columns)) throw wrongArraySize();
  return rows as readonly (readonly unknown[])[];
}

/** Takes rows out of a table's body. The table keeps one, blank, where all go. */
export function deleteTableRows(editing: Editing, table: Table, index: number, count: number): void {
  const whole = Number.isInteger(index) && Number.isInteger(count);
  if (!whole || index < 0 || count < 1 || index + count > table.bodyRows) throw invalidArgument();
  const body = bodyArea(table);
  deleteUp(editing, table.sheet, { ...body, row: body.row + index, rows: count });
}

/** Shows or hides the totals row. To show it the row below the body must be free, or rows are pushed down. */
export function showTotals(editing: Editing, table: Table, shown: boolean): void {
  if (shown === table.showTotals) return;
  const place = { ...bodyArea(table), row: rowBelowBody(table), rows: 1 };
  if (shown) {
    if (!isEmptyArea(table.sheet, place)) insertDown(editing, table.sheet, place);
    setCell(table.sheet, place.row, place.column, { value: 'Total', numberFormat: 'General' });
    table.showTotals = true;
  } else {
    table.showTotals = false;
    table.columns.forEach((_, column) => {
      setCell(table.sheet, place.row, place.column + column, { value: '', numberFormat: 'General' });
    });
  }
}
