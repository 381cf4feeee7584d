import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { parseArea } from '../../files/cell-reference.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { TableShape, TabShape } from '../../files/tab-shape.ts';
import type { TabCell } from '../../workbook/live-workbook.ts';
import type { CellValue } from '../../workbook/port.ts';
import type { CellFunctionEvaluator } from '../../workbook/preview-port.ts';
import { type CellPosition, isSamePosition, type Selection, single } from '../grid/cell-position.ts';
import type { CellView } from './file-live-workbook.ts';
import { evaluateCall, functionCall, type NamedCell } from './function-cells.ts';
import type { GridSource, GridState } from './grid-source.ts';

/** What is said to the person: something that happened, or something that is in the way. */
export interface Announcement {
  readonly kind: 'news' | 'problem';
  readonly text: string;
}

const FIRST_CELL: CellPosition = { row: 1, column: 1 };

/** The workbook on view: its tabs, what is chosen, and what is said about it. */
export class Workbench implements CellView {
  readonly source: ReadonlySignal<GridSource>;
  /** Counts what changed, so that whoever shows cells draws them again. */
  readonly version = signal(0);
  readonly tab = signal('');
  readonly selection = signal<Selection>(single(FIRST_CELL));
  readonly announcement = signal<Announcement>({ kind: 'news', text: '' });
  /** Whether the workbook holds something else than what was opened or saved last. */
  readonly unsaved = signal(false);
  /** Grows where something outside the grid asks for a cell, so that the grid brings it into view. */
  readonly shows = signal(0);
  readonly tabs = computed<readonly TabShape[]>(() => {
    void this.version.value;
    return this.source.value.tabs();
  });
  readonly #source;
  #savedState: GridState = null;
  readonly #selections = new Map<string, Selection>();
  readonly #selectListeners = new Set<(cell: TabCell) => void>();
  #evaluate: CellFunctionEvaluator | null = null;
  #endSource: () => void = () => undefined;
  #rows = new Map<number, readonly ShownCell[]>();

  constructor(source: GridSource) {
    this.#source = signal(source);
    this.source = this.#source;
    this.open(source);
  }

  /** Shows another workbook in place of the one that is there. */
  open(source: GridSource): void {
    this.#endSource();
    this.#endSource = source.onChange(() => {
      this.unsaved.value = !source.isAt(this.#savedState);
      // What was said of the change before is over: its "Undo brings them back" would mislead now.
      this.say('news', '');
      this.#changed();
    });
    this.#source.value = source;
    this.saved(source.state());
    this.#selections.clear();
    this.#evaluate = null;
    this.#changed();
    this.tab.value = '';
    const first = source.tabs().find(({ hidden }) => !hidden) ?? source.tabs()[0];
    if (first) this.chooseTab(first.name);
  }

  /** Remembers what of the workbook was saved. */
  saved(state: GridState): void {
    this.#savedState = state;
    this.unsaved.value = !this.source.value.isAt(state);
  }

  #changed(): void {
    this.#rows = new Map();
    this.version.value++;
    if (!this.tabs.value.some(({ name }) => name === this.tab.value)) {
      this.chooseTab(this.tabs.value[0]?.name ?? '');
    }
  }

  get shape(): TabShape | undefined {
    return this.tabs.value.find(({ name }) => name === this.tab.value);
  }

  chooseTab(name: string): void {
    if (name === this.tab.value) return;
    this.#selections.set(this.tab.value, this.selection.value);
    this.tab.value = name;
    this.#rows = new Map();
    this.choose(this.#selections.get(name) ?? single(this.#firstCell()));
  }

  /** Where a tab is begun to be read: the first body cell of its first table, else its first cell. */
  #firstCell(): CellPosition {
    const table = this.shape?.tables[0];
    if (!table) return FIRST_CELL;
    return { row: table.area.firstRow + table.headerRows, column: table.area.firstColumn };
  }

  choose(selection: Selection): void {
    const isSame = isSamePosition(selection.active, this.selection.value.active);
    this.selection.value = selection;
    if (isSame && isSamePosition(selection.active, selection.other)) return;
    const cell = { tab: this.tab.value, ...selection.active };
    for (const listener of this.#selectListeners) listener(cell);
  }

  show({ tab, row, column }: TabCell): boolean {
    if (!this.tabs.value.some(({ name }) => name === tab)) return false;
    this.chooseTab(tab);
    this.choose(single({ row, column }));
    this.shows.value++;
    return true;
  }

  onSelect(listener: (cell: TabCell) => void): () => void {
    const own = (cell: TabCell): void => listener(cell);
    this.#selectListeners.add(own);
    return () => void this.#selectListeners.delete(own);
  }

  say(kind: Announcement['kind'], text: string): void {
    this.announcement.value = { kind, text };
  }

  /** The cells of a row of the tab on view, our own functions worked out. */
  row(row: number): readonly ShownCell[] {
    const known = this.#rows.get(row);
    if (known) return known;
    const cells = this.source.value.row(this.tab.value, row).map((cell) => this.#answered(cell));
    this.#rows.set(row, cells);
    return cells;
  }

  cell({ row, column }: CellPosition): ShownCell | undefined {
    return this.row(row).find((each) => each.column === column);
  }

  /** Takes the functions that cells may call. */
  registerFunctions(evaluate: CellFunctionEvaluator): () => void {
    this.#evaluate = evaluate;
    const again = (): void => {
      if (this.#evaluate !== evaluate) return;
      this.#rows = new Map();
      this.version.value++;
    };
    again();
    return again;
  }

  #answered(cell: ShownCell): ShownCell {
    const call = cell.formula === null || this.#evaluate === null ? null : functionCall(cell.formula);
    if (!call || this.#evaluate === null) return cell;
    return { ...cell, value: evaluateCall(call, this.#evaluate, (named) => this.#valueAt(named)) };
  }

  #valueAt({ tab, name }: NamedCell): CellValue | undefined {
    const area = parseArea(name);
    const wanted = (tab ?? this.tab.value).toLowerCase();
    const shape = this.tabs.value.find((each) => each.name.toLowerCase() === wanted);
    if (!area || !shape) return undefined;
    const cells = this.source.value.row(shape.name, area.firstRow);
    return cells.find(({ column }) => column === area.firstColumn)?.value ?? null;
  }

  /** The table of the tab on view that a cell belongs to. */
  tableAt({ row, column }: CellPosition): TableShape | undefined {
    return this.shape?.tables.find(
      ({ area }) =>
        row >= area.firstRow &&
        row <= area.lastRow &&
        column >= area.firstColumn &&
        column <= area.lastColumn,
    );
  }
}
