import type { TabBlueprint } from '../workbook/blueprint.ts';
import { joinAppends } from '../workbook/join-appends.ts';
import type { CellValue, Change, ColumnSnapshot, TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import type { TableRows } from '../workbook/without-rows.ts';
import { addColumn } from './add-column.ts';
import { addTabs } from './add-tabs.ts';
import { appendRows } from './append-rows.ts';
import { writeCell } from './cell-writing.ts';
import { columnFormula } from './column-formulas.ts';
import { removeTableRows } from './row-removal.ts';
import { lookOfMark, markHasFormula } from './sheet-grid.ts';
import { cellsOfRow, isFilled, type ShownCell } from './tab-cells.ts';
import { type TabShape, tabShapes } from './tab-shape.ts';
import { typeCells } from './tab-writing.ts';
import { firstBodyRow, lastBodyRow } from './table-part.ts';
import type { TypedCellAt } from './typed-cell.ts';
import { openWorkbookState } from './workbook-open.ts';
import { saveWorkbookState } from './workbook-save.ts';
import type { TableState, WorkbookState } from './workbook-state.ts';

export { FileRefused } from './file-refused.ts';

/** A state of a workbook to come back to; it belongs to the workbook that gave it. */
export interface WorkbookMark {
  readonly state: unknown;
}

/** A workbook file in memory: its tables as plain values, changed and saved without touching anything else. */
export class XlsxWorkbook {
  /** Whether the workbook holds macros; such a file must be called .xlsm, and no other may. */
  readonly macroEnabled: boolean;
  readonly #original: Uint8Array;
  readonly #opened: WorkbookState;
  #state: WorkbookState;
  #snapshot: WorkbookSnapshot | null = null;
  #tabs: readonly TabShape[] | null = null;
  #saved: Uint8Array | null;

  constructor(original: Uint8Array, state: WorkbookState, macroEnabled: boolean) {
    this.#original = original;
    this.#opened = state;
    this.#state = state;
    this.#saved = original;
    this.macroEnabled = macroEnabled;
  }

  /** What the tables hold now. A snapshot stays as it is when changes are applied later. */
  snapshot(): WorkbookSnapshot {
    this.#snapshot ??= {
      dateSystem: this.#state.dateSystem,
      tables: this.#state.tables.map((table) => tableSnapshot(table, this.#state)),
    };
    return this.#snapshot;
  }

  /**
   * Carries out changes, all or none of them.
   * @throws FileRefused where the file can't take a change without damage
   * @throws Error for a table, column or row that isn't there: a mistake of the caller
   */
  apply(changes: readonly Change[]): void {
    this.#change((state) => {
      for (const change of joinAppends(changes)) {
        if (change.kind === 'append') appendRows(state, change.table, change.rows);
        else if (change.kind === 'add column') addColumn(state, change.table, change.column);
        else setCell(state, change);
      }
    });
  }

  /** The tabs in their order, hidden ones too: how far they are filled, their tables and column widths. */
  tabs(): readonly TabShape[] {
    this.#tabs ??= tabShapes(this.#state);
    return this.#tabs;
  }

  /** The cells of a row of a tab, by column; the row counts from 1. */
  row(tab: string, row: number): readonly ShownCell[] {
    return cellsOfRow(this.#state, this.#state.tab(tab).part, row);
  }

  /** Whether a cell of a tab holds a value or a formula. */
  isFilled(tab: string, row: number, column: number): boolean {
    return isFilled(this.#state, this.#state.tab(tab).part, row, column);
  }

  /**
   * Writes cells of a tab as a person typed or pasted them, all or none; what stands right below a table becomes
   * part of it.
   * @throws FileRefused where a cell can't take it without damage
   */
  type(tab: string, cells: readonly TypedCellAt[]): void {
    this.#change((state) => typeCells(state, tab, cells));
  }

  /**
   * Takes rows out of a table.
   * @param first the body row, counted from 0
   * @throws FileRefused where something is bound to the rows and can't follow
   */
  removeRows(table: string, first: number, count: number): void {
    const rows = Array.from({ length: count }, (_, place) => first + place);
    this.#change((state) => removeTableRows(state, table, rows));
  }

  /**
   * Takes any rows out of tables, all or none of them.
   * @param taken body rows, counted from 0, in their order and none twice
   * @throws FileRefused where something is bound to the rows and can't follow
   */
  removeRowsOf(taken: readonly TableRows[]): void {
    this.#change((state) => {
      for (const { table, rows } of taken) removeTableRows(state, table, rows);
    });
  }

  /** Adds tabs behind those that are there; a tab whose table the workbook has already is left out. */
  addTabs(tabs: readonly TabBlueprint[]): void {
    this.#change((state) => addTabs(state, tabs));
  }

  /** What the workbook is like now, to come back to. */
  mark(): WorkbookMark {
    return { state: this.#state };
  }

  /** Makes the workbook what it was, or will have been, at a mark of its own. */
  restore(mark: WorkbookMark): void {
    if (mark.state !== this.#state) this.#take(mark.state as WorkbookState);
  }

  #change(change: (state: WorkbookState) => void): void {
    const state = this.#state.fork();
    change(state);
    if (state.touched) this.#take(state);
  }

  #take(state: WorkbookState): void {
    this.#state = state;
    this.#snapshot = null;
    this.#tabs = null;
    this.#saved = state === this.#opened ? this.#original : null;
  }

  /** The file with all changes; the very bytes that were opened where there are none. */
  save(): Uint8Array {
    this.#saved ??= saveWorkbookState(this.#state);
    return this.#saved;
  }

  /** The bytes that were opened. */
  get original(): Uint8Array {
    return this.#original;
  }
}

