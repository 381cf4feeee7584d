import type { DateSystem } from '../../core/serial-date.ts';
import { FileRefused } from '../../files/file-refused.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { TabShape } from '../../files/tab-shape.ts';
import type { TypedCellAt } from '../../files/typed-cell.ts';
import type { WorkbookMark, XlsxWorkbook } from '../../files/xlsx-workbook.ts';
import { DONE, type EditOutcome, type GridSource, type GridState, type SaveOutcome } from './grid-source.ts';

/** Who changes the workbook: the person in the grid, or the pane through its gate. */
export type FileChanger = 'person' | 'pane';

/** A workbook file that is edited in the grid and by the pane, with the way back. */
export class EditableFile implements GridSource {
  readonly workbook: XlsxWorkbook;
  readonly #undo: WorkbookMark[] = [];
  readonly #redo: WorkbookMark[] = [];
  readonly #listeners = new Set<(by: FileChanger) => void>();

  constructor(workbook: XlsxWorkbook) {
    this.workbook = workbook;
  }

  get dateSystem(): DateSystem {
    return this.workbook.snapshot().dateSystem;
  }

  tabs(): readonly TabShape[] {
    return this.workbook.tabs();
  }

  row(tab: string, row: number): readonly ShownCell[] {
    return this.workbook.row(tab, row);
  }

  isFilled(tab: string, row: number, column: number): boolean {
    return this.workbook.isFilled(tab, row, column);
  }

  type(tab: string, cells: readonly TypedCellAt[]): EditOutcome {
    return this.change('person', (workbook) => workbook.type(tab, cells));
  }

  removeRows(table: string, first: number, count: number): EditOutcome {
    return this.change('person', (workbook) => workbook.removeRows(table, first, count));
  }

  /** Changes the workbook as one step of the way back; nothing stays changed where the file refuses. */
  change(by: FileChanger, edit: (workbook: XlsxWorkbook) => void): EditOutcome {
    const before = this.workbook.mark();
    try {
      edit(this.workbook);
    } catch (error) {
      this.workbook.restore(before);
      if (error instanceof FileRefused) return { kind: 'refused', message: error.message };
      throw error;
    }
    if (this.workbook.mark().state === before.state) return DONE;
    this.#undo.push(before);
    this.#redo.length = 0;
    this.#tell(by);
    return DONE;
  }

  get canUndo(): boolean {
    return this.#undo.length > 0;
  }

  readonly knowsRedo = true;

  get canRedo(): boolean {
    return this.#redo.length > 0;
  }

  undo(): EditOutcome {
    return this.#step(this.#undo, this.#redo, 'There is nothing to undo.');
  }

  redo(): EditOutcome {
    return this.#step(this.#redo, this.#undo, 'There is nothing to redo.');
  }

  #step(from: WorkbookMark[], to: WorkbookMark[], nothing: string): EditOutcome {
    const mark = from.pop();
    if (!mark) return { kind: 'refused', message: nothing };
    to.push(this.workbook.mark());
    this.workbook.restore(mark);
    this.#tell('person');
    return DONE;
  }

  onChange(listener: () => void): () => void {
    return this.onChangeBy(listener);
  }

  /** As `onChange`, but tells who did it; going back and forward is the person's doing. */
  onChangeBy(listener: (by: FileChanger) => void): () => void {
    const own = (by: FileChanger): void => listener(by);
    this.#listeners.add(own);
    return () => void this.#listeners.delete(own);
  }

  #tell(by: FileChanger): void {
    for (const listener of this.#listeners) listener(by);
  }

  state(): GridState {
    return this.workbook.mark().state;
  }

  isAt(state: GridState): boolean {
    return this.workbook.mark().state === state;
  }

  save(): SaveOutcome {
    try {
      return { kind: 'saved', bytes: this.workbook.save() };
    } catch (error) {
      if (error instanceof FileRefused) return { kind: 'refused', message: error.message };
      throw error;
    }
  }
}
