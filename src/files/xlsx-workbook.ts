import type { Change, ColumnSnapshot, TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { appendRows } from './append-rows.ts';
import { writeCell } from './cell-writing.ts';
import { columnFormula } from './column-formulas.ts';
import { lookOfMark, markHasFormula } from './sheet-grid.ts';
import { firstBodyRow, lastBodyRow } from './table-part.ts';
import { openWorkbookState } from './workbook-open.ts';
import { saveWorkbookState } from './workbook-save.ts';
import type { TableState, WorkbookState } from './workbook-state.ts';

export { FileRefused } from './file-refused.ts';

/** A workbook file in memory: its tables as plain values, changed and saved without touching anything else. */
export class XlsxWorkbook {
  /** Whether the workbook holds macros; such a file must be called .xlsm, and no other may. */
  readonly macroEnabled: boolean;
  readonly #original: Uint8Array;
  #state: WorkbookState;
  #snapshot: WorkbookSnapshot | null = null;
  #saved: Uint8Array | null;

  constructor(original: Uint8Array, state: WorkbookState, macroEnabled: boolean) {
    this.#original = original;
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
    const state = this.#state.fork();
    for (const change of joinAppends(changes)) {
      if (change.kind === 'append') appendRows(state, change.table, change.rows);
      else setCell(state, change);
    }
    if (state.cellsChanged || state.formulasChanged) {
      this.#state = state;
      this.#snapshot = null;
      this.#saved = null;
    }
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

/**
 * Joins the appends to one table between which nothing else happens to that table, so that it grows once: rows
 * may have to be put into its tab for that.
 */
function joinAppends(changes: readonly Change[]): Change[] {
  const joined: Change[] = [];
  const lastPlace = new Map<string, number>();
  for (const change of changes) {
    const place = lastPlace.get(change.table);
    const last = place === undefined ? undefined : joined[place];
    if (place !== undefined && change.kind === 'append' && last?.kind === 'append') {
      joined[place] = { ...last, rows: [...last.rows, ...change.rows] };
    } else lastPlace.set(change.table, joined.push(change) - 1);
  }
  return joined;
}

function tableSnapshot(table: TableState, state: WorkbookState): TableSnapshot {
  const { part, grid, sheet, below } = table;
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
    ...(below === null ? {} : { below: below.values.map((column) => column[0] ?? null) }),
  };
}
