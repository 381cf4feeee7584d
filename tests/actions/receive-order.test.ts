import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { restOfOrder } from '../../src/actions/order-lines.ts';
import type { OrderToReceive } from '../../src/actions/order-to-receive.ts';
import { placeOrder } from '../../src/actions/place-order.ts';
import { receiveOrder } from '../../src/actions/receive-order.ts';
import { recentPostings } from '../../src/actions/recent-postings.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { stockOn } from '../../src/core/stock.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';
import { Bench, randomFrom } from '../helpers/bench.ts';
import { Desk } from '../helpers/desk.ts';
import { date, dayOf, type Literal } from '../helpers/literal.ts';
import { came, delivery, ORDERING, orders, packs, TODAY } from './helpers/order-bench.ts';

/** The same studio with an order on its way: 4 packs of tissue for 124.00, 2 of gelatine for 25.00. */
const LINES = [
  {
    Order: 'O-1',
    Line: '1',
    Material: 'Tissue 5',
    Packs: 4,
    'Pack quantity': 10,
    Unit: 'sheet',
    'Pack price': 31,
  },
  {
    Order: 'O-1',
    Line: '2',
    Material: 'Gelatine',
    Packs: 2,
    'Pack quantity': 50,
    Unit: 'g',
    'Pack price': 12.5,
  },
];
const ORDER = { Order: 'O-1', Supplier: 'Paper mill', 'Ordered on': date('2026-03-10'), State: 'Ordered' };
const ON_ITS_WAY = { ...ORDERING, Orders: [ORDER], OrderLines: LINES } satisfies Literal;

function receive(bench: Desk, request: OrderToReceive) {
  return bench.do((snapshot, random) => receiveOrder(snapshot, request, TODAY, random));
}

function undo(bench: Desk, posting: string | null) {
  return bench.do((snapshot, random) => undoPosting(snapshot, posting ?? '', TODAY, random, 'AK'));
}

function onOrder(snapshot: WorkbookSnapshot): number[] {
  const { materials } = stockOn(booksOf(snapshot).ledger, TODAY);
  return materials.slice(0, 2).map((each) => quantityNumber(each.onOrder));
}

