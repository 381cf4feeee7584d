import { PanePage } from './pane-page.ts';

/** Longer than the pane waits for a burst of changes to end, in milliseconds. */
export const QUIET = 600;

/** The sample studio, its books open. */
export async function openSample(): Promise<PanePage> {
  const pane = await PanePage.open();
  await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
  return pane;
}

/** The row below the last one of a table, as the spreadsheet counts it. */
export async function rowBelow(pane: PanePage, table: string): Promise<number> {
  const found = (await pane.snapshot()).tables.find(({ name }) => name === table);
  if (found === undefined) throw new Error(`There is no table ${table}`);
  return found.firstRow + found.rowCount;
}

/** The address of a row's cell by its header. */
export async function cellOf(pane: PanePage, table: string, header: string, where: Record<string, unknown>) {
  const found = (await pane.snapshot()).tables.find(({ name }) => name === table);
  if (found === undefined) throw new Error(`There is no table ${table}`);
  const [[key, wanted] = ['', '']] = Object.entries(where);
  const row = found.columns.find((each) => each.header === key)?.values.indexOf(wanted as string) ?? -1;
  const column = found.columns.findIndex((each) => each.header === header);
  if (row < 0 || column < 0) throw new Error(`There is no ${header} of ${String(wanted)} in ${table}`);
  const letters = String.fromCharCode('A'.charCodeAt(0) + found.firstColumn - 1 + column);
  return `${found.tab}!${letters}${found.firstRow + row}`;
}
