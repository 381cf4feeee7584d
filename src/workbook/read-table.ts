import { isoDay } from '../core/day.ts';
import { exact } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { type Notice, notice } from '../core/notice.ts';
import type { Row } from '../core/records.ts';
import { type DateSystem, dayOfSerial, serialOfDay } from '../core/serial-date.ts';
import { isBlank, type PreparedCell, shown } from './cell.ts';
import { addressOf, type LocatedTable } from './located-table.ts';
import type { ColumnSnapshot } from './port.ts';
import type { Preparation, RecordOf, TableDefinition } from './table-definition.ts';

/** What reading a table gave: its records, and of the rows that can't be read their identifiers. */
export interface TableReading<D extends TableDefinition> {
  readonly records: readonly RecordOf<D>[];
  readonly unreadableIdentifiers: ReadonlySet<string>;
  readonly notices: readonly Notice[];
}

const NOTHING_UNREADABLE: ReadonlySet<string> = new Set();
const PERCENT = 100;

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

function identifierOf(
  fields: readonly { readonly field: string; readonly identifier: boolean }[],
  cells: Readonly<Record<string, PreparedCell>>,
): string | null {
  const own = fields.find((field) => field.identifier);
  const value = own === undefined ? null : (cells[own.field] ?? null);
  return isBlank(value) || typeof value === 'object' ? null : String(value).trim();
}

/** Whether nobody has put anything in a row: formulas alone don't count, unless they fill every starred column. */
function isBlankRow(table: LocatedTable, row: number): boolean {
  const typed = table.snapshot.columns.some(
    (column) => !column.hasFormula(row) && !isBlank(column.values[row] ?? null),
  );
  if (typed) return false;
  return Object.values(table.definition.columns).some(
    ({ starred, header }) =>
      starred && isBlank(table.columns.get(header)?.column.values[row] ?? null),
  );
}

/** A cell's value as the schemas take it: a percentage × 100, a serial in the 1900 system, a date where it strayed. */
function prepare(column: ColumnSnapshot, row: number, preparation: Preparation, system: DateSystem): PreparedCell {
  const value = column.values[row] ?? null;
  if (typeof value !== 'number') return value;
  if (preparation === 'day' && system === 1900) return value;
  const look = column.look(row);
  if (preparation === 'day' || look === 'date') {
    const day = dayOfSerial(value, system);
    if (preparation === 'day') return day === null ? value : serialOfDay(day, 1900);
    if (day === null) return value;
    return preparation === 'number' ? { strayDate: day } : isoDay(day);
  }
  return preparation === 'number' && look === 'percent' ? exact(value).mul(PERCENT).valueOf() : value;
}
