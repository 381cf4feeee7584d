import type { CellWrite } from '../workbook/port.ts';
import type { PlannedRow, TablePlan } from './plan-writes.ts';
import { bytesOf, ROUND_TRIP_BYTES, type Weighed } from './round-trips.ts';

/** One range that is written at once: some cells of consecutive rows of one table. */
export interface WriteStep extends Weighed {
  readonly plan: TablePlan;
  /** Rows of the body, or rows that the body grows by. */
  readonly place: 'body' | 'below';
  /** The first row: of the body, or of the rows that it grows by, counted from 0. */
  readonly row: number;
  /** The first column, counted from 0. */
  readonly column: number;
  readonly cells: readonly PlannedRow[];
}

/**
 * A cell goes out as its number format and its value, and comes back as what stood there (value, formula, number
 * format) and what stands there now (value and number format).
 */
const CELL_BYTES = 44;
/** The calls around a range's cells. */
const CALL_BYTES = 1500;

function bytesOfRow(row: PlannedRow): number {
  return row.reduce((sum, cell) => sum + CELL_BYTES + (cell?.kind === 'text' ? bytesOf(cell.text) : 0), 0);
}

/**
 * The ranges to be written, in an order in which what is half done can be found and finished: rows appended, table
 * by table in the order of the changes, and only then cells of rows that were there before.
 */
export function writeSteps(plans: readonly TablePlan[], limit = ROUND_TRIP_BYTES): WriteStep[] {
  const steps = plans.flatMap((plan) => [
    ...bodySteps(plan, (row) => plan.filled.has(row)),
    ...(plan.grown.length === 0 ? [] : [step(plan, 'below', 0, 0, plan.grown)]),
  ]);
  const sets = plans.flatMap((plan) => bodySteps(plan, (row) => !plan.filled.has(row)));
  return [...steps, ...sets].flatMap((each) => split(each, limit));
}

/** Joins consecutive rows of the body that are written in the same columns. */
function bodySteps(plan: TablePlan, isMeant: (row: number) => boolean): WriteStep[] {
  const found: { row: number; from: number; to: number; cells: PlannedRow[] }[] = [];
  for (const row of [...plan.body.keys()].filter(isMeant).toSorted((a, b) => a - b)) {
    const cells = plan.body.get(row) ?? [];
    const from = cells.findIndex((cell) => cell !== undefined);
    const to = cells.findLastIndex((cell) => cell !== undefined);
    if (from < 0) continue;
    const last = found.at(-1);
    if (last !== undefined && last.row + last.cells.length === row && last.from === from && last.to === to) {
      last.cells.push(cells.slice(from, to + 1));
    } else found.push({ row, from, to, cells: [cells.slice(from, to + 1)] });
  }
  return found.map(({ row, from, cells }) => step(plan, 'body', row, from, cells));
}

function step(
  plan: TablePlan,
  place: WriteStep['place'],
  row: number,
  column: number,
  cells: readonly PlannedRow[],
): WriteStep {
  // Of a body row everything comes back, to see that it is still the row that is meant.
  const around = place === 'body' ? plan.table.columns.length * CELL_BYTES : 0;
  const bytes = cells.reduce((sum, each) => sum + bytesOfRow(each) + around, CALL_BYTES);
  return { plan, place, row, column, cells, bytes };
}

function split(whole: WriteStep, limit: number): WriteStep[] {
  if (whole.bytes <= limit || whole.cells.length < 2) return [whole];
  const middle = Math.ceil(whole.cells.length / 2);
  const { plan, place, row, column, cells } = whole;
  return [
    ...split(step(plan, place, row, column, cells.slice(0, middle)), limit),
    ...split(step(plan, place, row + middle, column, cells.slice(middle)), limit),
  ];
}

/**
 * The round trips in which the steps are carried out; a table grows once in each, so that the next rows go below
 * those before them.
 */
export function writeTrips(steps: readonly WriteStep[], limit = ROUND_TRIP_BYTES): WriteStep[][] {
  const trips: WriteStep[][] = [];
  let weight = 0;
  for (const each of steps) {
    const last = trips.at(-1);
    const grownThere =
      each.place === 'below' && last?.some(({ plan, place }) => plan === each.plan && place === 'below');
    if (last !== undefined && weight + each.bytes <= limit && !grownThere) {
      last.push(each);
      weight += each.bytes;
    } else {
      trips.push([each]);
      weight = each.bytes;
    }
  }
  return trips;
}

/** The cells of a step that are written, with their place in its range. */
export function writtenCells(
  each: WriteStep,
): { readonly row: number; readonly column: number; readonly cell: CellWrite }[] {
  return each.cells.flatMap((cells, row) =>
    cells.flatMap((cell, column) => (cell === undefined ? [] : [{ row, column, cell }])),
  );
}
