import type { Day } from './day.ts';
import { keyOf } from './identifier.ts';
import { stillToCome } from './on-order.ts';
import type { OrderRecord } from './records.ts';
import type { Studio } from './studio.ts';

/** What the program writes into the State of an order; a person may write other words, such as Cancelled. */
export const ORDER_STATES = ['Ordered', 'Part received', 'Received'] as const;
export type OrderState = (typeof ORDER_STATES)[number];

/** The State that an order has by what has come of it up to a day. */
export function stateByArrivals(studio: Studio, order: OrderRecord, today: Day): OrderState {
  const lines = studio.orderLines.filter((line) => line.order === order);
  if (stillToCome(studio, lines, today).length === 0) return 'Received';
  const hasArrivals = [...studio.lotsOfMaterial.values()]
    .flat()
    .some(
      ({ record }) =>
        record.order !== null && order.order !== null && keyOf(record.order) === keyOf(order.order),
    );
  return hasArrivals ? 'Part received' : 'Ordered';
}
