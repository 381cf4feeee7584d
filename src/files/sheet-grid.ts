import type { CellValue, NumberLook } from '../workbook/port.ts';

/** How a cell's number is shown, and whether it holds a formula, in one small number. */
const LOOKS: readonly NumberLook[] = ['plain', 'percent', 'date'];
const LOOK_BITS = 3;
const FORMULA_BIT = 4;

/** The body of a table by column: values, and what else is known of each cell. */
export interface TableGrid {
  /** By column, then by body row. */
  readonly values: CellValue[][];
  /** The same shape; see `markOf`. */
  readonly marks: number[][];
}

export function blankGrid(columns: number, rows: number): TableGrid {
  const make = <T>(value: T): T[][] =>
    Array.from({ length: columns }, () => Array.from<T>({ length: rows }).fill(value));
  return { values: make<CellValue>(null), marks: make(0) };
}

export function copyGrid(grid: TableGrid): TableGrid {
  return {
    values: grid.values.map((column) => column.slice()),
    marks: grid.marks.map((column) => column.slice()),
  };
}

export function markOf(look: NumberLook, formula: boolean): number {
  return LOOKS.indexOf(look) + (formula ? FORMULA_BIT : 0);
}

export function lookOfMark(mark: number | undefined): NumberLook {
  return LOOKS[(mark ?? 0) & LOOK_BITS] ?? 'plain';
}

export function markHasFormula(mark: number | undefined): boolean {
  return ((mark ?? 0) & FORMULA_BIT) !== 0;
}
