import { formulaOf } from './cell-writing.ts';
import { translateFormula } from './formula-shift.ts';
import { markHasFormula } from './sheet-grid.ts';
import type { TableState, WorkbookState } from './workbook-state.ts';

/**
 * The formula that a row appended below the body gets in a column; null where it gets none. It is the column's
 * own formula; where the table's part names none (some programs drop it on saving), the one that all rows of the
 * body hold in the same way.
 */
export function columnFormula(state: WorkbookState, table: TableState, index: number): string | null {
  const marks = table.grid.marks[index] ?? [];
  const own = table.part.columns[index]?.formula ?? null;
  if (own !== null) return formulaInRow(state, table, index, marks.length, own);
  if (marks.length < 2 || !marks.every(markHasFormula)) return null;
  const last = formulaOf(state, table, { row: marks.length - 1, column: index });
  const above = formulaOf(state, table, { row: marks.length - 2, column: index });
  const goesOn = last !== null && last !== '' && above !== null && translateFormula(above, 1, 0) === last;
  return goesOn ? translateFormula(last, 1, 0) : null;
}

/**
 * A column's own formula as it reads in a body row. What it says without $ is meant relative to a row, which the
 * file doesn't name: the formulas in the body show it, else it is the first body row.
 */
export function formulaInRow(
  state: WorkbookState,
  table: TableState,
  index: number,
  row: number,
  formula: string,
): string {
  if (translateFormula(formula, 1, 0) === formula) return formula;
  const marks = table.grid.marks[index] ?? [];
  for (let above = Math.min(row, marks.length) - 1; above >= 0; above--) {
    if (!markHasFormula(marks[above])) continue;
    const shown = formulaOf(state, table, { row: above, column: index });
    if (shown !== null && shown !== '') return translateFormula(shown, row - above, 0);
  }
  return translateFormula(formula, row, 0);
}
