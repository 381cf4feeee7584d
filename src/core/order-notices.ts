import { type Day, spokenDay } from './day.ts';
import { type Notice, notice } from './notice.ts';
import type { Expected } from './on-order.ts';
import { type OpenOrder, openOrders } from './open-orders.ts';
import { nameOf } from './records.ts';
import type { Studio } from './studio.ts';
import { counted, spokenQuantity } from './wording.ts';

/** The notices about orders on a day: which should have been delivered by now, and what is still to come of them. */
export function orderNotices(studio: Studio, today: Day): Notice[] {
  return openOrders(studio, today).flatMap((open) => (open.daysLate > 0 ? [overdue(open, today)] : []));
}

function overdue({ order, toCome, expected, daysLate }: OpenOrder, today: Day): Notice {
  const late = toCome.filter(({ day }) => day !== null && day < today);
  const due = spokenDay(expected ?? today);
  const when =
    order.expected === null
      ? `, ordered from ${order.supplier} on ${spokenDay(order.orderedOn)}, should have been here by ${due} by the lead time`
      : ` of ${order.supplier} was expected on ${due}`;
  const message = `Order ${nameOf(order.order, order)}${when}, ${counted(daysLate, 'day')} ago; still to come: ${spokenToCome(late)}.`;
  return notice('order-overdue', order.order, order, 'Expected', message);
}

/** What is still to come, for people: 10 sheets of kozo tissue and 500 g of gelatine. */
function spokenToCome(toCome: readonly Expected[]): string {
  return new Intl.ListFormat('en-GB').format(
    toCome.map(
      ({ line: { material }, quantity }) => `${spokenQuantity(quantity, material.unit)} of ${material.name}`,
    ),
  );
}
