import type { DateSystem } from '../core/serial-date.ts';
import type { CellWrite } from '../workbook/port.ts';
import { formatToWrite, holdsWritten, valueToWrite } from './cell-content.ts';
import { formatAt, GENERAL_FORMAT, isFormula } from './cell-values.ts';
import { makeRoom, type Room } from './room-below.ts';
import type { RowAsFound, VerifiedTable } from './verify-basis.ts';
import type { WithWorkbook } from './with-workbook.ts';
import { type WriteStep, writtenCells } from './write-steps.ts';

/** A step with what is known of its table. */
export interface StepToRun {
  readonly step: WriteStep;
  readonly table: VerifiedTable;
  readonly room: Room;
  readonly dateSystem: DateSystem;
}

/** What a step met and left behind. */
export interface StepDone extends StepToRun, BodyNow {
  /** What stood in its rows right before: whole rows of the body, or the cells below it. */
  readonly before: readonly RowAsFound[];
  /** What stands in its range now. */
  readonly values: readonly (readonly unknown[])[];
  readonly numberFormats: readonly (readonly unknown[])[];
  /** The row of its range on the tab, counted from 0. */
  readonly tabRow: number;
  /** By calculated column: whether each new row got its formula. */
  readonly filledIn: ReadonlyMap<number, readonly boolean[]>;
}

/** The body of a table, when all steps of a trip were done. */
interface BodyNow {
  /** The first row on the tab, counted from 0, and how many there are. */
  readonly body: { readonly row: number; readonly rows: number };
  /** What stands right below; null for a totals row. */
  readonly below: readonly unknown[] | null;
}

/** Carries out steps in one round trip, and reads back what they met and what they left. */
export function runTrip(withWorkbook: WithWorkbook, steps: readonly StepToRun[]): Promise<StepDone[]> {
  return withWorkbook(async (context) => {
    context.application.suspendApiCalculationUntilNextSync();
    const queued = steps.map((each) => queueStep(context, each));
    const bodyOf = queueBodies(context, steps);
    await context.sync();
    return steps.map((each, index) => ({
      ...each,
      ...(queued[index] as () => Omit<StepDone, keyof StepToRun | keyof BodyNow>)(),
      ...bodyOf(each.table),
    }));
  });
}

/** Where the bodies of the steps' tables stand, and what is right below them, once what was queued before is done. */
export function queueBodies(
  context: Excel.RequestContext,
  steps: readonly StepToRun[],
): (table: VerifiedTable) => BodyNow {
  const bodies = new Map(
    [...new Set(steps.map(({ table }) => table))].map((table) => {
      const body = context.workbook.tables.getItem(table.id).getDataBodyRange().load('rowIndex,rowCount');
      return [table, { body, below: table.hasTotals ? null : body.getRowsBelow(1).load('values') }];
    }),
  );
  return (table) => {
    const found = bodies.get(table);
    return {
      body: { row: found?.body.rowIndex ?? 0, rows: found?.body.rowCount ?? 0 },
      below: found?.below?.values[0] ?? null,
    };
  };
}

function queueStep(
  context: Excel.RequestContext,
  { step, table, room, dateSystem }: StepToRun,
): () => Omit<StepDone, keyof StepToRun | keyof BodyNow> {
  const rows = step.cells.length;
  const width = step.cells[0]?.length ?? 0;
  const body = context.workbook.tables.getItem(table.id).getDataBodyRange();
  const isNew = step.place === 'below';
  const met = isNew && room !== 'free' ? null : isNew ? body.getRowsBelow(rows) : wholeRows(body, step);
  met?.load('values,formulas,numberFormat');
  const range = isNew
    ? makeRoom(body, rows, room)
    : body.getCell(step.row, step.column).getResizedRange(rows - 1, width - 1);
  const formats = formatsToWrite(step, table);
  if (formats.some((row) => row.some((format) => format !== null))) range.numberFormat = formats;
  const values = step.cells.map((row) => row.map((cell) => (cell ? valueToWrite(cell, dateSystem) : null)));
  if (values.some((row) => row.some((value) => value !== null))) range.values = values;
  // A range of its own, so that what is read now doesn't take the place of what was read before.
  const after = range.getResizedRange(0, 0).load('values,numberFormat,rowIndex');
  const calculated = isNew ? calculatedColumns(table) : [];
  const formulas = calculated.map((column) => after.getColumn(column).load('values,formulas'));
  return () => ({
    before: met === null ? [] : rowsAsFound(met),
    values: after.values,
    numberFormats: after.numberFormat,
    tabRow: after.rowIndex,
    filledIn: new Map(
      calculated.map((column, index) => [column, formulasHeld(formulas[index] as Excel.Range)]),
    ),
  });
}

/** Whether each cell of a column holds a formula. */
export function formulasHeld({ formulas, values }: Excel.Range): boolean[] {
  return formulas.map(([formula], row) => isFormula(formula, values[row]?.[0]));
}

function wholeRows(body: Excel.Range, { row, cells, plan }: WriteStep): Excel.Range {
  return body.getCell(row, 0).getResizedRange(cells.length - 1, plan.table.columns.length - 1);
}

function rowsAsFound(range: Excel.Range): RowAsFound[] {
  return range.values.map((values, row) => ({
    values,
    formulas: range.formulas[row] ?? [],
    numberFormats: range.numberFormat[row] ?? [],
  }));
}

function calculatedColumns({ plan }: VerifiedTable): number[] {
  return plan.table.columns.flatMap(({ calculated }, index) => (calculated ? [index] : []));
}

/** The number formats that a step sets before it writes; null leaves a cell's as it is. */
export function formatsToWrite(step: WriteStep, table: VerifiedTable): (string | null)[][] {
  return step.place === 'below' ? newFormats(step, table) : bodyFormats(step, table);
}

/** Rows that the body grows by go on with the formats of its last row. */
function newFormats({ cells }: WriteStep, { plan, formatsBelow }: VerifiedTable): (string | null)[][] {
  return cells.map((row) =>
    row.map((cell, index) => {
      if (plan.table.columns[index]?.calculated) return null;
      const above = formatsBelow[index] ?? GENERAL_FORMAT;
      const needed = cell === undefined ? null : formatToWrite(cell, above);
      return needed ?? (above === GENERAL_FORMAT ? null : above);
    }),
  );
}

function bodyFormats({ row, column, cells }: WriteStep, table: VerifiedTable): (string | null)[][] {
  return cells.map((each, index) => {
    const formats = table.rows.get(row + index)?.numberFormats ?? [];
    const formatOf = (cell: CellWrite, at: number): string | null =>
      formatToWrite(cell, formatAt(formats, column + at));
    return each.map((cell, at) => (cell === undefined ? null : formatOf(cell, at)));
  });
}

/** Whether somebody else wrote to a step's cells, or moved its rows, between the look at them and the write. */
export function metSomethingElse({ step, table, before }: StepDone): boolean {
  if (step.place === 'below') {
    return before.some(({ formulas }) => formulas.some((formula) => formula !== ''));
  }
  return before.some(({ formulas }, index) => {
    const expected = table.rows.get(step.row + index)?.formulas ?? [];
    return formulas.some((formula, column) => formula !== expected[column]);
  });
}

/** The cells of a step that don't hold what was written. */
export function cellsAmiss(done: StepDone): ReturnType<typeof writtenCells> {
  return writtenCells(done.step).filter(
    ({ row, column, cell }) => !holdsWritten(done.values[row]?.[column], valueToWrite(cell, done.dateSystem)),
  );
}
