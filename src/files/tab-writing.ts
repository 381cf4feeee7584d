import { growBy } from './append-rows.ts';
import { arrayAreas } from './array-formulas.ts';
import { areaName, areasOverlap, type CellArea, cellName, holdsCell } from './cell-reference.ts';
import { contentOf, styleForWrite, writeCell, writtenStyle } from './cell-writing.ts';
import { FileRefused } from './file-refused.ts';
import { MAX_COLUMNS, MAX_ROWS } from './limits.ts';
import { handOverSharedFormula } from './shared-formulas.ts';
import { mergedAreas } from './sheet-areas.ts';
import { columnStyle } from './sheet-columns.ts';
import { cellsOfRow } from './tab-cells.ts';
import { firstBodyRow, lastBodyRow } from './table-part.ts';
import type { TypedCellAt } from './typed-cell.ts';
import type { TableState, WorkbookState } from './workbook-state.ts';

/**
 * Writes what a person typed or pasted on a tab. Rows right below a table without a totals row become part of it
 * where nothing stands in them yet.
 * @throws FileRefused where a cell can't take it without damage
 */
export function typeCells(state: WorkbookState, tab: string, cells: readonly TypedCellAt[]): void {
  const { part } = state.tab(tab);
  refuseWhatIsBound(state, part, cells);
  for (const table of tablesOn(state, part)) {
    const rows = rowsToTakeIn(state, table, cells);
    const blank = Array.from({ length: rows }, () => ({}));
    if (rows > 0) growBy(state, table.part.name, blank);
  }
  const tables = tablesOn(state, part);
  for (const { row, column, cell } of cells) {
    const table = tables.find((each) => holdsCell(bodyOf(each), row, column));
    if (table) {
      const body = bodyOf(table);
      const place = { row: row - body.firstRow, column: column - body.firstColumn };
      writeCell(state, table.part.name, place, cell);
    } else writePlainCell(state, part, { row, column, cell });
  }
}

function tablesOn(state: WorkbookState, part: string): TableState[] {
  return state.tables.filter((table) => table.sheet === part);
}

function bodyOf({ part }: TableState): CellArea {
  return { ...part.area, firstRow: firstBodyRow(part), lastRow: lastBodyRow(part) };
}

/** How many rows right below a table are filled by what is written, and hold nothing yet. */
function rowsToTakeIn(state: WorkbookState, table: TableState, cells: readonly TypedCellAt[]): number {
  const { area, totalsRows } = table.part;
  if (totalsRows > 0) return 0;
  const inside = cells.filter(({ column }) => column >= area.firstColumn && column <= area.lastColumn);
  const given = new Set(inside.map(({ row }) => row));
  const lastFilled = inside.reduce(
    (last, { row, cell }) => (cell.kind === 'blank' ? last : Math.max(last, row)),
    0,
  );
  let rows = 0;
  for (let row = area.lastRow + 1; row <= lastFilled && given.has(row) && isFree(state, table, row); row++) {
    rows++;
  }
  return rows;
}

function isFree(state: WorkbookState, { part, sheet }: TableState, row: number): boolean {
  const { firstColumn, lastColumn } = part.area;
  const isInside = (column: number): boolean => column >= firstColumn && column <= lastColumn;
  const place = { firstRow: row, lastRow: row, firstColumn, lastColumn };
  if (tablesOn(state, sheet).some((each) => areasOverlap(each.part.area, place))) return false;
  return cellsOfRow(state, sheet, row).every(
    ({ column, value, formula }) => !isInside(column) || (value === null && formula === null),
  );
}

function refuseWhatIsBound(state: WorkbookState, part: string, cells: readonly TypedCellAt[]): void {
  const { text } = state.sheet(part);
  const merged = mergedAreas(text);
  const arrays = arrayAreas(text);
  for (const { row, column } of cells) {
    const name = cellName(row, column);
    if (row < 1 || row > MAX_ROWS || column < 1 || column > MAX_COLUMNS) {
      throw new FileRefused(`There is no cell so far down or to the right: a tab ends at XFD${MAX_ROWS}.`);
    }
    for (const table of tablesOn(state, part)) refuseFrame(table, row, column);
    const merge = merged.find((area) => holdsCell(area, row, column));
    if (merge && (merge.firstRow !== row || merge.firstColumn !== column)) {
      throw new FileRefused(
        `${name} is joined with its neighbours to ${areaName(merge)}. Type into ${cellName(merge.firstRow, merge.firstColumn)}.`,
      );
    }
    const array = arrays.find((area) => holdsCell(area, row, column));
    if (array) {
      throw new FileRefused(
        `${name} belongs to a formula that fills ${areaName(array)}, of which one cell alone can't be overwritten.`,
      );
    }
  }
}

/** Headers and totals are told of in the table's own part too, and formulas may go by the headers. */
function refuseFrame({ part }: TableState, row: number, column: number): void {
  if (!holdsCell(part.area, row, column)) return;
  const isHeader = row < firstBodyRow(part);
  if (!isHeader && row <= lastBodyRow(part)) return;
  const what = isHeader ? 'a header' : 'in the totals row';
  throw new FileRefused(
    `${cellName(row, column)} is ${what} of the table ${part.name}, which can only be changed in a spreadsheet program.`,
  );
}

function writePlainCell(state: WorkbookState, part: string, { row, column, cell }: TypedCellAt): void {
  const { text } = state.sheet(part);
  const before = cellsOfRow(state, part, row).find((each) => each.column === column);
  if (cell.kind === 'blank' && (!before || (before.value === null && before.formula === null))) return;
  const content = contentOf(state, cell, () => `${cellName(row, column)} on the tab ${text.tab}`);
  if (before && before.formula !== null) {
    state.formulasChanged = true;
    handOverSharedFormula(state, part, row, column);
  }
  const own = writtenStyle(state, part, row, column);
  const style = own.exists ? own.style : (own.rowStyle ?? columnStyle(text, column));
  const edits = state.editsToWrite(part);
  const cells = edits.get(row) ?? new Map();
  edits.set(row, cells);
  cells.set(column, { style: styleForWrite(state, cell, style), content });
  if (content.kind === 'formula') state.formulasChanged = true;
  state.noteChange();
}
