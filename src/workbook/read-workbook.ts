import { type Notice, notice } from '../core/notice.ts';
import type { LotRecord, Records, UnreadableIdentifiers } from '../core/records.ts';
import type { Settings } from '../core/settings.ts';
import { isBlank } from './cell.ts';
import { RECORD_TABLES, SETTINGS_TABLE, STOCK_TABLES } from './known-tables.ts';
import { type LocatedTable, locate, looksLikeStock } from './located-table.ts';
import type { WorkbookSnapshot } from './port.ts';
import { readSettings } from './read-settings.ts';
import { identifiersIn, readTable } from './read-table.ts';
import type { TableDefinition } from './table-definition.ts';
import { stockTable } from './tables-stock.ts';

/** A workbook as it was read: its records, its settings, what couldn't be read, and where the tables stand. */
export interface WorkbookReading {
  readonly records: Records;
  readonly settings: Settings;
  readonly unreadable: UnreadableIdentifiers;
  readonly notices: readonly Notice[];
  /** The tables that were read, by name in lower case. */
  readonly tables: ReadonlyMap<string, LocatedTable>;
}

/** Reads every table that Jarleaf knows; tables are found by name, not by tab, and absent ones are empty. */
export function readWorkbook(snapshot: WorkbookSnapshot): WorkbookReading {
  const byName = new Map(snapshot.tables.map((table) => [table.name.toLowerCase(), table]));
  const tables = new Map<string, LocatedTable>();
  const notices: Notice[] = [];
  /** The tables that lack a column; what names their rows is not to be told that there is no such row. */
  const unread: LocatedTable[] = [];
  const records: Partial<Record<keyof Records, readonly unknown[]>> = {};
  const unreadable: Partial<Record<keyof Records, ReadonlySet<string>>> = {};

  const find = <D extends TableDefinition>(definition: D): LocatedTable<D> | null => {
    const table = byName.get(definition.name.toLowerCase());
    if (table === undefined) return null;
    const located = locate(definition, table, snapshot.dateSystem);
    if (located.missing.length > 0) {
      notices.push(missingColumns(located));
      unread.push(located);
      return null;
    }
    tables.set(table.name.toLowerCase(), located);
    notices.push(...rowBelow(located));
    return located;
  };

  for (const [field, definition] of Object.entries(RECORD_TABLES)) {
    const located = find(definition as TableDefinition);
    if (located === null) {
      records[field as keyof Records] = [];
      const table = unread.find((each) => each.definition === definition);
      if (table !== undefined) unreadable[field as keyof Records] = identifiersIn(table);
      continue;
    }
    const reading = readTable(located);
    records[field as keyof Records] = reading.records;
    unreadable[field as keyof Records] = reading.unreadableIdentifiers;
    notices.push(...reading.notices);
  }

  const lots: LotRecord[] = [];
  const unreadableLots = new Set<string>();
  for (const located of stockTablesOf(snapshot, find)) {
    const reading = readTable(located);
    lots.push(
      ...reading.records.map((record) => (canBeCount(located, record) ? record : { ...record, left: null })),
    );
    for (const name of reading.unreadableIdentifiers) unreadableLots.add(name);
    notices.push(...reading.notices);
  }
  for (const table of unread) {
    if (table.definition.columns['leftAsWritten'] === undefined) continue;
    for (const name of identifiersIn(table)) unreadableLots.add(name);
  }
  const settings = readSettings(find(SETTINGS_TABLE));
  return {
    // Each field was filled from the table whose definition gives that record.
    records: { ...records, lots } as unknown as Records,
    settings: settings.settings,
    unreadable: { ...unreadable, lots: unreadableLots },
    notices: [...notices, ...settings.notices],
    tables,
  };
}

/** Whether what stands in Left may have been typed: no formula gives it, and what was written before is known. */
function canBeCount(table: LocatedTable, lot: LotRecord): boolean {
  return (
    table.columns.has('Left as written') &&
    table.columns.get('Left')?.column.hasFormula(lot.place.row) !== true
  );
}

type StockDefinition = ReturnType<typeof stockTable>;

/** The six stock tables, and any table of another name with the starred columns of one. */
function stockTablesOf(
  { tables, dateSystem }: WorkbookSnapshot,
  find: (definition: StockDefinition) => LocatedTable<StockDefinition> | null,
): LocatedTable<StockDefinition>[] {
  const taken = new Set(
    [...Object.values(RECORD_TABLES), SETTINGS_TABLE].map(({ name }) => name.toLowerCase()),
  );
  const usual = new Set(STOCK_TABLES.map(({ name }) => name.toLowerCase()));
  return tables.flatMap((table) => {
    const key = table.name.toLowerCase();
    if (taken.has(key) || !(usual.has(key) || looksLikeStock(table, dateSystem))) return [];
    return find(stockTable(table.name)) ?? [];
  });
}

function missingColumns({ snapshot, missing }: LocatedTable): Notice {
  const place = { table: snapshot.name, row: -1, sheetRow: snapshot.firstRow - 1 };
  const list = new Intl.ListFormat('en-GB').format(missing);
  const message =
    `The table ${snapshot.name} on the tab ${snapshot.tab} lacks the ${missing.length === 1 ? 'column' : 'columns'} ${list}, ` +
    `so none of its rows is read: add what is missing, or rename the columns that are meant.`;
  return notice('unreadable', snapshot.name, { place, unreadable: new Set() }, missing[0] ?? '', message);
}

/** How many starred cells a row below a table must fill to be taken for one of its rows, not for a remark. */
const LIKE_A_ROW = 2;

/** A notice where a row was typed right below a table that did not grow with it, as some programs leave it. */
function rowBelow({ definition, snapshot, columns }: LocatedTable): Notice[] {
  const filled = Object.values(definition.columns).filter(
    ({ starred, header }) => starred && !isBlank(snapshot.below?.[columns.get(header)?.index ?? -1] ?? null),
  );
  const [first] = filled;
  if (first === undefined || filled.length < LIKE_A_ROW) return [];
  const row = snapshot.rowCount;
  const place = { table: snapshot.name, row, sheetRow: snapshot.firstRow + row };
  const message =
    `Row ${place.sheetRow} of the tab ${snapshot.tab} stands right below the table ${snapshot.name} and does not ` +
    `belong to it, so it is not read: make the table longer, down to the last row that you typed.`;
  return [notice('unreadable', null, { place, unreadable: new Set() }, first.header, message)];
}
