import { serialOfDay } from '../core/serial-date.ts';
import type { CellValue, NumberLook } from '../workbook/port.ts';
import { type CellContent, valueOfContent } from './cell-edit.ts';
import { cellName } from './cell-reference.ts';
import { FileRefused } from './file-refused.ts';
import { MAX_CELL_CHARACTERS, MAX_FORMULA_CHARACTERS } from './limits.ts';
import { formulaAt, handOverSharedFormula } from './shared-formulas.ts';
import { columnStyle } from './sheet-columns.ts';
import { lookOfMark, markHasFormula, markOf } from './sheet-grid.ts';
import { readRow, rowPlace } from './sheet-rows.ts';
import { firstBodyRow, type TableColumn } from './table-part.ts';
import type { TypedCell } from './typed-cell.ts';
import type { TableState, WorkbookState } from './workbook-state.ts';

/** A body cell of a table, by its place in the body (from 0). */
export interface BodyCell {
  readonly row: number;
  readonly column: number;
}

/** Writes what a caller gave into a body cell; nothing happens where just that stands there already. */
export function writeCell(state: WorkbookState, name: string, cell: BodyCell, write: TypedCell): void {
  const table = state.table(name);
  const mark = table.grid.marks[cell.column]?.[cell.row];
  const value = table.grid.values[cell.column]?.[cell.row] ?? null;
  const content = contentOf(state, write, () => {
    const { row, column } = positionOf(table, cell);
    return `${cellName(row, column)} in ${table.part.name}`;
  });
  if (!markHasFormula(mark) && isSame(value, content)) {
    if (lookOfWrite(write) === null || lookOfMark(mark) === lookOfWrite(write)) return;
  }
  putCell(state, name, cell, styleForWrite(state, write, styleAt(state, table, cell)), content);
  if (content.kind === 'formula') state.formulasChanged = true;
}

function lookOfWrite(write: TypedCell): NumberLook | null {
  if (write.kind === 'day') return 'date';
  return write.kind === 'percent' ? 'percent' : null;
}

/** The style that a cell gets by what is written into it: days and percentages have to be shown as such. */
export function styleForWrite(
  state: WorkbookState,
  write: TypedCell,
  style: number | undefined,
): number | undefined {
  if (write.kind === 'day') return state.styles.styleFor('day', style);
  if (write.kind !== 'percent') return style;
  const whole = Number.isInteger(Number((write.number * 100).toPrecision(12)));
  return state.styles.styleFor(whole ? 'percent' : 'exact percent', style);
}

/** Puts a column's formula into a body cell, to be calculated by the spreadsheet program. */
export function writeFormula(
  state: WorkbookState,
  name: string,
  cell: BodyCell,
  style: number | undefined,
  formula: string,
  column: TableColumn,
): void {
  putCell(state, name, cell, style, { kind: 'formula', formula, isArray: column.isArray });
  state.formulasChanged = true;
}

/** Puts content with its style into a body cell, in the grid of the table and on the sheet. */
export function putCell(
  state: WorkbookState,
  name: string,
  cell: BodyCell,
  style: number | undefined,
  content: CellContent,
): void {
  const table = state.tableToWrite(name);
  const { row, column } = positionOf(table, cell);
  const values = table.grid.values[cell.column] as CellValue[];
  const marks = table.grid.marks[cell.column] as number[];
  if (markHasFormula(marks[cell.row])) {
    state.formulasChanged = true;
    handOverSharedFormula(state, table.sheet, row, column);
  }
  const edits = state.editsToWrite(table.sheet);
  let cells = edits.get(row);
  if (!cells) {
    cells = new Map();
    edits.set(row, cells);
  }
  cells.set(column, { style, content });
  values[cell.row] = valueOfContent(content);
  marks[cell.row] = markOf(state.styles.look(style), content.kind === 'formula');
  state.noteChange();
}

/**
 * The style number of a body cell: its own; else that of the cell above it in the body, then of its row, then
 * of its column. Undefined is the workbook's plain style.
 */
export function styleAt(state: WorkbookState, table: TableState, cell: BodyCell): number | undefined {
  const { row, column } = positionOf(table, cell);
  const own = writtenStyle(state, table.sheet, row, column);
  if (own.exists) return own.style;
  if (cell.row > 0) {
    const above = writtenStyle(state, table.sheet, row - 1, column);
    if (above.exists) return above.style;
  }
  return own.rowStyle ?? columnStyle(state.sheet(table.sheet).text, column);
}

/** The style that a cell of a sheet has itself, and that of its row. */
export function writtenStyle(state: WorkbookState, part: string, row: number, column: number) {
  const { text, edits } = state.sheet(part);
  const edit = edits.get(row)?.get(column);
  if (edit) return { exists: true, style: edit.style, rowStyle: undefined };
  const place = rowPlace(text.rows, row);
  if (text.rows.numbers[place] !== row) return { exists: false, style: undefined, rowStyle: undefined };
  const { cells, style: rowStyle } = readRow(text, place);
  const cell = cells.find((each) => each.column === column);
  return { exists: cell !== undefined, style: cell?.style, rowStyle };
}

/** The formula that a body cell holds, or null. */
export function formulaOf(state: WorkbookState, table: TableState, cell: BodyCell): string | null {
  const { row, column } = positionOf(table, cell);
  const { text, edits } = state.sheet(table.sheet);
  const edit = edits.get(row)?.get(column);
  if (edit) return edit.content.kind === 'formula' ? edit.content.formula : null;
  return formulaAt(text, row, column);
}

function positionOf(table: TableState, cell: BodyCell): { row: number; column: number } {
  return { row: firstBodyRow(table.part) + cell.row, column: table.part.area.firstColumn + cell.column };
}

/**
 * What stands in the file for what is written.
 * @param place says which cell it is, for a message
 * @throws FileRefused where a cell can't hold it
 */
export function contentOf(state: WorkbookState, write: TypedCell, place: () => string): CellContent {
  switch (write.kind) {
    case 'blank':
      return { kind: 'blank' };
    case 'day':
      return { kind: 'number', number: serialOfDay(write.day, state.dateSystem) };
    case 'number':
    case 'percent':
      if (!Number.isFinite(write.number)) throw new Error(`${write.number} can't stand in a cell`);
      return { kind: 'number', number: write.number === 0 ? 0 : write.number };
    case 'boolean':
      return write;
    case 'formula':
      if (write.formula.length > MAX_FORMULA_CHARACTERS) {
        throw tooLong(place(), 'formula', write.formula.length, MAX_FORMULA_CHARACTERS);
      }
      return { kind: 'formula', formula: write.formula, isArray: false };
    case 'text':
      if (write.text === '') return { kind: 'blank' };
      if (write.text.length > MAX_CELL_CHARACTERS) {
        throw tooLong(place(), 'text', write.text.length, MAX_CELL_CHARACTERS);
      }
      return { kind: 'text', text: write.text };
  }
}

function tooLong(place: string, what: string, length: number, most: number): FileRefused {
  return new FileRefused(
    `The ${what} for ${place} has ${length} characters; a cell holds at most ${most}. Shorten it.`,
  );
}

function isSame(value: CellValue, content: CellContent): boolean {
  return value === valueOfContent(content);
}
