import { type Area, area, contains, intersection, lastColumn, lastRow } from './cell-area.ts';
import type { Editing } from './editing.ts';
import { formulaDown } from './formula-rows.ts';
import {
  bodyArea,
  type Cell,
  cellAt,
  rowBelowBody,
  type Sheet,
  setCell,
  type Table,
  tableArea,
  tablesIn,
} from './memory-workbook.ts';
import { isEmptyArea } from './sheet-cells.ts';

const NO_RESULT = '#CALC!';

/** A blank cell that looks like its neighbour. Formats that it was given before stay. */
function dressed(cell: Cell, neighbour: Cell): Cell {
  const format = cell.format ?? neighbour.format;
  return {
    ...cell,
    numberFormat: cell.numberFormat === 'General' ? neighbour.numberFormat : cell.numberFormat,
    ...(format === undefined ? {} : { format }),
  };
}

/**
 * Gives rows that have become part of a table's body what the table gives them: the formulas of calculated columns
 * where nothing stands, and the looks of the row above (of the row below, where they are the first).
 */
export function dressRows(table: Table, first: number, count: number): void {
  const body = bodyArea(table);
  const model = first > body.row ? first - 1 : first + count;
  for (let row = first; row < first + count; row++) {
    table.columns.forEach(({ formula }, index) => {
      const column = body.column + index;
      const bare = dressed(cellAt(table.sheet, row, column), cellAt(table.sheet, model, column));
      const fills = formula !== undefined && bare.value === '' && bare.formula === undefined;
      const filled = fills
        ? { ...bare, formula: formulaDown(formula, row - body.row), value: NO_RESULT }
        : bare;
      setCell(table.sheet, row, column, filled);
    });
  }
}

/** Rules of validation that reach to the end of a body reach on over its new rows: a table does so with its looks. */
export function stretchValidations(sheet: Sheet, table: Table, oldEnd: number, rows: number): void {
  const within = tableArea(table);
  sheet.validations = sheet.validations.map((each) =>
    lastRow(each.area) === oldEnd &&
    each.area.column >= within.column &&
    lastColumn(each.area) <= lastColumn(within)
      ? { ...each, area: { ...each.area, rows: each.area.rows + rows } }
      : each,
  );
}

/** Makes a table longer over the rows right below its body; what stands there becomes part of it. */
export function growTable(table: Table, rows: number): void {
  const first = rowBelowBody(table);
  table.bodyRows += rows;
  dressRows(table, first, rows);
  stretchValidations(table.sheet, table, first - 1, rows);
}

/**
 * The table that grows when something is written to an area: the area starts right below the table's body, where no
 * totals row is, within the table's columns, and nothing else stands in the rows that it would take in.
 * "Coauthoring in Excel add-ins" documents the writing of whole rows; parts of a row, as a person types them, grow a
 * table as well. Wider writes aren't documented: here they don't.
 */
export function tableThatGrows(editing: Editing, sheet: Sheet, written: Area): Table | null {
  const found = editing.workbook.tables.find(
    (table) =>
      table.sheet === sheet &&
      !table.showTotals &&
      written.row === rowBelowBody(table) &&
      contains({ ...tableArea(table), row: written.row, rows: written.rows }, written),
  );
  if (!found) return null;
  const taken = area(written.row, found.column, written.rows, found.columns.length);
  const inTheWay = tablesIn(editing.workbook, sheet, taken).length > 0 || !isEmptyArea(sheet, taken);
  return inTheWay ? null : found;
}

/** The part of an area that lies in a table, header and totals included. */
export const partInTable = (table: Table, of: Area): Area | null => intersection(tableArea(table), of);
