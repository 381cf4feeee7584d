import { cellBefore } from './cell-content.ts';
import type { StepDone, StepToRun } from './run-trip.ts';
import type { RowAsFound } from './verify-basis.ts';
import { cellsStanding, findStanding, type Standing } from './what-stands.ts';
import type { WithWorkbook } from './with-workbook.ts';

type Done = ReadonlyMap<StepToRun['step'], StepDone>;

/**
 * Takes back what stands of steps: cells get what stood there right before, rows that were added go. What others
 * wrote since stays.
 * @returns what could not be taken back
 * @throws the program's error where it refuses
 */
export async function takeBack(
  withWorkbook: WithWorkbook,
  steps: readonly StepToRun[],
  done: Done,
): Promise<Standing[]> {
  const standing = (await findStanding(withWorkbook, steps, done)).filter((each) => stands(each, done));
  if (standing.length === 0) return [];
  await withWorkbook(async (context) => {
    // From the bottom up, so that rows that go don't move those still to be found.
    for (const each of standing.toReversed()) queueTakingBack(context, each, done);
    await context.sync();
  });
  return (await findStanding(withWorkbook, steps, done)).filter((each) => stands(each, done));
}

/** Whether anything of a step stands. */
export function stands(standing: Standing, done: Done): boolean {
  if (standing.step.step.place === 'below') return standing.added !== null;
  return standing.rows.some((_, index) => columnsStanding(standing, index, done).length > 0);
}

function rowBefore({ step }: Standing, index: number, done: Done): RowAsFound | undefined {
  return done.get(step.step)?.before[index] ?? step.table.rows.get(step.step.row + index);
}

function columnsStanding(standing: Standing, index: number, done: Done): number[] {
  const before = rowBefore(standing, index, done);
  const written = done.get(standing.step.step)?.values;
  return before === undefined ? [] : cellsStanding(standing, index, before, written);
}

function queueTakingBack(context: Excel.RequestContext, standing: Standing, done: Done): void {
  const { step, added, at, bodyRows } = standing;
  const table = context.workbook.tables.getItem(step.table.id);
  const body = table.getDataBodyRange();
  if (step.step.place === 'body') {
    standing.rows.forEach((_, index) => {
      const before = rowBefore(standing, index, done);
      for (const column of columnsStanding(standing, index, done)) {
        if (before !== undefined) putBack(body.getCell(step.step.row + index, column), before, column);
      }
    });
    return;
  }
  const rows = step.step.cells.length;
  const range = body.getCell(at, 0).getResizedRange(rows - 1, step.step.plan.table.columns.length - 1);
  if (step.room === 'put in rows') range.getEntireRow().delete('Up');
  else if (step.room === 'put in cells' || at + rows < bodyRows) range.delete('Up');
  else {
    // Nothing was moved for these rows, so nothing is moved back: they are emptied, and the table gives them up.
    if (added === 'rows') range.clear('Contents');
    range.numberFormat = Array.from({ length: rows }, () => [...step.table.formatsFree]);
    const met = done.get(step.step)?.before ?? [];
    met.forEach((row, index) => {
      row.formulas.forEach((formula, column) => {
        if (formula !== '') putBack(body.getCell(at + index, column), row, column);
      });
    });
    // Last, as the table takes in what is put back below it.
    table.resize(
      table
        .getRange()
        .getRow(0)
        .getBoundingRect(body.getRow(at - 1)),
    );
  }
}

function putBack(cell: Excel.Range, row: RowAsFound, column: number): void {
  const before = cellBefore(row.formulas[column], row.values[column], row.numberFormats[column]);
  cell.numberFormat = [[before.writeAs]];
  cell.formulas = [[before.formula]];
  cell.numberFormat = [[before.numberFormat]];
}
