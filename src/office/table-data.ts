import type { CellValue, ColumnSnapshot, NumberLook, TableSnapshot } from '../workbook/port.ts';

/** A column with its cells by body row. */
export interface ColumnData {
  readonly header: string;
  readonly values: CellValue[];
  readonly looks: NumberLook[];
  readonly formulas: boolean[];
  calculated: boolean;
}

/** A table as it is put together, before it becomes a snapshot. */
export interface TableData {
  readonly name: string;
  readonly tab: string;
  readonly firstRow: number;
  readonly firstColumn: number;
  readonly columns: readonly ColumnData[];
  readonly below: readonly CellValue[] | null;
}

/** The snapshot of a table; its data must not be changed afterwards. */
export function snapshotOfTable({ columns, below, ...place }: TableData): TableSnapshot {
  return {
    ...place,
    rowCount: columns[0]?.values.length ?? 0,
    columns: columns.map(
      ({ header, values, looks, formulas, calculated }): ColumnSnapshot => ({
        header,
        values,
        look: (row) => looks[row] ?? 'plain',
        hasFormula: (row) => formulas[row] ?? false,
        calculated,
      }),
    ),
    ...(below === null ? {} : { below }),
  };
}

/** The data of a snapshot, free to be changed. */
export function dataOfTable(table: TableSnapshot): TableData {
  const rows = Array.from({ length: table.rowCount }, (_, row) => row);
  return {
    name: table.name,
    tab: table.tab,
    firstRow: table.firstRow,
    firstColumn: table.firstColumn,
    columns: table.columns.map((column) => ({
      header: column.header,
      values: [...column.values],
      looks: rows.map((row) => column.look(row)),
      formulas: rows.map((row) => column.hasFormula(row)),
      calculated: column.calculated,
    })),
    below: table.below ?? null,
  };
}

/**
 * Whether new rows get the column's formula by themselves. The program doesn't say; it is so where the last body
 * row holds a formula, and most others do (a few may have been typed over).
 */
export function isCalculated(formulas: readonly boolean[]): boolean {
  const held = formulas.reduce((count, has) => count + (has ? 1 : 0), 0);
  return formulas.at(-1) === true && held * 2 > formulas.length;
}
