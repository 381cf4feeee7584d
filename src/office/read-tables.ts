import type { DateSystem } from '../core/serial-date.ts';
import { lookOfCode } from '../workbook/number-formats.ts';
import type { NumberLook, TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { cellValue, isFormula } from './cell-values.ts';
import { errorCode, isAnswerTooLarge } from './messages.ts';
import { type ReadBlock, readBlocks } from './read-blocks.ts';
import { bytesPerRow, inTurn, roundTrips } from './round-trips.ts';
import { blocksOf, type ListedTable, sizeOf, type TableSize } from './table-blocks.ts';
import { type ColumnData, isCalculated, snapshotOfTable } from './table-data.ts';
import type { WithWorkbook } from './with-workbook.ts';

/** What is kept of a workbook between its readings. */
export interface ReadingMemory {
  dateSystem: DateSystem | null;
  /** How large tables were, by their identifiers. */
  readonly sizes: Map<string, TableSize>;
}

export const newReadingMemory = (): ReadingMemory => ({ dateSystem: null, sizes: new Map() });

/** How often a workbook that changes while it is read is read anew. */
const ATTEMPTS = 4;

/** The workbook was changed again and again while it was read. */
class KeepsChanging extends Error {}

/**
 * Reads all tables: one round trip to list them, one to measure those not read before, then one for each 4 MB of
 * cells.
 * @throws the program's error where it refuses
 */
export async function readTables(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
  attempts = ATTEMPTS,
): Promise<WorkbookSnapshot> {
  const { dateSystem, tables } = await listTables(withWorkbook, memory);
  const read = await readAll(withWorkbook, tables, memory);
  if (read !== null) return { dateSystem, tables: read };
  memory.sizes.clear();
  if (attempts > 1) return readTables(withWorkbook, memory, attempts - 1);
  throw new KeepsChanging('the workbook keeps changing while it is read; wait a moment');
}

/** The serial of 1 January 2000 in a workbook that counts from 1904. */
const MILLENNIUM_1904 = 35_064;

/**
 * Asks, once for a workbook, from which year it counts its days. Nothing tells but what its functions make of a day.
 * @returns what gives the answer after the next round trip
 */
export function readDateSystem(context: Excel.RequestContext, memory: ReadingMemory): () => DateSystem {
  const known = memory.dateSystem;
  if (known !== null) return () => known;
  const millennium = context.workbook.functions.date(2000, 1, 1).load('value');
  return () => {
    const system = millennium.value === MILLENNIUM_1904 ? 1904 : 1900;
    memory.dateSystem = system;
    return system;
  };
}

function listTables(
  withWorkbook: WithWorkbook,
  memory: ReadingMemory,
): Promise<{ dateSystem: DateSystem; tables: ListedTable[] }> {
  return withWorkbook(async (context) => {
    const { tables } = context.workbook;
    tables.load('items/id,items/name,items/showTotals,items/worksheet/name');
    const dateSystem = readDateSystem(context, memory);
    await context.sync();
    return {
      dateSystem: dateSystem(),
      tables: tables.items.map((table) => ({
        id: table.id,
        name: table.name,
        tab: table.worksheet.name,
        hasTotals: table.showTotals,
      })),
    };
  });
}

/** Takes the sizes of tables that were not read before. */
async function measure(
  withWorkbook: WithWorkbook,
  tables: readonly ListedTable[],
  { sizes }: ReadingMemory,
): Promise<void> {
  const unknown = tables.filter(({ id }) => !sizes.has(id));
  if (unknown.length === 0) return;
  await withWorkbook(async (context) => {
    const bodies = unknown.map(({ id }) =>
      context.workbook.tables.getItem(id).getDataBodyRange().load('rowCount,columnCount'),
    );
    await context.sync();
    for (const [index, { id }] of unknown.entries()) {
      const { rowCount = 0, columnCount = 0 } = bodies[index] ?? {};
      sizes.set(id, sizeOf(rowCount, columnCount));
    }
  });
}

/** Reads the tables listed; null where one was moved, changed in size or removed since it was measured. */
async function readAll(
  withWorkbook: WithWorkbook,
  tables: readonly ListedTable[],
  memory: ReadingMemory,
): Promise<TableSnapshot[] | null> {
  let read: ReadBlock[];
  const known = tables.some(({ id }) => memory.sizes.has(id));
  try {
    await measure(withWorkbook, tables, memory);
    const blocks = tables.flatMap((table) => blocksOf(table, memory.sizes.get(table.id) ?? sizeOf(1, 1)));
    read = (await inTurn(roundTrips(blocks), (trip) => readBlocks(withWorkbook, trip))).flat();
  } catch (error) {
    // A table may have grown far beyond what is remembered of it.
    if (errorCode(error) === 'ItemNotFound' || (known && isAnswerTooLarge(error))) return null;
    throw error;
  }
  const snapshots: TableSnapshot[] = [];
  for (const table of tables) {
    const own = read.filter(({ block }) => block.table === table);
    if (!fitTogether(own)) return null;
    const weights = own.map(
      ({ values, formulas, numberFormats }) =>
        bytesPerRow(values) + bytesPerRow(formulas) + bytesPerRow(numberFormats),
    );
    memory.sizes.set(table.id, { rows: own[0]?.body.rows ?? 0, bytesPerRow: Math.max(...weights) });
    snapshots.push(snapshotOf(table, own));
  }
  return snapshots;
}

/** Whether the blocks of a table, read one after another, show one and the same table. */
function fitTogether(blocks: readonly ReadBlock[]): boolean {
  const [first] = blocks;
  if (first === undefined) return false;
  const rows = blocks.reduce((sum, { values }) => sum + values.length, 0);
  return blocks.every(
    ({ body, headers }) =>
      body.row === first.body.row &&
      body.column === first.body.column &&
      body.rows === rows &&
      headers.join('\n') === first.headers.join('\n'),
  );
}

function snapshotOf(table: ListedTable, blocks: readonly ReadBlock[]): TableSnapshot {
  const [first] = blocks;
  const looks = new Map<unknown, NumberLook>();
  const look = (code: unknown): NumberLook => {
    const known = looks.get(code);
    if (known !== undefined) return known;
    const made = typeof code === 'string' ? lookOfCode(code) : 'plain';
    looks.set(code, made);
    return made;
  };
  const columns = (first?.headers ?? []).map((header, index): ColumnData => {
    const column: ColumnData = { header, values: [], looks: [], formulas: [], calculated: false };
    for (const { values, formulas, numberFormats } of blocks) {
      for (let row = 0; row < values.length; row++) {
        const value = values[row]?.[index];
        const numberFormat = numberFormats[row]?.[index];
        const hasFormula = isFormula(formulas[row]?.[index], value);
        column.values.push(cellValue(value, hasFormula, numberFormat));
        column.looks.push(look(numberFormat));
        column.formulas.push(hasFormula);
      }
    }
    column.calculated = isCalculated(column.formulas);
    return column;
  });
  return snapshotOfTable({
    name: table.name,
    tab: table.tab,
    firstRow: (first?.body.row ?? 0) + 1,
    firstColumn: (first?.body.column ?? 0) + 1,
    columns,
    below: first?.below ?? null,
  });
}
