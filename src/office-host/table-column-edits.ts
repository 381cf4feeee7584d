import { type Area, MAX_COLUMNS } from './cell-area.ts';
import type { Editing } from './editing.ts';
import { insertDeleteConflict, invalidArgument, notImplemented } from './host-error.ts';
import { cellAt, setCell, type Table, tableArea, tablesIn } from './memory-workbook.ts';
import { isEmptyArea } from './sheet-cells.ts';
import { uniqueHeader } from './write-cells.ts';

/**
 * Adds a blank column at the end of a table and gives its id. It looks like the column before it. What happens to
 * cells that stand right of the table isn't documented: here nothing may stand there.
 */
export function addTableColumn(editing: Editing, table: Table, name: unknown): number {
  const { sheet } = table;
  const whole = tableArea(table);
  const place: Area = { ...whole, column: whole.column + whole.columns, columns: 1 };
  if (place.column >= MAX_COLUMNS) throw invalidArgument();
  if (tablesIn(editing.workbook, sheet, place).length > 0 || !isEmptyArea(sheet, place)) {
    throw insertDeleteConflict();
  }
  const others = table.columns.map((column) => column.name);
  if (name !== null && typeof name !== 'string') throw invalidArgument();
  const header = uniqueHeader(name ?? '', others, others.length);
  if (name !== null && header !== name) throw invalidArgument();
  const id = Math.max(...table.columns.map((column) => column.id)) + 1;
  table.columns = [...table.columns, { id, name: header }];
  for (let row = place.row; row < place.row + place.rows; row++) {
    const { numberFormat, format } = cellAt(sheet, row, place.column - 1);
    const isHeader = table.showHeaders && row === table.row;
    setCell(sheet, row, place.column, {
      value: isHeader ? header : '',
      numberFormat,
      ...(format === undefined ? {} : { format }),
    });
  }
  tell(editing, table, place, 'ColumnInserted');
  return id;
}

/** Takes the last column of a table away; nothing may stand right of it, as the documentation doesn't say what becomes of it. */
export function deleteTableColumn(editing: Editing, table: Table, index: number): void {
  const { sheet } = table;
  const whole = tableArea(table);
  if (index !== table.columns.length - 1 || index === 0) {
    throw notImplemented('TableColumn.delete of another column than the last of several');
  }
  const place: Area = { ...whole, column: whole.column + index, columns: 1 };
  const beside = { ...place, column: place.column + 1 };
  if (tablesIn(editing.workbook, sheet, beside).length > 0 || !isEmptyArea(sheet, beside)) {
    throw insertDeleteConflict();
  }
  table.columns = table.columns.slice(0, -1);
  for (let row = place.row; row < place.row + place.rows; row++) {
    setCell(sheet, row, place.column, { value: '', numberFormat: 'General' });
  }
  tell(editing, table, place, 'ColumnDeleted');
}

function tell(
  editing: Editing,
  table: Table,
  place: Area,
  changeType: 'ColumnInserted' | 'ColumnDeleted',
): void {
  const tables = [{ table, changeType, area: place }];
  editing.tell({ kind: 'cells', sheet: table.sheet, area: place, changeType, shift: 'None', tables });
}
