import { keyOf } from './identifier.ts';
import { type Notice, notice } from './notice.ts';
import type { Records, Row } from './records.ts';

/** Rows found by their identifier; the first of several with the same one serves references. */
export type Index<R> = ReadonlyMap<string, R>;

/** Indexes rows by an identifier; rows without one are left out. */
export function indexBy<R>(rows: readonly R[], identifierOf: (row: R) => string | null): Index<R> {
  const index = new Map<string, R>();
  for (const row of rows) {
    const identifier = identifierOf(row);
    if (identifier !== null && !index.has(keyOf(identifier))) index.set(keyOf(identifier), row);
  }
  return index;
}

/** The key of an identifier that holds only within another (an item of a job, a line of an order). */
export function keyWithin(outer: string, inner: string): string {
  return `${keyOf(outer)}\u0000${keyOf(inner)}`;
}

export type TableOf<K extends keyof Records> = Records[K][number];

/** Where a table's rows get their identifier, and how a message calls it. */
interface Identity<K extends keyof Records> {
  readonly column: string;
  readonly name: (row: TableOf<K>) => string | null;
  /** What the identifier is unique within, if not in all. */
  readonly within?: (row: TableOf<K>) => string;
  /** What notices call the row, where that isn't its name. */
  readonly subject?: (row: TableOf<K>) => string | null;
}

const IDENTITIES: { readonly [K in keyof Records]?: Identity<K> } = {
  materials: { column: 'Material', name: (row) => row.material },
  lots: { column: 'Lot', name: (row) => row.lot },
  movements: { column: 'Movement', name: (row) => row.movement },
  entries: { column: 'Entry', name: (row) => row.entry },
  treatments: { column: 'Treatment', name: (row) => row.treatment },
  recipes: { column: 'Recipe', name: (row) => row.recipe },
  jobs: { column: 'Job', name: (row) => row.job },
  items: { column: 'Item', name: (row) => row.item, within: (row) => row.job },
  plan: { column: 'Line', name: (row) => row.line },
  suppliers: { column: 'Supplier', name: (row) => row.supplier },
  orders: { column: 'Order', name: (row) => row.order },
  orderLines: { column: 'Line', name: (row) => row.line, within: (row) => row.order },
  quotes: {
    column: 'Version',
    name: (row) => String(row.version),
    within: (row) => row.quote ?? '',
    subject: (row) => row.quote,
  },
  quoteLines: {
    column: 'Line',
    name: (row) => row.line,
    within: (row) => `${row.quote}\u0000${row.version}`,
  },
  places: { column: 'Place', name: (row) => row.storage },
  offcuts: { column: 'Offcut', name: (row) => row.offcut },
  counts: { column: 'Count', name: (row) => row.count },
};

/** The identifier by which notices call a row, or null where its table has none or the cell is blank. */
export function identifierIn(table: keyof Records, row: Row): string | null {
  const identity = identityOf(table);
  return (identity?.subject ?? identity?.name)?.(row as never) ?? null;
}

/** How the rows of any table are identified, whatever their type. */
interface AnyIdentity {
  readonly column: string;
  readonly name: (row: never) => string | null;
  readonly subject?: (row: never) => string | null;
  readonly within?: (row: never) => string;
}

function identityOf(table: keyof Records): AnyIdentity | undefined {
  return IDENTITIES[table];
}

/** The keys of all rows of a table that can be named: by a quote's own name, not by its version. */
export function namedKeys(records: Records, table: keyof Records): ReadonlySet<string> {
  if (table === 'quotes')
    return new Set(records.quotes.flatMap(({ quote }) => (quote === null ? [] : [keyOf(quote)])));
  const identity = identityOf(table);
  const found = new Set<string>();
  for (const row of records[table]) {
    const name = identity?.name(row as never) ?? null;
    if (name === null) continue;
    const outer = identity?.within?.(row as never);
    found.add(outer === undefined ? keyOf(name) : keyWithin(outer, name));
  }
  return found;
}

/** Notices for identifiers that stand in two rows; the first of them serves references. */
export function duplicateNotices(records: Records): Notice[] {
  return (Object.keys(IDENTITIES) as (keyof Records)[]).flatMap((table) => duplicatesIn(records, table));
}

function duplicatesIn(records: Records, table: keyof Records): Notice[] {
  const identity = identityOf(table);
  if (identity === undefined) return [];
  const first = new Map<string, Row>();
  const notices: Notice[] = [];
  for (const row of records[table]) {
    const name = identity.name(row as never);
    if (name === null) continue;
    const key = keyWithin(identity.within?.(row as never) ?? '', name);
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, row);
    else {
      const message =
        `${identity.column} ${name} stands in two rows, first in row ${earlier.place.sheetRow} of ${earlier.place.table}. ` +
        (table === 'entries'
          ? 'Only the first can be drawn: give this row an identifier of its own.'
          : 'Both count, and whatever names it means the first: give this row an identifier of its own.');
      notices.push(notice('duplicate-id', identifierIn(table, row), row, identity.column, message));
    }
  }
  return notices;
}
