import { holdsWritten, valueToWrite } from './cell-content.ts';
import { isFormula } from './cell-values.ts';
import { isBlankWrite } from './plan-writes.ts';
import { inTurn, roundTrips } from './round-trips.ts';
import { formatsToWrite, type StepDone, type StepToRun } from './run-trip.ts';
import type { RowAsFound } from './verify-basis.ts';
import type { WithWorkbook } from './with-workbook.ts';

/** What stands of a step whose carrying out was broken off, or is to be taken back. */
export interface Standing {
  readonly step: StepToRun;
  /** Of a step in the body: whole rows as they stand. */
  readonly rows: readonly RowAsFound[];
  /**
   * Of a step below the body: whether its rows stand, or only what came before them (rows put in, number formats);
   * null for nothing.
   */
  readonly added: 'rows' | 'blank rows' | 'formats' | null;
  /** The body row at which that begins. */
  readonly at: number;
  /** How many rows the body has. */
  readonly bodyRows: number;
}

interface TableNow {
  readonly rows: number;
}

/**
 * Looks which steps stand, wherever their rows are by now.
 * @param done the steps of which is known what they met and left
 */
export async function findStanding(
  withWorkbook: WithWorkbook,
  steps: readonly StepToRun[],
  done: ReadonlyMap<StepToRun['step'], StepDone>,
): Promise<Standing[]> {
  const tables = await withWorkbook(async (context) => {
    const bodies = new Map(
      steps.map(({ table }) => [
        table.id,
        context.workbook.tables.getItem(table.id).getDataBodyRange().load('rowCount'),
      ]),
    );
    await context.sync();
    return new Map([...bodies].map(([id, body]): [string, TableNow] => [id, { rows: body.rowCount }]));
  });
  const weighed = steps.map((step) => ({ step, bytes: step.step.bytes * 2 }));
  const found = await inTurn(roundTrips(weighed), (trip) =>
    withWorkbook(async (context) => {
      const queued = trip.map(({ step }) => queue(context, step, tables.get(step.table.id)?.rows ?? 0, done));
      await context.sync();
      return queued.map((collect) => collect());
    }),
  );
  return found.flat();
}

function queue(
  context: Excel.RequestContext,
  each: StepToRun,
  bodyRows: number,
  done: ReadonlyMap<StepToRun['step'], StepDone>,
): () => Standing {
  const { step, table } = each;
  const count = step.cells.length;
  const { rowCount, columns } = step.plan.table;
  const body = context.workbook.tables.getItem(table.id).getDataBodyRange();
  const isNew = step.place === 'below';
  const from = isNew ? rowCount : step.row;
  // Rows of others may have come before ours, and rows put in for other steps too.
  const rows = isNew ? Math.max(bodyRows - rowCount, 0) + step.plan.grown.length : count;
  const range = body.getCell(from, 0).getResizedRange(rows - 1, columns.length - 1);
  range.load('values,formulas,numberFormat');
  const used = isNew
    ? body
        .getRowsBelow(2 * step.plan.grown.length)
        .getUsedRangeOrNullObject(true)
        .load('rowIndex')
    : null;
  body.load('rowIndex,rowCount');
  return () => {
    const found = range.values.map((values, row) => ({
      values,
      formulas: range.formulas[row] ?? [],
      numberFormats: range.numberFormat[row] ?? [],
    }));
    if (!isNew) return { step: each, rows: found, added: null, at: step.row, bodyRows };
    const place = findRows(found, each, done.get(step)?.values);
    if (place !== null) return { step: each, rows: [], added: 'rows', at: rowCount + place, bodyRows };
    if (each.room === 'free') {
      const below = found.slice(bodyRows - rowCount, bodyRows - rowCount + count);
      const added = hasOurFormats(below, each) ? 'formats' : null;
      return { step: each, rows: [], added, at: bodyRows, bodyRows };
    }
    const free = used === null || used.isNullObject ? null : used.rowIndex - body.rowIndex - body.rowCount;
    const room = roomAt(each, bodyRows, free, found);
    return {
      step: each,
      rows: [],
      added: room === null ? null : 'blank rows',
      at: room ?? bodyRows,
      bodyRows,
    };
  };
}

/** Whether rows are blank, and have the formats that a step sets before it writes. */
function hasOurFormats(found: readonly RowAsFound[], { step, table }: StepToRun): boolean {
  const formats = formatsToWrite(step, table);
  const changes = formats.some((row) =>
    row.some((format, column) => format !== null && format !== table.formatsFree[column]),
  );
  return (
    changes &&
    formats.every((row, index) =>
      row.every((format, column) => {
        const now = found[index];
        return now?.values[column] === '' && (format === null || format === now.numberFormats[column]);
      }),
    )
  );
}

/** The first row from which on all rows of the step stand. */
function findRows(
  found: readonly RowAsFound[],
  { step, dateSystem }: StepToRun,
  written: StepDone['values'] | undefined,
): number | null {
  const says = step.cells.some((row) => row.some((cell) => cell !== undefined && !isBlankWrite(cell)));
  if (!says) return null;
  for (let from = 0; from + step.cells.length <= found.length; from++) {
    const all = step.cells.every((row, index) =>
      row.every((cell, column) => {
        if (cell === undefined) return true;
        const value = found[from + index]?.values[column];
        return holdsWritten(value, valueToWrite(cell, dateSystem)) || value === written?.[index]?.[column];
      }),
    );
    if (all) return from;
  }
  return null;
}

/** Where rows stand that were put in and not written; null where there are none. */
function roomAt(
  { step, table }: StepToRun,
  bodyRows: number,
  free: number | null,
  found: readonly RowAsFound[],
): number | null {
  const { rowCount } = step.plan.table;
  const rows = step.cells.length;
  if (table.hasTotals) {
    const at = bodyRows - rows;
    const last = found.slice(at - rowCount, bodyRows - rowCount);
    return at >= rowCount && last.length === rows && last.every(isBlankRow) ? at : null;
  }
  const before = table.freeBelow ?? 0;
  return free !== null && free >= before + rows ? bodyRows : null;
}

const isBlankRow = ({ values, formulas }: RowAsFound): boolean =>
  values.every((value, column) => value === '' || isFormula(formulas[column], value));

/**
 * The cells of a body row that hold what the step wrote, or have the number format that it set, by column; not those
 * that did so before.
 */
export function cellsStanding(
  { step, rows }: Standing,
  index: number,
  before: RowAsFound,
  written: StepDone['values'] | undefined,
): number[] {
  const { column: left, cells } = step.step;
  const now = rows[index];
  const formats = formatsToWrite(step.step, step.table)[index] ?? [];
  return (cells[index] ?? []).flatMap((cell, at) => {
    const column = left + at;
    if (cell === undefined || now === undefined) return [];
    const value = now.values[column];
    if (now.formulas[column] === before.formulas[column]) {
      const dressed =
        formats[at] === now.numberFormats[column] && formats[at] !== before.numberFormats[column];
      return dressed ? [column] : [];
    }
    const ours = holdsWritten(value, valueToWrite(cell, step.dateSystem));
    return ours || value === written?.[index]?.[at] ? [column] : [];
  });
}
