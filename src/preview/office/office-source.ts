import type { DateSystem } from '../../core/serial-date.ts';
import { cellName } from '../../files/cell-reference.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { ColumnShape, TabShape } from '../../files/tab-shape.ts';
import type { TypedCellAt } from '../../files/typed-cell.ts';
import { HostError } from '../../office-host/host-error.ts';
import {
  type Chart,
  headerRows,
  isBlank,
  type MemoryWorkbook,
  type Row,
  type Sheet,
  tableArea,
} from '../../office-host/memory-workbook.ts';
import type { OfficeHost } from '../../office-host/office-host.ts';
import type { Person } from '../../office-host/person.ts';
import {
  DONE,
  type EditOutcome,
  type GridSource,
  type GridState,
  type SaveOutcome,
} from '../model/grid-source.ts';
import { hostInput, shownHostCell } from './host-cells.ts';

/** The rows of every tab; rows are replaced, never changed, so the same row holds the same cells. */
type TabRows = readonly (readonly (Row | undefined)[])[];

/** The workbook of the host in memory as the grid shows it; what the person does goes through the host. */
export class OfficeSource implements GridSource {
  readonly #workbook: MemoryWorkbook;
  readonly #person: Person;
  readonly #file: ReadonlyMap<string, TabShape>;
  readonly #save: (source: OfficeSource) => SaveOutcome;
  readonly #listeners = new Set<() => void>();
  #seen: TabRows;
  #steps = 0;

  /**
   * @param file the tabs as they are in the file: the host isn't told of their column widths and charts
   * @param save brings what the host holds back into the file
   */
  constructor(
    host: OfficeHost,
    client: string,
    file: ReadonlyMap<string, TabShape>,
    save: (source: OfficeSource) => SaveOutcome,
  ) {
    this.#workbook = host.workbook;
    this.#person = host.person(client);
    this.#file = file;
    this.#save = save;
    this.#seen = this.#rowsNow();
  }

  get dateSystem(): DateSystem {
    return this.#workbook.dateSystem;
  }

