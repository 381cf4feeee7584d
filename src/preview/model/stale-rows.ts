import type { CellValue, Change, TableSnapshot, WorkbookSnapshot } from '../../workbook/port.ts';

/**
 * Whether rows that changes touch have moved or hold something else than when the changes were worked out.
 * @param basis what the changes were worked out from
 * @param now what stands there
 */
export function isStale(changes: readonly Change[], basis: WorkbookSnapshot, now: WorkbookSnapshot): boolean {
  const tables = new Map(now.tables.map((table) => [table.name, table]));
  const before = new Map(basis.tables.map((table) => [table.name, table]));
  const appended = new Set<string>();
  for (const change of changes) {
    const old = before.get(change.table);
    const table = tables.get(change.table);
    if (!old || !table || headers(old) !== headers(table)) return true;
    if (change.kind === 'append') {
      appended.add(change.table);
      continue;
    }
    if (change.kind === 'add column') continue;
    // A row that these changes append themselves is named by where it will stand: below what is filled.
    const isAppended = appended.has(change.table) && change.row >= filledRows(old);
    if (isAppended ? filledRows(old) !== filledRows(table) : rowDiffers(old, table, change.row)) return true;
  }
  return false;
}

function headers(table: TableSnapshot): string {
  return JSON.stringify(table.columns.map(({ header }) => header));
}

function rowDiffers(old: TableSnapshot, table: TableSnapshot, row: number): boolean {
  return old.columns.some((column, index) => {
    const other = table.columns[index];
    return (
      other === undefined ||
      column.hasFormula(row) !== other.hasFormula(row) ||
      column.look(row) !== other.look(row) ||
      !isSame(column.values[row] ?? null, other.values[row] ?? null)
    );
  });
}

/** How many rows there are down to the last one that holds a value of its own. */
function filledRows(table: TableSnapshot): number {
  let rows = table.rowCount;
  const isBlank = (row: number): boolean =>
    table.columns.every(({ values, hasFormula }) => {
      const value = values[row] ?? null;
      return value === null || value === '' || hasFormula(row);
    });
  while (rows > 0 && isBlank(rows - 1)) rows--;
  return rows;
}

function isSame(a: CellValue, b: CellValue): boolean {
  if (a === b) return true;
  return typeof a === 'object' && typeof b === 'object' && a !== null && b !== null && a.shown === b.shown;
}
