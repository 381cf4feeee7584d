import type { CellPosition } from './cell-position.ts';

const CELL_ID = /^cell-(\d+)-(\d+)$/;

/** The cell of the grid that an event happened on. */
export function pointedCell(target: EventTarget | null): CellPosition | null {
  if (!(target instanceof Element)) return null;
  const match = CELL_ID.exec(target.closest('[role=gridcell]')?.id ?? '');
  return match ? { row: Number(match[1]), column: Number(match[2]) } : null;
}
