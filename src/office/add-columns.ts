import type { ColumnBlueprint } from '../workbook/blueprint.ts';
import type { Change, NewColumn, TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { NUMBER_FORMATS, points } from './fill-tab.ts';
import { plainMessage } from './messages.ts';
import { verifyBasis } from './verify-basis.ts';
import type { WithWorkbook } from './with-workbook.ts';

export type ColumnChange = Extract<Change, { kind: 'add column' }>;

/** The columns that one table gets. */
interface Widening {
  readonly table: TableSnapshot;
  readonly columns: readonly NewColumn[];
}

export type ColumnsOutcome =
  /** They stand; the function takes them away again, and says which can't be. */
  | { readonly kind: 'added'; readonly takeBack: () => Promise<string | null> }
  | { readonly kind: 'stale' }
  /** Nothing was added. */
  | { readonly kind: 'failed'; readonly message: string }
  /** Some stand, and could not be taken away. */
  | { readonly kind: 'half'; readonly message: string };

const ADDING = 'Adding columns to the tables';

/**
 * Adds columns at the end of tables, all in one round trip, once it is seen that the tables stand as the basis says and
 * that nothing stands right of them. What went wrong is taken back.
 */
export async function addColumns(
  withWorkbook: WithWorkbook,
  changes: readonly ColumnChange[],
  basis: WorkbookSnapshot,
): Promise<ColumnsOutcome> {
  const widenings = wideningsOf(changes, basis);
  try {
    const plans = widenings.map(({ table }) => ({
      table,
      body: new Map(),
      filled: new Set<number>(),
      grown: [],
    }));
    const verified = await verifyBasis(withWorkbook, plans);
    if (verified.kind === 'stale') return verified;
    if (verified.kind === 'refused') return { kind: 'failed', message: verified.message };
    const inTheWay = await whatStandsBeside(withWorkbook, widenings, basis);
    if (inTheWay !== null) return { kind: 'failed', message: inTheWay };
  } catch (error) {
    return { kind: 'failed', message: plainMessage(error, ADDING) };
  }
  const takeBack = () => takeColumnsBack(withWorkbook, widenings);
  let why: string;
  try {
    if (await write(withWorkbook, widenings)) return { kind: 'added', takeBack };
    why = 'The tables did not take in the new columns as they were to stand.';
  } catch (error) {
    why = plainMessage(error, ADDING);
  }
  const standing = await takeBack();
  return standing === null
    ? { kind: 'failed', message: why }
    : { kind: 'half', message: `${why} ${standing}` };
}

function wideningsOf(changes: readonly ColumnChange[], basis: WorkbookSnapshot): Widening[] {
  const byTable = new Map<string, NewColumn[]>();
  for (const { table, column } of changes) {
    const columns = byTable.get(table) ?? [];
    byTable.set(table, [...columns, column]);
  }
  return [...byTable].map(([name, columns]) => {
    const table = basis.tables.find((each) => each.name === name);
    if (table === undefined) throw new Error(`There is no table ${name}`);
    const headers = new Set(table.columns.map(({ header }) => header.toLowerCase()));
    for (const { header } of columns) {
      if (headers.has(header.toLowerCase()))
        throw new Error(`There is a column ${header} in ${name} already`);
      headers.add(header.toLowerCase());
    }
    return { table, columns };
  });
}

/** What is in the way of new columns, in a sentence; null where nothing is. */
async function whatStandsBeside(
  withWorkbook: WithWorkbook,
  widenings: readonly Widening[],
  basis: WorkbookSnapshot,
): Promise<string | null> {
  for (const { table, columns } of widenings) {
    const other = basis.tables.find((each) => overlaps(each, table, columns.length));
    if (other !== undefined) return refusal(table, columns, `the table ${other.name} stands`);
  }
  const used = await withWorkbook(async (context) => {
    const found = widenings.map(({ table, columns }) =>
      context.workbook.tables
        .getItem(table.name)
        .getRange()
        .getColumnsAfter(columns.length)
        .getUsedRangeOrNullObject(true)
        .load('address'),
    );
    await context.sync();
    return found.map((range) => (range.isNullObject ? null : range.address));
  });
  for (const [index, address] of used.entries()) {
    const widening = widenings[index];
    if (address !== null && widening !== undefined) {
      return refusal(widening.table, widening.columns, `something stands (${address})`);
    }
  }
  return null;
}

function refusal({ name, tab }: TableSnapshot, columns: readonly NewColumn[], what: string): string {
  const headers = new Intl.ListFormat('en-GB').format(columns.map(({ header }) => header));
  return `${headers} can't be added to the table ${name}: right of it, on the tab ${tab}, ${what}. Move it away, and try again.`;
}

/** Whether a table stands where another one would get columns; a totals row is reckoned with. */
function overlaps(other: TableSnapshot, table: TableSnapshot, count: number): boolean {
  const first = table.firstColumn + table.columns.length;
  return (
    other.name !== table.name &&
    other.tab === table.tab &&
    other.firstRow - 1 <= table.firstRow + table.rowCount &&
    other.firstRow + other.rowCount >= table.firstRow - 1 &&
    other.firstColumn < first + count &&
    other.firstColumn + other.columns.length > first
  );
}

/** A range takes one value for all its cells, though its type says only arrays. */
const forAll = (value: string): string[][] => value as unknown as string[][];

function formatOf(format: ColumnBlueprint['format']): string {
  return NUMBER_FORMATS[format];
}

/** Adds the columns, and says whether the tables then are as they were to be. */
function write(withWorkbook: WithWorkbook, widenings: readonly Widening[]): Promise<boolean> {
  return withWorkbook(async (context) => {
    context.application.suspendApiCalculationUntilNextSync();
    const tables = widenings.map((widening) => {
      const table = context.workbook.tables.getItem(widening.table.name);
      for (const { header, width, format } of widening.columns) {
        const column = table.columns.add(undefined, undefined, header);
        const body = column.getDataBodyRange();
        body.numberFormat = forAll(formatOf(format));
        body.format.verticalAlignment = 'Top';
        if (format === 'long text') body.format.wrapText = true;
        body.getEntireColumn().format.columnWidth = points(width);
      }
      return { ...widening, found: table.columns.load('items/name') };
    });
    await context.sync();
    return tables.every(({ table, columns, found }) => {
      const wanted = [...table.columns, ...columns].map(({ header }) => header);
      return (
        found.items.length === wanted.length && found.items.every(({ name }, index) => name === wanted[index])
      );
    });
  });
}

/**
 * Takes columns away again, as far as nothing was written into them since.
 * @returns what still stands, in a sentence; null for nothing
 */
async function takeColumnsBack(
  withWorkbook: WithWorkbook,
  widenings: readonly Widening[],
): Promise<string | null> {
  try {
    const standing = await withWorkbook(async (context) => {
      const found = widenings.flatMap(({ table, columns }) =>
        columns.map(({ header }) => {
          const column = context.workbook.tables
            .getItemOrNullObject(table.name)
            .columns.getItemOrNullObject(header)
            .load('name');
          const used = column.getDataBodyRange().getUsedRangeOrNullObject(true).load('address');
          return { name: `${header} in ${table.name}`, column, used };
        }),
      );
      await context.sync();
      const there = found.filter(({ column }) => !column.isNullObject);
      const blank = there.filter(({ used }) => used.isNullObject);
      // From the last on, so that none stands behind one that goes.
      for (const { column } of blank.toReversed()) column.delete();
      await context.sync();
      return there.filter(({ used }) => !used.isNullObject).map(({ name }) => name);
    });
    if (standing.length === 0) return null;
    return `These columns were added and are in use: ${new Intl.ListFormat('en-GB').format(standing)}.`;
  } catch (error) {
    return `The columns that were added could not be taken away again: ${plainMessage(error, ADDING)}`;
  }
}
