import { parseDay } from '../core/day.ts';
import type { CellWrite } from '../workbook/port.ts';
import type { TableDefinition } from '../workbook/table-definition.ts';

/** What a sample row holds in a cell: text, a number, a day written YYYY-MM-DD, or just what is to be stored. */
export type SampleValue = string | number | CellWrite | null | undefined;

/** A row of a sample table by record field; fields left out are blank. */
export type SampleRow<D extends TableDefinition = TableDefinition> = {
  readonly [K in keyof D['columns']]?: SampleValue;
};

/** A table of a sample workbook: a definition, and rows for it. */
export interface SampleTable {
  readonly definition: TableDefinition;
  readonly rows: readonly Readonly<Record<string, SampleValue>>[];
}

/** A table with its rows; the fields of each are checked against the definition. */
export function sampleTable<D extends TableDefinition>(
  definition: D,
  rows: readonly SampleRow<D>[],
): SampleTable {
  return { definition, rows };
}

/** The cell that a value becomes: text in a column of days is a day where it reads as one. */
export function cellOf(value: SampleValue, preparation: 'text' | 'number' | 'day'): CellWrite | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'object') return value;
  if (typeof value === 'number') return { kind: 'number', number: value };
  const day = preparation === 'day' ? parseDay(value) : null;
  return day === null ? { kind: 'text', text: value } : { kind: 'day', day };
}
