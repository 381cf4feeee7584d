import { signal } from '@preact/signals';
import { basketLines } from '../../actions/basket-lines.ts';
import { orderText } from '../../actions/order-text.ts';
import { type OrdersToPlace, placeOrder } from '../../actions/place-order.ts';
import type { BasketOrder } from '../../core/buying/basket.ts';
import { counted } from '../../core/wording.ts';
import type { Books, Done } from '../../session/session-state.ts';
import type { PaneSession } from '../pane-session.ts';
import { setByHand } from './basket-state.ts';
import { withoutOffers } from './by-hand.ts';

/** An order that was written down, with the text to send. */
export interface TextToSend {
  readonly order: string;
  readonly supplier: string;
  readonly text: string;
}

/** The texts of the orders that were placed here and have not been put away, the latest first. */
export const textsToSend = signal<readonly TextToSend[]>([]);

/** What of a basket goes to a supplier, as it was shown. */
export function orderToPlace({ ledger, today }: Books, order: BasketOrder): OrdersToPlace {
  const lines = order.lines.filter(({ packs }) => packs > 0);
  return {
    lines: basketLines(ledger.studio, [{ ...order, lines }]),
    expected: [{ supplier: order.supplier, day: order.expected }],
    orderedOn: today,
  };
}

/** Writes an order down, and makes the text to send. What was set by hand in it is done with. */
export async function orderIt(session: PaneSession, books: Books, order: BasketOrder): Promise<Done> {
  let texts: TextToSend[] = [];
  const request = orderToPlace(books, order);
  const done = await session.carryOut(
    'Ordering',
    (snapshot, today, random) => placeOrder(snapshot, request, today, random),
    ({ orders }) => {
      texts = orders.map((placed) => ({
        order: placed.order,
        supplier: placed.supplier.supplier ?? '',
        text: orderText(placed),
      }));
      const names = texts.map((each) => `order ${each.order} to ${each.supplier}`).join(', ');
      return `Written down: ${names}, ${counted(order.lines.length, 'line')}.`;
    },
  );
  if (done.kind === 'done') {
    textsToSend.value = [...texts, ...textsToSend.value];
    setByHand.value = withoutOffers(
      setByHand.value,
      order.lines.map(({ offer }) => offer),
    );
  }
  return done;
}

/** Puts the text of an order away. */
export function putAway(order: string): void {
  textsToSend.value = textsToSend.value.filter((each) => each.order !== order);
}
