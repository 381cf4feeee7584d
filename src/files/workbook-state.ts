import type { DateSystem } from '../core/serial-date.ts';
import type { CellEdit } from './cell-edit.ts';
import type { PackageParts } from './package-parts.ts';
import type { SharedStrings } from './shared-strings.ts';
import { copyGrid, type TableGrid } from './sheet-grid.ts';
import type { SheetText } from './sheet-rows.ts';
import type { DayStyles } from './styles-part.ts';
import type { TablePart } from './table-part.ts';

/** A sheet with tables: its text, and the cells that are to be written over it. */
export interface SheetState {
  readonly text: SheetText;
  readonly edits: Map<number, Map<number, CellEdit>>;
  /** Whether the text differs from the part of the file. */
  readonly rewritten: boolean;
}

export interface TableState {
  readonly part: TablePart;
  /** The part of the sheet that it stands on. */
  readonly sheet: string;
  readonly grid: TableGrid;
  /** What stood right below the body when the file was opened; null where a totals row stands there. */
  readonly below: TableGrid | null;
}

/** What the workbook's parts are called that hold what all sheets share; null where there is no such part. */
export interface PartNames {
  readonly workbook: string;
  readonly strings: string | null;
  readonly styles: string | null;
  readonly calculationChain: string | null;
}

/**
 * A workbook between opening and saving: the parts of the file, and what lies over them. Changes are made to a
 * fork, which takes the place of the original once all of them have succeeded.
 */
export class WorkbookState {
  readonly names: PartNames;
  readonly dateSystem: DateSystem;
  readonly strings: SharedStrings;
  readonly parts: PackageParts;
  readonly dayStyles: DayStyles;
  /** Whether a formula came, went or moved; whether any cell changed at all. */
  formulasChanged = false;
  cellsChanged = false;
  readonly #sheets: Map<string, SheetState>;
  readonly #tables: Map<string, TableState>;
  /** The sheets and grids that this fork has copied, so that it may write into them. */
  readonly #owned = new Set<string>();

  constructor(
    shared: Pick<WorkbookState, 'names' | 'dateSystem' | 'strings' | 'parts' | 'dayStyles'>,
    sheets: ReadonlyMap<string, SheetState>,
    tables: ReadonlyMap<string, TableState>,
  ) {
    this.names = shared.names;
    this.dateSystem = shared.dateSystem;
    this.strings = shared.strings;
    this.parts = shared.parts;
    this.dayStyles = shared.dayStyles;
    this.#sheets = new Map(sheets);
    this.#tables = new Map(tables);
  }

  fork(): WorkbookState {
    const { names, dateSystem, strings } = this;
    const fork = new WorkbookState(
      { names, dateSystem, strings, parts: this.parts.fork(), dayStyles: this.dayStyles.fork() },
      this.#sheets,
      this.#tables,
    );
    fork.formulasChanged = this.formulasChanged;
    fork.cellsChanged = this.cellsChanged;
    return fork;
  }

  get tables(): TableState[] {
    return [...this.#tables.values()];
  }

  get sheets(): SheetState[] {
    return [...this.#sheets.values()];
  }

  /** @throws Error where the workbook has no such table: a mistake of the caller */
  table(name: string): TableState {
    const table = this.#tables.get(name);
    if (!table) throw new Error(`There is no table ${name}`);
    return table;
  }

  sheet(part: string): SheetState {
    const sheet = this.#sheets.get(part);
    if (!sheet) throw new Error(`There is no sheet ${part} with tables`);
    return sheet;
  }

  /** The table with a grid that may be written into. */
  tableToWrite(name: string): TableState {
    const table = this.table(name);
    if (this.#owned.has(`grid ${name}`)) return table;
    this.#owned.add(`grid ${name}`);
    return this.putTable({ ...table, grid: copyGrid(table.grid) });
  }

  /** The edits of a sheet, to be written into. */
  editsToWrite(part: string): Map<number, Map<number, CellEdit>> {
    const sheet = this.sheet(part);
    if (this.#owned.has(`edits ${part}`)) return sheet.edits;
    this.#owned.add(`edits ${part}`);
    const edits = new Map([...sheet.edits].map(([row, cells]) => [row, new Map(cells)]));
    this.putSheet({ ...sheet, edits });
    return edits;
  }

  putTable(table: TableState): TableState {
    this.#tables.set(table.part.name, table);
    return table;
  }

  /** Puts a sheet whose edits are this fork's own. */
  takeSheet(sheet: SheetState): void {
    this.#owned.add(`edits ${sheet.text.part}`);
    this.putSheet(sheet);
  }

  /** Puts a table whose grid is this fork's own. */
  takeGrid(table: TableState): void {
    this.#owned.add(`grid ${table.part.name}`);
    this.putTable(table);
  }

  putSheet(sheet: SheetState): SheetState {
    this.#sheets.set(sheet.text.part, sheet);
    return sheet;
  }
}
