import type { OrderReceived, OrderToReceive } from '../../actions/order-to-receive.ts';
import { receiveOrder } from '../../actions/receive-order.ts';
import { nameOf } from '../../core/records.ts';
import { spokenQuantity } from '../../core/wording.ts';
import type { Done } from '../../session/session-state.ts';
import type { PaneSession } from '../pane-session.ts';

/** Takes in what came of an order: each part of it becomes a lot. */
export function receiveIt(session: PaneSession, request: OrderToReceive): Promise<Done> {
  return session.carryOut(
    'Receiving',
    (snapshot, today, random) => receiveOrder(snapshot, request, today, random),
    receivedSentence,
  );
}

/** What came in, as which lots, and what is still to come. */
export function receivedSentence({ order, lots, toCome }: OrderReceived): string {
  const came = lots.map(
    ({ lot }) =>
      `${spokenQuantity(lot.record.quantity, lot.record.unit)} of ${lot.material.name} as lot ${lot.name}`,
  );
  const rest = toCome.map(
    ({ line: { material }, quantity }) => `${spokenQuantity(quantity, material.unit)} of ${material.name}`,
  );
  const still = rest.length === 0 ? 'nothing more is to come' : `still to come: ${LIST.format(rest)}`;
  return `Received of order ${nameOf(order.order, order)}: ${LIST.format(came)}; ${still}.`;
}

const LIST = new Intl.ListFormat('en-GB');
