import { keyOf } from './identifier.ts';
import { type Notice, notice } from './notice.ts';
import type { Records, Row, UnreadableIdentifiers } from './records.ts';
import { STUDIO_JOB } from './studio.ts';

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

type TableOf<K extends keyof Records> = Records[K][number];

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
};

/** The identifier by which notices call a row, or null where its table has none or the cell is blank. */
export function identifierIn<K extends keyof Records>(table: K, row: TableOf<K>): string | null {
  const identity = IDENTITIES[table];
  return (identity?.subject ?? identity?.name)?.(row) ?? null;
}

/** Notices for identifiers that stand in two rows; the first of them serves references. */
export function duplicateNotices(records: Records): Notice[] {
  return (Object.keys(IDENTITIES) as (keyof Records)[]).flatMap((table) => duplicatesIn(records, table));
}

function duplicatesIn<K extends keyof Records>(records: Records, table: K): Notice[] {
  const identity = IDENTITIES[table];
  if (identity === undefined) return [];
  const first = new Map<string, Row>();
  const notices: Notice[] = [];
  for (const row of records[table] as readonly TableOf<K>[]) {
    const name = identity.name(row);
    if (name === null) continue;
    const key = keyWithin(identity.within?.(row) ?? '', name);
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, row);
    else {
      const message =
        `${identity.column} ${name} stands in two rows, first in row ${earlier.place.sheetRow} of ${earlier.place.table}. ` +
        `Both count, and whatever names it means the first: give this row an identifier of its own.`;
      notices.push(notice('duplicate-id', identifierIn(table, row), row, identity.column, message));
    }
  }
  return notices;
}

/** A column of one table that names a row of another. */
interface Reference {
  readonly from: keyof Records;
  readonly column: string;
  readonly to: keyof Records;
  /** The key of what is named; null where the cell is blank or needs no row. */
  readonly key: (row: never) => string | null;
  readonly text: (row: never) => string | null;
}

function reference<K extends keyof Records>(
  from: K,
  column: string,
  to: keyof Records,
  text: (row: TableOf<K>) => string | null,
  key: (row: TableOf<K>, text: string) => string | null = (_row, named) => keyOf(named),
): Reference {
  return {
    from,
    column,
    to,
    text,
    key: (row: TableOf<K>) => {
      const named = text(row);
      return named === null ? null : key(row, named);
    },
  };
}

function jobKey(_row: Row, named: string): string | null {
  return keyOf(named) === keyOf(STUDIO_JOB) ? null : keyOf(named);
}

/** An item is looked for within its job; without a job there is nothing to look in. */
function itemKey(row: { readonly job: string | null }, named: string): string | null {
  return row.job === null ? null : keyWithin(row.job, named);
}

function lineKey(row: { readonly order: string | null }, named: string): string | null {
  return row.order === null ? null : keyWithin(row.order, named);
}

