import type { CellWrite } from '../workbook/port.ts';

/** What a person put into a cell. */
export type TypedCell =
  | CellWrite
  /** A percentage as the number that stands for it: 0.2 is 20 %. */
  | { readonly kind: 'percent'; readonly number: number }
  | { readonly kind: 'boolean'; readonly value: boolean }
  /** A formula, without the equals sign; nobody knows its result yet. */
  | { readonly kind: 'formula'; readonly formula: string };

/** What a person put where on a tab; rows and columns count from 1. */
export interface TypedCellAt {
  readonly row: number;
  readonly column: number;
  readonly cell: TypedCell;
}
