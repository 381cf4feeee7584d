import { checkWorkbook } from '../../../src/actions/check-workbook.ts';
import { openXlsx } from '../../../src/files/xlsx-workbook.ts';
import type { CellValue, TableSnapshot, WorkbookSnapshot } from '../../../src/workbook/port.ts';
import { TODAY } from './studio-in-node.ts';

/** Identifiers that are made anew with every row. */
const MADE = /^[A-Z][2-9A-HJ-NP-Z]{8}$/;
const STOCK_TABLES = ['Tissue', 'Paste', 'Buffers', 'ReleasePaper', 'Housing', 'Sundries'];
const WRITTEN = ['Lot', 'Left', 'Left as written', 'Good until', 'Worth'];

type Row = Readonly<Record<string, CellValue>>;

/** Every figure that a workbook file holds and that the core makes of it; random identifiers are left out. */
export interface Figures {
  readonly lots: readonly (readonly [lot: string, left: string, worth: string])[];
  readonly notices: readonly string[];
  /** The columns of the stock tables that were written, as they stand in the file. */
  readonly written: readonly Row[];
  readonly movements: readonly string[];
  readonly entries: readonly Row[];
  readonly quotes: readonly Row[];
  readonly quoteLines: readonly Row[];
}

/** The figures of a workbook file on the sample's day. */
export function figuresOf(bytes: Uint8Array): Figures {
  const snapshot = openXlsx(bytes).snapshot();
  const { stock, notices } = checkWorkbook(snapshot, TODAY);
  const movement = ['Date', 'Kind', 'Lot', 'Quantity', 'Unit', 'Job', 'Item', 'Lot is', 'Posted'];
  return {
    lots: stock.lots.map(({ lot, left, worth }) => [lot.name, left.toFraction(), String(worth)]),
    notices: notices.map(({ code, subject }) => `${code} ${withoutMade(subject)}`).toSorted(),
    written: STOCK_TABLES.flatMap((name) => rowsOf(snapshot, name, WRITTEN)),
    // Those of one posting stand in an order that hangs on their identifiers.
    movements: rowsOf(snapshot, 'Movements', movement)
      .map((row) => JSON.stringify(row))
      .toSorted(),
    entries: rowsOf(snapshot, 'TreatmentLog', [
      'Date',
      'Job',
      'Item',
      'Treatment',
      'Extent',
      'Drawn',
      'Drawn for',
    ]),
    quotes: rowsOf(snapshot, 'Quotes', null),
    quoteLines: rowsOf(snapshot, 'QuoteLines', null),
  };
}

function withoutMade(value: string): string {
  return MADE.test(value) ? 'made anew' : value;
}

/** The filled rows of a table: some columns of them, or all; numbers are rounded to what a file keeps of them. */
function rowsOf(snapshot: WorkbookSnapshot, name: string, headers: readonly string[] | null): Row[] {
  const table = snapshot.tables.find((each) => each.name === name);
  if (table === undefined) throw new Error(`There is no table ${name}`);
  return Array.from({ length: table.rowCount }, (_, row) => rowOf(table, row, headers)).filter(
    (row) => Object.keys(row).length > 0,
  );
}

function rowOf(table: TableSnapshot, row: number, headers: readonly string[] | null): Row {
  const columns = table.columns.filter(({ header }) => headers?.includes(header) ?? true);
  return Object.fromEntries(
    columns.flatMap(({ header, values }): (readonly [string, CellValue])[] => {
      const value = values[row] ?? null;
      if (value === null) return [];
      if (typeof value === 'number') return [[header, Number(value.toPrecision(15))]];
      return [[header, typeof value === 'string' ? withoutMade(value) : value]];
    }),
  );
}