  tabs(): readonly TabShape[] {
    return this.#workbook.sheets.map((sheet) => {
      const tables = this.#workbook.tables
        .filter((table) => table.sheet === sheet)
        .map((table) => {
          const { row, column, rows, columns } = tableArea(table);
          return {
            name: table.name,
            area: {
              firstRow: row + 1,
              lastRow: row + rows,
              firstColumn: column + 1,
              lastColumn: column + columns,
            },
            headerRows: headerRows(table),
            totalsRows: table.showTotals ? 1 : 0,
          };
        });
      const filled = sheet.rows.findLastIndex((row) => row?.some((cell) => cell));
      const widest = sheet.rows.reduce((most, row) => Math.max(most, row?.length ?? 0), 0);
      return {
        name: sheet.name,
        hidden: sheet.visibility !== 'Visible',
        lastRow: Math.max(filled + 1, ...tables.map(({ area }) => area.lastRow)),
        lastColumn: Math.max(widest, ...tables.map(({ area }) => area.lastColumn)),
        tables,
        columns: withHostWidths(this.#file.get(sheet.name)?.columns ?? [], sheet),
        hasChart: this.#file.get(sheet.name)?.hasChart === true || sheet.charts.length > 0,
      };
    });
  }

  /** The charts that have come to a tab in the host. */
  charts(tab: string): readonly Chart[] {
    return this.#sheet(tab).charts;
  }

  row(tab: string, row: number): readonly ShownCell[] {
    const cells: ShownCell[] = [];
    this.#sheet(tab).rows[row - 1]?.forEach((cell, index) => {
      if (cell) cells.push(shownHostCell(index + 1, cell));
    });
    return cells;
  }

  isFilled(tab: string, row: number, column: number): boolean {
    const cell = this.#sheet(tab).rows[row - 1]?.[column - 1];
    return cell !== undefined && !isBlank(cell);
  }

  #sheet(tab: string): Sheet {
    const sheet = this.#workbook.sheets.find(({ name }) => name === tab);
    if (!sheet) throw new Error(`There is no tab ${tab}`);
    return sheet;
  }

  type(tab: string, cells: readonly TypedCellAt[]): EditOutcome {
    const [first] = cells;
    if (!first) return DONE;
    const rows = cells.map(({ row }) => row);
    const columns = cells.map(({ column }) => column);
    const top = rows.reduce((least, row) => Math.min(least, row));
    const left = columns.reduce((least, column) => Math.min(least, column));
    const height = rows.reduce((most, row) => Math.max(most, row)) - top + 1;
    const width = columns.reduce((most, column) => Math.max(most, column)) - left + 1;
    // Null leaves a cell as it is.
    const block = Array.from({ length: height }, () =>
      Array.from<string | number | boolean | null>({ length: width }).fill(null),
    );
    for (const { row, column, cell } of cells) {
      const before = this.row(tab, row).find((each) => each.column === column);
      const line = block[row - top];
      if (line) line[column - left] = hostInput(cell, before);
    }
    return this.#act(() => this.#person.paste(`${quoted(tab)}!${cellName(top, left)}`, block));
  }

  removeRows(table: string, first: number, count: number): EditOutcome {
    return this.#act(() => this.#person.deleteTableRows(table, first, count));
  }

  get canUndo(): boolean {
    return this.#steps > 0;
  }

  /** The host knows no way forward again. */
  readonly knowsRedo = false;
  readonly canRedo = false;

  undo(): EditOutcome {
    let was = false;
    const outcome = this.#act(() => {
      was = this.#person.undo();
    });
    if (outcome.kind === 'done' && !was) return { kind: 'refused', message: 'There is nothing to undo.' };
    // Going back was counted as a change of its own.
    this.#steps = Math.max(0, this.#steps - 2);
    return outcome;
  }

  redo(): EditOutcome {
    return { kind: 'refused', message: 'What was undone can’t be done again here.' };
  }

  onChange(listener: () => void): () => void {
    const own = (): void => listener();
    this.#listeners.add(own);
    return () => void this.#listeners.delete(own);
  }

  state(): GridState {
    return this.#rowsNow();
  }

  isAt(state: GridState): boolean {
    return isSameRows(state as TabRows, this.#rowsNow());
  }

  save(): SaveOutcome {
    return this.#save(this);
  }

  #act(act: () => void): EditOutcome {
    try {
      act();
    } catch (error) {
      if (error instanceof HostError) return { kind: 'refused', message: error.message };
      throw error;
    }
    this.look();
    return DONE;
  }

  /** Looks whether anything has changed since the last look, and tells of it. */
  look(): void {
    const now = this.#rowsNow();
    if (isSameRows(this.#seen, now)) return;
    this.#seen = now;
    this.#steps++;
    for (const listener of this.#listeners) listener();
  }

  #rowsNow(): TabRows {
    return this.#workbook.sheets.map(({ rows }) => [...rows]);
  }
}

/** The widths of a tab's columns as the file has them, and those that the host was given besides. */
function withHostWidths(columns: readonly ColumnShape[], { columnWidths }: Sheet): readonly ColumnShape[] {
  const added = [...columnWidths].flatMap(([index, points]): ColumnShape[] => {
    const column = index + 1;
    if (columns.some(({ first, last }) => column >= first && column <= last)) return [];
    return [{ first: column, last: column, width: charactersOf(points), hidden: false }];
  });
  return added.length === 0 ? columns : [...columns, ...added].toSorted((a, b) => a.first - b.first);
}

/** Points as characters of the standard font: 7 pixels each, and 5 around them. */
function charactersOf(points: number): number {
  return Math.max(1, Math.round((points / 0.75 - 5) / 7));
}

function isSameRows(before: TabRows, now: TabRows): boolean {
  return (
    now.length === before.length &&
    now.every((rows, index) => {
      const old = before[index] ?? [];
      return rows.length === old.length && rows.every((row, place) => row === old[place]);
    })
  );
}

function quoted(tab: string): string {
  return `'${tab.replaceAll("'", "''")}'`;
}
