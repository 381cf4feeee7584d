import { type Area, lastColumn, lastRow } from './cell-area.ts';
import { type Cell, cellAt, isBlank, type Row, type Sheet } from './memory-workbook.ts';

/** Whether an area holds neither values nor formulas. */
export function isEmptyArea(sheet: Sheet, of: Area): boolean {
  for (let row = of.row; row <= Math.min(lastRow(of), sheet.rows.length - 1); row++) {
    for (let column = of.column; column <= lastColumn(of); column++) {
      if (!isBlank(cellAt(sheet, row, column))) return false;
    }
  }
  return true;
}

/** The smallest area that holds all that stands in part of a sheet; null where nothing does. */
export function usedArea(sheet: Sheet, within: Area, counts: (cell: Cell) => boolean): Area | null {
  let [top, left, bottom, right] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, -1, -1];
  const end = Math.min(lastRow(within), sheet.rows.length - 1);
  for (let row = within.row; row <= end; row++) {
    sheet.rows[row]?.forEach((cell, column) => {
      if (!cell || !counts(cell) || column < within.column || column > lastColumn(within)) return;
      [top, bottom] = [Math.min(top, row), row];
      [left, right] = [Math.min(left, column), Math.max(right, column)];
    });
  }
  return bottom < 0 ? null : { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** The cells of some columns of a row, put into another row's place. */
function spliced(row: Row | undefined, at: Area, part: readonly (Cell | undefined)[]): Row {
  const whole = [...(row ?? [])];
  const width = Math.min(at.columns, Math.max(part.length, whole.length - at.column));
  for (let index = 0; index < width; index++) {
    const cell = part[index];
    if (cell) whole[at.column + index] = cell;
    else if (at.column + index < whole.length) whole[at.column + index] = undefined;
  }
  while (whole.length > 0 && whole.at(-1) === undefined) whole.pop();
  return whole;
}

const partOf = (row: Row | undefined, at: Area): (Cell | undefined)[] =>
  Array.from(
    { length: Math.min(at.columns, Math.max(0, (row?.length ?? 0) - at.column)) },
    (_, index) => row?.[at.column + index],
  );

/** Moves the cells of the area's columns, from the area's top on, down by its height. */
export function pushDown(sheet: Sheet, at: Area): void {
  for (let row = sheet.rows.length - 1; row >= at.row; row--) {
    sheet.rows[row + at.rows] = spliced(sheet.rows[row + at.rows], at, partOf(sheet.rows[row], at));
  }
  const end = Math.min(at.row + at.rows, sheet.rows.length);
  for (let row = at.row; row < end; row++) sheet.rows[row] = spliced(sheet.rows[row], at, []);
}

/** Takes the cells of an area out; those below move up. */
export function pullUp(sheet: Sheet, at: Area): void {
  for (let row = at.row; row < sheet.rows.length; row++) {
    sheet.rows[row] = spliced(sheet.rows[row], at, partOf(sheet.rows[row + at.rows], at));
  }
  while (sheet.rows.length > 0 && (sheet.rows.at(-1)?.length ?? 0) === 0) sheet.rows.pop();
}
