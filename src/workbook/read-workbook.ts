import { type Notice, notice } from '../core/notice.ts';
import type { LotRecord, Records, UnreadableIdentifiers } from '../core/records.ts';
import type { Settings } from '../core/settings.ts';
import { RECORD_TABLES, SETTINGS_TABLE, STOCK_TABLES } from './known-tables.ts';
import { type LocatedTable, locate, looksLikeStock } from './located-table.ts';
import type { WorkbookSnapshot } from './port.ts';
import { readSettings } from './read-settings.ts';
import { readTable } from './read-table.ts';
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
  const records: Partial<Record<keyof Records, readonly unknown[]>> = {};
  const unreadable: Partial<Record<keyof Records, ReadonlySet<string>>> = {};

  const find = <D extends TableDefinition>(definition: D): LocatedTable<D> | null => {
    const table = byName.get(definition.name.toLowerCase());
    if (table === undefined) return null;
    const located = locate(definition, table, snapshot.dateSystem);
    if (located.missing.length > 0) {
      notices.push(missingColumns(located));
      return null;
    }
    tables.set(table.name.toLowerCase(), located);
    return located;
  };

  for (const [field, definition] of Object.entries(RECORD_TABLES)) {
    const located = find(definition as TableDefinition);
    if (located === null) {
      records[field as keyof Records] = [];
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
    const canCount = located.columns.has('Left as written');
    lots.push(...(canCount ? reading.records : reading.records.map((record) => ({ ...record, left: null }))));
    for (const name of reading.unreadableIdentifiers) unreadableLots.add(name);
    notices.push(...reading.notices);
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

type StockDefinition = ReturnType<typeof stockTable>;

/** The six stock tables, and any table of another name with the starred columns of one. */
function stockTablesOf(
  { tables, dateSystem }: WorkbookSnapshot,
  find: (definition: StockDefinition) => LocatedTable<StockDefinition> | null,
): LocatedTable<StockDefinition>[] {
  const taken = new Set([...Object.values(RECORD_TABLES), SETTINGS_TABLE].map(({ name }) => name.toLowerCase()));
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
    `The table ${snapshot.name} on the tab ${snapshot.tab} has no column ${list}, so none of its rows is read: ` +
    `add the column, or rename the one that is meant.`;
  return notice('unreadable', snapshot.name, { place, unreadable: new Set() }, missing[0] ?? '', message);
}
