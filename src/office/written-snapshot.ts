import { lookOfCode } from '../workbook/number-formats.ts';
import type { CellValue, CellWrite, NumberLook, WorkbookSnapshot } from '../workbook/port.ts';
import { cellValue, TEXT_FORMAT } from './cell-values.ts';
import { bodyRowOf } from './mend.ts';
import type { StepDone } from './run-trip.ts';
import { dataOfTable, isCalculated, snapshotOfTable, type TableData } from './table-data.ts';
import { writtenCells } from './write-steps.ts';

/**
 * The basis with what was written, as it was read back.
 * @returns null where a table holds rows of somebody else besides
 */
export function writtenSnapshot(
  basis: WorkbookSnapshot,
  steps: readonly StepDone[],
): WorkbookSnapshot | null {
  const byTable = new Map<string, StepDone[]>();
  for (const done of steps) {
    const name = done.step.plan.table.name;
    const own = byTable.get(name);
    if (own === undefined) byTable.set(name, [done]);
    else own.push(done);
  }
  if ([...byTable.values()].some(hasRowsOfOthers)) return null;
  return {
    ...basis,
    tables: basis.tables.map((table) => {
      const own = byTable.get(table.name);
      return own === undefined ? table : snapshotOfTable(withSteps(dataOfTable(table), own));
    }),
  };
}

/** A step's table as it stood when the last step was done. */
function hasRowsOfOthers(steps: readonly StepDone[]): boolean {
  const last = steps.at(-1);
  if (last === undefined) return false;
  const { table, grown } = last.step.plan;
  const elsewhere = steps.some(
    (done) => done.step.place === 'below' && bodyRowOf(done) !== table.rowCount + done.step.row,
  );
  return (
    elsewhere || last.body.row !== table.firstRow - 1 || last.body.rows !== table.rowCount + grown.length
  );
}

function withSteps(data: TableData, steps: readonly StepDone[]): TableData {
  for (const done of steps) {
    if (done.step.place === 'below') appendRows(data, done);
    else setCells(data, done);
  }
  for (const column of data.columns) column.calculated = isCalculated(column.formulas);
  const below = steps.at(-1)?.below ?? null;
  return { ...data, below: below?.map((value) => cellValue(value, false, undefined)) ?? null };
}

function setCells(data: TableData, done: StepDone): void {
  const { row: first, column: left } = done.step;
  for (const { row, column, cell } of writtenCells(done.step)) {
    const target = data.columns[left + column];
    if (target === undefined) continue;
    target.values[first + row] = valueBack(done.values[row]?.[column], cell);
    target.looks[first + row] = lookBack(done.numberFormats[row]?.[column]);
  }
}

function appendRows(data: TableData, { step, values, numberFormats, filledIn }: StepDone): void {
  data.columns.forEach((column, index) => {
    step.cells.forEach((row, at) => {
      const cell = row[index];
      const value = values[at]?.[index];
      const hasFormula = filledIn.get(index)?.[at] ?? false;
      column.values.push(
        cell === undefined ? cellValue(value, hasFormula, undefined) : valueBack(value, cell),
      );
      column.looks.push(lookBack(numberFormats[at]?.[index]));
      column.formulas.push(hasFormula);
    });
  });
}

function valueBack(value: unknown, cell: CellWrite): CellValue {
  return cellValue(value, false, cell.kind === 'text' ? TEXT_FORMAT : undefined);
}

const lookBack = (code: unknown): NumberLook => (typeof code === 'string' ? lookOfCode(code) : 'plain');
