import { MAX_COLUMNS, MAX_ROWS } from './limits.ts';

/** A rectangle of cells; rows and columns count from 1. */
export interface CellArea {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

/** The number of a column given by letters: A is 1. */
export function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number;
}

/** The letters of a column number: 1 is A. */
export function columnLetters(number: number): string {
  let letters = '';
  for (let rest = number; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

/** A cell as people write it: B7. */
export function cellName(row: number, column: number): string {
  return `${columnLetters(column)}${row}`;
}

const AREA = /^\$?([A-Za-z]{1,3})\$?([0-9]{1,7})(?::\$?([A-Za-z]{1,3})\$?([0-9]{1,7}))?$/;

/** Reads "B2:D9" or "B2"; null where it is neither. */
export function parseArea(text: string): CellArea | null {
  const match = AREA.exec(text);
  if (!match) return null;
  const [, column = '', row = '', endColumn = column, endRow = row] = match;
  const area = {
    firstRow: Number(row),
    lastRow: Number(endRow),
    firstColumn: columnNumber(column),
    lastColumn: columnNumber(endColumn),
  };
  const rowsFit = area.firstRow >= 1 && area.lastRow >= area.firstRow && area.lastRow <= MAX_ROWS;
  const columnsFit = area.lastColumn >= area.firstColumn && area.lastColumn <= MAX_COLUMNS;
  return rowsFit && columnsFit ? area : null;
}

/** Writes an area as "B2:D9", a single cell as "B2". */
export function areaName(area: CellArea): string {
  const first = cellName(area.firstRow, area.firstColumn);
  const last = cellName(area.lastRow, area.lastColumn);
  return first === last ? first : `${first}:${last}`;
}

export function areasOverlap(a: CellArea, b: CellArea): boolean {
  return (
    a.firstRow <= b.lastRow &&
    b.firstRow <= a.lastRow &&
    a.firstColumn <= b.lastColumn &&
    b.firstColumn <= a.lastColumn
  );
}

export function holdsCell(area: CellArea, row: number, column: number): boolean {
  return (
    row >= area.firstRow && row <= area.lastRow && column >= area.firstColumn && column <= area.lastColumn
  );
}