describe('receiving what was ordered', () => {
  test('in two deliveries, as the saved file keeps it', () => {
    const bench = new Bench(ORDERING);
    const request = orders([
      packs('Paper mill', 'Tissue 5', '4 × 10 sheet at 31'),
      packs('Paper mill', 'Gelatine', '2 × 50 g at 12.5'),
    ]);
    const { orders: placed } = bench.do((snapshot, random) => placeOrder(snapshot, request, TODAY, random));
    const [order] = placed;
    const name = order?.order ?? '';
    const [tissue, gelatine] = bench.rows('OrderLines').map((row) => String(row['Line']));

    const first = [
      came(tissue ?? '', 1, { supplierLot: '=K-88', useBy: dayOf('2028-01-31'), storedAt: 'plan chest' }),
      came(tissue ?? '', '20 sheet', { supplierLot: 'K-89' }),
      came('gelatine', 1),
    ];
    const received = bench.do((snapshot, random) =>
      receiveOrder(
        snapshot,
        delivery(name, first, { carriage: '12', received: dayOf('2026-04-01'), by: 'AK' }),
        TODAY,
        random,
      ),
    );
    const common = {
      Received: serialOfDay(dayOf('2026-04-01'), 1900),
      Supplier: 'Paper mill',
      Order: name,
      Posting: received.posting,
      Notes: 'received by AK',
    };
    // 31.00, 62.00 and 12.50 come to 105.50. Of 12.00: 3.526, 7.052 and 1.421; the coin left goes to the first.
    expect(bench.rows('Tissue').slice(1)).toEqual([
      {
        ...common,
        Lot: received.lots[0]?.lot.name,
        Material: 'Tissue 5',
        Quantity: 10,
        Unit: 'sheet',
        Cost: 34.53,
        'Supplier lot': '=K-88',
        'Use by': serialOfDay(dayOf('2028-01-31'), 1900),
        Place: 'Plan chest',
        'Order line': tissue,
        Left: 10,
        'Left as written': 10,
        'Good until': serialOfDay(dayOf('2028-01-31'), 1900),
        Worth: 34.53,
      },
      {
        ...common,
        Lot: received.lots[1]?.lot.name,
        Material: 'Tissue 5',
        Quantity: 20,
        Unit: 'sheet',
        Cost: 69.05,
        'Supplier lot': 'K-89',
        'Order line': tissue,
        Left: 20,
        'Left as written': 20,
        Worth: 69.05,
      },
    ]);
    expect(bench.rows('Paste')).toMatchObject([
      {
        ...common,
        Material: 'Gelatine',
        Quantity: 50,
        Unit: 'g',
        Cost: 13.92,
        'Order line': gelatine,
        'Good until': serialOfDay(dayOf('2026-07-10'), 1900),
      },
    ]);
    expect(bench.rows('Orders')).toMatchObject([{ Order: name, State: 'Part received' }]);
    expect(onOrder(bench.workbook.snapshot())).toEqual([10, 50]);

    const rest = bench.do((snapshot, random) => {
      const all = restOfOrder(snapshot, name.toLowerCase(), TODAY);
      return all.ok
        ? receiveOrder(snapshot, delivery(name, all.lines, { carriage: '0' }), TODAY, random)
        : all;
    });
    expect(rest.remarks).toEqual([]);
    expect(rest.lots.map(({ packs: count, goods }) => [count.valueOf(), goods])).toEqual([
      [1, 3100n],
      [1, 1250n],
    ]);
    expect(bench.rows('Orders')).toMatchObject([{ Order: name, State: 'Received' }]);
    expect(onOrder(bench.workbook.snapshot())).toEqual([0, 0]);
    const again = restOfOrder(bench.workbook.snapshot(), name, TODAY);
    expect(again).toEqual({
      ok: false,
      message: `Nothing is still to come of order ${name}: its State is Received.`,
    });
  });

  test('gives a line without an identifier one, by which its lot names it', () => {
    const bench = new Desk({ ...ON_ITS_WAY, OrderLines: LINES.map((line) => ({ ...line, Line: null })) });
    const received = receive(bench, delivery('O-1', [came('Tissue 5')]));
    const [line] = received.lots;
    expect(line?.lot.record.orderLine).toMatch(/^H\w{8}$/);
    expect(onOrder(bench.snapshot)).toEqual([0, 100]);
  });

  test('of which all that is to come is what other parts of the delivery leave', () => {
    const bench = new Desk(ON_ITS_WAY);
    const received = receive(bench, delivery('O-1', [came('1', 3, { supplierLot: 'A' }), came('1')]));
    expect(received.lots.map(({ packs: count }) => count.valueOf())).toEqual([3, 1]);
    expect(received.toCome.map(({ line }) => line.material.name)).toEqual(['Gelatine']);
  });
});