const REFERENCES: readonly Reference[] = [
  reference('materials', 'Supplier', 'suppliers', (row) => row.supplier),
  reference('lots', 'Material', 'materials', (row) => row.material),
  reference('lots', 'Supplier', 'suppliers', (row) => row.supplier),
  reference('lots', 'Place', 'places', (row) => row.storedAt),
  reference('lots', 'Recipe', 'recipes', (row) => row.recipe),
  reference('lots', 'Order', 'orders', (row) => row.order),
  reference('lots', 'Order line', 'orderLines', (row) => row.orderLine, lineKey),
  reference('movements', 'Lot', 'lots', (row) => row.lot),
  reference('movements', 'Job', 'jobs', (row) => row.job, jobKey),
  reference('movements', 'Item', 'items', (row) => row.item, itemKey),
  reference('movements', 'Entry', 'entries', (row) => row.entry),
  reference('movements', 'Into', 'lots', (row) => row.into),
  reference('movements', 'Offcut', 'offcuts', (row) => row.offcut),
  reference('movements', 'Reverses', 'movements', (row) => row.reverses),
  reference('entries', 'Job', 'jobs', (row) => row.job, jobKey),
  reference('entries', 'Item', 'items', (row) => row.item, itemKey),
  reference('entries', 'Treatment', 'treatments', (row) => row.treatment),
  reference('usageRates', 'Treatment', 'treatments', (row) => row.treatment),
  reference('usageRates', 'Material', 'materials', (row) => row.material),
  reference('recipes', 'Makes', 'materials', (row) => row.makes),
  reference('recipeParts', 'Recipe', 'recipes', (row) => row.recipe),
  reference('recipeParts', 'Material', 'materials', (row) => row.material),
  reference('jobs', 'Place', 'places', (row) => row.storedAt),
  reference('items', 'Job', 'jobs', (row) => row.job, jobKey),
  reference('plan', 'Job', 'jobs', (row) => row.job, jobKey),
  reference('plan', 'Item', 'items', (row) => row.item, itemKey),
  reference('plan', 'Treatment', 'treatments', (row) => row.treatment),
  reference('removed', 'Job', 'jobs', (row) => row.job, jobKey),
  reference('removed', 'Item', 'items', (row) => row.item, itemKey),
  reference('offers', 'Supplier', 'suppliers', (row) => row.supplier),
  reference('offers', 'Material', 'materials', (row) => row.material),
  reference('orders', 'Supplier', 'suppliers', (row) => row.supplier),
  reference('orderLines', 'Order', 'orders', (row) => row.order),
  reference('orderLines', 'Material', 'materials', (row) => row.material),
  reference('quotes', 'Job', 'jobs', (row) => row.job, jobKey),
  reference('quoteLines', 'Quote', 'quotes', (row) => row.quote),
  reference('quoteLines', 'Material', 'materials', (row) => row.material),
  reference('quoteLines', 'Treatment', 'treatments', (row) => row.treatment),
  reference('offcuts', 'Lot', 'lots', (row) => row.lot),
];

/** How a message calls a row of each table. */
const CALLED: Readonly<Partial<Record<keyof Records, string>>> = {
  materials: 'Materials',
  lots: 'the stock tables',
  movements: 'Movements',
  entries: 'TreatmentLog',
  treatments: 'Treatments',
  recipes: 'Recipes',
  jobs: 'Jobs',
  items: 'Items (for that job)',
  suppliers: 'Suppliers',
  orders: 'Orders',
  orderLines: 'OrderLines (for that order)',
  quotes: 'Quotes',
  places: 'Places',
  offcuts: 'Offcuts',
};

/**
 * Notices for names that no row bears. A name whose row is there but can't be read is told apart, and
 * a movement on such a lot isn't noticed a second time.
 */
export function referenceNotices(records: Records, unreadable: UnreadableIdentifiers): Notice[] {
  const bearers = new Map<keyof Records, ReadonlySet<string>>();
  const bearersIn = <K extends keyof Records>(table: K): ReadonlySet<string> => {
    let keys = bearers.get(table);
    if (keys === undefined) {
      const identity =
        table === 'quotes' ? { name: (row: TableOf<'quotes'>) => row.quote } : IDENTITIES[table];
      const found = new Set<string>();
      for (const row of records[table] as readonly TableOf<K>[]) {
        const name = (identity as Identity<K> | undefined)?.name(row) ?? null;
        if (name === null) continue;
        const outer = (identity as Identity<K>).within?.(row);
        found.add(outer === undefined ? keyOf(name) : keyWithin(outer, name));
      }
      keys = found;
      bearers.set(table, keys);
    }
    return keys;
  };
  const notices: Notice[] = [];
  for (const { from, column, to, key, text } of REFERENCES) {
    const known = bearersIn(to);
    for (const row of records[from]) {
      const named = key(row as never);
      if (named === null || known.has(named)) continue;
      const isUnreadable = unreadable[to]?.has(named) ?? false;
      if (isUnreadable && from === 'movements') continue;
      const name = text(row as never) ?? '';
      const message = isUnreadable
        ? `${column} names ${name}, whose own row in ${CALLED[to]} can't be read: mend that row first.`
        : `${column} names ${name}, which no row of ${CALLED[to]} bears: add it there, or correct the name here.`;
      const subject = identifierIn(from, row as never);
      notices.push(notice('unknown-reference', subject, row, column, message));
    }
  }
  return notices;
}
