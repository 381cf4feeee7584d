import { describe, expect, test } from 'vitest';
import { openOrders } from '../../src/core/open-orders.ts';
import type { Records } from '../../src/core/records.ts';
import { paste, said } from './helpers/one-lot.ts';
import { lot, material } from './helpers/stock-records.ts';
import { ledgerOf, on } from './helpers/studio-of.ts';
import { order, orderLine, supplier } from './helpers/work-records.ts';

const late = (some: Partial<Records>) => said('order-overdue', some);

const ORDERED: Partial<Records> = {
  materials: [paste(), material('Tissue', 'sheet')],
  orders: [order('O1', '2026-03-01', { expected: '2026-03-30' })],
  orderLines: [orderLine('O1', '1', 'Paste', 2, 50), orderLine('O1', '2', 'Tissue', 1, 10, 'sheet')],
};

describe('an order that is late', () => {
  test('is said with its supplier, by how many days, and what is still to come', () => {
    expect(late(ORDERED)).toEqual([
      [
        'warn',
        'O1',
        'Expected',
        'Order O1 of S1 was expected on 30 Mar 2026, 2 days ago; still to come: 100 g of Paste and 10 sheets of Tissue.',
      ],
    ]);
    const came = [
      lot('A', 'Paste', '2026-03-20', 60, { order: 'O1', orderLine: '1' }),
      lot('B', 'Tissue', '2026-03-20', 10, { unit: 'sheet', order: 'O1', orderLine: '2' }),
    ];
    expect(late({ ...ORDERED, lots: came })[0]?.[3]).toMatch(/; still to come: 40 g of Paste\.$/);
  });

  test('is not said where it is expected today, is closed, or all of it came', () => {
    const of = (more: Parameters<typeof order>[2]) =>
      late({ ...ORDERED, orders: [order('O1', '2026-03-01', more)] });
    expect(of({ expected: '2026-04-01' })).toEqual([]);
    expect(of({ expected: '2026-03-31' })).toHaveLength(1);
    expect(of({ expected: '2026-03-31', state: 'Part received' })).toHaveLength(1);
    for (const state of ['received', 'Cancelled ']) expect(of({ expected: '2026-03-31', state })).toEqual([]);
    expect(of({})).toEqual([]);
    const all = [
      lot('A', 'Paste', '2026-03-20', 100, { order: 'O1', orderLine: '1' }),
      lot('B', 'Tissue', '2026-03-20', 10, { unit: 'sheet', order: 'O1' }),
    ];
    expect(late({ ...ORDERED, lots: all })).toEqual([]);
  });

  test('without Expected goes by the lead time, and says so', () => {
    const some: Partial<Records> = {
      materials: [paste({ supplier: 'S1' })],
      suppliers: [supplier('S1', '9.5')],
      orders: [order('O1', '2026-03-01')],
      orderLines: [orderLine('O1', '1', 'Paste', 2, 50)],
    };
    expect(late(some)[0]?.[3]).toBe(
      'Order O1, ordered from S1 on 1 Mar 2026, should have been here by 11 Mar 2026 by the lead time, 21 days ago; still to come: 100 g of Paste.',
    );
    expect(said('order-overdue', some, '2026-03-11')).toEqual([]);
    expect(said('order-overdue', some, '2026-03-12')).toHaveLength(1);
  });
});

test('open orders come by the day on which they are expected, those without one last', () => {
  const { studio } = ledgerOf({
    ...ORDERED,
    orders: [
      order('never', '2026-03-01'),
      order('later', '2026-03-01', { expected: '2026-05-01' }),
      order('sooner', '2026-03-01', { expected: '2026-04-10', state: 'Ordered' }),
      order('done', '2026-03-01', { expected: '2026-03-05', state: 'Received' }),
      order('tomorrow’s', '2026-04-02'),
    ],
    orderLines: ['never', 'later', 'sooner', 'done'].map((name) => orderLine(name, '1', 'Paste', 1, 5)),
  });
  expect(openOrders(studio, on('2026-04-01')).map(({ order: { order: name } }) => name)).toEqual([
    'sooner',
    'later',
    'never',
  ]);
});

test('a lot that names the order alone comes off the lines for its own material, one after the other', () => {
  const { studio } = ledgerOf({
    ...ORDERED,
    orderLines: [
      orderLine('O1', '1', 'Paste', 1, 50),
      orderLine('O1', '2', 'Tissue', 1, 10, 'sheet'),
      orderLine('O1', '3', 'Paste', 2, 50),
    ],
    lots: [
      lot('A', 'Paste', '2026-03-20', 70, { order: 'o1' }),
      lot('B', 'Tissue', '2026-03-20', 4, { unit: 'sheet', order: 'O1' }),
    ],
  });
  const [open] = openOrders(studio, on('2026-04-01'));
  expect(open?.toCome.map(({ line, quantity }) => `${line.record.line} ${quantity.toString()}`)).toEqual([
    '2 6',
    '3 80',
  ]);
});
