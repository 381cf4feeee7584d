import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { ask, rowsOfFile } from '../helpers/ask.ts';
import { call } from '../helpers/fake-terminal.ts';
import { date, type Literal } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf } from '../helpers/xlsx.ts';

const ORDERED = {
  ...STUDIO,
  Suppliers: [{ Supplier: 'Paper mill', 'Lead time days': 10 }, { Supplier: 'Chemist' }],
  Orders: [
    { Order: 'O-2', Supplier: 'Chemist', 'Ordered on': date('2026-04-01') },
    {
      Order: 'O-1',
      Supplier: 'Paper mill',
      'Ordered on': date('2026-03-10'),
      Expected: date('2026-03-31'),
      State: 'Ordered',
    },
    { Order: 'O-0', Supplier: 'Paper mill', 'Ordered on': date('2026-02-10'), State: 'Received' },
  ],
  OrderLines: [
    {
      Order: 'O-1',
      Line: '1',
      Material: 'Repair tissue 5',
      Packs: 2,
      'Pack quantity': 10,
      Unit: 'sheet',
      'Pack price': 45,
    },
    {
      Order: 'O-1',
      Line: '2',
      Material: 'Wheat starch',
      Packs: 3,
      'Pack quantity': 1,
      Unit: 'kg',
      'Pack price': 14,
    },
    {
      Order: 'O-2',
      Line: '1',
      Material: 'Silicone release paper',
      Packs: 1,
      'Pack quantity': 5,
      Unit: 'sheet',
    },
    { Order: 'O-0', Line: '1', Material: 'Wheat starch', Packs: 1, 'Pack quantity': 1, Unit: 'kg' },
  ],
} satisfies Literal;

const oneLine = (text: string): string => text.replace(/\n\s*/g, ' ');

describe('what is on its way', () => {
  test('is listed as JSON, the order expected first in front', async () => {
    const file = await fileOf(ORDERED);
    const before = await readFile(file);
    const answer = await ask(['receive', file]);
    expect(answer).toMatchObject({
      asOf: '2026-04-03',
      currency: 'EUR',
      orders: [
        {
          order: 'O-1',
          supplier: 'Paper mill',
          orderedOn: '2026-03-10',
          expected: '2026-03-31',
          daysLate: 3,
          state: 'Ordered',
          toCome: [
            {
              line: '1',
              material: 'Repair tissue 5',
              packs: 2,
              packQuantity: 10,
              quantity: 20,
              unit: 'sheet',
              packPrice: '45.00',
              expected: '2026-03-31',
            },
            { line: '2', material: 'Wheat starch', packs: 3, quantity: 3, unit: 'kg', packPrice: '14.00' },
          ],
        },
        {
          order: 'O-2',
          expected: null,
          daysLate: 0,
          state: null,
          toCome: [{ material: 'Silicone release paper', packPrice: null, expected: null }],
        },
      ],
    });
    expect(answer.orders).toHaveLength(2);
    expect(answer.notices).toContainEqual(
      expect.objectContaining({
        code: 'order-overdue',
        severity: 'warn',
        subject: 'O-1',
        column: 'Expected',
      }),
    );
    expect((await readFile(file)).equals(before)).toBe(true);
  });

  test('reads well', async () => {
    const { out } = await call(['receive', await fileOf(ORDERED)]);
    expect(out).toMatch(
      /^Order O-1, Paper mill\nOrdered on 10 Mar 2026, expected on 31 Mar 2026: 3 days late\.\n\nline/,
    );
    expect(out).toMatch(/\n2 {5}Wheat starch +3 {2}kg +3 × 1\n/);
    expect(out).toContain('Order O-2, Chemist\nOrdered on 1 Apr 2026; nobody says when it should be here.\n');
    expect(await call(['receive', await fileOf(STUDIO)])).toEqual({
      code: 0,
      out: 'Nothing is on its way: no order is open.',
      err: '',
    });
  });

  test('goes by the lead time where no day is given, and says what is open for nothing', async () => {
    const [chemist, , done] = ORDERED.Orders;
    const Orders = [
      { Order: 'O-1', Supplier: 'Paper mill', 'Ordered on': date('2026-03-10') },
      { ...chemist, 'Ordered on': date('2026-04-03') },
      { ...done, State: 'Ordered' },
    ];
    const ReleasePaper = STUDIO.ReleasePaper.map((lot) => ({
      ...lot,
      Received: date('2026-04-03'),
      Order: 'O-2',
    }));
    const file = await fileOf({ ...ORDERED, Orders, ReleasePaper });
    const { out } = await call(['receive', file]);
    expect(out).toContain('expected on 20 Mar 2026, by the lead time: 14 days late.');
    expect(oneLine(out)).toContain(
      'Order O-2, Chemist Ordered on 3 Apr 2026. As far as its lines can be worked out, nothing is still to come: write Received into its State.',
    );
  });
});

