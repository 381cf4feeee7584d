import { type Day, parseDay } from '../../src/core/day.ts';
import { type DateSystem, serialOfDay } from '../../src/core/serial-date.ts';
import { RECORD_TABLES, SETTINGS_TABLE } from '../../src/workbook/known-tables.ts';
import type { CellValue, NumberLook } from '../../src/workbook/port.ts';
import type { Column, TableDefinition } from '../../src/workbook/table-definition.ts';
import { stockTable } from '../../src/workbook/tables-stock.ts';

/** Workbooks written down tersely: tables by name, their rows by header. */

/** A cell of which more than the plain value is said. */
export interface SpecialCell {
  readonly value: CellValue | { readonly day: Day };
  readonly look?: NumberLook;
  readonly formula?: boolean;
}

export type LiteralCell = null | string | number | boolean | SpecialCell;
export type LiteralRow = Readonly<Record<string, LiteralCell>>;

export interface LiteralTable {
  readonly rows: readonly LiteralRow[];
  /** The headers, in this order; without them those of the definition, then what else the rows name. */
  readonly headers?: readonly string[];
  /** Headers of the definition that the table lacks. */
  readonly without?: readonly string[];
  /** Formulas of whole columns, without the equals sign, by header. */
  readonly formulas?: Readonly<Record<string, string>>;
  /** The name of its tab, if not that of the table. */
  readonly tab?: string;
  readonly firstRow?: number;
  /** What stands right below the table without belonging to it. */
  readonly below?: LiteralRow;
  readonly firstColumn?: number;
}

export type Literal = Readonly<Record<string, readonly LiteralRow[] | LiteralTable>>;

export function tableOf(literal: readonly LiteralRow[] | LiteralTable): LiteralTable {
  return 'rows' in literal ? literal : { rows: literal };
}

/** A day, by its ISO text. */
export function dayOf(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
}

/** A real date in a cell. */
export function date(text: string): SpecialCell {
  return { value: { day: dayOf(text) }, look: 'date' };
}

/** A number shown as a percentage: percent(20) is 0.2 that looks like 20 %. */
export function percent(value: number): SpecialCell {
  return { value: value / 100, look: 'percent' };
}

/** An error value, or (written with an equals sign) a formula without a result. */
export function problem(shown: string): SpecialCell {
  return { value: { shown }, formula: shown.startsWith('=') };
}

/** A cell with a formula of the user's and its result. */
export function formula(value: CellValue): SpecialCell {
  return { value, formula: true };
}

const DEFINITIONS: ReadonlyMap<string, TableDefinition> = new Map(
  [...Object.values(RECORD_TABLES), SETTINGS_TABLE].map((each) => [
    each.name.toLowerCase(),
    each as TableDefinition,
  ]),
);

/** What Jarleaf knows of a table of this name; any name that isn't its own is taken for a stock table. */
export function definitionOf(name: string): TableDefinition {
  return DEFINITIONS.get(name.toLowerCase()) ?? (stockTable(name) as TableDefinition);
}

export function columnsOf(name: string): readonly Column<unknown>[] {
  return Object.values(definitionOf(name).columns);
}

/** The headers of a literal table. */
export function headersOf(name: string, table: LiteralTable): string[] {
  const own = table.headers ?? columnsOf(name).map(({ header }) => header);
  const others = table.headers === undefined ? table.rows.flatMap((row) => Object.keys(row)) : [];
  return [...new Set([...own, ...others])].filter((header) => !table.without?.includes(header));
}

/** The value of a cell as a file of the date system holds it. */
export function storedValue(cell: LiteralCell | undefined, system: DateSystem): CellValue {
  if (cell === undefined || cell === null || typeof cell !== 'object') return cell ?? null;
  const { value } = cell;
  return value !== null && typeof value === 'object' && 'day' in value
    ? serialOfDay(value.day, system)
    : value;
}
