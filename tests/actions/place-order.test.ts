import { describe, expect, test } from 'vitest';
import { basketLines } from '../../src/actions/basket-lines.ts';
import { orderText } from '../../src/actions/order-text.ts';
import { type OrdersToPlace, placeOrder } from '../../src/actions/place-order.ts';
import type { BasketLine, BasketOrder } from '../../src/core/buying/basket.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { stockOn } from '../../src/core/stock.ts';
import { Bench } from '../helpers/bench.ts';
import { Desk } from '../helpers/desk.ts';
import { dayOf, type Literal } from '../helpers/literal.ts';
import { ORDERING, orders, packs, TODAY } from './helpers/order-bench.ts';

const TISSUE = packs('paper mill', 'tissue 5', '4 × 10 sheet at 31');
const GELATINE = packs('Paper mill', 'Gelatine', '2 × 50 g at 12.345');
const ETHANOL = packs('Chemist', 'Ethanol', '2 × 1 l at 14.5');
const LIME = packs('Chemist', 'Lime', '1 × 250 g');

function place(bench: Desk, request: OrdersToPlace) {
  return bench.do((snapshot, random) => placeOrder(snapshot, request, TODAY, random));
}

function refusal(request: OrdersToPlace, literal: Literal = ORDERING): string {
  return new Desk(literal).refusal((snapshot, random) => placeOrder(snapshot, request, TODAY, random));
}

function onOrder({ ledger }: Desk): Record<string, number> {
  const { materials } = stockOn(ledger, TODAY);
  return Object.fromEntries(
    materials.map(({ material, onOrder: coming }) => [material.name, quantityNumber(coming)]),
  );
}

describe('placing orders', () => {
  test('writes one order for each supplier and a row for each line, as the file keeps them', () => {
    const bench = new Bench(ORDERING);
    const request = orders([TISSUE, ETHANOL, GELATINE, LIME]);
    const placed = bench.do((snapshot, random) => placeOrder(snapshot, request, TODAY, random));
    const [mill, chemist] = placed.orders;
    const orderedOn = serialOfDay(dayOf('2026-03-10'), 1900);
    expect(bench.rows('Orders')).toEqual([
      {
        Order: mill?.order,
        Supplier: 'Paper mill',
        'Ordered on': orderedOn,
        // Nine and a half days: the tenth.
        Expected: serialOfDay(dayOf('2026-03-20'), 1900),
        State: 'Ordered',
      },
      { Order: chemist?.order, Supplier: 'Chemist', 'Ordered on': orderedOn, State: 'Ordered' },
    ]);
    const line = { Order: mill?.order, Line: expect.stringMatching(/^H\w{8}$/) };
    expect(bench.rows('OrderLines')).toEqual([
      { ...line, Material: 'Tissue 5', Packs: 4, 'Pack quantity': 10, Unit: 'sheet', 'Pack price': 31 },
      { ...line, Material: 'Gelatine', Packs: 2, 'Pack quantity': 50, Unit: 'g', 'Pack price': 12.345 },
      {
        ...line,
        Order: chemist?.order,
        Material: 'Ethanol',
        Packs: 2,
        'Pack quantity': 1,
        Unit: 'l',
        'Pack price': 14.5,
      },
      { ...line, Order: chemist?.order, Material: 'Lime', Packs: 1, 'Pack quantity': 250, Unit: 'g' },
    ]);
    expect([mill?.order, chemist?.order]).toEqual([
      expect.stringMatching(/^D\w{8}$/),
      expect.stringMatching(/^D\w{8}$/),
    ]);
    expect(placed.remarks).toEqual([]);
    expect([mill?.goods, mill?.carriage, chemist?.goods, chemist?.carriage]).toEqual([
      14_869n,
      1200n,
      null,
      null,
    ]);
  });

  test('is on order from then on, in the stock unit', () => {
    const bench = new Desk(ORDERING);
    place(bench, orders([TISSUE, ETHANOL]));
    expect(onOrder(bench)).toMatchObject({ 'Tissue 5': 40, Ethanol: 2000, Gelatine: 0 });
  });

  test('is expected when it is said, or never', () => {
    const expected = [
      { supplier: 'chemist', day: dayOf('2026-04-30') },
      { supplier: 'Paper mill', day: null },
    ];
    const placed = place(new Desk(ORDERING), orders([TISSUE, ETHANOL], { expected }));
    expect(placed.orders.map((order) => order.expected)).toEqual([null, dayOf('2026-04-30')]);
  });

  test('says where the goods are less than is delivered, and what has no column', () => {
    const literal: Literal = {
      ...ORDERING,
      Orders: { rows: [], without: ['State'] },
      OrderLines: { rows: [], without: ['Pack price'] },
    };
    const placed = place(new Desk(literal), orders([packs('Paper mill', 'Tissue 5', '3 × 10 sheet at 31')]));
    expect(placed.remarks).toEqual([
      'Paper mill delivers from 100.00 of goods on, and this order comes to 93.00: ask, or add to it.',
      'The table Orders has no column State, so what belongs there of the order is not kept.',
      'The table OrderLines has no column Pack price, so what belongs there of the order is not kept.',
    ]);
  });
});

