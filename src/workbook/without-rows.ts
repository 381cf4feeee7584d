import type { ColumnSnapshot, TableSnapshot, WorkbookSnapshot } from './port.ts';

/** Body rows of a table, counted from 0, the first one first. */
export interface TableRows {
  /** As the snapshot spells it. */
  readonly table: string;
  readonly rows: readonly number[];
}

/**
 * The snapshot that a workbook would give after rows were taken out; a table that loses all of them keeps a blank one.
 * @throws where a table or row isn't there: a mistake of the caller
 */
export function withoutRows(snapshot: WorkbookSnapshot, taken: readonly TableRows[]): WorkbookSnapshot {
  const tables = [...snapshot.tables];
  for (const { table: name, rows } of taken) {
    const at = tables.findIndex((each) => each.name === name);
    const table = tables[at];
    if (table === undefined) throw new Error(`There is no table ${name}`);
    tables[at] = tableWithout(table, rows);
  }
  return { ...snapshot, tables };
}

function tableWithout(table: TableSnapshot, rows: readonly number[]): TableSnapshot {
  const strange = rows.find((row) => !Number.isInteger(row) || row < 0 || row >= table.rowCount);
  if (strange !== undefined) throw new Error(`There is no row ${strange} in ${table.name}`);
  if (rows.length === 0) return table;
  const gone = new Set(rows);
  const staying = Array.from({ length: table.rowCount }, (_, row) => row).filter((row) => !gone.has(row));
  const { below: _, ...rest } = table;
  return {
    ...rest,
    rowCount: Math.max(staying.length, 1),
    columns: table.columns.map((column) => columnWith(column, staying)),
  };
}

function columnWith(column: ColumnSnapshot, staying: readonly number[]): ColumnSnapshot {
  return {
    ...column,
    values: staying.length === 0 ? [null] : staying.map((row) => column.values[row] ?? null),
    look: (row) => {
      const before = staying[row];
      return before === undefined ? 'plain' : column.look(before);
    },
    hasFormula: (row) => {
      const before = staying[row];
      return before === undefined ? column.calculated : column.hasFormula(before);
    },
  };
}
