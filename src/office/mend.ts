import { valueToWrite } from './cell-content.ts';
import { TEXT_FORMAT } from './cell-values.ts';
import { cellsAmiss, formulasHeld, queueBodies, type StepDone } from './run-trip.ts';
import type { WithWorkbook } from './with-workbook.ts';

/** The body row at which a step's range begins. */
export const bodyRowOf = ({ body, tabRow }: StepDone): number => tabRow - body.row;

/** Whether the table took in all rows that were written below it. */
export function hasGrown(done: StepDone): boolean {
  return done.step.place === 'body' || bodyRowOf(done) + done.step.cells.length <= done.body.rows;
}

/** Formulas that new rows should have got of calculated columns, and did not. */
function missingFormulas(done: StepDone): { readonly column: number; readonly row: number }[] {
  const { columns } = done.step.plan.table;
  if (done.step.place === 'below') {
    return [...done.filledIn].flatMap(([column, has]) =>
      has.flatMap((held, row) => (held ? [] : [{ column, row: bodyRowOf(done) + row }])),
    );
  }
  return columns.flatMap((each, column) =>
    !each.calculated
      ? []
      : done.step.cells.flatMap((_, index) => {
          const row = done.step.row + index;
          return done.step.plan.filled.has(row) && !each.hasFormula(row) ? [{ column, row }] : [];
        }),
  );
}

/** Whether anything came out otherwise than it was written. */
export function needsMending(done: StepDone): boolean {
  return !hasGrown(done) || cellsAmiss(done).length > 0 || missingFormulas(done).length > 0;
}

/**
 * Sets right, in one round trip, what came out otherwise: a table that did not take in its new rows, text that was
 * corrected or turned into something else, formulas that new rows did not get. Gives the steps as they stand then.
 */
export function mend(withWorkbook: WithWorkbook, steps: readonly StepDone[]): Promise<StepDone[]> {
  return withWorkbook(async (context) => {
    const queued = steps.map((done) => (needsMending(done) ? queueMending(context, done) : () => done));
    const bodyOf = queueBodies(context, steps);
    await context.sync();
    return queued.map((collect) => {
      const done = collect();
      return { ...done, ...bodyOf(done.table) };
    });
  });
}

function queueMending(context: Excel.RequestContext, done: StepDone): () => StepDone {
  const { step, table, dateSystem } = done;
  const tableNow = context.workbook.tables.getItem(table.id);
  const rows = step.cells.length;
  const width = step.cells[0]?.length ?? 0;
  const first = bodyRowOf(done);
  if (!hasGrown(done)) {
    const end = tableNow.getDataBodyRange().getCell(first + rows - 1, 0);
    tableNow.resize(tableNow.getRange().getBoundingRect(end));
  }
  const body = tableNow.getDataBodyRange();
  const left = step.place === 'below' ? 0 : step.column;
  for (const { row, column, cell } of cellsAmiss(done)) {
    const range = body.getCell(first + row, left + column);
    const value = valueToWrite(cell, dateSystem);
    if (cell.kind === 'text' && value !== '') {
      // An apostrophe in front is not part of the text, and says that it is text.
      range.numberFormat = [[TEXT_FORMAT]];
      range.values = [[`'${value}`]];
    } else range.values = [[value]];
  }
  for (const { row, column } of missingFormulas(done)) {
    const model = modelRow(done, column);
    if (model !== null) body.getCell(row, column).copyFrom(body.getCell(model, column), 'Formulas');
  }
  const range = body
    .getCell(first, left)
    .getResizedRange(rows - 1, width - 1)
    .load('values,numberFormat,rowIndex');
  const formulas = [...done.filledIn.keys()].map((column) => ({
    column,
    cells: range.getColumn(column).load('values,formulas'),
  }));
  return () => ({
    ...done,
    values: range.values,
    numberFormats: range.numberFormat,
    tabRow: range.rowIndex,
    filledIn: new Map(formulas.map(({ column, cells }) => [column, formulasHeld(cells)])),
  });
}

/** A body row that holds the formula of a calculated column. */
function modelRow({ step }: StepDone, column: number): number | null {
  const { columns, rowCount } = step.plan.table;
  for (let row = rowCount - 1; row >= 0; row--) if (columns[column]?.hasFormula(row)) return row;
  return null;
}
