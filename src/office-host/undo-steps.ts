import { type Area, boundingArea, contains } from './cell-area.ts';
import type { Editing } from './editing.ts';
import { BLANK_CELL, type Cell, cellAt, type Sheet, setCell } from './memory-workbook.ts';
import { restoreState, type WorkbookState } from './workbook-state.ts';
import { tellEdited } from './write-cells.ts';

/** What one client did in one go: a request of its add-in, or one act of its person. */
export interface UndoStep {
  readonly client: string;
  readonly before: WorkbookState;
  readonly after: WorkbookState;
}

interface CellChange {
  readonly sheet: Sheet;
  readonly row: number;
  readonly column: number;
  readonly before: Cell;
  readonly after: Cell;
}

/** The cells that differ between two states, by their place. */
function* cellChanges(step: UndoStep): Generator<CellChange> {
  for (const { sheet, fields } of step.after.sheets) {
    const old = step.before.sheets.find((each) => each.sheet === sheet)?.fields.rows ?? [];
    for (let row = 0; row < Math.max(old.length, fields.rows.length); row++) {
      if (old[row] === fields.rows[row]) continue;
      const width = Math.max(old[row]?.length ?? 0, fields.rows[row]?.length ?? 0);
      for (let column = 0; column < width; column++) {
        const before = old[row]?.[column] ?? BLANK_CELL;
        const after = fields.rows[row]?.[column] ?? BLANK_CELL;
        if (before !== after) yield { sheet, row, column, before, after };
      }
    }
  }
}

/** Whether two states differ in more than cells: sheets, tables, their places and sizes. */
function differsInShape(step: UndoStep): boolean {
  const shape = (state: WorkbookState): string =>
    JSON.stringify([
      state.workbook.sheets.map(({ id }) => id),
      state.tables.map(({ fields: { sheet: _sheet, ...fields } }) => fields),
    ]);
  return shape(step.before) !== shape(step.after);
}

/**
 * Takes a step back and tells of the cells that change by it. `later` are the steps of others since: their cells stay
 * as they are. It is not documented what the program does with rows that were put in and typed over by others since;
 * this host refuses.
 */
export function takeBack(editing: Editing, step: UndoStep, later: readonly UndoStep[]): void {
  const edited = new Map<Sheet, Area>();
  const simple = later.length === 0;
  if (!simple && [step, ...later].some(differsInShape)) {
    throw new Error('Undoing across rows, tables or sheets that others changed since is not modelled.');
  }
  for (const { sheet, row, column, before, after } of cellChanges(step)) {
    const at = { row, column, rows: 1, columns: 1 };
    const known = edited.get(sheet);
    if (!known) edited.set(sheet, at);
    else if (!contains(known, at)) edited.set(sheet, boundingArea(known, at));
    if (!simple && cellAt(sheet, row, column) === after) setCell(sheet, row, column, before);
  }
  if (simple) restoreState(editing.workbook, step.before);
  for (const [sheet, area] of edited) {
    if (editing.workbook.sheets.includes(sheet)) tellEdited(editing, sheet, area);
  }
}
