import type { CellEditing } from './cell-editing.ts';
import type { CellPosition } from './cell-position.ts';
import type { GridExtent } from './grid-moves.ts';
import { moved } from './grid-moves.ts';

/** The keys of a cell's editor: Enter and Tab take what was typed and go on, Esc leaves the cell as it was. */
export function editorKeys(
  event: KeyboardEvent,
  editing: CellEditing,
  extent: GridExtent,
  leave: (next: CellPosition | null) => void,
): void {
  const edit = editing.current.value;
  if (!edit || event.isComposing) return;
  if (event.key === 'Escape') {
    event.preventDefault();
    editing.cancel();
    leave(null);
    return;
  }
  const step = stepOf(event);
  if (!step) return;
  event.preventDefault();
  if (!editing.commit()) return;
  leave(moved(edit.cell, step[0], step[1], extent));
}

function stepOf({ key, shiftKey, altKey }: KeyboardEvent): readonly [rows: number, columns: number] | null {
  // With Alt, Enter begins another line within the cell.
  if (key === 'Enter' && !altKey) return [shiftKey ? -1 : 1, 0];
  return key === 'Tab' ? [0, shiftKey ? -1 : 1] : null;
}
