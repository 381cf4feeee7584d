import type { LotRecord } from '../core/records.ts';
import type { Lot } from '../core/studio.ts';
import type { LocatedTable } from '../workbook/located-table.ts';

/** What of a new lot its table has no column for, or a formula in it. */
export function lotNotKept(table: LocatedTable, { record }: Lot): string[] {
  return Object.entries(table.definition.columns).flatMap(([field, { header }]) => {
    const value = record[field as keyof LotRecord] ?? null;
    const column = table.columns.get(header)?.column;
    if (value === null || (column !== undefined && !column.calculated)) return [];
    const why = column === undefined ? 'has no column' : 'fills by a formula the column';
    return [
      `The table ${table.snapshot.name} ${why} ${header}, so what belongs there of lot ${record.lot ?? ''} is not kept.`,
    ];
  });
}
