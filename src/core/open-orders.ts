import type { Day } from './day.ts';
import { groupBy } from './group-by.ts';
import { type Expected, isOpenOrder, stillToCome } from './on-order.ts';
import type { OrderRecord } from './records.ts';
import type { Studio } from './studio.ts';

/** An order whose State says that it is still open. */
export interface OpenOrder {
  readonly order: OrderRecord;
  /** Its lines of which something is still to come. */
  readonly toCome: readonly Expected[];
  /** The earliest day on which any of that should be here; null where nobody knows. */
  readonly expected: Day | null;
  /** How many days ago that was; 0 where it is today, to come, or not known. */
  readonly daysLate: number;
}

/** The orders that were placed by a day and are open, those expected first in front, those without a day last. */
export function openOrders(studio: Studio, today: Day): OpenOrder[] {
  const linesOf = groupBy(studio.orderLines, (line) => line.order);
  return studio.orders
    .filter((order) => isOpenOrder(order) && order.orderedOn <= today)
    .map((order): OpenOrder => {
      const toCome = stillToCome(studio, linesOf.get(order) ?? [], today);
      const days = toCome.flatMap(({ day }) => day ?? []);
      const expected = days.length === 0 ? null : (Math.min(...days) as Day);
      const daysLate = expected === null ? 0 : Math.max(today - expected, 0);
      return { order, toCome, expected, daysLate };
    })
    .toSorted((a, b) => (a.expected ?? Infinity) - (b.expected ?? Infinity) || 0);
}
