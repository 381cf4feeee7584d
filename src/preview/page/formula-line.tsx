import type { JSX } from 'preact';
import { columnLetters } from '../../files/cell-reference.ts';
import type { CellEditing } from '../grid/cell-editing.ts';
import { blockOf, single } from '../grid/cell-position.ts';
import { editorKeys } from '../grid/editor-keys.ts';
import type { GridExtent } from '../grid/grid-moves.ts';
import { editorText } from '../model/edits.ts';
import { functionCall } from '../model/function-cells.ts';
import type { Workbench } from '../model/workbench.ts';

/** Reached by a key from the line: the neighbours, however far the grid is drawn. */
const ANYWHERE: GridExtent = {
  rows: Number.MAX_SAFE_INTEGER,
  columns: Number.MAX_SAFE_INTEGER,
  lastRow: 0,
  lastColumn: 0,
  page: 1,
  isFilled: () => false,
};

/** The line above the grid: which cell is chosen, and the whole of what it holds. */
export function FormulaLine({
  bench,
  editing,
}: {
  readonly bench: Workbench;
  readonly editing: CellEditing;
}): JSX.Element {
  void bench.version.value;
  const { active } = bench.selection.value;
  const block = blockOf(bench.selection.value);
  const first = `${columnLetters(block.firstColumn)}${block.firstRow}`;
  const last = `${columnLetters(block.lastColumn)}${block.lastRow}`;
  const edit = editing.current.value;
  const table = bench.tableAt(active);
  return (
    <div class="line">
      <div class="line-place">
        <span class="line-address">{first === last ? first : `${first}:${last}`}</span>
        {table ? <span class="line-table">{table.name}</span> : null}
      </div>
      <textarea
        class="line-field"
        rows={1}
        aria-label={`Content of ${columnLetters(active.column)}${active.row}`}
        spellcheck={false}
        value={edit ? edit.text : editorText(bench, active)}
        onFocus={() => {
          if (!editing.current.value) editing.begin(active, 'line');
        }}
        onInput={(event) => editing.put(event.currentTarget.value)}
        onKeyDown={(event) => {
          editorKeys(event, editing, ANYWHERE, (next) => {
            if (next) bench.choose(single(next));
            document.querySelector<HTMLElement>('[role=grid]')?.focus({ preventScroll: true });
          });
        }}
        onBlur={() => {
          if (editing.current.value?.place === 'line') editing.leave();
        }}
      />
      <p class="line-hint">{hintFor(bench)}</p>
    </div>
  );
}

/** Says of a formula's figure where it comes from: only our own functions are worked out here. */
function hintFor(bench: Workbench): string {
  const cell = bench.cell(bench.selection.value.active);
  if (cell?.formula == null || functionCall(cell.formula)) return '';
  const isUnknown = typeof cell.value === 'object' && cell.value !== null && cell.value.shown.startsWith('=');
  return isUnknown
    ? 'Not worked out here: a spreadsheet program does it when it opens the file.'
    : 'The result that stands in the file; a spreadsheet program works it out anew.';
}
