import type { DateSystem } from '../core/serial-date.ts';
import type { CellWrite } from './port.ts';

/** A workbook to be made from nothing. */
export interface WorkbookBlueprint {
  readonly tabs: readonly TabBlueprint[];
  /** 1900 where not given. */
  readonly dateSystem?: DateSystem;
  /** The title among the file's properties. */
  readonly title?: string;
}

export interface TabBlueprint {
  readonly name: string;
  /** Lines above the table; the first is the tab's title. */
  readonly lines?: readonly string[];
  /** Six hexadecimal digits, red first: '4F6D5E'. */
  readonly colour?: string;
  readonly table?: TableBlueprint;
}

export interface TableBlueprint {
  readonly name: string;
  readonly columns: readonly ColumnBlueprint[];
  /** One entry per column; a missing one, or null, takes the column's formula or stays blank. */
  readonly rows: readonly (readonly (CellWrite | null | undefined)[])[];
  /** A totals row: its label stands in the first column, sums under the columns named. */
  readonly totals?: { readonly label: string; readonly sums: readonly string[] };
  /** A chart drawn from columns of the table, to the right of it. */
  readonly chart?: ChartBlueprint;
}

export interface ChartBlueprint {
  readonly title: string;
  readonly kind: 'line';
  /** The header of the column along which the chart runs. */
  readonly categories: string;
  /** The headers of the columns that are drawn, each as a series that is called as the column is; at least one. */
  readonly series: readonly string[];
}

export interface ColumnBlueprint {
  readonly header: string;
  /** In characters of the standard font. */
  readonly width: number;
  readonly format: 'text' | 'long text' | 'number' | 'day' | 'money' | 'percent';
  /** What is shown beside a cell of the column when it is chosen; at most 255 characters. */
  readonly note?: string;
  /** What a cell offers to choose from: words, or the values of another table's column, growing with it. */
  readonly choices?: readonly string[] | { readonly table: string; readonly column: string };
  /** Whether nothing but the choices may be typed. */
  readonly strict?: boolean;
  /** What rows hold that don't say otherwise, without the equals sign. */
  readonly formula?: string;
  /** Shown in grey: written by the program, read by people. */
  readonly muted?: boolean;
}
