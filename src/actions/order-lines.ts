import type { Day } from '../core/day.ts';
import { keyOf } from '../core/identifier.ts';
import { isOpenOrder, stillToCome } from '../core/on-order.ts';
import { type OrderState, stateByArrivals } from '../core/order-state.ts';
import { nameOf, type OrderRecord } from '../core/records.ts';
import type { Material, OrderLine, Studio } from '../core/studio.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import type { Tables } from '../workbook/written-cells.ts';
import { booksOf } from './books.ts';
import { noSuchName } from './nearest-name.ts';
import { tableForLot } from './new-lot.ts';
import type { LineReceived } from './order-to-receive.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** The order that a person names. */
export function findOrder({ ordersByKey, orders }: Studio, name: string): OrderRecord | Refusal {
  const names = orders.map((each) => each.order ?? '');
  return ordersByKey.get(keyOf(name)) ?? noSuchName('order', name, 'Orders', names);
}

/** The lines of an order, in the order of their rows. */
export function linesOf({ orderLines }: Studio, order: OrderRecord): OrderLine[] {
  return orderLines.filter((line) => line.order === order);
}

/** How a line is called: by its identifier, or by its sheet row number where it has none. */
export function lineName({ record }: OrderLine): string {
  return nameOf(record.line, record);
}

/** The line of an order that a person names, by its identifier or by its material. */
export function findOrderLine(
  tables: Tables,
  studio: Studio,
  order: OrderRecord,
  name: string,
): OrderLine | Refusal {
  const lines = linesOf(studio, order);
  const own = lines.find(({ record }) => record.line !== null && keyOf(record.line) === keyOf(name));
  if (own !== undefined) return own;
  const [first, ...others] = lines.filter(({ material }) => keyOf(material.name) === keyOf(name));
  const orderName = nameOf(order.order, order);
  if (first === undefined) {
    const leftOut = lineRowsLeftOut(tables, studio, order);
    if (leftOut.length > 0)
      return refuse(
        `There is no line ${name} in order ${orderName} that can be worked out. ${mendFirst(leftOut)}`,
      );
    const names = lines.flatMap((line) => [lineName(line), line.material.name]);
    return noSuchName('line', name, `order ${orderName}`, names);
  }
  if (others.length === 0) return first;
  const list = new Intl.ListFormat('en-GB').format([first, ...others].map(lineName));
  return refuse(`Order ${orderName} has several lines for ${first.material.name}: name one of ${list}.`);
}

/** The sheet rows of OrderLines that belong to an order and can't be worked out; check says why. */
export function lineRowsLeftOut(tables: Tables, studio: Studio, order: OrderRecord): number[] {
  const table = tables.get('orderlines');
  const cells = table?.columns.get('Order')?.column.values ?? [];
  const known = new Set(linesOf(studio, order).map(({ record }) => record.place.row));
  const name = keyOf(order.order ?? '');
  return cells.flatMap((cell, row) =>
    typeof cell !== 'object' && keyOf(String(cell)) === name && !known.has(row)
      ? [(table?.snapshot.firstRow ?? 0) + row]
      : [],
  );
}

/**
 * The State that an order has by what has come of it up to a day: never Received while one of its lines can't be
 * worked out.
 */
export function stateByItsLots(tables: Tables, studio: Studio, order: OrderRecord, today: Day): OrderState {
  const state = stateByArrivals(studio, order, today);
  const isDoubtful = state === 'Received' && lineRowsLeftOut(tables, studio, order).length > 0;
  return isDoubtful ? 'Part received' : state;
}

/** What to say of rows of OrderLines that can't be worked out. */
export function mendFirst(rows: readonly number[]): string {
  return `What these rows of OrderLines say can’t be worked out: ${rows.join(', ')}. See check, and mend them first.`;
}

/** The table for the lots of a material that come of an order; it must have a column to say of which. */
export function tableForReceipt(
  desk: { readonly tables: Tables },
  material: Material,
): LocatedTable | Refusal {
  const table = tableForLot(desk, material);
  if ('ok' in table) return table;
  const order = table.columns.get('Order')?.column;
  if (order !== undefined && !order.calculated) return table;
  const { name } = table.snapshot;
  return refuse(
    order === undefined
      ? `The table ${name} has no column Order, without which what has come would still be on order: add the column Order to the table.`
      : `A formula fills the column Order of the table ${name}, which must be written: delete the formula from that column.`,
  );
}

/** All that is still to come of an order, as lines to receive, and what of it can't be received, with the reason. */
export interface RestOfOrder {
  readonly ok: true;
  readonly order: OrderRecord;
  readonly lines: readonly LineReceived[];
  readonly leftOut: readonly { readonly material: string | null; readonly why: string }[];
}

/**
 * Everything that is still to come of an order. Refused where there is no such order, or nothing of it is to come.
 */
export function restOfOrder(snapshot: WorkbookSnapshot, name: string, today: Day): RestOfOrder | Refusal {
  const { reading, ledger } = booksOf(snapshot);
  const { studio } = ledger;
  const order = findOrder(studio, name);
  if ('ok' in order) return order;
  const orderName = nameOf(order.order, order);
  if (!isOpenOrder(order)) {
    return refuse(`Nothing is still to come of order ${orderName}: its State is ${order.state ?? ''}.`);
  }
  const toCome = stillToCome(studio, linesOf(studio, order), today);
  const unread = lineRowsLeftOut(reading.tables, studio, order);
  if (toCome.length === 0) {
    const why = unread.length === 0 ? '' : ` ${mendFirst(unread)}`;
    return refuse(`Nothing is still to come of order ${orderName}.${why}`);
  }
  const bare = {
    amount: 'all to come',
    supplierLot: null,
    useBy: null,
    storedAt: null,
    goods: null,
  } as const;
  const lines: LineReceived[] = [];
  const leftOut: { readonly material: string | null; readonly why: string }[] = [];
  for (const { line } of toCome) {
    const table = tableForReceipt(reading, line.material);
    if ('ok' in table) leftOut.push({ material: line.material.name, why: table.message });
    else lines.push({ ...bare, line: line.record.line ?? line.material.name });
  }
  if (unread.length > 0) leftOut.push({ material: null, why: mendFirst(unread) });
  const [obstacle] = leftOut;
  if (lines.length === 0 && obstacle !== undefined) return refuse(obstacle.why);
  return { ok: true, order, lines, leftOut };
}
