import type { Day } from '../core/day.ts';
import type { DateSystem } from '../core/serial-date.ts';
import type { ColumnBlueprint } from './blueprint.ts';

/**
 * The one gate between Jarleaf and a workbook, whatever holds it: a file, or a spreadsheet program.
 * An adapter turns the workbook into a snapshot (plain values, by column) and carries out a list of changes.
 */

/** What can't be used as a value: an error such as #N/A, or a formula whose result the file doesn't hold. */
export interface CellProblem {
  /** What a person sees there, for a message. */
  readonly shown: string;
}

/** The value of a cell: formulas by their stored result, dates by their serial. */
export type CellValue = null | string | number | boolean | CellProblem;

/** How a number is shown. Only what changes its meaning is told apart. */
export type NumberLook = 'plain' | 'percent' | 'date';

export interface ColumnSnapshot {
  /** The header as it stands, untrimmed. */
  readonly header: string;
  /** One value per body row, from the top. */
  readonly values: readonly CellValue[];
  /** How the number in a body row is shown. */
  readonly look: (row: number) => NumberLook;
  /** Whether a body row holds a formula: such a cell belongs to the user and is never overwritten. */
  readonly hasFormula: (row: number) => boolean;
  /** Whether new rows of the table get a formula in this column by themselves (a calculated column). */
  readonly calculated: boolean;
}

export interface TableSnapshot {
  /** The name of the table, as the workbook spells it. */
  readonly name: string;
  /** The name of the tab that it stands on. */
  readonly tab: string;
  /** The row number, as the spreadsheet counts it, of the first body row. */
  readonly firstRow: number;
  /** The column number of the first column; A is 1. */
  readonly firstColumn: number;
  /** How many rows the body has, blank ones too; headers and totals not. */
  readonly rowCount: number;
  readonly columns: readonly ColumnSnapshot[];
  /**
   * What stands in the row right below the body, one value per column: a row typed there may not have become part of
   * the table. Absent where a totals row stands there.
   */
  readonly below?: readonly CellValue[];
}

export interface WorkbookSnapshot {
  readonly dateSystem: DateSystem;
  readonly tables: readonly TableSnapshot[];
}

/** What is to stand in a cell. Text is stored as text whatever it looks like ("=1", "007", "1E5"). */
export type CellWrite =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'number'; readonly number: number }
  | { readonly kind: 'day'; readonly day: Day }
  | { readonly kind: 'blank' };

/** A column that a table gets; its header is none that the table has. */
export type NewColumn = Pick<ColumnBlueprint, 'header' | 'width' | 'format'>;

/**
 * One change to the rows of one table. `table` and the column headers are spelt as in the snapshot.
 * Appended rows first fill blank rows at the end of the body (a fresh table has one), then make the table grow,
 * above a totals row where there is one. Columns that a row doesn't name keep their formula, or stay blank.
 */
export type RowChange =
  | {
      readonly kind: 'append';
      readonly table: string;
      readonly rows: readonly Readonly<Record<string, CellWrite>>[];
    }
  | {
      readonly kind: 'set';
      readonly table: string;
      /** The body row, counted from 0. */
      readonly row: number;
      readonly column: string;
      readonly cell: CellWrite;
    };

/** One change to one table: to its rows, or to its columns. */
export type Change =
  | RowChange
  | {
      /** A blank column behind the last one. Refused where something stands right of the table. */
      readonly kind: 'add column';
      readonly table: string;
      readonly column: NewColumn;
    };