describe('an order is refused', () => {
  const without = (name: string): Literal =>
    Object.fromEntries(Object.entries(ORDERING).filter(([table]) => table !== name));

  test.each([
    ['without a line', orders([]), 'There is nothing to order: name a material and how many packs of it.'],
    [
      'from a supplier that is not there',
      orders([{ ...TISSUE, supplier: 'Paper mil' }]),
      'There is no supplier called Paper mil in Suppliers. Did you mean Paper mill?',
    ],
    [
      'of a material that is not there',
      orders([{ ...TISSUE, material: 'Vellum' }]),
      'There is no material called Vellum in Materials. Add it to Materials first.',
    ],
    [
      'of a part of a pack',
      orders([packs('Paper mill', 'Tissue 5', '1.5 × 10 sheet')]),
      '1.5 packs of Tissue 5 can’t be ordered: a whole number of packs above 0 is right.',
    ],
    [
      'of an empty pack',
      orders([packs('Paper mill', 'Tissue 5', '1 × 0 sheet')]),
      'A pack of Tissue 5 holds 0: a quantity above 0 is right.',
    ],
    [
      'at a price below 0',
      orders([packs('Paper mill', 'Tissue 5', '1 × 5 sheet at -3')]),
      'A pack of Tissue 5 costs -3: a price of 0 or more is right.',
    ],
    [
      'in a unit that leads nowhere',
      orders([packs('Chemist', 'Ethanol', '1 × 1 kg')]),
      'Nothing says how many ml one kg of Ethanol is: give the pack in ml, or add to Materials the fact that links them.',
    ],
    [
      'on a day to come',
      orders([TISSUE], { orderedOn: dayOf('2026-04-04') }),
      'The order is dated 4 Apr 2026, after today: give the day on which it is placed.',
    ],
    [
      'where it would come before',
      orders([TISSUE], { expected: [{ supplier: 'Paper mill', day: dayOf('2026-03-09') }] }),
      'The order from Paper mill is expected on 9 Mar 2026, before it is placed on 10 Mar 2026: give a later day, or none.',
    ],
  ])('%s', (_, request, message) => {
    expect(refusal(request)).toBe(message);
  });

  test.each(['Orders', 'OrderLines'])('without the table %s', (name) => {
    expect(refusal(orders([TISSUE]), without(name))).toMatch(
      new RegExp(`^This workbook has no table ${name} that can be read, and this must be written there`),
    );
  });
});

describe('the text to send', () => {
  const textsOf = (...lines: OrdersToPlace['lines']): string[] =>
    place(new Desk(ORDERING), orders(lines)).orders.map((order) =>
      orderText(order).replaceAll(order.order, 'D-1'),
    );

  test('has every line with its prices, and what it comes to with carriage', () => {
    // 4 × 31 = 124; 2 × 12.345 = 24.69; together 148.69, below the 150 from which carriage is free.
    expect(textsOf(TISSUE, GELATINE)).toEqual([
      [
        'Order D-1 of 10 Mar 2026',
        '',
        'Please deliver:',
        '',
        '1. Tissue 5 (long-fibred, 5 g/m2): 4 packs of 10 sheets, 31.00 each, 124.00',
        '2. Gelatine: 2 packs of 50 g, 12.345 each, 24.69',
        '',
        'Goods: 148.69 EUR',
        'Carriage, as we expect it: 12.00 EUR',
        'Total: 160.69 EUR',
        '',
        'Thank you.',
      ].join('\n'),
    ]);
    const [free] = textsOf(packs('Paper mill', 'Tissue 5', '5 × 10 sheet at 30'));
    expect(free).toContain('Goods: 150.00 EUR\nCarriage, as we expect it: 0.00 EUR\nTotal: 150.00 EUR');
  });

  test('asks for the price where none is known, and for the safety data sheets of what is hazardous', () => {
    const [text] = textsOf(ETHANOL, LIME, ETHANOL);
    expect(text).toContain('2. Lime: 1 pack of 250 g, please tell us the price\n');
    expect(text).toContain('\nPlease tell us what it comes to in all.\n');
    expect(text).toMatch(
      /\nPlease send the current safety data sheets of Ethanol and Lime with it\. Thank you\.$/,
    );
    const [one] = textsOf(ETHANOL);
    expect(one).toContain('Goods: 29.00 EUR\nTotal: 29.00 EUR');
    expect(one).toContain('the current safety data sheet of Ethanol with it');
  });
});

describe('a basket', () => {
  const line = (offer: string, material: string, more: Partial<BasketLine>): BasketLine => ({
    offer,
    material,
    unit: 'ml',
    packs: 2,
    packQuantity: 1000,
    packWords: '1 l',
    packPrice: 1450,
    amount: 2900,
    byHand: false,
    reasons: [],
    ...more,
  });
  const order = (supplier: string, lines: readonly BasketLine[]): BasketOrder => ({
    supplier,
    expected: TODAY,
    lines,
    goods: 0,
    carriage: 0,
    reasons: [],
  });

  test('is ordered in packs as Offers has them, or else in the stock unit', () => {
    const { ledger } = new Desk(ORDERING);
    const basket = [
      order('Chemist', [line('Offers 2', 'Ethanol', {}), line('Offers 9', 'Ethanol', { packPrice: 5 })]),
      order('Paper mill', [
        line('Offers 3', 'Tissue 5', { unit: 'sheet', packQuantity: 10, packPrice: 3100 }),
      ]),
    ];
    expect(basketLines(ledger.studio, basket)).toEqual([
      packs('Chemist', 'Ethanol', '2 × 1 l at 14.5'),
      packs('Chemist', 'Ethanol', '2 × 1000 ml at 0.05'),
      packs('Paper mill', 'Tissue 5', '2 × 10 sheet at 31'),
    ]);
  });
});
