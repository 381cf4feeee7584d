import { openOfficeWorkbook } from '../../src/office/office-workbook.ts';
import {
  createMemoryWorkbook,
  createOfficeHost,
  type HostClient,
  type OfficeHost,
  type OfficeHostOptions,
} from '../../src/office-host/office-host.ts';
import type { CellLiteral, WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import type { LiveWorkbook, WriteOutcome } from '../../src/workbook/live-workbook.ts';
import type {
  CellValue,
  CellWrite,
  Change,
  RowChange,
  TableSnapshot,
  WorkbookSnapshot,
} from '../../src/workbook/port.ts';
import { type LoadedExcel, loadExcel } from '../helpers/office-client.ts';

/** The sets of the oldest program that the adapter is for: what is newer is refused. */
export const OLDEST = { ExcelApi: '1.14', SharedRuntime: '1.1', DelayForCellEdit: '1.1' };

/** An add-in with the workbook open through the real client library. */
export interface AddIn extends HostClient {
  readonly live: LiveWorkbook;
  readonly excel: LoadedExcel['Excel'];
}

/** A host over a workbook; each call of `open` is another add-in beside those there. */
export function hostOver(
  description: WorkbookDescription,
  options: OfficeHostOptions = {},
): { readonly host: OfficeHost; readonly open: (id?: string) => AddIn } {
  const host = createOfficeHost(createMemoryWorkbook(description), { requirementSets: OLDEST, ...options });
  return {
    host,
    open: (id) => {
      const client = host.connect(id);
      const { Excel } = loadExcel(client.bridge, { sets: host.requirementSets });
      return { ...client, live: openOfficeWorkbook(Excel), excel: Excel };
    },
  };
}

/** One add-in over a workbook. */
export function opened(
  description: WorkbookDescription,
  options: OfficeHostOptions = {},
): AddIn & { readonly host: OfficeHost; readonly open: (id?: string) => AddIn } {
  const { host, open } = hostOver(description, options);
  return { ...open('a'), host, open };
}

export async function readSnapshot(live: LiveWorkbook): Promise<WorkbookSnapshot> {
  const outcome = await live.read();
  if (outcome.kind !== 'read') throw new Error(outcome.message);
  return outcome.snapshot;
}

/** Writes on the basis of what stands now, and insists that it stands then. */
export async function writeAll(live: LiveWorkbook, changes: readonly Change[]): Promise<WorkbookSnapshot> {
  return writtenSnapshot(await live.write(changes, await readSnapshot(live)));
}

export function writtenSnapshot(outcome: WriteOutcome): WorkbookSnapshot {
  if (outcome.kind !== 'written') {
    throw new Error('message' in outcome ? `${outcome.kind}: ${outcome.message}` : outcome.kind);
  }
  return outcome.snapshot;
}

export const text = (value: string): CellWrite => ({ kind: 'text', text: value });
export const number = (value: number): CellWrite => ({ kind: 'number', number: value });
export const append = (table: string, ...rows: Readonly<Record<string, CellWrite>>[]): RowChange => ({
  kind: 'append',
  table,
  rows,
});
export const set = (table: string, row: number, column: string, cell: CellWrite): RowChange => ({
  kind: 'set',
  table,
  row,
  column,
  cell,
});

export function tableNamed(snapshot: WorkbookSnapshot, name: string): TableSnapshot {
  const table = snapshot.tables.find((each) => each.name === name);
  if (table === undefined) throw new Error(`There is no table ${name}`);
  return table;
}

export function valuesOf(snapshot: WorkbookSnapshot, table: string, header: string): readonly CellValue[] {
  return tableNamed(snapshot, table).columns.find((column) => column.header === header)?.values ?? [];
}

/** A snapshot as plain data, all that it says with it. */
export function plain(snapshot: WorkbookSnapshot): unknown {
  return {
    dateSystem: snapshot.dateSystem,
    tables: snapshot.tables.map((table) => ({
      ...table,
      columns: table.columns.map((column) => ({
        header: column.header,
        values: [...column.values],
        calculated: column.calculated,
        looks: column.values.map((value, row) => (value === null ? '' : column.look(row))),
        formulas: column.values.map((_, row) => column.hasFormula(row)),
      })),
    })),
  };
}

/** A workbook with the tables of a snapshot in their places; a formula is a stand-in with the value it gave. */
export function describeSnapshot({ dateSystem, tables }: WorkbookSnapshot): WorkbookDescription {
  return {
    dateSystem,
    sheets: [...new Set(tables.map(({ tab }) => tab))].map((tab) => ({
      name: tab,
      tables: tables
        .filter((table) => table.tab === tab)
        .map((table) => ({
          name: table.name,
          at: addressOf(table),
          columns: table.columns.map(({ header }) => header),
          rows: Array.from({ length: table.rowCount }, (_, row) =>
            table.columns.map((column): CellLiteral => {
              const value = column.values[row] ?? null;
              const look = column.look(row);
              const numberFormat = look === 'date' ? 'yyyy-mm-dd' : look === 'percent' ? '0%' : 'General';
              const shown = value !== null && typeof value === 'object' ? value.shown : value;
              if (column.hasFormula(row)) return { formula: '=ROW()*0', value: shown, numberFormat };
              return { value: shown, numberFormat: typeof shown === 'string' ? '@' : numberFormat };
            }),
          ),
        })),
    })),
  };
}

function addressOf({ firstRow, firstColumn }: TableSnapshot): string {
  return `${String.fromCharCode(64 + firstColumn)}${firstRow - 1}`;
}
