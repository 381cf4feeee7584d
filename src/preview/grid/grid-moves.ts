import type { CellPosition } from './cell-position.ts';

/** What of the tab a move has to know. */
export interface GridExtent {
  /** How far the grid reaches. */
  readonly rows: number;
  readonly columns: number;
  /** The last row and column that hold anything. */
  readonly lastRow: number;
  readonly lastColumn: number;
  /** How many rows a page has. */
  readonly page: number;
  readonly isFilled: (cell: CellPosition) => boolean;
}

export type Direction = 'up' | 'down' | 'left' | 'right';

const STEPS: Readonly<Record<Direction, readonly [rows: number, columns: number]>> = {
  up: [-1, 0],
  down: [1, 0],
  left: [0, -1],
  right: [0, 1],
};

/** The cell that lies so many rows and columns further, within the grid. */
export function moved(
  { row, column }: CellPosition,
  rows: number,
  columns: number,
  extent: GridExtent,
): CellPosition {
  return {
    row: Math.min(Math.max(1, row + rows), extent.rows),
    column: Math.min(Math.max(1, column + columns), extent.columns),
  };
}

/** The neighbour in a direction. */
export function neighbour(cell: CellPosition, direction: Direction, extent: GridExtent): CellPosition {
  const [rows, columns] = STEPS[direction];
  return moved(cell, rows, columns, extent);
}

/**
 * Where a run of filled cells ends in a direction; from its end, or from a blank cell, where the next one begins;
 * where nothing more comes, the edge of what is filled.
 */
export function edgeOfData(cell: CellPosition, direction: Direction, extent: GridExtent): CellPosition {
  const [rows, columns] = STEPS[direction];
  const lastRow = Math.min(Math.max(extent.lastRow, cell.row), extent.rows);
  const lastColumn = Math.min(Math.max(extent.lastColumn, cell.column), extent.columns);
  const next = ({ row, column }: CellPosition): CellPosition | null => {
    const to = { row: row + rows, column: column + columns };
    return to.row < 1 || to.column < 1 || to.row > lastRow || to.column > lastColumn ? null : to;
  };
  let at = cell;
  let to = next(at);
  if (!to) return at;
  const inRun = extent.isFilled(at) && extent.isFilled(to);
  for (; to; to = next(at)) {
    if (inRun && !extent.isFilled(to)) return at;
    at = to;
    if (!inRun && extent.isFilled(at)) return at;
  }
  return at;
}
