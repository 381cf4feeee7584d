import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { columnLetters } from '../../files/cell-reference.ts';
import type { CellEditing } from './cell-editing.ts';
import type { CellPosition } from './cell-position.ts';
import { editorKeys } from './editor-keys.ts';
import type { GridExtent } from './grid-moves.ts';

const LEAST_WIDTH = 140;

/** The field that lies over the cell that is being typed. */
export function CellEditor(props: {
  readonly editing: CellEditing;
  readonly extent: GridExtent;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  /** Gives the keys back to the grid, which goes to the next cell. */
  readonly onLeave: (next: CellPosition | null) => void;
}): JSX.Element | null {
  const { editing } = props;
  const field = useRef<HTMLTextAreaElement>(null);
  const edit = editing.current.value;
  const isHere = edit?.place === 'cell';
  useLayoutEffect(() => {
    const element = field.current;
    if (!isHere || !element) return;
    element.focus();
    element.setSelectionRange(element.value.length, element.value.length);
  }, [isHere]);
  if (!edit || !isHere) return null;
  return (
    // A grid may hold rows of cells only, for those who are told of it.
    <div role="row" aria-rowindex={edit.cell.row + 1}>
      <div role="gridcell" aria-colindex={edit.cell.column + 1}>
        <textarea
          ref={field}
          class="cell-editor"
          rows={Math.min(8, edit.text.split('\n').length)}
          aria-label={`Content of ${columnLetters(edit.cell.column)}${edit.cell.row}`}
          spellcheck={false}
          style={{
            left: `${props.left}px`,
            top: `${props.top}px`,
            width: `${Math.max(props.width, LEAST_WIDTH)}px`,
          }}
          value={edit.text}
          onInput={(event) => editing.put(event.currentTarget.value)}
          onKeyDown={(event) => editorKeys(event, editing, props.extent, props.onLeave)}
          onBlur={() => editing.leave()}
        />
      </div>
    </div>
  );
}