describe('what is said besides', () => {
  test('more than ordered is taken in', () => {
    const bench = new Desk(ON_ITS_WAY);
    const received = receive(bench, delivery('O-1', [came('1', 5), came('2')], { carriage: '0' }));
    expect(received.remarks).toEqual([
      'More came than was still to come: 10 sheets of Tissue 5 over. All of it is taken in.',
    ]);
    expect([received.state, ...onOrder(bench.snapshot)]).toEqual(['Received', 0, 0]);
    const more = receive(bench, delivery('O-1', [came('1', 1)], { carriage: '0' }));
    expect(more.state).toBe('Received');
    expect(more.remarks[0]).toMatch(/10 sheets of Tissue 5 over/);
    expect(onOrder(bench.snapshot)).toEqual([0, 0]);
  });

  test('of an order that a person closed, all that comes is more, and its State stays, also once that is taken back', () => {
    const bench = new Desk({ ...ON_ITS_WAY, Orders: [{ ...ORDER, State: 'Received' }] });
    const extra = receive(bench, delivery('O-1', [came('1', 1)], { carriage: '0' }));
    expect(extra.remarks).toEqual([
      'More came than was still to come: 10 sheets of Tissue 5 over. All of it is taken in.',
    ]);
    expect([extra.state, extra.toCome]).toEqual(['Received', []]);
    const refused = bench.refusal((snapshot, random) =>
      receiveOrder(snapshot, delivery('O-1', [came('1')]), TODAY, random),
    );
    expect(refused).toMatch(/^Nothing is still to come of line 1/);
    expect(undo(bench, extra.posting).remarks[0]).toBe(
      'What came of order O-1 by it is taken back; its State stays Received, so that nothing is on order.',
    );
    expect(booksOf(bench.snapshot).ledger.studio.orders[0]?.state).toBe('Received');
    expect(onOrder(bench.snapshot)).toEqual([0, 0]);
  });

  test('without a pack price Cost stays blank, unless it is given; the others bear the carriage', () => {
    const OrderLines = LINES.map((line) => ({
      ...line,
      'Pack price': line.Line === '1' ? null : line['Pack price'],
    }));
    const lines = [came('1', 2), came('1', 2, { goods: decimal('60') }), came('2')];
    const received = receive(
      new Desk({ ...ON_ITS_WAY, OrderLines }),
      delivery('O-1', lines, { carriage: '8.5' }),
    );
    // 60.00 and 25.00 share 8.50: 6.00 and 2.50.
    expect(received.lots.map(({ lot }) => lot.record.cost?.valueOf() ?? null)).toEqual([null, 66, 27.5]);
    expect(received.remarks).toEqual([
      'Nothing says what a pack costs, so Cost stays blank for 20 sheets of Tissue 5: fill it in. The carriage is in the cost of the others.',
    ]);
  });

  test('carriage that nothing can be charged with is in no cost', () => {
    const OrderLines = LINES.map((line) => ({ ...line, 'Pack price': null }));
    const received = receive(
      new Desk({ ...ON_ITS_WAY, OrderLines }),
      delivery('O-1', [came('1'), came('2')], { carriage: '8.5' }),
    );
    expect(received.lots.map(({ lot, carriage }) => [lot.record.cost, carriage])).toEqual([
      [null, 0n],
      [null, 0n],
    ]);
    expect(received.remarks).toEqual([
      'Nothing says what a pack costs, so Cost stays blank for 40 sheets of Tissue 5 and 100 g of Gelatine: fill it in.',
      'The carriage of 8.50 is in no lot’s cost, as nothing that came has a price by which it could be shared: add it to Cost by hand.',
    ]);
  });

  test('all of the carriage of a part delivery is in what came, with the part that belongs there', () => {
    const received = receive(
      new Desk(ON_ITS_WAY),
      delivery('O-1', [came('1', 1), came('2', 1)], { carriage: '12' }),
    );
    // 43.50 of 149.00 came.
    expect(received.remarks).toEqual([
      'All of the carriage of 12.00 is in the cost of what came, and nothing of it in what is still to come. ' +
        'If it was charged for the whole order, take this back and give 3.50, the part of what came by its value.',
    ]);
  });

  test('that nobody said what carriage was, once for an order, where the supplier charges any', () => {
    const bench = new Desk(ON_ITS_WAY);
    expect(receive(bench, delivery('O-1', [came('2')])).remarks).toEqual([
      'Nobody said what carriage was charged, so none is in the cost; by Suppliers Paper mill charges 12.00 for order O-1.',
    ]);
    expect(receive(bench, delivery('O-1', [came('1')])).remarks).toEqual([]);
    const OrderLines = LINES.map((line) => ({ ...line, Packs: 5 }));
    expect(receive(new Desk({ ...ON_ITS_WAY, OrderLines }), delivery('O-1', [came('2')])).remarks).toEqual(
      [],
    );
  });

  test('what has gone off already, and what is not counted', () => {
    const OrderLines = [...LINES, { ...LINES[0], Line: '3', Material: 'Swab', Unit: 'each' }];
    const lines = [came('2', 1, { useBy: dayOf('2026-04-02') }), came('Swab', 1)];
    const received = receive(
      new Desk({ ...ON_ITS_WAY, OrderLines }),
      delivery('O-1', lines, { carriage: '0' }),
    );
    const [gelatine, swab] = received.lots.map(({ lot }) => lot.name);
    expect(received.remarks).toEqual([
      `Lot ${gelatine} (Gelatine) was good until 2 Apr 2026 (printed date): nothing is drawn from it by itself.`,
      `Swab is not counted: lot ${swab} says that it came, and nothing is drawn from it.`,
    ]);
  });

  test('lines that can’t be worked out keep the order open', () => {
    const OrderLines = [...LINES, { ...LINES[0], Line: '3', Unit: 'kg' }];
    const bench = new Desk({ ...ON_ITS_WAY, OrderLines });
    const rest = restOfOrder(bench.snapshot, 'O-1', TODAY);
    expect(rest).toMatchObject({
      ok: true,
      lines: [came('1'), came('2')],
      leftOut: [{ material: null, why: expect.stringContaining('can’t be worked out: 4. See check') }],
    });
    const received = receive(bench, delivery('O-1', [came('1'), came('2')], { carriage: '0' }));
    expect(received.state).toBe('Part received');
    expect(received.remarks).toEqual([
      'What these rows of OrderLines say can’t be worked out: 4. See check, and mend them first.',
    ]);
  });

  test('a table without a column for a fact of the lot, or Orders without State', () => {
    const literal: Literal = {
      ...ON_ITS_WAY,
      Orders: { rows: [ORDER], without: ['State'] },
      Paste: { rows: [], without: ['Supplier lot', 'Posting'] },
    };
    const lines = [came('2', 'all to come', { supplierLot: 'G-1' })];
    const received = receive(new Desk(literal), delivery('O-1', lines, { carriage: '0' }));
    expect(received.remarks.join('\n')).toMatch(
      /no column Supplier lot, so what belongs there of lot L\w{8} is not kept\.\n.*Orders has no State to write into for order O-1, so that it is “Part received” is not kept/,
    );
    expect(received.posting).toBeNull();
  });
});

