import type { Upgradable } from '../../actions/upgrade-tables.ts';

const LIST = new Intl.ListFormat('en-GB');

/** What bringing the tables up to date adds: the new tables, then the columns; tables that get the same together. */
export function newInTables({ tables, columns }: Upgradable): string[] {
  const byColumns = new Map<string, { readonly names: string[]; readonly headers: readonly string[] }>();
  for (const { table, columns: headers } of columns) {
    const key = headers.join('\n');
    const same = byColumns.get(key) ?? { names: [], headers };
    same.names.push(table);
    byColumns.set(key, same);
  }
  return [
    ...tables.map((table) => `The table ${table}, on a tab of its own`),
    ...[...byColumns.values()].map(
      ({ names, headers }) =>
        `In ${LIST.format(names)}: the ${headers.length === 1 ? 'column' : 'columns'} ${LIST.format(headers)}`,
    ),
  ];
}
