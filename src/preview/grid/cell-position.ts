/** A cell of the tab on view, counted from 1. */
export interface CellPosition {
  readonly row: number;
  readonly column: number;
}

/** What is chosen: from the cell where choosing began to the one that moves, which is the active one for typing. */
export interface Selection {
  readonly active: CellPosition;
  readonly other: CellPosition;
}

export interface Block {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

export function single(cell: CellPosition): Selection {
  return { active: cell, other: cell };
}

/** The rectangle that a selection spans. */
export function blockOf({ active, other }: Selection): Block {
  return {
    firstRow: Math.min(active.row, other.row),
    lastRow: Math.max(active.row, other.row),
    firstColumn: Math.min(active.column, other.column),
    lastColumn: Math.max(active.column, other.column),
  };
}

export function isInBlock(block: Block, { row, column }: CellPosition): boolean {
  return (
    row >= block.firstRow && row <= block.lastRow && column >= block.firstColumn && column <= block.lastColumn
  );
}

export function isSamePosition(a: CellPosition, b: CellPosition): boolean {
  return a.row === b.row && a.column === b.column;
}
