import type { CellValue, CellWrite } from '../workbook/port.ts';
import { areasOverlap, type CellArea } from './cell-reference.ts';
import { putCell, styleAt, writeCell, writeFormula } from './cell-writing.ts';
import { columnFormula, formulaInRow } from './column-formulas.ts';
import { FileRefused } from './file-refused.ts';
import { translateFormula } from './formula-shift.ts';
import { MAX_ROWS } from './limits.ts';
import { insertRows } from './row-insert.ts';
import { mergedAreas, withGrownRules } from './sheet-areas.ts';
import { markHasFormula, type TableGrid } from './sheet-grid.ts';
import { readRow, rowPlace } from './sheet-rows.ts';
import { firstBodyRow, lastBodyRow, withoutInsertRow, withTableAreas } from './table-part.ts';
import type { WorkbookState } from './workbook-state.ts';

type RowWrite = Readonly<Record<string, CellWrite>>;

/**
 * Appends rows to a table: first into blank rows at the end of its body, then below, the table growing.
 * @throws FileRefused where what stands below the table can't make room
 */
export function appendRows(state: WorkbookState, name: string, rows: readonly RowWrite[]): void {
  const { part, grid } = state.table(name);
  const headers = new Map(part.columns.map((column, index) => [column.header, index]));
  for (const header of rows.flatMap((row) => Object.keys(row))) {
    if (!headers.has(header)) throw new Error(`There is no column ${header} in ${name}`);
  }
  if (rows.length === 0) return;
  const bodyRows = lastBodyRow(part) - firstBodyRow(part) + 1;
  const firstBlank = blankFrom(grid, bodyRows);
  const filled = Math.min(rows.length, bodyRows - firstBlank);
  if (filled > 0) markFilled(state, name);
  for (const [index, row] of rows.slice(0, filled).entries()) fillRow(state, name, firstBlank + index, row);
  const rest = rows.slice(filled);
  if (rest.length > 0) growBy(state, name, rest);
}

/** The body row from which on all rows are blank: no value but what formulas give. */
function blankFrom({ values, marks }: TableGrid, bodyRows: number): number {
  const isBlank = (row: number): boolean =>
    values.every((column, index) => {
      const value: CellValue = column[row] ?? null;
      return value === null || value === '' || markHasFormula(marks[index]?.[row]);
    });
  let first = bodyRows;
  while (first > 0 && isBlank(first - 1)) first--;
  return first;
}

function markFilled(state: WorkbookState, name: string): void {
  const { part } = state.table(name);
  const text = state.parts.text(part.part);
  const marked = withoutInsertRow(text, part.part);
  if (marked !== text) state.parts.replace(part.part, marked);
}

function fillRow(state: WorkbookState, name: string, row: number, write: RowWrite): void {
  const { part, grid } = state.table(name);
  part.columns.forEach((column, index) => {
    const cell = { row, column: index };
    const given = write[column.header];
    const table = state.table(name);
    if (given) writeCell(state, name, cell, given);
    else if (column.formula !== null && !markHasFormula(grid.marks[index]?.[row])) {
      const formula = formulaInRow(state, table, index, row, column.formula);
      writeFormula(state, name, cell, styleAt(state, table, cell), formula, column);
    }
  });
}

/** Makes a table longer by rows below its body, whether the last ones are blank or not. */
export function growBy(state: WorkbookState, name: string, rows: readonly RowWrite[]): void {
  const count = rows.length;
  makeRoom(state, name, count);
  const { part, sheet, grid } = state.table(name);
  const bodyRows = lastBodyRow(part) - firstBodyRow(part) + 1;
  const oldLast = lastBodyRow(part);
  const grow = (area: CellArea): CellArea =>
    area.lastRow === oldLast || area.lastRow === part.area.lastRow
      ? { ...area, lastRow: area.lastRow + count }
      : area;
  state.parts.replace(part.part, withTableAreas(state.parts.text(part.part), part.part, grow));
  const sheetState = state.sheet(sheet);
  const text = withGrownRules(sheetState.text, part.area, oldLast, count);
  if (text !== sheetState.text) state.putSheet({ ...sheetState, text, rewritten: true });
  // The style of the last row goes on; taken once, since each new row stands below the same one. Where the body
  // has no row at all, the first new one stands for it.
  const table = state.table(name);
  const styleRow = Math.max(0, bodyRows - 1);
  const styles = part.columns.map((_, column) => styleAt(state, table, { row: styleRow, column }));
  const formulas = part.columns.map((_, index) => columnFormula(state, table, index));
  const written = state.tableToWrite(name);
  state.putTable({ ...written, part: { ...part, area: grow(part.area) } });
  for (let column = 0; column < grid.values.length; column++) {
    for (let row = 0; row < count; row++) {
      written.grid.values[column]?.push(null);
      written.grid.marks[column]?.push(0);
    }
  }
  for (const [index, row] of rows.entries()) {
    growRow(state, name, bodyRows + index, row, styles, formulas, index);
  }
}

function growRow(
  state: WorkbookState,
  name: string,
  row: number,
  write: RowWrite,
  styles: readonly (number | undefined)[],
  formulas: readonly (string | null)[],
  below: number,
): void {
  state.table(name).part.columns.forEach((column, index) => {
    const cell = { row, column: index };
    const style = styles[index];
    const given = write[column.header];
    const formula = formulas[index] ?? null;
    if (style !== undefined || !given) putStyleOnly(state, name, cell, style);
    if (given) writeCell(state, name, cell, given);
    else if (formula !== null) {
      writeFormula(state, name, cell, style, translateFormula(formula, below, 0), column);
    }
  });
}

function putStyleOnly(
  state: WorkbookState,
  name: string,
  cell: { row: number; column: number },
  style: number | undefined,
): void {
  putCell(state, name, cell, style, { kind: 'blank' });
}

/** Makes the rows below the body free, moving down what stands there. */
function makeRoom(state: WorkbookState, name: string, count: number): void {
  const { part, sheet } = state.table(name);
  const first = lastBodyRow(part) + 1;
  if (part.area.lastRow + count > MAX_ROWS) {
    throw new FileRefused(
      `${name} would run beyond the last row of its tab. Carry old rows over to a new file.`,
    );
  }
  const room: CellArea = { ...part.area, firstRow: first, lastRow: lastBodyRow(part) + count };
  if (part.totalsRows > 0 || isInUse(state, sheet, part.name, room)) {
    insertRows(state, sheet, name, { at: first, count });
  }
}

function isInUse(state: WorkbookState, sheet: string, name: string, room: CellArea): boolean {
  const otherTable = state.tables.some(
    (each) => each.sheet === sheet && each.part.name !== name && areasOverlap(each.part.area, room),
  );
  const { text, edits } = state.sheet(sheet);
  if (otherTable || mergedAreas(text).some((area) => areasOverlap(area, room))) return true;
  const inColumns = (column: number): boolean => column >= room.firstColumn && column <= room.lastColumn;
  for (let place = rowPlace(text.rows, room.firstRow); place < text.rows.numbers.length; place++) {
    const row = text.rows.numbers[place] as number;
    if (row > room.lastRow) break;
    if (
      !/<(?:[^\s:/>]+:)?(?:v|f|is)[\s/>]/.test(
        text.data.slice(text.rows.starts[place], text.rows.ends[place]),
      )
    ) {
      continue;
    }
    const written = edits.get(row);
    const { cells } = readRow(text, place);
    if (
      cells.some(
        (cell) => inColumns(cell.column) && (cell.hasValue || cell.formula) && !written?.has(cell.column),
      )
    ) {
      return true;
    }
  }
  return false;
}
