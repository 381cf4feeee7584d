import { useMemo, useRef, useState } from 'preact/hooks';
import { spokenDay } from '../../core/day.ts';
import type { Expected } from '../../core/on-order.ts';
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
import { CancelOrder } from './cancel-order.tsx';
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
  const [form, setForm] = useState<'receive' | 'cancel' | null>(null);
  const row = useRef<HTMLLIElement>(null);
  const mayWrite = books.readingOnly === null;
  const name = nameOf(order.order, order);
  const close = (): void => {
    setForm(null);
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
          {toCome.map((each) => (
            <li key={each.line.record.place.sheetRow}>{quantityToCome(each)}</li>
          ))}
        </ul>
      )}
      {form === 'receive' && mayWrite ? (
        <ReceiveForm books={books} open={open} onClose={close} />
      ) : form === 'cancel' && mayWrite ? (
        <CancelOrder
          order={name}
          supplier={order.supplier}
          toCome={LIST.format(toCome.map(quantityToCome))}
          onClose={close}
        />
      ) : (
        <div class="actions">
          {mayWrite && toCome.length > 0 && (
            <Button label={`Receive… order ${name}`} onPress={() => setForm('receive')}>
              Receive…
            </Button>
          )}
          {mayWrite && order.order !== null && (
            <Button look="quiet" label={`Cancel… order ${name}`} onPress={() => setForm('cancel')}>
              Cancel…
            </Button>
          )}
          <ShowInTab books={books} row={order} header={ordersTable.columns.order.header} />
        </div>
      )}
    </li>
  );
}

const LIST = new Intl.ListFormat('en-GB');

/** 10 sheets of kozo tissue */
function quantityToCome({ line: { material }, quantity }: Expected): string {
  return `${spokenQuantity(quantity, material.unit)} of ${material.name}`;
}