describe('receiving', () => {
  test('a part, then the rest, makes lots that a file keeps', async () => {
    const file = await fileOf(ORDERED);
    const words = [
      'receive',
      file,
      '--order',
      'o-1',
      '--carriage',
      '6',
      '--date',
      '2026-04-02',
      '--by',
      'AK',
    ];
    const answer = await ask([
      ...words,
      '--line=1=1 pack@K-1 until 2028-01-31',
      '--line=1=5 sheets for 20@K-2',
      '--line=wheat starch=500 g in fridge',
    ]);
    // 45.00, 20.00 and 7.00 share 6.00: 3.75, 1.666 and 0.583.
    expect(answer).toMatchObject({
      order: 'O-1',
      supplier: 'Paper mill',
      state: 'Part received',
      received: '2026-04-02',
      currency: 'EUR',
      lots: [
        {
          lot: expect.stringMatching(/^L\w{8}$/),
          line: '1',
          material: 'Repair tissue 5',
          table: 'Tissue',
          packs: 1,
          quantity: 10,
          unit: 'sheet',
          goods: '45.00',
          carriage: '3.75',
          cost: '48.75',
          supplierLot: 'K-1',
          useBy: '2028-01-31',
          goodUntil: '2028-01-31',
          place: null,
        },
        { packs: 0.5, quantity: 5, goods: '20.00', carriage: '1.67', cost: '21.67', supplierLot: 'K-2' },
        {
          material: 'Wheat starch',
          table: 'Paste',
          quantity: 0.5,
          unit: 'kg',
          goods: '7.00',
          place: 'Fridge',
        },
      ],
      goods: '72.00',
      carriage: '6.00',
      cost: '78.00',
      toCome: [
        { line: '1', packs: 0.5, quantity: 5, unit: 'sheet' },
        { line: '2', packs: 2.5, quantity: 2.5, unit: 'kg' },
      ],
      notReceived: [],
      remarks: [expect.stringContaining('All of the carriage of 6.00')],
      posting: expect.stringMatching(/^P\w{8}$/),
      entries: [],
      movements: [],
      shortfalls: [],
    });
    expect(await rowsOfFile(file, 'Tissue')).toMatchObject([
      {},
      {},
      {
        Lot: answer.lots[0].lot,
        Quantity: 10,
        Cost: 48.75,
        Order: 'O-1',
        'Order line': '1',
        Notes: 'received by AK',
      },
      { Lot: answer.lots[1].lot, Quantity: 5, Cost: 21.67, Posting: answer.posting },
    ]);
    const checked = await ask(['check', file]);
    const tissue = checked.materials.find(
      ({ material }: { material: string }) => material === 'Repair tissue 5',
    );
    expect([tissue.left, tissue.onOrder]).toEqual([27, 5]);

    const rest = await call(['receive', file, '--order', 'O-1', '--place', 'Fridge']);
    expect(rest.code).toBe(0);
    expect(oneLine(rest.out)).toMatch(
      /In all 57\.50, 0\.00 of it carriage\. Nothing is still to come of order O-1\. Its State is Received\./,
    );
    expect(await rowsOfFile(file, 'Orders')).toMatchObject([{}, { State: 'Received' }, {}]);
    expect((await rowsOfFile(file, 'Paste')).at(-1)).toMatchObject({
      Quantity: 2.5,
      Unit: 'kg',
      Cost: 35,
      Place: 'Fridge',
    });
  });

  test('can be taken back by its posting', async () => {
    const file = await fileOf(ORDERED);
    const { posting } = await ask(['receive', file, '--order', 'O-1']);
    const undone = await call(['undo', file, '--posting', posting]);
    expect(undone.code).toBe(0);
    expect(undone.out).toContain('Taken back');
    expect(undone.out).toContain('What came of order O-1 by it is on order again.');
    const { orders } = await ask(['receive', file]);
    expect(orders[0]).toMatchObject({ order: 'O-1', state: 'Ordered', toCome: [{ packs: 2 }, { packs: 3 }] });
  });

  test('ends with 1 where some of what is to come could not be taken in', async () => {
    const OrderLines = [...ORDERED.OrderLines, { ...ORDERED.OrderLines[0], Line: '3', Unit: 'ml' }];
    const file = await fileOf({ ...ORDERED, OrderLines, Tissue: { rows: [], without: ['Order'] } });
    const answer = await ask(['receive', file, '--order', 'O-1', '--out', `${file}.xlsx`], 1);
    expect(answer).toMatchObject({
      state: 'Part received',
      lots: [{ material: 'Wheat starch' }],
      notReceived: [
        { material: 'Repair tissue 5', why: expect.stringContaining('has no column Order') },
        { material: null, why: expect.stringContaining('can’t be worked out') },
      ],
    });
    const text = await call(['receive', file, '--order', 'O-1']);
    expect(text.code).toBe(1);
    expect(oneLine(text.out)).toContain('Not received: The table Tissue has no column Order');
  });

  test('ends with 2 and saves nothing where it can’t', async () => {
    const file = await fileOf(ORDERED);
    const before = await readFile(file);
    const line = (text: string) => ['--order', 'O-1', '--line', text];
    for (const [words, message] of [
      [['--order', 'O-0'], 'Nothing is still to come of order O-0: its State is Received.'],
      [['--order', 'O-9'], 'There is no order called O-9 in Orders.'],
      [['--carriage', '5'], '--carriage goes with --order'],
      [['--line', '1'], '--line goes with --order'],
      [['--out', 'x.xlsx'], '--out goes with --order'],
      [['--order', 'O-1', '--carriage', '-5'], '--carriage'],
      [['--order', 'O-1', '--date', '2026-04-04'], 'dated 4 Apr 2026, after today'],
      [line('7'), 'There is no line called 7 in order O-1.'],
      [line('1=2 packs until tomorrow'), 'write it like "H2=2 packs@KT-88'],
      [line('1=2 packs@K-1 for 62'), '--line holds “1=2 packs@K-1 for 62”'],
      [line('1=0'), '--line holds “1=0”'],
      [line('1='), '--line holds “1=”'],
      [line('=2'), '--line holds “=2”'],
      [line('1=2@'), '--line holds “1=2@”'],
      [line('1=2 for'), '--line holds the unit “for”'],
      [line('1=2 sheetz'), '--line holds the unit “sheetz”: packs or a unit is right'],
      [line('1=2 in Cellar'), 'There is no place called Cellar in Places.'],
    ] as const) {
      const answer = await call(['receive', file, ...words]);
      expect([answer.code, answer.out]).toEqual([2, '']);
      expect(answer.err).toContain(message);
    }
    expect((await readFile(file)).equals(before)).toBe(true);
  });
});

