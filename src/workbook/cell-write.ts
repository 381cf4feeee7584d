import type { Day } from '../core/day.ts';
import { type Exact, quantityNumber } from '../core/exact-number.ts';
import { type Coins, type Currency, fromCoins } from '../core/money.ts';
import { type DateSystem, serialOfDay } from '../core/serial-date.ts';
import type { LocatedTable } from './located-table.ts';
import type { CellValue, CellWrite, Change } from './port.ts';

const BLANK: CellWrite = { kind: 'blank' };

/** A cell with text, or blank. */
export function textCell(text: string | null): CellWrite {
  return text === null ? BLANK : { kind: 'text', text };
}

/** A cell with a quantity of at most 6 decimals, or blank. */
export function quantityCell(quantity: Exact | null): CellWrite {
  return quantity === null ? BLANK : { kind: 'number', number: quantityNumber(quantity) };
}

/** A cell with a plain number. */
export function numberCell(number: number): CellWrite {
  return { kind: 'number', number };
}

/** A cell with an amount of money in the currency's main unit, or blank. */
export function moneyCell(coins: Coins | null, currency: Currency): CellWrite {
  return coins === null ? BLANK : { kind: 'number', number: fromCoins(coins, currency).valueOf() };
}

/** A cell with a calendar day, or blank. */
export function dayCell(day: Day | null): CellWrite {
  return day === null ? BLANK : { kind: 'day', day };
}

/** The cells of a new row by the record fields of its table; a column that the table lacks is left out. */
export type NewRow = Readonly<Record<string, CellWrite>>;

/** The change that appends rows to a table; cells are named by record field. Blank cells are not written. */
export function appendRows(table: LocatedTable, rows: readonly NewRow[]): Change[] {
  if (rows.length === 0) return [];
  return [
    {
      kind: 'append',
      table: table.snapshot.name,
      rows: rows.map((row) =>
        Object.fromEntries(
          Object.entries(row).flatMap(([field, cell]) => {
            const header = table.definition.columns[field]?.header;
            const column = header === undefined ? undefined : table.columns.get(header)?.column;
            return column === undefined || column.calculated || cell.kind === 'blank'
              ? []
              : [[column.header, cell]];
          }),
        ),
      ),
    },
  ];
}

/**
 * The change that sets a cell, if there is anything to change: a column that the table lacks, a formula of the
 * user's in the cell, or a cell that holds the value already give none.
 */
export function setCell(table: LocatedTable, row: number, header: string, cell: CellWrite): Change[] {
  const column = table.columns.get(header)?.column;
  if (column === undefined || column.hasFormula(row)) return [];
  if (holds(column.values[row] ?? null, cell, table.dateSystem)) return [];
  return [{ kind: 'set', table: table.snapshot.name, row, column: column.header, cell }];
}

function holds(value: CellValue, cell: CellWrite, dateSystem: DateSystem): boolean {
  switch (cell.kind) {
    case 'blank':
      return value === null;
    case 'text':
      return value === cell.text;
    case 'number':
      return value === cell.number;
    case 'day':
      return value === serialOfDay(cell.day, dateSystem);
  }
}
