import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { cancelOrder } from '../../src/actions/cancel-order.ts';
import { receiveOrder } from '../../src/actions/receive-order.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import { openOrders } from '../../src/core/open-orders.ts';
import { stockOn } from '../../src/core/stock.ts';
import { Desk } from '../helpers/desk.ts';
import { date, formula, type Literal } from '../helpers/literal.ts';
import { came, delivery, ORDERING, TODAY } from './helpers/order-bench.ts';

const line = (number: string, material: string, packs: number, quantity: number, unit: string) => ({
  Order: 'O-1',
  Line: number,
  Material: material,
  Packs: packs,
  'Pack quantity': quantity,
  Unit: unit,
});
const ORDER = { Order: 'O-1', Supplier: 'Paper mill', 'Ordered on': date('2026-03-10'), State: 'Ordered' };
const ON_ITS_WAY = {
  ...ORDERING,
  Orders: [ORDER],
  OrderLines: [line('1', 'Tissue 5', 4, 10, 'sheet'), line('2', 'Gelatine', 2, 50, 'g')],
} satisfies Literal;

const cancel = (desk: Desk, name = 'O-1') =>
  desk.try((snapshot, random) => cancelOrder(snapshot, name, TODAY, random));

const stateOf = (desk: Desk): string | null => booksOf(desk.snapshot).ledger.studio.orders[0]?.state ?? null;

function onOrder(desk: Desk): number[] {
  const { materials } = stockOn(desk.ledger, TODAY);
  return materials.slice(0, 2).map((each) => quantityNumber(each.onOrder));
}

describe('an order of which nothing more will come', () => {
  test('is not on order any more; nothing else changes', () => {
    const desk = new Desk(ON_ITS_WAY);
    const before = desk.snapshot;
    expect(onOrder(desk)).toEqual([40, 100]);
    const cancelled = cancel(desk);
    if (!cancelled.ok) throw new Error(cancelled.message);
    expect(
      cancelled.notComing.map(({ line: { material }, quantity }) => [
        material.name,
        quantityNumber(quantity),
      ]),
    ).toEqual([
      ['Tissue 5', 40],
      ['Gelatine', 100],
    ]);
    expect(cancelled.remarks).toEqual([
      'To have it on order again, write Ordered into the State of order O-1.',
    ]);
    expect(cancelled.changes).toEqual([
      { kind: 'set', table: 'Orders', row: 0, column: 'State', cell: { kind: 'text', text: 'Cancelled' } },
    ]);
    expect([onOrder(desk), stateOf(desk), openOrders(desk.ledger.studio, TODAY)]).toEqual([
      [0, 0],
      'Cancelled',
      [],
    ]);
    expect(desk.snapshot.tables.map(({ rowCount }) => rowCount)).toEqual(
      before.tables.map(({ rowCount }) => rowCount),
    );
  });

  test('keeps what has come; a delivery that is taken back leaves it closed', () => {
    const desk = new Desk(ON_ITS_WAY);
    const received = desk.do((snapshot, random) =>
      receiveOrder(snapshot, delivery('O-1', [came('1', 3)]), TODAY, random),
    );
    expect(onOrder(desk)).toEqual([10, 100]);
    const cancelled = cancel(desk);
    if (!cancelled.ok) throw new Error(cancelled.message);
    expect(cancelled.remarks[0]).toBe('What has come of order O-1 stays in stock.');
    const tissue = () => stockOn(desk.ledger, TODAY).materials[0]?.left?.valueOf();
    expect([onOrder(desk), tissue()]).toEqual([[0, 0], 32]);
    desk.do((snapshot, random) => undoPosting(snapshot, received.posting ?? '', TODAY, random));
    expect([onOrder(desk), tissue(), stateOf(desk)]).toEqual([[0, 0], 2, 'Cancelled']);
  });

  test.each([
    [
      'closed already',
      { ...ORDER, State: 'Cancelled' },
      /still to come of order O-1: its State is Cancelled\.$/,
    ],
    ['received', { ...ORDER, State: 'Received' }, /its State is Received\.$/],
    [
      'whose State is a formula',
      { ...ORDER, State: formula('Ordered') },
      /A formula fills the State of order O-1/,
    ],
  ])('one that is %s is refused', (_, order, message) => {
    const desk = new Desk({ ...ON_ITS_WAY, Orders: [order] });
    expect(cancel(desk)).toMatchObject({ ok: false, message: expect.stringMatching(message) });
  });

  test('one that has come whole, or that nobody knows, is refused', () => {
    const desk = new Desk(ON_ITS_WAY);
    expect(cancel(desk, 'O-2')).toMatchObject({ ok: false, message: expect.stringContaining('O-1') });
    desk.do((snapshot, random) =>
      receiveOrder(snapshot, delivery('O-1', [came('1', 4), came('2', 2)]), TODAY, random),
    );
    expect(cancel(desk)).toMatchObject({
      ok: false,
      message: expect.stringMatching(/its State is Received\.$/),
    });
    const reopened = new Desk({
      ...ON_ITS_WAY,
      OrderLines: [line('1', 'Tissue 5', 4, 10, 'sheet')],
      Tissue: [
        {
          Lot: 'T-2',
          Material: 'Tissue 5',
          Received: date('2026-03-20'),
          Quantity: 40,
          Unit: 'sheet',
          Order: 'O-1',
        },
      ],
    });
    expect(cancel(reopened)).toMatchObject({
      ok: false,
      message: 'All of order O-1 has come: write Received into its State.',
    });
  });

  test('one without lines is closed as well', () => {
    const desk = new Desk({ ...ON_ITS_WAY, OrderLines: [] });
    expect(cancel(desk)).toMatchObject({ ok: true, notComing: [] });
    expect(stateOf(desk)).toBe('Cancelled');
  });
});
