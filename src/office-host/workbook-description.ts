import type { DateSystem } from '../core/serial-date.ts';

/** What stands in a cell: '' is blank; an error is its name, such as #N/A. */
export type CellScalar = string | number | boolean;

export type HorizontalAlignment =
  | 'General'
  | 'Left'
  | 'Center'
  | 'Right'
  | 'Fill'
  | 'Justify'
  | 'CenterAcrossSelection'
  | 'Distributed';
export type VerticalAlignment = 'Top' | 'Center' | 'Bottom' | 'Justify' | 'Distributed';

/** How a cell looks, as far as this host keeps it. Colours are #RRGGBB. */
export interface CellFormat {
  readonly fillColor?: string;
  readonly fontColor?: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly wrapText?: boolean;
  readonly horizontalAlignment?: HorizontalAlignment;
  readonly verticalAlignment?: VerticalAlignment;
}

/** A cell in full. A formula's value is its stored result. */
export interface CellDescription {
  readonly value?: CellScalar | null;
  /** With its leading equals sign. */
  readonly formula?: string;
  readonly numberFormat?: string;
  readonly format?: CellFormat;
}

/** A cell: a plain value stands as it is, whatever it looks like (no typing is imitated); null is blank. */
export type CellLiteral = CellScalar | null | CellDescription;

export interface TableColumnDescription {
  readonly name: string;
  /** Makes it a calculated column: the formula of the first body row. Rows that give no cell of their own get it. */
  readonly formula?: string;
  /** The number format of body cells that give none of their own. */
  readonly numberFormat?: string;
}

export interface TableDescription {
  readonly name: string;
  /** Where the header's first cell stands, such as B3. */
  readonly at: string;
  readonly columns: readonly (string | TableColumnDescription)[];
  /** The body; a table without rows has one blank row. */
  readonly rows?: readonly (readonly CellLiteral[])[];
  /** The cells of a totals row. */
  readonly totals?: readonly CellLiteral[];
  readonly style?: string;
}

export interface ValidationDescription {
  /** The range it is for, such as C2:C9. */
  readonly address: string;
  /** As the property of the same name of Excel.DataValidation. */
  readonly rule: { readonly [kind: string]: { readonly [key: string]: string | number | boolean } };
  readonly ignoreBlanks?: boolean;
  readonly prompt?: ValidationPrompt;
  readonly errorAlert?: ValidationAlert;
}
export interface ValidationPrompt {
  readonly message: string;
  readonly showPrompt: boolean;
  readonly title: string;
}
export interface ValidationAlert {
  readonly message: string;
  readonly showAlert: boolean;
  readonly style: 'Stop' | 'Warning' | 'Information';
  readonly title: string;
}

export type SheetVisibility = 'Visible' | 'Hidden' | 'VeryHidden';

export interface SheetDescription {
  readonly name: string;
  readonly visibility?: SheetVisibility;
  readonly isProtected?: boolean;
  readonly tabColor?: string;
  readonly showGridlines?: boolean;
  readonly frozenRows?: number;
  /** Blocks of cells by their first cell's address: { A1: [['Lot', 5]] }. */
  readonly cells?: Readonly<Record<string, readonly (readonly CellLiteral[])[]>>;
  readonly tables?: readonly TableDescription[];
  /** Widths of columns in points, by their letters. */
  readonly columnWidths?: Readonly<Record<string, number>>;
  readonly validations?: readonly ValidationDescription[];
}

/** A workbook as plain data. */
export interface WorkbookDescription {
  readonly name?: string;
  readonly dateSystem?: DateSystem;
  readonly readOnly?: boolean;
  readonly sheets: readonly SheetDescription[];
  /** Names by what they stand for: a range with its sheet (Stock!$A$1), or a formula. */
  readonly names?: Readonly<Record<string, string>>;
  /** The sheet that is active at first; else the first visible one. */
  readonly activeSheet?: string;
  readonly settings?: Readonly<Record<string, string | number | boolean>>;
}
