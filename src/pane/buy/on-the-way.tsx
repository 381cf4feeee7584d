import { useMemo, useRef, useState } from 'preact/hooks';
import { spokenDay } from '../../core/day.ts';
import { type OpenOrder, openOrders } from '../../core/open-orders.ts';
import { nameOf } from '../../core/records.ts';
import { counted, spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { ordersTable } from '../../workbook/tables-trade.ts';
import { FOCUS_ROW } from '../focus.ts';
import { Button } from '../parts/button.tsx';
import { Heading } from '../parts/layout.tsx';
import { Prose } from '../parts/prose.tsx';
import { ShowInTab } from '../stock/show-in-tab.tsx';
import { ReceiveForm } from './receive-form.tsx';

/** The orders that are open, with what is still to come of each; what has come is taken in here. */
export function OnTheWay({ books }: { readonly books: Books }) {
  const { ledger, today } = books;
  const orders = useMemo(() => openOrders(ledger.studio, today), [ledger, today]);
  return (
    <section class="stack" aria-label="On the way">
      <Heading level={3}>On the way</Heading>
      {orders.length === 0 ? (
        <p class="muted">Nothing is on order.</p>
      ) : (
        <ul class="plan-list">
          {orders.map((open) => (
            <OnOrder key={nameOf(open.order.order, open.order)} open={open} books={books} />
          ))}
        </ul>
      )}
    </section>
  );
}

interface OnOrderProps {
  readonly open: OpenOrder;
  readonly books: Books;
}

function OnOrder({ open, books }: OnOrderProps) {
  const { order, toCome, expected, daysLate } = open;
  const [isReceiving, setReceiving] = useState(false);
  const row = useRef<HTMLLIElement>(null);
  const name = nameOf(order.order, order);
  const close = (): void => {
    setReceiving(false);
    requestAnimationFrame(() => row.current?.querySelector<HTMLElement>('.actions button')?.focus());
  };
  return (
    <li class="plan-item" ref={row} {...{ [FOCUS_ROW]: '' }}>
      <p>
        <span class="plan-name">{order.supplier}</span>
        <Prose text={`, order ${name} of ${spokenDay(order.orderedOn)}`} />
      </p>
      {daysLate > 0 && expected !== null ? (
        <p class="log-missing">{`${counted(daysLate, 'day')} late: expected on ${spokenDay(expected)}`}</p>
      ) : (
        <p class="muted">
          {expected === null ? 'Nobody knows when it will be here' : `Expected on ${spokenDay(expected)}`}
        </p>
      )}
      {toCome.length === 0 ? (
        <p>Nothing of it is still to come: write Received into its State.</p>
      ) : (
        <ul class="plain-list">
          {toCome.map(({ line: { record, material }, quantity }) => (
            <li
              key={record.place.sheetRow}
            >{`${spokenQuantity(quantity, material.unit)} of ${material.name}`}</li>
          ))}
        </ul>
      )}
      {isReceiving && books.readingOnly === null ? (
        <ReceiveForm books={books} open={open} onClose={close} />
      ) : (
        <div class="actions">
          {books.readingOnly === null && toCome.length > 0 && (
            <Button label={`Receive… order ${name}`} onPress={() => setReceiving(true)}>
              Receive…
            </Button>
          )}
          <ShowInTab books={books} row={order} header={ordersTable.columns.order.header} />
        </div>
      )}
    </li>
  );
}
