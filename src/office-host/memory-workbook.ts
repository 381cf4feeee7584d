import type { DateSystem } from '../core/serial-date.ts';
import { type Area, intersection } from './cell-area.ts';
import type {
  CellFormat,
  CellScalar,
  SheetVisibility,
  ValidationAlert,
  ValidationDescription,
  ValidationPrompt,
} from './workbook-description.ts';

/** A cell; it is never changed, but replaced. */
export interface Cell {
  readonly value: CellScalar;
  readonly formula?: string;
  readonly numberFormat: string;
  readonly format?: CellFormat;
}

export const BLANK_CELL: Cell = { value: '', numberFormat: 'General' };

export type Row = readonly (Cell | undefined)[];

/** One rule of data validation for a rectangle; of several over one cell the last counts. */
export interface Validation {
  readonly area: Area;
  readonly rule: ValidationDescription['rule'] | null;
  readonly ignoreBlanks: boolean;
  readonly prompt: ValidationPrompt | null;
  readonly errorAlert: ValidationAlert | null;
}

export interface Sheet {
  readonly id: string;
  name: string;
  visibility: SheetVisibility;
  isProtected: boolean;
  tabColor: string;
  showGridlines: boolean;
  frozenRows: number;
  frozenColumns: number;
  /** Rows by their index; a row is never changed, but replaced. */
  rows: (Row | undefined)[];
  columnWidths: Map<number, number>;
  validations: readonly Validation[];
  charts: readonly Chart[];
}

/** A rectangle of cells of a sheet. */
export interface SheetArea {
  readonly sheet: Sheet;
  readonly area: Area;
}

/** A chart; it is never changed, but replaced. */
export interface Chart {
  readonly id: string;
  readonly type: 'Line';
  readonly name: string;
  /** Null where it was given none. */
  readonly title: string | null;
  /** The cells that it covers; null where it was not told. */
  readonly place: Area | null;
  readonly series: readonly ChartSeries[];
}

export interface ChartSeries {
  readonly id: number;
  readonly name: string;
  /** Null where it has none, or its cells are gone. */
  readonly values: SheetArea | null;
  readonly categories: SheetArea | null;
  /** What was said of its line; the colour is #RRGGBB, the weight in points. */
  readonly line: { readonly color?: string; readonly lineStyle?: string; readonly weight?: number };
}

export interface TableColumn {
  readonly id: number;
  readonly name: string;
  /** The formula of a calculated column, as in the first body row. */
  readonly formula?: string;
}

export interface Table {
  readonly id: string;
  name: string;
  readonly sheet: Sheet;
  /** Where the header row stands, or would. */
  row: number;
  column: number;
  columns: readonly TableColumn[];
  bodyRows: number;
  showHeaders: boolean;
  showTotals: boolean;
  style: string;
  showBandedRows: boolean;
  showBandedColumns: boolean;
  showFilterButton: boolean;
  highlightFirstColumn: boolean;
  highlightLastColumn: boolean;
}

/** A name that stands for a range or a formula. */
export interface DefinedName {
  readonly name: string;
  /** As in the Name's formula, with its equals sign. */
  formula: string;
}

/** A workbook in memory. Everything that is one for all its clients stands here. */
export interface MemoryWorkbook {
  name: string;
  readonly dateSystem: DateSystem;
  readOnly: boolean;
  sheets: Sheet[];
  tables: Table[];
  names: DefinedName[];
  settings: Map<string, unknown>;
  calculationMode: 'Automatic' | 'AutomaticExceptTables' | 'Manual';
  /** The sheet that a new client has before it, by its id. */
  firstSheetId: string;
  nextId: number;
}

export const DEFAULT_COLUMN_WIDTH = 48;

export function cellAt(sheet: Sheet, row: number, column: number): Cell {
  return sheet.rows[row]?.[column] ?? BLANK_CELL;
}

/** Puts a cell in its place. The row is replaced, so that an older state may keep the old one. */
export function setCell(sheet: Sheet, row: number, column: number, cell: Cell): void {
  const cells = [...(sheet.rows[row] ?? [])];
  cells[column] = cell;
  sheet.rows[row] = cells;
}

export const isBlank = (cell: Cell): boolean => cell.value === '' && cell.formula === undefined;

export const headerRows = (table: Table): number => (table.showHeaders ? 1 : 0);
export const bodyArea = (table: Table): Area => ({
  row: table.row + headerRows(table),
  column: table.column,
  rows: table.bodyRows,
  columns: table.columns.length,
});
/** The whole table: header, body and totals row. */
export const tableArea = (table: Table): Area => ({
  row: table.row,
  column: table.column,
  rows: headerRows(table) + table.bodyRows + (table.showTotals ? 1 : 0),
  columns: table.columns.length,
});
/** The row right below the body: the totals row, or the first row that isn't the table's. */
export const rowBelowBody = (table: Table): number => table.row + headerRows(table) + table.bodyRows;

export const tablesIn = (workbook: MemoryWorkbook, sheet: Sheet, of: Area): Table[] =>
  workbook.tables.filter((table) => table.sheet === sheet && intersection(tableArea(table), of) !== null);

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

export const findSheet = (workbook: MemoryWorkbook, key: string): Sheet | undefined =>
  workbook.sheets.find((sheet) => sheet.id === key || same(sheet.name, key));
export const findTable = (workbook: MemoryWorkbook, key: string): Table | undefined =>
  workbook.tables.find((table) => table.id === key || same(table.name, key));
export const findName = (workbook: MemoryWorkbook, key: string): DefinedName | undefined =>
  workbook.names.find(({ name }) => same(name, key));

/** A new identifier, as the program makes them: stable and never used again. */
export function newId(workbook: MemoryWorkbook): string {
  const number = workbook.nextId++;
  return `{00000000-0000-0000-0000-${String(number).padStart(12, '0')}}`;
}

export function newSheet(workbook: MemoryWorkbook, name: string): Sheet {
  return {
    id: newId(workbook),
    name,
    visibility: 'Visible',
    isProtected: false,
    tabColor: '',
    showGridlines: true,
    frozenRows: 0,
    frozenColumns: 0,
    rows: [],
    columnWidths: new Map(),
    validations: [],
    charts: [],
  };
}
