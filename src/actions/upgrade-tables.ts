import type { TabBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import { appendRows, numberCell, setCell, textCell } from '../workbook/cell-write.ts';
import { SETTINGS_TABLE } from '../workbook/known-tables.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { Change, TableSnapshot, WorkbookSnapshot } from '../workbook/port.ts';
import { TABLES_VERSION } from '../workbook/read-settings.ts';
import type { TableDefinition } from '../workbook/table-definition.ts';
import { BROUGHT, BROUGHT_TABLE, BROUGHT_TO_STOCK } from '../workbook/version-two.ts';
import { booksOf, readingOnly, VERSION_SETTING } from './books.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** Columns that a table lacks, or got, by their headers. */
export interface TableColumns {
  readonly table: string;
  readonly columns: readonly string[];
}

/** What tables of an earlier version lack. */
export interface Upgradable {
  readonly columns: readonly TableColumns[];
  /** The tables that come new. */
  readonly tables: readonly string[];
}

/** What brings the tables of a workbook up to date. */
export interface TablesUpgrade {
  readonly ok: true;
  /** To be carried out after the tabs were added, all in one go. */
  readonly changes: readonly Change[];
  readonly tabs: readonly TabBlueprint[];
  readonly added: readonly TableColumns[];
  /** The version of the tables afterwards; null where there is no table Settings to write it in. */
  readonly version: number | null;
}

/** Whether the tables of a workbook are of the present version. */
export function isUpToDate(snapshot: WorkbookSnapshot): boolean {
  const { tablesVersion } = booksOf(snapshot).reading.settings;
  return (tablesVersion ?? FIRST_VERSION) === TABLES_VERSION;
}

/** What the tables of a workbook lack of the present version; null where nothing is, or nothing may be written. */
export function upgradableOf(snapshot: WorkbookSnapshot): Upgradable | null {
  const { reading } = booksOf(snapshot);
  if (isUpToDate(snapshot) || readingOnly(reading) !== null || reading.tables.size === 0) return null;
  const columns = columnsLacking([...reading.tables.values()]).map(({ table, fields }) => ({
    table: table.snapshot.name,
    columns: fields.map((field) => headerOf(table.definition, field)),
  }));
  const tables = hasTable(snapshot, BROUGHT_TABLE.name) ? [] : [BROUGHT_TABLE.name];
  return columns.length === 0 && tables.length === 0 ? null : { columns, tables };
}

/** The version of tables that don't say which they have. */
const FIRST_VERSION = 1;

/**
 * Brings tables of an earlier version up to date: the columns that they lack come behind the last one, the table that
 * is new comes on a tab of its own, and Settings says which version it is now. Nothing else is touched.
 * @param starter the tabs of the starter workbook, by which the new columns are laid out
 */
export function tablesUpgrade(
  snapshot: WorkbookSnapshot,
  starter: readonly TabBlueprint[],
): TablesUpgrade | Refusal {
  const { reading } = booksOf(snapshot);
  const obstacle = readingOnly(reading);
  if (obstacle !== null) return refuse(obstacle);
  if (reading.tables.size === 0) {
    return refuse("None of Jarleaf's tables is in this workbook, so there is nothing to bring up to date.");
  }
  if (isUpToDate(snapshot)) {
    return refuse(`The tables of this workbook are of version ${TABLES_VERSION} already.`);
  }
  const lacking = columnsLacking([...reading.tables.values()]);
  for (const { table, fields } of lacking) {
    const beside = tableBeside(snapshot, table.snapshot, fields.length);
    if (beside !== null) {
      return refuse(
        `Right of the table ${table.snapshot.name}, on the tab ${beside.tab}, stands the table ${beside.name}, where ` +
          'new columns go: move it to a tab of its own, then bring the tables up to date.',
      );
    }
  }
  const columns = lacking.flatMap(({ table, fields }) =>
    fields.map((field): Change => {
      const { header, width, format } = layoutOf(starter, table.definition, field);
      return { kind: 'add column', table: table.snapshot.name, column: { header, width, format } };
    }),
  );
  const settings = reading.tables.get(SETTINGS_TABLE.name.toLowerCase());
  const tab = starter.find(({ table }) => table?.name === BROUGHT_TABLE.name);
  if (tab?.table === undefined) throw new Error(`The starter has no table ${BROUGHT_TABLE.name}`);
  return {
    ok: true,
    changes: [...columns, ...(settings === undefined ? [] : versionIn(settings))],
    tabs: hasTable(snapshot, BROUGHT_TABLE.name) ? [] : [{ ...tab, table: { ...tab.table, rows: [] } }],
    added: lacking.map(({ table, fields }) => ({
      table: table.snapshot.name,
      columns: fields.map((field) => headerOf(table.definition, field)),
    })),
    version: settings === undefined ? null : TABLES_VERSION,
  };
}

interface Lacking {
  readonly table: LocatedTable;
  readonly fields: readonly string[];
}

function columnsLacking(tables: readonly LocatedTable[]): Lacking[] {
  return tables.flatMap((table) => {
    const fields = broughtTo(table).filter((field) => !table.columns.has(headerOf(table.definition, field)));
    return fields.length === 0 ? [] : [{ table, fields }];
  });
}

function broughtTo({ definition }: LocatedTable): readonly string[] {
  if ('left' in definition.columns) return BROUGHT_TO_STOCK.fields;
  return BROUGHT.find((each) => each.definition.name === definition.name)?.fields ?? [];
}

function headerOf(definition: TableDefinition, field: string): string {
  const column = definition.columns[field];
  if (column === undefined) throw new Error(`${definition.name} has no column for ${field}`);
  return column.header;
}

function hasTable({ tables }: WorkbookSnapshot, wanted: string): boolean {
  return tables.some(({ name }) => name.toLowerCase() === wanted.toLowerCase());
}

/** Another table that stands where a table would get new columns. */
function tableBeside(snapshot: WorkbookSnapshot, table: TableSnapshot, count: number): TableSnapshot | null {
  const first = table.firstColumn + table.columns.length;
  const rows = ({ firstRow, rowCount }: TableSnapshot) => ({ from: firstRow - 1, to: firstRow + rowCount });
  const own = rows(table);
  return (
    snapshot.tables.find((other) => {
      const { from, to } = rows(other);
      return (
        other.tab === table.tab &&
        other.name !== table.name &&
        from <= own.to &&
        to >= own.from &&
        other.firstColumn < first + count &&
        other.firstColumn + other.columns.length > first
      );
    }) ?? null
  );
}

/** How the starter lays a column out; a stock table of a name of its own is laid out like the others. */
function layoutOf(starter: readonly TabBlueprint[], definition: TableDefinition, field: string) {
  const header = headerOf(definition, field);
  const isMeant = ({ name }: TableBlueprint): boolean =>
    name === ('left' in definition.columns ? BROUGHT_TO_STOCK.definition.name : definition.name);
  const table = starter.map((tab) => tab.table).find((each) => each !== undefined && isMeant(each));
  const column = table?.columns.find((each) => each.header === header);
  if (column === undefined) throw new Error(`The starter has no column ${header} for ${definition.name}`);
  return column;
}

/** The changes that write the version into Settings: into its row, or a new one. */
function versionIn(settings: LocatedTable): Change[] {
  const names = settings.columns.get('Setting')?.column.values ?? [];
  const row = names.findIndex(
    (name) => typeof name === 'string' && name.trim().toLowerCase().replace(/\s+/g, ' ') === VERSION_SETTING,
  );
  const value = numberCell(TABLES_VERSION);
  return row >= 0
    ? setCell(settings, row, 'Value', value)
    : appendRows(settings, [{ setting: textCell(VERSION_SETTING), value }]);
}
