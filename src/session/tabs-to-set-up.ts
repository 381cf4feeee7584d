import type { TabBlueprint } from '../workbook/blueprint.ts';
import { SETTINGS_TABLE } from '../workbook/known-tables.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';

/**
 * The tabs of the starter whose tables a workbook lacks. Where it has some of them, the others come without rows:
 * the starter's rates and recipes would name materials that are not here.
 * @param snapshot null for a workbook without any of the tables
 */
export function tabsToSetUp(
  starter: readonly TabBlueprint[],
  snapshot: WorkbookSnapshot | null,
): TabBlueprint[] {
  if (snapshot === null) return [...starter];
  const here = new Set(snapshot.tables.map(({ name }) => name.toLowerCase()));
  return starter.flatMap((tab): TabBlueprint[] => {
    const { table } = tab;
    if (table === undefined || here.has(table.name.toLowerCase())) return [];
    return table.name === SETTINGS_TABLE.name ? [tab] : [{ ...tab, table: { ...table, rows: [] } }];
  });
}