/**
 * Opens an .xlsx (or .xlsm) file.
 * @throws FileRefused with a sentence for the user where the bytes are no readable workbook
 */
export function openXlsx(bytes: Uint8Array): XlsxWorkbook {
  const { state, macroEnabled } = openWorkbookState(bytes);
  return new XlsxWorkbook(bytes, state, macroEnabled);
}

function setCell(state: WorkbookState, change: Extract<Change, { kind: 'set' }>): void {
  const { part } = state.table(change.table);
  const column = part.columns.findIndex((each) => each.header === change.column);
  if (column < 0) throw new Error(`There is no column ${change.column} in ${change.table}`);
  const rows = lastBodyRow(part) - firstBodyRow(part) + 1;
  if (!Number.isInteger(change.row) || change.row < 0 || change.row >= rows) {
    throw new Error(`There is no row ${change.row} in ${change.table}, which has ${rows}`);
  }
  writeCell(state, change.table, { row: change.row, column }, change.cell);
}

function tableSnapshot(table: TableState, state: WorkbookState): TableSnapshot {
  const { part, grid, sheet } = table;
  return {
    name: part.name,
    tab: state.sheet(sheet).text.tab,
    firstRow: firstBodyRow(part),
    firstColumn: part.area.firstColumn,
    rowCount: lastBodyRow(part) - firstBodyRow(part) + 1,
    columns: part.columns.map((column, index): ColumnSnapshot => {
      const marks = grid.marks[index] ?? [];
      return {
        header: column.header,
        values: grid.values[index] ?? [],
        look: (row) => lookOfMark(marks[row]),
        hasFormula: (row) => markHasFormula(marks[row]),
        calculated: columnFormula(state, table, index) !== null,
      };
    }),
    ...(part.totalsRows > 0 ? {} : { below: rowBelow(table, state) }),
  };
}

function rowBelow({ part, sheet }: TableState, state: WorkbookState): CellValue[] {
  const cells = cellsOfRow(state, sheet, lastBodyRow(part) + 1);
  return part.columns.map((_, index) => {
    return cells.find(({ column }) => column === part.area.firstColumn + index)?.value ?? null;
  });
}
