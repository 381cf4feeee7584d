import { cellAddress, columnLetters } from '../workbook/address.ts';
import { invalidArgument } from './host-error.ts';

/** A rectangle of cells; rows and columns are counted from 0. */
export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export const MAX_ROWS = 1_048_576;
export const MAX_COLUMNS = 16_384;

export const area = (row: number, column: number, rows: number, columns: number): Area => {
  const inside =
    row >= 0 &&
    column >= 0 &&
    rows > 0 &&
    columns > 0 &&
    row + rows <= MAX_ROWS &&
    column + columns <= MAX_COLUMNS;
  if (!inside) throw invalidArgument();
  return { row, column, rows, columns };
};

export const lastRow = (of: Area): number => of.row + of.rows - 1;
export const lastColumn = (of: Area): number => of.column + of.columns - 1;
/** All rows, or all columns: cell-level properties of such a range can't be read or written. */
export const isUnbounded = (of: Area): boolean => of.rows === MAX_ROWS || of.columns === MAX_COLUMNS;

export function intersection(a: Area, b: Area): Area | null {
  const row = Math.max(a.row, b.row);
  const column = Math.max(a.column, b.column);
  const rows = Math.min(lastRow(a), lastRow(b)) - row + 1;
  const columns = Math.min(lastColumn(a), lastColumn(b)) - column + 1;
  return rows > 0 && columns > 0 ? { row, column, rows, columns } : null;
}

export const contains = (outer: Area, inner: Area): boolean =>
  inner.row >= outer.row &&
  inner.column >= outer.column &&
  lastRow(inner) <= lastRow(outer) &&
  lastColumn(inner) <= lastColumn(outer);

/** The smallest rectangle that holds both. */
export function boundingArea(a: Area, b: Area): Area {
  const row = Math.min(a.row, b.row);
  const column = Math.min(a.column, b.column);
  return {
    row,
    column,
    rows: Math.max(lastRow(a), lastRow(b)) - row + 1,
    columns: Math.max(lastColumn(a), lastColumn(b)) - column + 1,
  };
}

/** The address without its sheet: A1, B2:D7, 3:4, C:C. */
export function areaAddress(of: Area): string {
  const columns = [columnLetters(of.column + 1), columnLetters(lastColumn(of) + 1)] as const;
  const rows = [of.row + 1, lastRow(of) + 1] as const;
  if (of.columns === MAX_COLUMNS && of.rows !== MAX_ROWS) return `${rows[0]}:${rows[1]}`;
  if (of.rows === MAX_ROWS && of.columns !== MAX_COLUMNS) return `${columns[0]}:${columns[1]}`;
  const first = `${columns[0]}${rows[0]}`;
  return of.rows === 1 && of.columns === 1 ? first : `${first}:${columns[1]}${rows[1]}`;
}

const columnNumber = (letters: string): number =>
  letters.split('').reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;

const spanning = (row: number, column: number, row2: number, column2: number): Area =>
  area(
    Math.min(row, row2),
    Math.min(column, column2),
    Math.abs(row2 - row) + 1,
    Math.abs(column2 - column) + 1,
  );

/** Reads an address without its sheet. Throws `InvalidArgument` where it is none. */
export function parseArea(text: string): Area {
  const plain = text.replaceAll('$', '').trim().toUpperCase();
  const cells = /^([A-Z]{1,3})(\d{1,7})(?::([A-Z]{1,3})(\d{1,7}))?$/.exec(plain);
  if (cells) {
    const [, column = '', row = '', column2 = column, row2 = row] = cells;
    return spanning(Number(row) - 1, columnNumber(column), Number(row2) - 1, columnNumber(column2));
  }
  const columns = /^([A-Z]{1,3}):([A-Z]{1,3})$/.exec(plain);
  if (columns) {
    return spanning(0, columnNumber(columns[1] ?? ''), MAX_ROWS - 1, columnNumber(columns[2] ?? ''));
  }
  const rows = /^(\d{1,7}):(\d{1,7})$/.exec(plain);
  if (rows) return spanning(Number(rows[1]) - 1, 0, Number(rows[2]) - 1, MAX_COLUMNS - 1);
  throw invalidArgument();
}

/** Splits an address such as 'My stock'!A1:B2 into its sheet's name, where one is given, and the rest. */
export function splitAddress(text: string): { readonly sheet: string | null; readonly rest: string } {
  const at = text.lastIndexOf('!');
  if (at < 0) return { sheet: null, rest: text };
  const name = text.slice(0, at);
  const quoted = /^'(.*)'$/s.exec(name);
  return { sheet: quoted ? (quoted[1] ?? '').replaceAll("''", "'") : name, rest: text.slice(at + 1) };
}

/** An address with its sheet, as the program writes it. */
export function fullAddress(sheet: string, of: Area): string {
  const firstCell = cellAddress(sheet, 1, 1);
  return firstCell.slice(0, firstCell.lastIndexOf('!') + 1) + areaAddress(of);
}

export const areaOfCell = (row: number, column: number): Area => ({ row, column, rows: 1, columns: 1 });
