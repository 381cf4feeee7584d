import { isoDay } from '../core/day.ts';
import { exact } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { type Notice, notice } from '../core/notice.ts';
import type { Row } from '../core/records.ts';
import { type DateSystem, dayOfSerial, serialOfDay } from '../core/serial-date.ts';
import { isBlank, type PreparedCell, shown, text } from './cell.ts';
import { addressOf, type LocatedTable } from './located-table.ts';
import type { ColumnSnapshot, NumberLook } from './port.ts';
import {
  identifierColumn,
  type Preparation,
  type RecordOf,
  type TableDefinition,
} from './table-definition.ts';

/** What reading a table gave: its records, and of the rows that can't be read their identifiers. */
export interface TableReading<D extends TableDefinition> {
  readonly records: readonly RecordOf<D>[];
  readonly unreadableIdentifiers: ReadonlySet<string>;
  readonly notices: readonly Notice[];
}

const NOTHING_UNREADABLE: ReadonlySet<string> = new Set();
const PERCENT = 100;
/** A plain whole number between these in a column of dates is a year alone, not a day of the year 1905. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;

/**
 * Reads the rows of a table into checked records. Wholly blank rows are ignored.
 * A bad cell is a notice; a row with a bad cell in a starred column is left out, any other counts without that cell.
 */
export function readTable<D extends TableDefinition>(table: LocatedTable<D>): TableReading<D> {
  const { definition, snapshot, dateSystem } = table;
  const fields = Object.entries(definition.columns).map(([field, column]) => ({
    field,
    ...column,
    cells: table.columns.get(column.header)?.column,
  }));
  const records: RecordOf<D>[] = [];
  const unreadableIdentifiers = new Set<string>();
  const notices: Notice[] = [];
  for (let row = 0; row < snapshot.rowCount; row += 1) {
    if (isBlankRow(table, row)) continue;
    const place = { table: snapshot.name, row, sheetRow: snapshot.firstRow + row };
    const cells: Record<string, PreparedCell> = {};
    for (const { field, preparation, cells: column } of fields) {
      cells[field] = column === undefined ? null : prepare(column, row, preparation, dateSystem);
    }
    let reading = definition.schema.safeParse(cells);
    let unreadable = NOTHING_UNREADABLE;
    if (!reading.success) {
      const rowSoFar: Row = { place, unreadable };
      const bad = new Set<string>();
      const subject = identifierOf(fields, cells);
      for (const issue of reading.error.issues) {
        const field = fields.find((each) => each.field === issue.path[0]);
        if (field === undefined || bad.has(field.header)) continue;
        bad.add(field.header);
        const where = `${addressOf(table, row, field.header)} (${field.header})`;
        const what = `${where} holds ${shown(cells[field.field] ?? null)}: ${issue.message}.`;
        notices.push(notice('unreadable', subject, rowSoFar, field.header, what));
        if (!field.starred) cells[field.field] = null;
      }
      unreadable = bad;
      reading = definition.schema.safeParse(cells);
      if (!reading.success && subject !== null) unreadableIdentifiers.add(keyOf(subject));
    }
    if (reading.success) records.push({ ...(reading.data as object), place, unreadable } as RecordOf<D>);
  }
  return { records, unreadableIdentifiers, notices };
}

/** The keys of all identifiers that stand in a table which can't be read for want of a column. */
export function identifiersIn({
  definition,
  snapshot,
  columns,
  dateSystem,
}: LocatedTable): ReadonlySet<string> {
  const own = identifierColumn(definition);
  const cells = own === null ? undefined : columns.get(own.header)?.column;
  const found = new Set<string>();
  if (cells === undefined) return found;
  for (let row = 0; row < snapshot.rowCount; row += 1) {
    const value = text.safeParse(prepare(cells, row, 'text', dateSystem)).data ?? null;
    if (value !== null) found.add(keyOf(value));
  }
  return found;
}

function identifierOf(
  fields: readonly { readonly field: string; readonly identifier: boolean }[],
  cells: Readonly<Record<string, PreparedCell>>,
): string | null {
  const own = fields.find((field) => field.identifier);
  const value = own === undefined ? null : (cells[own.field] ?? null);
  return text.safeParse(value).data ?? null;
}

/** Whether nobody has put anything in a row: formulas alone don't count, unless they fill every starred column. */
function isBlankRow(table: LocatedTable, row: number): boolean {
  const typed = table.snapshot.columns.some(
    (column) => !column.hasFormula(row) && !isBlank(column.values[row] ?? null),
  );
  if (typed) return false;
  return Object.values(table.definition.columns).some(
    ({ starred, header }) => starred && isBlank(table.columns.get(header)?.column.values[row] ?? null),
  );
}

/** A cell's value as the schemas take it: a percentage × 100, a serial in the 1900 system, a date where it strayed. */
export function prepare(
  column: ColumnSnapshot,
  row: number,
  preparation: Preparation,
  system: DateSystem,
): PreparedCell {
  const value = column.values[row] ?? null;
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) return { shown: String(value) };
  const look = column.look(row);
  if (preparation === 'day') return prepareDay(value, look, system);
  if (look === 'date') {
    const day = dayOfSerial(value, system);
    return preparation === 'number' ? { strayDate: day } : day === null ? value : isoDay(day);
  }
  if (preparation !== 'number' || look !== 'percent') return value;
  const percentage = exact(value).mul(PERCENT).valueOf();
  return Number.isFinite(percentage) ? percentage : value;
}

/** A number in a column of dates. One that stands for no day becomes text, which is no day either. */
function prepareDay(value: number, look: NumberLook, system: DateSystem): PreparedCell {
  const isYear = look === 'plain' && Number.isInteger(value) && value >= FIRST_YEAR && value <= LAST_YEAR;
  const day = isYear ? null : dayOfSerial(value, system);
  return day === null ? String(value) : serialOfDay(day, 1900);
}
