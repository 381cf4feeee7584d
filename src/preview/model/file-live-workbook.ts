import type { TabBlueprint } from '../../workbook/blueprint.ts';
import type {
  GoToOutcome,
  ListenOutcome,
  LiveListener,
  LiveWorkbook,
  ReadOutcome,
  TabCell,
  WriteOutcome,
} from '../../workbook/live-workbook.ts';
import type { Change, WorkbookSnapshot } from '../../workbook/port.ts';
import type { EditableFile } from './editable-file.ts';
import { isStale } from './stale-rows.ts';

/** Where the workbook is shown: what the pane can bring into view, and hear of. */
export interface CellView {
  /** Brings a cell into view and chooses it; false where there is no such tab. */
  show(cell: TabCell): boolean;
  /** Calls with the first cell of every new selection; the function given back ends that. */
  onSelect(listener: (cell: TabCell) => void): () => void;
}

/** A workbook file, open in the page, as the pane's gate. */
export class FileLiveWorkbook implements LiveWorkbook {
  readonly #file: EditableFile;
  readonly #view: CellView;

  constructor(file: EditableFile, view: CellView) {
    this.#file = file;
    this.#view = view;
  }

  read(): Promise<ReadOutcome> {
    return Promise.resolve({ kind: 'read', snapshot: this.#snapshot() });
  }

  write(changes: readonly Change[], basis: WorkbookSnapshot): Promise<WriteOutcome> {
    const snapshot = this.#snapshot();
    if (isStale(changes, basis, snapshot)) return Promise.resolve({ kind: 'stale', snapshot });
    return Promise.resolve(this.#change((workbook) => workbook.apply(changes)));
  }

  addTabs(tabs: readonly TabBlueprint[]): Promise<WriteOutcome> {
    return Promise.resolve(this.#change((workbook) => workbook.addTabs(tabs)));
  }

  goTo(cell: TabCell): Promise<GoToOutcome> {
    return Promise.resolve(
      this.#view.show(cell)
        ? { kind: 'there' }
        : { kind: 'failed', message: `The workbook has no tab ${cell.tab} any more.` },
    );
  }

  listen({ changed, selected }: LiveListener): Promise<ListenOutcome> {
    const ends = [
      this.#file.onChangeBy((by) => {
        if (by === 'person') changed('person');
      }),
      this.#view.onSelect(selected),
    ];
    const stop = () => {
      for (const end of ends) end();
      return Promise.resolve();
    };
    return Promise.resolve({ kind: 'listening', stop });
  }

  #snapshot(): WorkbookSnapshot {
    return this.#file.workbook.snapshot();
  }

  #change(edit: Parameters<EditableFile['change']>[1]): WriteOutcome {
    const outcome = this.#file.change('pane', edit);
    return outcome.kind === 'done'
      ? { kind: 'written', snapshot: this.#snapshot() }
      : { kind: 'failed', message: outcome.message };
  }
}
