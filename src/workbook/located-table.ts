import type { DateSystem } from '../core/serial-date.ts';
import { cellAddress } from './address.ts';
import type { TabCell } from './live-workbook.ts';
import type { ColumnSnapshot, TableSnapshot } from './port.ts';
import type { TableDefinition } from './table-definition.ts';
import { stockTable } from './tables-stock.ts';

/** A table of the workbook with what Jarleaf knows of it. */
export interface LocatedTable<D extends TableDefinition = TableDefinition> {
  readonly definition: D;
  readonly snapshot: TableSnapshot;
  readonly dateSystem: DateSystem;
  /** The column of each header of the definition that the table has. */
  readonly columns: ReadonlyMap<string, { readonly column: ColumnSnapshot; readonly index: number }>;
  /** The headers of starred columns that it lacks; such a table is not read. */
  readonly missing: readonly string[];
}

/** Headers compare without case and spacing. */
function headerKey(header: string): string {
  return header.toLowerCase().replace(/\s+/g, '');
}

/** Matches a table's columns with a definition's by their headers; the first of two alike is taken. */
export function locate<D extends TableDefinition>(
  definition: D,
  snapshot: TableSnapshot,
  dateSystem: DateSystem,
): LocatedTable<D> {
  const byKey = new Map<string, { column: ColumnSnapshot; index: number }>();
  snapshot.columns.forEach((column, index) => {
    const key = headerKey(column.header);
    if (!byKey.has(key)) byKey.set(key, { column, index });
  });
  const columns = new Map<string, { column: ColumnSnapshot; index: number }>();
  const missing: string[] = [];
  for (const { header, starred } of Object.values(definition.columns)) {
    const found = byKey.get(headerKey(header));
    if (found !== undefined) columns.set(header, found);
    else if (starred) missing.push(header);
  }
  return { definition, snapshot, dateSystem, columns, missing };
}

/** Whether a table of any name has the starred columns of a stock table. */
export function looksLikeStock(snapshot: TableSnapshot, dateSystem: DateSystem): boolean {
  return locate(stockTable(snapshot.name), snapshot, dateSystem).missing.length === 0;
}

/** A cell of the table by its tab; a header that the table lacks gives its first column. */
export function cellOf(table: LocatedTable, row: number, header: string): TabCell {
  const { tab, firstRow, firstColumn } = table.snapshot;
  return { tab, row: firstRow + row, column: firstColumn + (table.columns.get(header)?.index ?? 0) };
}

/** The address of a cell of the table, such as Paste!D7; a header that it lacks gives its first cell. */
export function addressOf(table: LocatedTable, row: number, header: string): string {
  const cell = cellOf(table, row, header);
  return cellAddress(cell.tab, cell.row, cell.column);
}