describe('an order of which nothing more will come', () => {
  test('is closed, and what was still to come is not on order any more', async () => {
    const file = await fileOf(ORDERED);
    const before = await ask(['receive', file]);
    const answer = await ask(['receive', file, '--order', 'o-1', '--cancel']);
    expect(answer).toMatchObject({ order: 'O-1', supplier: 'Paper mill', state: 'Cancelled', posting: null });
    expect(answer.notComing).toEqual(before.orders[0].toCome);
    expect((await ask(['receive', file])).orders.map(({ order }: { order: string }) => order)).toEqual(
      before.orders.slice(1).map(({ order }: { order: string }) => order),
    );
    expect(await rowsOfFile(file, 'Orders')).toMatchObject([{}, { Order: 'O-1', State: 'Cancelled' }, {}]);
  });

  test('is told in words; what goes with receiving, and a second time, is refused', async () => {
    const file = await fileOf(ORDERED);
    const told = await call(['receive', file, '--order', 'O-1', '--cancel', '--on', '2026-04-03']);
    expect(oneLine(told.out)).toMatch(
      /^Order O-1 of Paper mill is cancelled Its State is Cancelled\. Not on order any more: 20 sheets of Repair tissue 5 and 3 kg of Wheat starch\./,
    );
    const again = await call(['receive', file, '--order', 'O-1', '--cancel']);
    expect([again.code, again.err]).toEqual([
      2,
      expect.stringContaining('Nothing is still to come of order O-1: its State is Cancelled.'),
    ]);
    for (const [option, value] of [
      ['--line', '1'],
      ['--carriage', '5'],
      ['--date', '2026-04-02'],
    ] as const) {
      const both = await call(['receive', file, '--order', 'O-2', '--cancel', option, value]);
      expect([both.code, both.err]).toEqual([2, expect.stringContaining(`${option} is for what came`)]);
    }
    const alone = await call(['receive', file, '--cancel']);
    expect([alone.code, alone.err]).toEqual([2, expect.stringContaining('--cancel goes with --order')]);
  });
});