describe('a delivery is refused', () => {
  const refusal = (request: OrderToReceive, literal: Literal = ON_ITS_WAY): string =>
    new Desk(literal).refusal((snapshot, random) => receiveOrder(snapshot, request, TODAY, random));

  test.each([
    [
      'of no order',
      delivery('O-9', [came('1')]),
      'There is no order called O-9 in Orders. Did you mean O-1?',
    ],
    [
      'without a line',
      delivery('O-1', []),
      'Nothing came of order O-1: name a line, and how many packs of it came.',
    ],
    [
      'of a line that is not there',
      delivery('O-1', [came('Gelatin')]),
      'There is no line called Gelatin in order O-1. Did you mean Gelatine?',
    ],
    [
      'on a day to come',
      delivery('O-1', [came('1')], { received: dayOf('2026-04-04') }),
      'The delivery is dated 4 Apr 2026, after today: take it in on the day on which it comes.',
    ],
    [
      'on a day before it was ordered',
      delivery('O-1', [came('1')], { received: dayOf('2026-03-09') }),
      'The delivery is dated 9 Mar 2026, and order O-1 was placed on 10 Mar 2026: give the day on which it came, or correct Ordered on.',
    ],
    [
      'of nothing',
      delivery('O-1', [came('1', 0)]),
      'What came of line 1 (Tissue 5) must be more than 0, to 6 decimals.',
    ],
    [
      'in a unit that leads nowhere',
      delivery('O-1', [came('1', '2 kg')]),
      'Nothing says how many sheets one kg of Tissue 5 is: give what came in sheets or in packs.',
    ],
    [
      'twice for all that is to come',
      delivery('O-1', [came('1'), came('tissue 5')]),
      'Nothing is still to come of line 1 (Tissue 5): give how many packs came, if more did.',
    ],
    [
      'to a place that is not there',
      delivery('O-1', [came('1', 1, { storedAt: 'Plan chests' })]),
      'There is no place called Plan chests in Places. Did you mean Plan chest?',
    ],
    [
      'with carriage that no coin pays',
      delivery('O-1', [came('1')], { carriage: '8.555' }),
      'The carriage is given as 8.555: an amount of 0 or more with at most 2 decimals is right.',
    ],
    [
      'at a cost below 0',
      delivery('O-1', [came('1', 1, { goods: decimal('-1') })]),
      'What Tissue 5 cost is given as -1: an amount of 0 or more with at most 2 decimals is right.',
    ],
  ])('%s', (_, request, message) => {
    expect(refusal(request)).toBe(message);
  });

  test('of an order that is cancelled', () => {
    const cancelled = { ...ON_ITS_WAY, Orders: [{ ...ORDER, State: 'cancelled' }] };
    expect(refusal(delivery('O-1', [came('1')]), cancelled)).toBe(
      'Order O-1 is cancelled: if it came after all, write Ordered into its State first.',
    );
  });

  test('of a material that has several lines, unless the line is named', () => {
    const twice = { ...ON_ITS_WAY, OrderLines: [...LINES, { ...LINES[0], Line: '3' }] };
    expect(refusal(delivery('O-1', [came('tissue 5')]), twice)).toBe(
      'Order O-1 has several lines for Tissue 5: name one of 1 and 3.',
    );
    expect(refusal(delivery('O-1', [came('3')]), twice)).toBe('not refused');
  });

  test('of a line that can’t be worked out', () => {
    const OrderLines = [...LINES, { ...LINES[0], Line: '3', Unit: 'kg' }];
    expect(refusal(delivery('O-1', [came('3')]), { ...ON_ITS_WAY, OrderLines })).toBe(
      'There is no line 3 in order O-1 that can be worked out. What these rows of OrderLines say can’t be worked out: 4. See check, and mend them first.',
    );
  });

  test('where its lots could not say of which order they came', () => {
    const noOrder = { ...ON_ITS_WAY, Tissue: { rows: [], without: ['Order'] } };
    expect(refusal(delivery('O-1', [came('1')]), noOrder)).toBe(
      'The table Tissue has no column Order, without which what has come would still be on order: add the column Order to the table.',
    );
    const rest = restOfOrder(new Desk(noOrder).snapshot, 'O-1', TODAY);
    expect(rest).toMatchObject({
      ok: true,
      lines: [came('2')],
      leftOut: [{ material: 'Tissue 5', why: expect.stringContaining('no column Order') }],
    });
    const { Tissue: _, Paste: __, ...neither } = ON_ITS_WAY;
    expect(restOfOrder(new Desk(neither).snapshot, 'O-1', TODAY)).toMatchObject({
      ok: false,
      message: expect.stringMatching(/^This workbook has no table Tissue/),
    });
  });
});

