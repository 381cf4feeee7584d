import { serialOfDay } from '../../src/core/serial-date.ts';
import type { TabBlueprint, TableBlueprint } from '../../src/workbook/blueprint.ts';
import type {
  Changer,
  GoToOutcome,
  ListenOutcome,
  LiveListener,
  LiveWorkbook,
  ReadOutcome,
  TabCell,
  WriteOutcome,
} from '../../src/workbook/live-workbook.ts';
import type {
  CellValue,
  CellWrite,
  Change,
  ColumnSnapshot,
  TableSnapshot,
  WorkbookSnapshot,
} from '../../src/workbook/port.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import type { CopyWorkbook } from '../../src/workbook/workbook-copy.ts';

/** For sessions that make no workbook of their own. */
export const NO_COPY: CopyWorkbook = () =>
  Promise.resolve({ kind: 'failed', message: 'There is no file here.' });

/** A live workbook that is nothing but a snapshot, with ways to change it from outside and to make it fail. */
export class MemoryWorkbook implements LiveWorkbook {
  snapshot: WorkbookSnapshot;
  /** How often it was read, and each list of changes that was written. */
  reads = 0;
  readonly writes: (readonly Change[])[] = [];
  readonly shown: TabCell[] = [];
  readonly tabs: TabBlueprint[] = [];
  /** Outcomes that stand in for the next reads and writes. */
  readonly nextReads: ReadOutcome[] = [];
  readonly nextListens: ListenOutcome[] = [];
  readonly nextWrites: ((changes: readonly Change[]) => WriteOutcome)[] = [];
  /** Called before a write is carried out: what somebody else does at the last moment. */
  beforeWrite: (() => void) | null = null;
  #listeners = new Set<LiveListener>();

  constructor(snapshot: WorkbookSnapshot) {
    this.snapshot = snapshot;
  }

  read(): Promise<ReadOutcome> {
    this.reads += 1;
    return Promise.resolve(this.nextReads.shift() ?? { kind: 'read', snapshot: this.snapshot });
  }

  write(changes: readonly Change[], basis: WorkbookSnapshot): Promise<WriteOutcome> {
    const act = this.beforeWrite;
    this.beforeWrite = null;
    act?.();
    const instead = this.nextWrites.shift();
    if (instead !== undefined) return Promise.resolve(instead(changes));
    if (touches(changes, basis, this.snapshot)) {
      return Promise.resolve({ kind: 'stale', snapshot: this.snapshot });
    }
    this.writes.push(changes);
    this.snapshot = withChanges(this.snapshot, changes);
    return Promise.resolve({ kind: 'written', snapshot: this.snapshot });
  }

  addTabs(tabs: readonly TabBlueprint[]): Promise<WriteOutcome> {
    this.tabs.push(...tabs);
    const tables = tabs.flatMap(({ name, table }) => (table === undefined ? [] : [tableOn(name, table)]));
    this.snapshot = { ...this.snapshot, tables: [...this.snapshot.tables, ...tables] };
    return Promise.resolve({ kind: 'written', snapshot: this.snapshot });
  }

  goTo(cell: TabCell): Promise<GoToOutcome> {
    this.shown.push(cell);
    return Promise.resolve({ kind: 'there' });
  }

  listen(listener: LiveListener): Promise<ListenOutcome> {
    this.#listeners.add(listener);
    const stop = () => {
      this.#listeners.delete(listener);
      return Promise.resolve();
    };
    return Promise.resolve(this.nextListens.shift() ?? { kind: 'listening', stop });
  }

  /** Somebody changes the workbook. */
  change(by: Changer, snapshot: WorkbookSnapshot): void {
    this.snapshot = snapshot;
    for (const { changed } of this.#listeners) changed(by);
  }

  choose(cell: TabCell): void {
    for (const { selected } of this.#listeners) selected(cell);
  }
}

/** A table that was added with its tab. */
function tableOn(tab: string, { name, columns, rows }: TableBlueprint): TableSnapshot {
  const column = (header: string, index: number): ColumnSnapshot => ({
    header,
    values: rows.length === 0 ? [null] : rows.map((row) => storedAs(row[index])),
    look: () => 'plain',
    hasFormula: () => false,
    calculated: false,
  });
  return {
    name,
    tab,
    firstRow: 2,
    firstColumn: 1,
    rowCount: Math.max(1, rows.length),
    columns: columns.map(({ header }, index) => column(header, index)),
  };
}

function storedAs(cell: CellWrite | null | undefined): CellValue {
  if (cell === undefined || cell === null || cell.kind === 'blank') return null;
  if (cell.kind === 'day') return serialOfDay(cell.day, 1900);
  return cell.kind === 'text' ? cell.text : cell.number;
}

/** Whether a cell that changes set holds something else by now than when they were worked out. */
function touches(changes: readonly Change[], basis: WorkbookSnapshot, now: WorkbookSnapshot): boolean {
  return changes.some((change) => {
    const [before, after] = [basis, now].map(({ tables }) =>
      tables.find(({ name }) => name === change.table),
    );
    if (before === after) return false;
    if (change.kind === 'append') return false;
    if (change.kind === 'add column') return before?.columns.length !== after?.columns.length;
    return (
      JSON.stringify(before?.columns.map(({ values }) => values[change.row])) !==
      JSON.stringify(after?.columns.map(({ values }) => values[change.row]))
    );
  });
}
