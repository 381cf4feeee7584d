import type { DateSystem } from '../core/serial-date.ts';
import type { CellEdit } from './cell-edit.ts';
import type { PackageParts } from './package-parts.ts';
import type { SharedStrings } from './shared-strings.ts';
import { copyGrid, type TableGrid } from './sheet-grid.ts';
import { readSheetText } from './sheet-read.ts';
import type { SheetText } from './sheet-rows.ts';
import type { DerivedStyles } from './styles-part.ts';
import type { TablePart } from './table-part.ts';
import type { Tab } from './workbook-part.ts';

/** A sheet: its text, and the cells that are to be written over it. */
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
  names: PartNames;
  readonly dateSystem: DateSystem;
  readonly strings: SharedStrings;
  readonly parts: PackageParts;
  /** The tabs that hold cells, in their order. */
  tabs: readonly Tab[];
  styles: DerivedStyles;
  /** Whether a formula came, went or moved; whether any cell changed at all. */
  formulasChanged = false;
  cellsChanged = false;
  /** Whether this fork differs from what it was forked from. */
  touched = false;
  /** How many more cells (fewer: negative) refer to shared texts in rewritten sheets than in the file. */
  sharedReferences = 0;
  readonly #sheets: Map<string, SheetState>;
  readonly #tables: Map<string, TableState>;
  /** The sheets and grids that this fork has copied, so that it may write into them. */
  readonly #owned = new Set<string>();

  constructor(
    shared: Pick<WorkbookState, 'names' | 'dateSystem' | 'strings' | 'parts' | 'tabs' | 'styles'>,
    sheets: ReadonlyMap<string, SheetState>,
    tables: ReadonlyMap<string, TableState>,
  ) {
    this.names = shared.names;
    this.dateSystem = shared.dateSystem;
    this.strings = shared.strings;
    this.parts = shared.parts;
    this.tabs = shared.tabs;
    this.styles = shared.styles;
    this.#sheets = new Map(sheets);
    this.#tables = new Map(tables);
  }

  fork(): WorkbookState {
    const { names, dateSystem, strings, tabs } = this;
    const fork = new WorkbookState(
      { names, dateSystem, strings, tabs, parts: this.parts.fork(), styles: this.styles.fork() },
      this.#sheets,
      this.#tables,
    );
    fork.formulasChanged = this.formulasChanged;
    fork.cellsChanged = this.cellsChanged;
    fork.sharedReferences = this.sharedReferences;
    return fork;
  }

  noteChange(): void {
    this.cellsChanged = true;
    this.touched = true;
  }

  get tables(): TableState[] {
    return [...this.#tables.values()];
  }

  /** The sheets with tables, and those that have been asked for. */
  get sheets(): SheetState[] {
    return [...this.#sheets.values()];
  }

  /** @throws Error where the workbook has no such table: a mistake of the caller */
  table(name: string): TableState {
    const table = this.#tables.get(name);
    if (!table) throw new Error(`There is no table ${name}`);
    return table;
  }

  /** The sheet of a tab; one without tables is read when it is first asked for. */
  sheet(part: string): SheetState {
    const known = this.#sheets.get(part);
    if (known) return known;
    const tab = this.tabs.find((each) => each.part === part);
    if (!tab) throw new Error(`There is no sheet ${part}`);
    const text = readSheetText(this.parts.text(part), part, tab.name);
    return this.putSheet({ text, edits: new Map(), rewritten: false });
  }

  /** @throws Error where the workbook has no such tab: a mistake of the caller */
  tab(name: string): Tab {
    const tab = this.tabs.find((each) => each.name === name);
    if (!tab) throw new Error(`There is no tab ${name}`);
    return tab;
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
