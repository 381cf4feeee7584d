import { keyOf } from './identifier.ts';
import { identifierIn, keyWithin, namedKeys, type TableOf } from './identities.ts';
import { type Notice, notice } from './notice.ts';
import type { Records, Row, UnreadableIdentifiers } from './records.ts';
import { STUDIO_JOB } from './studio.ts';

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
  reference('counts', 'Lot', 'lots', (row) => row.lot),
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
  const known = new Map(
    [...new Set(REFERENCES.map(({ to }) => to))].map((to) => [to, namedKeys(records, to)]),
  );
  const notices: Notice[] = [];
  const takenBack = takenBackRows(records.movements);
  for (const { from, column, to, key, text } of REFERENCES) {
    for (const row of records[from]) {
      if (from === 'movements' && column === 'Entry' && takenBack.has(row)) continue;
      const named = key(row as never);
      if (named === null || (known.get(to)?.has(named) ?? false)) continue;
      const isUnreadable = unreadable[to]?.has(named) ?? false;
      if (isUnreadable && from === 'movements') continue;
      const name = text(row as never) ?? '';
      const message = isUnreadable
        ? `The row of ${name} in ${CALLED[to]} can't be read, and ${column} names it: mend that row first.`
        : `There is no ${name} in ${CALLED[to]}: add it there, or correct ${column} here.`;
      const subject = identifierIn(from, row);
      notices.push(notice('unknown-reference', subject, row, column, message));
    }
  }
  return notices;
}

/** The movements that were taken back, and those that took them back: their log entry may have been deleted since. */
function takenBackRows(movements: Records['movements']): ReadonlySet<Row> {
  const reversed = new Set(movements.flatMap(({ reverses }) => (reverses === null ? [] : [keyOf(reverses)])));
  return new Set(
    movements.filter(
      ({ movement, reverses }) => reverses !== null || (movement !== null && reversed.has(keyOf(movement))),
    ),
  );
}
