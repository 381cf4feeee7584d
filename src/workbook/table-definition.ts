import * as z from 'zod';
import type { Row } from '../core/records.ts';
import { type CellSchema, isBlank, type PreparedCell } from './cell.ts';

/** How the raw value of a cell is prepared before it is read. */
export type Preparation = 'text' | 'number' | 'day';

/** One column of a table: its header and what may stand in it. */
export interface Column<T> {
  readonly header: string;
  readonly preparation: Preparation;
  /** A table without this column is not read, nor a row with a bad cell here (a blank one, unless it identifies). */
  readonly starred: boolean;
  /** Written by the add-in and read by people. */
  readonly written: boolean;
  /** Names the row itself: a blank one is no fault and is filled at the next write. */
  readonly identifier: boolean;
  readonly schema: z.ZodType<T, PreparedCell>;
}

/** A column that may be absent or blank. */
export function optional<T>(
  header: string,
  preparation: Preparation,
  schema: CellSchema<T>,
): Column<T | null> {
  return { header, preparation, starred: false, written: false, identifier: false, schema };
}

/** A column that must be there and filled. */
export function starred<T>(header: string, preparation: Preparation, schema: CellSchema<T>): Column<T> {
  const filled = z.custom<PreparedCell>().transform((value, context): T => {
    if (isBlank(value)) {
      context.issues.push({ code: 'custom', message: 'this cell must be filled', input: value });
      return z.NEVER;
    }
    const read = schema.safeParse(value);
    if (read.success && read.data !== null) return read.data;
    for (const issue of read.error?.issues ?? []) {
      context.issues.push({ code: 'custom', message: issue.message, input: value });
    }
    return z.NEVER;
  });
  return { header, preparation, starred: true, written: false, identifier: false, schema: filled };
}

/** The column of a row's own identifier: it must be there, but a cell of it may be blank. */
export function identifier(
  header: string,
  schema: CellSchema<string>,
  isStarred = true,
): Column<string | null> {
  return { header, preparation: 'text', starred: isStarred, written: false, identifier: true, schema };
}

/** A column that the add-in writes; what stands there is read only where that is said. */
export function written<T>(
  header: string,
  preparation: Preparation,
  schema: CellSchema<T>,
): Column<T | null> {
  return { header, preparation, starred: false, written: true, identifier: false, schema };
}

// biome-ignore lint/suspicious/noExplicitAny: a table holds columns of every type; each keeps its own
export type Columns = Readonly<Record<string, Column<any>>>;

/** A table that Jarleaf knows: its name, the letter of its identifiers, and its columns by record field. */
export interface TableDefinition<C extends Columns = Columns> {
  readonly name: string;
  /** The first letter of identifiers made for its rows; null where rows have none that could be made. */
  readonly letter: string | null;
  readonly columns: C;
  /** Reads a row's prepared cells, keyed by record field. */
  readonly schema: z.ZodType<{ [K in keyof C]: z.output<C[K]['schema']> }>;
}

/** The column that holds the rows' own identifier, and the record field that it fills; null where rows have none. */
export function identifierColumn(
  definition: TableDefinition,
): { readonly field: string; readonly header: string } | null {
  const [field, column] = Object.entries(definition.columns).find(([, each]) => each.identifier) ?? [];
  return field === undefined || column === undefined ? null : { field, header: column.header };
}

/** The record that a row of the table becomes. */
export type RecordOf<D> =
  D extends TableDefinition<infer C> ? Row & { readonly [K in keyof C]: z.output<C[K]['schema']> } : never;

export function defineTable<const C extends Columns>(
  name: string,
  letter: string | null,
  columns: C,
): TableDefinition<C> {
  const shape = Object.fromEntries(Object.entries(columns).map(([key, column]) => [key, column.schema]));
  return { name, letter, columns, schema: z.object(shape) as unknown as TableDefinition<C>['schema'] };
}
