import type { CellValue, TableSnapshot } from '../workbook/port.ts';
import { cellValue, formatAt, isFormula } from './cell-values.ts';
import type { TablePlan } from './plan-writes.ts';
import { inTurn, roundTrips, type Weighed } from './round-trips.ts';
import type { WithWorkbook } from './with-workbook.ts';

/** A body row as it stands, cell by cell. */
export interface RowAsFound {
  readonly values: readonly unknown[];
  readonly formulas: readonly unknown[];
  readonly numberFormats: readonly unknown[];
}

/** A table that is as the basis says, with what is needed to write to it and to take that back. */
export interface VerifiedTable {
  readonly plan: TablePlan;
  readonly id: string;
  readonly hasTotals: boolean;
  /** The body rows that are written, by their number. */
  readonly rows: ReadonlyMap<number, RowAsFound>;
  /** The number formats that a row below the body goes on with, by column. */
  readonly formatsBelow: readonly string[];
  /** The number formats of the row right below the body as it is, by column. */
  readonly formatsFree: readonly string[];
  /** How many rows below the body are free; null where as many as are needed. */
  readonly freeBelow: number | null;
}

export type Verification =
  | { readonly kind: 'as the basis'; readonly tables: readonly VerifiedTable[] }
  | { readonly kind: 'stale' }
  | { readonly kind: 'refused'; readonly message: string };

/** Consecutive rows of a body that are looked at again. */
interface RowsToCheck extends Weighed {
  readonly plan: TablePlan;
  readonly from: number;
  readonly count: number;
}

const BYTES_PER_CELL = 40;

/** Looks again at what the changes rely on: where the tables stand, and the rows that are written. */
export async function verifyBasis(
  withWorkbook: WithWorkbook,
  plans: readonly TablePlan[],
): Promise<Verification> {
  const rows = new Map(plans.map((plan) => [plan, new Map<number, RowAsFound>()]));
  const [first = [], ...others] = roundTrips(plans.flatMap(rowsToCheck));
  const tables = await withWorkbook(async (context) => {
    const { workbook } = context;
    workbook.load('readOnly');
    const tablesFound = plans.map((plan) => queueTable(context, plan));
    const rowsFound = first.map((each) => queueRows(context, each));
    await context.sync();
    if (workbook.readOnly) return READ_ONLY;
    const found = tablesFound.map((collect) => collect());
    if (!found.includes('stale')) keepRows(rows, first, rowsFound);
    return found;
  });
  if (typeof tables === 'string') return { kind: 'refused', message: tables };
  await inTurn(tables.includes('stale') ? [] : others, (trip) =>
    withWorkbook(async (context) => {
      const found = trip.map((each) => queueRows(context, each));
      await context.sync();
      keepRows(rows, trip, found);
    }),
  );
  const verified: VerifiedTable[] = [];
  for (const [index, plan] of plans.entries()) {
    const table = tables[index];
    const own = rows.get(plan) ?? new Map<number, RowAsFound>();
    if (table === undefined || table === 'stale' || !rowsHold(plan.table, own)) return { kind: 'stale' };
    if ('protectedTab' in table) {
      const message = `The tab ${table.protectedTab} is protected, so nothing can be written to it: lift its protection, and try again.`;
      return { kind: 'refused', message };
    }
    verified.push({ plan, rows: own, ...table });
  }
  return { kind: 'as the basis', tables: verified };
}

const READ_ONLY =
  'The workbook is open read-only, so nothing can be written to it: open it for editing, and try again.';

function rowsToCheck(plan: TablePlan): RowsToCheck[] {
  const found: RowsToCheck[] = [];
  for (const row of [...plan.body.keys()].toSorted((a, b) => a - b)) {
    const last = found.at(-1);
    const bytes = plan.table.columns.length * BYTES_PER_CELL;
    if (last !== undefined && last.from + last.count === row && last.bytes < 1_000_000) {
      found[found.length - 1] = { ...last, count: last.count + 1, bytes: last.bytes + bytes };
    } else found.push({ plan, from: row, count: 1, bytes });
  }
  return found;
}

function queueRows(context: Excel.RequestContext, { plan, from, count }: RowsToCheck): () => RowAsFound[] {
  const { name, columns } = plan.table;
  const body = context.workbook.tables.getItemOrNullObject(name).getDataBodyRange();
  const rows = body.getCell(from, 0).getResizedRange(count - 1, columns.length - 1);
  rows.load('values,formulas,numberFormat');
  return () =>
    rows.values.map((values, row) => ({
      values,
      formulas: rows.formulas[row] ?? [],
      numberFormats: rows.numberFormat[row] ?? [],
    }));
}

function keepRows(
  kept: ReadonlyMap<TablePlan, Map<number, RowAsFound>>,
  asked: readonly RowsToCheck[],
  found: readonly (() => RowAsFound[])[],
): void {
  asked.forEach(({ plan, from }, index) => {
    for (const [row, cells] of (found[index]?.() ?? []).entries()) kept.get(plan)?.set(from + row, cells);
  });
}

type TableFound = 'stale' | { readonly protectedTab: string } | Omit<VerifiedTable, 'plan' | 'rows'>;

function queueTable(context: Excel.RequestContext, { table: basis, grown }: TablePlan): () => TableFound {
  const table = context.workbook.tables.getItemOrNullObject(basis.name).load('id,name,showTotals');
  const { worksheet } = table;
  worksheet.load('name');
  worksheet.protection.load('protected');
  const body = table.getDataBodyRange().load('rowIndex,columnIndex,rowCount');
  const columns = table.columns.load('items/name');
  const lastRow = grown.length === 0 ? null : body.getLastRow().load('numberFormat');
  const below = grown.length === 0 ? null : body.getRowsBelow(1).load('numberFormat');
  const used =
    grown.length === 0
      ? null
      : body.getRowsBelow(grown.length).getUsedRangeOrNullObject(true).load('rowIndex');
  return () => {
    const stands =
      !table.isNullObject &&
      table.name === basis.name &&
      worksheet.name === basis.tab &&
      body.rowIndex === basis.firstRow - 1 &&
      body.columnIndex === basis.firstColumn - 1 &&
      body.rowCount === basis.rowCount &&
      columns.items.length === basis.columns.length &&
      columns.items.every(({ name }, index) => name === basis.columns[index]?.header);
    if (!stands) return 'stale';
    if (worksheet.protection.protected) return { protectedTab: basis.tab };
    const formatsOf = (row: Excel.Range | null): string[] =>
      basis.columns.map((_, index) => formatAt(row?.numberFormat[0], index));
    return {
      id: table.id,
      hasTotals: table.showTotals,
      formatsBelow: formatsOf(lastRow),
      formatsFree: formatsOf(below),
      freeBelow:
        used === null || used.isNullObject ? null : used.rowIndex - (basis.firstRow - 1) - basis.rowCount,
    };
  };
}

/** Whether rows hold what the basis says. What formulas give may have changed; that they are formulas, not. */
function rowsHold(basis: TableSnapshot, rows: ReadonlyMap<number, RowAsFound>): boolean {
  return [...rows].every(([row, { values, formulas, numberFormats }]) =>
    basis.columns.every((column, index) => {
      const hasFormula = isFormula(formulas[index], values[index]);
      if (hasFormula || column.hasFormula(row)) return hasFormula && column.hasFormula(row);
      const found = cellValue(values[index], false, numberFormats[index]);
      return isSameValue(found, column.values[row] ?? null);
    }),
  );
}

function isSameValue(a: CellValue, b: CellValue): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  return a.shown === b.shown;
}
