import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { addedTab } from '../../src/preview/office/added-tab.ts';
import type { TabBlueprint, TableBlueprint } from '../../src/workbook/blueprint.ts';
import type { CellWrite } from '../../src/workbook/port.ts';

/** What version 2 of the tables brought, as its description lists it. */
export const BROUGHT_HEADERS: Readonly<Record<string, readonly string[]>> = {
  stock: [
    'State since',
    'Recipe',
    'pH',
    'Tare g',
    'Sheet width cm',
    'Sheet height cm',
    'Grammage',
    'Uses per unit',
    'Retested',
    'Retested until',
    'Retested by',
    'Posting',
    'Notes',
  ],
  Materials: ['pH low', 'pH high', 'Keep at most', 'Hazards', 'SDS checked', 'Disposal'],
  Recipes: [
    'Life cold days',
    'Life dark days',
    'Smallest batch',
    'Ready after hours',
    'Limited by parts',
    'Cautions',
  ],
  Places: ['Cold', 'Dark', 'Walking order'],
  Movements: ['Lot is', 'Into', 'Posting', 'By', 'Posted', 'Note'],
};
const STOCK = new Set(['Tissue', 'Paste', 'Buffers', 'ReleasePaper', 'Housing', 'Sundries']);

export function broughtTo(table: string): readonly string[] {
  return BROUGHT_HEADERS[STOCK.has(table) ? 'stock' : table] ?? [];
}

/**
 * A workbook as its tables were in version 1, made anew from its cells: a person's own column with a formula stands
 * behind those of Paste, and Tissue has a totals row.
 */
export function versionOne(bytes: Uint8Array): Uint8Array {
  const workbook = openXlsx(bytes);
  const { dateSystem } = workbook.snapshot();
  const host = { dateSystem, row: workbook.row.bind(workbook) } as unknown as Parameters<typeof addedTab>[0];
  const tabs = workbook.tabs().map((tab): TabBlueprint => addedTab(host, tab));
  const old = tabs.filter(({ table }) => table?.name !== 'Counts');
  return createXlsx({
    dateSystem,
    tabs: old.map((tab) => (tab.table === undefined ? tab : { ...tab, table: oldTable(tab.table) })),
  });
}

function oldTable(table: TableBlueprint): TableBlueprint {
  const gone = new Set(broughtTo(table.name));
  const kept = table.columns.flatMap(({ header }, index) => (gone.has(header) ? [] : [index]));
  const columns = kept.flatMap((index) => table.columns[index] ?? []);
  const rows = table.rows.map((row) => kept.map((index) => row[index] ?? null));
  const { name } = table;
  if (name === 'Settings') return { ...table, rows: rows.map(withVersionOne) };
  const own = {
    header: 'Half',
    width: 9,
    format: 'number' as const,
    formula: 'Paste[[#This Row],[Quantity]]/2',
  };
  return {
    name,
    columns: name === 'Paste' ? [...columns, own] : columns,
    rows,
    ...(name === 'Tissue' ? { totals: { label: 'Total', sums: ['Quantity'] } } : {}),
  };
}

function withVersionOne(row: readonly (CellWrite | null)[]): readonly (CellWrite | null)[] {
  const [name] = row;
  const isVersion = name?.kind === 'text' && name.text === 'tables version';
  return isVersion ? [name, { kind: 'number', number: 1 }] : row;
}