describe('taking a delivery back', () => {
  test('counts its lots as nothing and puts them on order again', () => {
    const bench = new Bench(ON_ITS_WAY);
    const take = (...lines: OrderToReceive['lines']) =>
      bench.do((snapshot, random) => receiveOrder(snapshot, delivery('O-1', lines), TODAY, random));
    const first = take(came('1', 1));
    const second = take(came('1', 3), came('2'));
    const { posting } = second;
    expect(bench.rows('Orders')).toMatchObject([{ State: 'Received' }]);
    const undone = bench.do((snapshot, random) =>
      undoPosting(snapshot, ` ${posting?.toLowerCase()} `, TODAY, random, 'AK'),
    );
    expect(bench.rows('Movements')).toMatchObject([
      {
        Date: serialOfDay(TODAY, 1900),
        Kind: 'Count',
        Lot: second.lots[0]?.lot.name,
        Quantity: -30,
        Note: 'not received after all: order O-1 (1)',
        By: 'AK',
        Posting: undone.posting,
      },
      { Kind: 'Count', Quantity: -100, Unit: 'g', Note: 'not received after all: order O-1 (2)' },
    ]);
    const row = bench.rows('Tissue')[2];
    expect(row).toMatchObject({ Quantity: 30, Left: 0, Worth: 0, Posting: posting });
    expect(row).not.toHaveProperty('Order');
    expect(row).not.toHaveProperty('Order line');
    expect(bench.rows('Orders')).toMatchObject([{ State: 'Part received' }]);
    expect(onOrder(bench.workbook.snapshot())).toEqual([30, 100]);
    expect(undone.remarks).toEqual([
      'What came of order O-1 by it is on order again.',
      ...second.lots.map(({ lot }) => `The row of lot ${lot.name} stays where it is; nothing is left of it.`),
    ]);

    const refusal = (name: string | null): string => {
      const answer = undoPosting(bench.workbook.snapshot(), name ?? '', TODAY, randomFrom(5));
      return answer.ok ? 'not refused' : answer.message;
    };
    expect(refusal(posting)).toBe(`Posting ${posting} has been taken back already.`);
    expect(refusal(undone.posting)).toBe(
      `Posting ${undone.posting} took another one back itself, and a reversal is never reversed: receive the order again instead.`,
    );
    const recent = recentPostings(booksOf(bench.workbook.snapshot()).ledger, 3);
    expect(
      recent.map((each) => [each.posting, each.isReversal, each.reversed, each.materials, each.cost]),
    ).toEqual([
      [
        posting,
        false,
        true,
        ['Tissue 5', 'Gelatine'],
        second.lots.reduce((sum, { goods, carriage }) => sum + (goods ?? 0n) + carriage, 0n),
      ],
      [first.posting, false, false, ['Tissue 5'], expect.anything()],
      [undone.posting, true, false, ['Tissue 5', 'Gelatine'], expect.anything()],
    ]);
    expect(recent.map(({ received }) => received.map(({ name }) => name))).toEqual([
      second.lots.map(({ lot }) => lot.name),
      first.lots.map(({ lot }) => lot.name),
      [],
    ]);
  });

  test('is refused while anything was taken from its lots, and allowed once that is taken back', () => {
    const bench = new Desk(ON_ITS_WAY);
    const { posting, lots } = receive(bench, delivery('O-1', [came('1'), came('2')]));
    const used = {
      Movement: 'M-1',
      Date: '2026-04-03',
      Kind: 'Use',
      Lot: lots[1]?.lot.name ?? '',
      Quantity: '5',
      Unit: 'g',
      Posting: 'P-7',
    };
    const append = (row: Readonly<Record<string, string>>) =>
      bench.do(() => ({
        ok: true,
        changes: [
          {
            kind: 'append',
            table: 'Movements',
            rows: [
              Object.fromEntries(Object.entries(row).map(([key, text]) => [key, { kind: 'text', text }])),
            ],
          },
        ],
      }));
    append(used);
    expect(bench.refusal((snapshot, random) => undoPosting(snapshot, posting ?? '', TODAY, random))).toBe(
      `Lot ${used.Lot}, which came in with posting ${posting}, has movements: take back posting P-7 first.`,
    );
    undo(bench, 'P-7');
    undo(bench, posting);
    expect(onOrder(bench.snapshot)).toEqual([40, 100]);
  });

  test('leaves a State that a person gave, and one that other deliveries still cover', () => {
    const byHand = new Desk(ON_ITS_WAY);
    const { posting } = receive(byHand, delivery('O-1', [came('1')]));
    byHand.do(() => ({
      ok: true,
      changes: [
        { kind: 'set', table: 'Orders', row: 0, column: 'State', cell: { kind: 'text', text: 'Cancelled' } },
      ],
    }));
    undo(byHand, posting);
    expect(booksOf(byHand.snapshot).ledger.studio.orders[0]?.state).toBe('Cancelled');

    const covered = new Desk(ON_ITS_WAY);
    receive(covered, delivery('O-1', [came('1'), came('2')]));
    const extra = receive(covered, delivery('O-1', [came('1', 1)]));
    undo(covered, extra.posting);
    expect(booksOf(covered.snapshot).ledger.studio.orders[0]?.state).toBe('Received');
  });
});
