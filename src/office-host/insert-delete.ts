import { type Area, contains, intersection, lastRow, MAX_COLUMNS } from './cell-area.ts';
import { followMovedCharts } from './charts.ts';
import type { Editing, TableChange } from './editing.ts';
import { followMovedCells } from './formula-references.ts';
import { insertDeleteConflict } from './host-error.ts';
import {
  bodyArea,
  cellAt,
  isBlank,
  rowBelowBody,
  type Sheet,
  setCell,
  type Table,
  tableArea,
} from './memory-workbook.ts';
import { pullUp, pushDown } from './sheet-cells.ts';
import { movedDown, movedUp } from './shift-areas.ts';
import { dressRows } from './table-growth.ts';

/** The tables of a sheet whose cells would move or go. Refuses where only some of a table's columns would. */
function tablesConcerned({ workbook }: Editing, sheet: Sheet, at: Area): Table[] {
  const below = workbook.tables.filter((table) => {
    const whole = tableArea(table);
    const columns = intersection({ ...at, row: whole.row, rows: 1 }, { ...whole, rows: 1 });
    return table.sheet === sheet && lastRow(whole) >= at.row && columns !== null;
  });
  const covered = (table: Table): boolean =>
    contains({ ...at, row: table.row, rows: 1 }, { ...tableArea(table), rows: 1 });
  if (!below.every(covered)) throw insertDeleteConflict();
  return below;
}

function moveTheRest(editing: Editing, sheet: Sheet, shift: ReturnType<typeof movedDown>): void {
  sheet.validations = sheet.validations.flatMap((each) => {
    const moved = shift(each.area);
    return moved === null ? [] : [{ ...each, area: moved }];
  });
  followMovedCells(editing.workbook, sheet, shift);
  followMovedCharts(editing.workbook, sheet, shift);
  editing.moved(sheet, shift);
}

/** A row put in outside a table looks like the row above. */
function dressLikeAbove(sheet: Sheet, at: Area): void {
  if (at.row === 0) return;
  const above = sheet.rows[at.row - 1] ?? [];
  for (let column = at.column; column < Math.min(at.column + at.columns, above.length); column++) {
    const { numberFormat, format } = cellAt(sheet, at.row - 1, column);
    if (numberFormat === 'General' && format === undefined) continue;
    for (let row = at.row; row <= lastRow(at); row++) {
      setCell(sheet, row, column, { value: '', numberFormat, ...(format === undefined ? {} : { format }) });
    }
  }
}

/**
 * Puts blank cells in at an area; those below move down. A table whose columns are all among them, and which has a
 * row there below its header, gets longer (also right above its totals row).
 */
export function insertDown(editing: Editing, sheet: Sheet, at: Area): void {
  const tables = tablesConcerned(editing, sheet, at);
  pushDown(sheet, at);
  moveTheRest(editing, sheet, movedDown(at));
  dressLikeAbove(sheet, at);
  const changes: TableChange[] = [];
  for (const table of tables) {
    if (at.row <= table.row) {
      table.row += at.rows;
      continue;
    }
    table.bodyRows += at.rows;
    for (let row = at.row; row <= lastRow(at); row++) {
      table.columns.forEach((_, index) => {
        const column = table.column + index;
        const blank = cellAt(sheet, row, column);
        // What was put in right below the header doesn't look like the header.
        if (at.row === bodyArea(table).row && isBlank(blank)) {
          setCell(sheet, row, column, { value: '', numberFormat: 'General' });
        }
      });
    }
    dressRows(table, at.row, at.rows);
    const inserted = { ...tableArea(table), row: at.row, rows: at.rows };
    changes.push({ table, changeType: 'RowInserted', area: inserted });
  }
  editing.tell({
    kind: 'cells',
    sheet,
    area: at,
    changeType: at.columns === MAX_COLUMNS ? 'RowInserted' : 'CellInserted',
    shift: 'ShiftCellDown',
    tables: changes,
  });
}

/** Shortens a table by the rows of an area. Says false where the whole table goes. */
function shorten(table: Table, at: Area): boolean {
  const whole = tableArea(table);
  const gone = intersection(whole, { ...at, column: whole.column, columns: whole.columns });
  if (!gone) {
    table.row -= at.rows;
    return true;
  }
  if (gone.rows === whole.rows) return false;
  // The header can't go without its table; the last body row can't, either (`deleteBodyRows` leaves a blank one).
  if (table.showHeaders && gone.row === table.row) throw insertDeleteConflict();
  const inBody = intersection(bodyArea(table), gone)?.rows ?? 0;
  if (inBody === table.bodyRows) throw insertDeleteConflict();
  const totalsGone = table.showTotals && lastRow(gone) >= rowBelowBody(table);
  table.bodyRows -= inBody;
  if (totalsGone) table.showTotals = false;
  return true;
}

/** Takes the cells of an area out; those below move up. Rows of a table's body make the table shorter. */
export function deleteUp(editing: Editing, sheet: Sheet, at: Area): void {
  const { workbook } = editing;
  const tables = tablesConcerned(editing, sheet, at);
  const changes: TableChange[] = [];
  const wholeBody = tables.find((table) => contains(at, bodyArea(table)) && !contains(at, tableArea(table)));
  if (wholeBody && lastRow(at) === lastRow(bodyArea(wholeBody)) && at.row === bodyArea(wholeBody).row) {
    // A table keeps one row: the last one is emptied, the others go.
    const { row } = at;
    for (let column = at.column; column < at.column + at.columns; column++) {
      const { numberFormat } = cellAt(sheet, row, column);
      setCell(sheet, row, column, { value: '', numberFormat });
    }
    if (at.rows > 1) deleteUp(editing, sheet, { ...at, row: row + 1, rows: at.rows - 1 });
    else {
      const changed: TableChange = { table: wholeBody, changeType: 'RowDeleted', area: bodyArea(wholeBody) };
      editing.tell({
        kind: 'cells',
        sheet,
        area: at,
        changeType: 'CellDeleted',
        shift: 'ShiftCellUp',
        tables: [changed],
      });
    }
    return;
  }
  for (const table of tables) {
    const part = intersection(tableArea(table), at);
    if (!shorten(table, at)) {
      workbook.tables = workbook.tables.filter((each) => each !== table);
      editing.tell({ kind: 'table-deleted', table });
    } else if (part) changes.push({ table, changeType: 'RowDeleted', area: part });
  }
  pullUp(sheet, at);
  moveTheRest(editing, sheet, movedUp(at));
  const changeType = at.columns === MAX_COLUMNS ? 'RowDeleted' : 'CellDeleted';
  editing.tell({ kind: 'cells', sheet, area: at, changeType, shift: 'ShiftCellUp', tables: changes });
}
