import type { CellPosition } from './cell-position.ts';
import { type Direction, edgeOfData, type GridExtent, moved, neighbour } from './grid-moves.ts';

/** What a key press in the grid asks for. */
export type GridCommand =
  | { readonly kind: 'go'; readonly to: CellPosition; readonly extend: boolean }
  | { readonly kind: 'edit' }
  /** Begins to type over the cell with this. */
  | { readonly kind: 'type'; readonly text: string }
  | { readonly kind: 'clear' | 'choose all' | 'delete rows' | 'undo' | 'redo' };

export interface GridKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/** The command behind a key, or null where the key is none of the grid's. */
export function gridCommand(press: GridKey, from: CellPosition, extent: GridExtent): GridCommand | null {
  const control = press.ctrlKey || press.metaKey;
  if (press.altKey && !control) return null;
  const to = destination(press.key, control, press.shiftKey, from, extent);
  // Tab at the edge of the grid leaves it, so that nobody is caught in there.
  if (to && press.key === 'Tab' && to.row === from.row && to.column === from.column) return null;
  if (to) return { kind: 'go', to, extend: press.shiftKey && press.key !== 'Tab' };
  if (control) return controlCommand(press.key.toLowerCase(), press.shiftKey);
  if (press.key === 'F2' || press.key === 'Enter') return { kind: 'edit' };
  if (press.key === 'Delete') return { kind: 'clear' };
  if (press.key === 'Backspace') return { kind: 'type', text: '' };
  return Array.from(press.key).length === 1 ? { kind: 'type', text: press.key } : null;
}

function destination(
  key: string,
  control: boolean,
  shift: boolean,
  from: CellPosition,
  extent: GridExtent,
): CellPosition | null {
  const arrow = ARROWS[key];
  if (arrow) return control ? edgeOfData(from, arrow, extent) : neighbour(from, arrow, extent);
  const lastRow = Math.max(1, extent.lastRow);
  const lastColumn = Math.max(1, extent.lastColumn);
  switch (key) {
    case 'Home':
      return { row: control ? 1 : from.row, column: 1 };
    case 'End':
      return { row: control ? lastRow : from.row, column: lastColumn };
    case 'PageUp':
      return control ? null : moved(from, -extent.page, 0, extent);
    case 'PageDown':
      return control ? null : moved(from, extent.page, 0, extent);
    case 'Tab':
      return neighbour(from, shift ? 'left' : 'right', extent);
    default:
      return null;
  }
}

function controlCommand(key: string, shift: boolean): GridCommand | null {
  switch (key) {
    case 'a':
      return { kind: 'choose all' };
    case 'z':
      return { kind: shift ? 'redo' : 'undo' };
    case 'y':
      return { kind: 'redo' };
    case '-':
      return { kind: 'delete rows' };
    default:
      return null;
  }
}
