import { joinAppends } from '../workbook/join-appends.ts';
import type { CellWrite, RowChange, TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';

/** A row to be written: one entry per column of the table; undefined leaves the cell as it is. */
export type PlannedRow = readonly (CellWrite | undefined)[];

/** What changes make of one table. */
export interface TablePlan {
  readonly table: TableSnapshot;
  /** Rows of the body that are written in part, by body row: those that are set, and blank ones that are filled. */
  readonly body: ReadonlyMap<number, PlannedRow>;
  /** The body rows that were blank and are filled. */
  readonly filled: ReadonlySet<number>;
  /** Rows that are appended below the body. */
  readonly grown: readonly PlannedRow[];
}

export type Plan =
  | { readonly ok: true; readonly tables: readonly TablePlan[] }
  /** The message says what can't be written, and what to do. */
  | { readonly ok: false; readonly message: string };

const MAX_CELL_CHARACTERS = 32_767;
const MAX_ROWS = 1_048_576;

/**
 * Works out what is to stand where when changes are carried out in their order. Tables to which rows are appended
 * come first, in the order of the changes. Formulas stay: what a change would write over one is left out.
 * @throws Error for a table, column or row that isn't in the basis: a mistake of the caller
 */
export function planWrites(changes: readonly RowChange[], basis: WorkbookSnapshot): Plan {
  const drafts = new Map<string, TableDraft>();
  for (const change of joinAppends(changes)) {
    let draft = drafts.get(change.table);
    if (draft === undefined) {
      const table = basis.tables.find(({ name }) => name === change.table);
      if (table === undefined) throw new Error(`There is no table ${change.table}`);
      draft = new TableDraft(table);
      drafts.set(change.table, draft);
    }
    if (change.kind === 'append') draft.append(change.rows);
    else draft.set(change.row, change.column, change.cell);
  }
  const plans = [...drafts.values()].map((draft) => draft.plan());
  const appends = ({ grown, filled }: TablePlan): boolean => grown.length > 0 || filled.size > 0;
  const tables = [...plans.filter(appends), ...plans.filter((plan) => !appends(plan) && plan.body.size > 0)];
  const message = tables.map(refusal).find((each) => each !== null);
  return message === undefined || message === null ? { ok: true, tables } : { ok: false, message };
}

/** A table while changes are laid over it. */
class TableDraft {
  readonly #table: TableSnapshot;
  readonly #columns: ReadonlyMap<string, number>;
  readonly #body = new Map<number, (CellWrite | undefined)[]>();
  readonly #filled = new Set<number>();
  readonly #grown: (CellWrite | undefined)[][] = [];

  constructor(table: TableSnapshot) {
    this.#table = table;
    this.#columns = new Map(table.columns.map(({ header }, index) => [header, index]));
  }

  plan(): TablePlan {
    return { table: this.#table, body: this.#body, filled: this.#filled, grown: this.#grown };
  }

  set(row: number, header: string, cell: CellWrite): void {
    const { name, rowCount } = this.#table;
    const rows = rowCount + this.#grown.length;
    if (!Number.isInteger(row) || row < 0 || row >= rows) {
      throw new Error(`There is no row ${row} in ${name}, which has ${rows}`);
    }
    this.#write(row, header, cell);
  }

  append(rows: readonly Readonly<Record<string, CellWrite>>[]): void {
    const { rowCount, columns } = this.#table;
    let at = this.#firstBlank();
    for (const row of rows) {
      if (at < rowCount) this.#filled.add(at);
      else if (at >= rowCount + this.#grown.length) this.#grown.push(columns.map(() => undefined));
      for (const [header, cell] of Object.entries(row)) this.#write(at, header, cell);
      at++;
    }
  }

  #write(row: number, header: string, cell: CellWrite): void {
    const { name, rowCount, columns } = this.#table;
    const index = this.#columns.get(header);
    const column = index === undefined ? undefined : columns[index];
    if (index === undefined || column === undefined) {
      throw new Error(`There is no column ${header} in ${name}`);
    }
    if (cell.kind === 'number' && !Number.isFinite(cell.number)) {
      throw new Error(`${cell.number} can't stand in a cell`);
    }
    if (row < rowCount ? column.hasFormula(row) : column.calculated) return;
    let cells = row < rowCount ? this.#body.get(row) : this.#grown[row - rowCount];
    if (cells === undefined) {
      cells = columns.map(() => undefined);
      this.#body.set(row, cells);
    }
    cells[index] = cell;
  }

  /** The row from which on all rows are blank: no value but what formulas give. */
  #firstBlank(): number {
    let first = this.#table.rowCount + this.#grown.length;
    while (first > 0 && this.#isBlank(first - 1)) first--;
    return first;
  }

  #isBlank(row: number): boolean {
    const { rowCount, columns } = this.#table;
    const written = row < rowCount ? this.#body.get(row) : this.#grown[row - rowCount];
    return columns.every((column, index) => {
      const cell = written?.[index];
      if (cell !== undefined) return isBlankWrite(cell);
      if (row >= rowCount || column.hasFormula(row)) return true;
      const value = column.values[row] ?? null;
      return value === null || value === '';
    });
  }
}

/** Whether a write leaves the cell blank. */
export function isBlankWrite(cell: CellWrite): boolean {
  return cell.kind === 'blank' || (cell.kind === 'text' && cell.text === '');
}

function refusal({ table, body, grown }: TablePlan): string | null {
  const lastRow = table.firstRow + table.rowCount + grown.length;
  if (lastRow > MAX_ROWS) {
    return `${table.name} would run beyond the last row of its tab. Carry old rows over to a new workbook.`;
  }
  for (const row of [...body.values(), ...grown]) {
    const index = row.findIndex((cell) => cell?.kind === 'text' && cell.text.length > MAX_CELL_CHARACTERS);
    const cell = row[index];
    if (cell?.kind === 'text') {
      return (
        `The text for ${table.columns[index]?.header ?? ''} in ${table.name} has ${cell.text.length} characters; ` +
        `a cell holds at most ${MAX_CELL_CHARACTERS}. Shorten it.`
      );
    }
  }
  return null;
}
