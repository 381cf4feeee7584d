import type { Area } from './cell-area.ts';
import type { InputRules } from './cell-input.ts';
import type { Cell, MemoryWorkbook, Sheet, Table } from './memory-workbook.ts';

export type ChangeType =
  | 'RangeEdited'
  | 'RowInserted'
  | 'RowDeleted'
  | 'ColumnInserted'
  | 'ColumnDeleted'
  | 'CellInserted'
  | 'CellDeleted';

export type ShiftDirection = 'None' | 'ShiftCellDown' | 'ShiftCellUp';

/** The area of a table that changed, and how, as the table's own event tells it. */
export interface TableChange {
  readonly table: Table;
  readonly changeType: ChangeType;
  readonly area: Area;
}

/** Something that happened to the workbook, of which clients are told. */
export type WorkbookChange =
  | {
      readonly kind: 'cells';
      readonly sheet: Sheet;
      readonly area: Area;
      readonly changeType: ChangeType;
      readonly shift: ShiftDirection;
      readonly tables: readonly TableChange[];
      /** For a change of one cell: what stood there, and what stands there now. */
      readonly single?: { readonly before: Cell; readonly after: Cell };
    }
  | { readonly kind: 'sheet-added' | 'sheet-deleted'; readonly sheet: Sheet }
  | { readonly kind: 'table-added' | 'table-deleted'; readonly table: Table };

/** Where a range goes when cells are put in or taken out; null where it is gone. */
export type AreaShift = (of: Area) => Area | null;

/** What every edit needs: the workbook, and where to tell what it did. */
export interface Editing {
  readonly workbook: MemoryWorkbook;
  readonly rules: InputRules;
  readonly tell: (change: WorkbookChange) => void;
  /** Cells of a sheet have moved: references and selections follow. */
  readonly moved: (sheet: Sheet, shift: AreaShift) => void;
}
