import type { WorkbookSnapshot } from '../workbook/port.ts';
import type { VerifiedTable } from './verify-basis.ts';

/**
 * How a table gets room to grow: its rows are free already; rows are put into the tab; or, where another table
 * stands beside it, only cells as wide as the table, so that the other one isn't torn apart.
 */
export type Room = 'free' | 'put in rows' | 'put in cells';

/** How a table is to get room below its body. */
export function roomFor({ plan, hasTotals, freeBelow }: VerifiedTable, basis: WorkbookSnapshot): Room {
  if (!hasTotals && freeBelow === null) return 'free';
  const { table } = plan;
  const at = table.firstRow + table.rowCount;
  const beside = basis.tables.some(
    (other) =>
      other.name !== table.name &&
      other.tab === table.tab &&
      other.firstRow - 1 < at &&
      other.firstRow + other.rowCount >= at,
  );
  return beside ? 'put in cells' : 'put in rows';
}

/** Makes room for rows right below a body, and gives its range, as wide as the table. */
export function makeRoom(body: Excel.Range, rows: number, room: Room): Excel.Range {
  const below = body.getRowsBelow(rows);
  if (room === 'free') return below;
  if (room === 'put in cells') return below.insert('Down');
  return below.getEntireRow().insert('Down').getIntersection(body.getEntireColumn());
}
