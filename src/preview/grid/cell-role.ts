import type { TableShape } from '../../files/tab-shape.ts';
import type { CellPosition } from './cell-position.ts';

/** What a cell is to the table that it stands in. */
export type CellRole = 'header' | 'body' | 'band' | 'totals' | null;

/** The part of a table that a cell belongs to; every second body row is a band. */
export function cellRole(tables: readonly TableShape[], { row, column }: CellPosition): CellRole {
  for (const { area, headerRows, totalsRows } of tables) {
    if (row < area.firstRow || row > area.lastRow) continue;
    if (column < area.firstColumn || column > area.lastColumn) continue;
    const firstBody = area.firstRow + headerRows;
    if (row < firstBody) return 'header';
    if (row > area.lastRow - totalsRows) return 'totals';
    return (row - firstBody) % 2 === 1 ? 'band' : 'body';
  }
  return null;
}

/** The table in whose columns a cell stands, at or below its header: what its column is called there. */
export function headerRowOver(tables: readonly TableShape[], { row, column }: CellPosition): number | null {
  for (const { area, headerRows } of tables) {
    if (headerRows === 0 || row < area.firstRow || row > area.lastRow) continue;
    if (column >= area.firstColumn && column <= area.lastColumn) return area.firstRow + headerRows - 1;
  }
  return null;
}
