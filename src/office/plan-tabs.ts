import type { ColumnBlueprint, TabBlueprint, TableBlueprint } from '../workbook/blueprint.ts';
import { freeTabName } from '../workbook/blueprint-names.ts';
import { type ChartColumns, chartColumns } from '../workbook/chart-layout.ts';

/** What a workbook has already, as far as new tabs must heed it. */
export interface NamesTaken {
  readonly tabs: readonly string[];
  readonly tables: readonly string[];
  /** Columns of tables that are there, of those from which new columns choose. */
  readonly columns: readonly { readonly table: string; readonly column: string }[];
}

/** A tab to be added under a name that is free. */
export interface TabPlan {
  readonly name: string;
  readonly tab: TabBlueprint;
  /** Null where the tab has none. */
  readonly table: TableBlueprint | null;
  /** Where the columns of the table's chart stand; null where it has none. */
  readonly chart: ChartColumns | null;
}

type FromTable = { readonly table: string; readonly column: string };

/** The columns of other tables from which the columns of new tabs choose. */
export function choiceColumns(tabs: readonly TabBlueprint[]): FromTable[] {
  const found = new Map<string, FromTable>();
  for (const { choices } of tabs.flatMap((tab) => tab.table?.columns ?? [])) {
    if (choices !== undefined && 'table' in choices) found.set(keyOf(choices), choices);
  }
  return [...found.values()];
}

/**
 * Finds names for new tabs. A tab whose table is there already is left out: it would stand without its table.
 * Choices from a column that is nowhere are left out too.
 */
export function planTabs(tabs: readonly TabBlueprint[], taken: NamesTaken): TabPlan[] {
  const tables = new Set(taken.tables.map((name) => name.toLowerCase()));
  const names = [...taken.tabs];
  const plans: TabPlan[] = [];
  for (const tab of tabs) {
    if (tab.table !== undefined) {
      const key = tab.table.name.toLowerCase();
      if (tables.has(key)) continue;
      tables.add(key);
    }
    const name = freeTabName(tab.name, names);
    names.push(name);
    const { table = null } = tab;
    plans.push({ name, tab, table, chart: table && chartColumns(table) });
  }
  const columns = new Set([
    ...taken.columns.map(keyOf),
    ...plans.flatMap(({ table }) =>
      (table?.columns ?? []).map(({ header }) => keyOf({ table: table?.name ?? '', column: header })),
    ),
  ]);
  return plans.map((plan) =>
    plan.table === null
      ? plan
      : {
          ...plan,
          table: { ...plan.table, columns: plan.table.columns.map((each) => withoutDangling(each, columns)) },
        },
  );
}

const keyOf = ({ table, column }: FromTable): string => `${table}\n${column}`.toLowerCase();

function withoutDangling(column: ColumnBlueprint, known: ReadonlySet<string>): ColumnBlueprint {
  const { choices, ...rest } = column;
  return choices !== undefined && 'table' in choices && !known.has(keyOf(choices)) ? rest : column;
}

/** The row of a tab's headers, counted from 0: below its lines and a free row. */
export function headerRowOf({ lines = [] }: TabBlueprint): number {
  return lines.length === 0 ? 0 : lines.length + 1;
}

/** How many rows a table has for its body: a blank one where it is given none. */
export function rowCountOf({ rows }: TableBlueprint): number {
  return Math.max(1, rows.length);
}
