import { describe, expect, test } from 'vitest';
import { addDays, isoDay } from '../../src/core/day.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import type { MaterialRecord, Records, Row } from '../../src/core/records.ts';
import type { Settings } from '../../src/core/settings.ts';
import { lot, material, movement, type PlainMovement, recipe } from './helpers/stock-records.ts';
import { figuresOf, ledgerOf, noticesOn, on, onlyOf, qty } from './helpers/studio-of.ts';
import {
  entry,
  job,
  offer,
  order,
  orderLine,
  plan,
  rate,
  supplier,
  treatment,
} from './helpers/work-records.ts';

const TODAY = '2026-04-01';
const paste = (more: Partial<Omit<MaterialRecord, keyof Row>> = {}) => material('Paste', 'g', more);

function ago(days: number): string {
  return isoDay(addDays(on(TODAY), -days));
}

const used = (name: string, days: number, quantity: number, more: PlainMovement = {}) =>
  movement(name, ago(days), 'Use', 'A', quantity, more);

function answer(some: Partial<Records>, settings: Partial<Settings> = {}) {
  const ledger = ledgerOf(
    { materials: [paste()], lots: [lot('A', 'Paste', '2024-01-01', 1000)], jobs: [job('J1')], ...some },
    settings,
  );
  const { onOrder, reorder } = figuresOf(ledger, 'Paste', TODAY);
  const { planned, reorderPoint, position, suggestedOrder, isLow } = reorder;
  const numbers = [onOrder, planned, reorderPoint, position, suggestedOrder].map(quantityNumber);
  const [incoming, ahead, point, at, suggested] = numbers;
  return { incoming, ahead, point, at, suggested, isLow };
}

describe('the reorder point', () => {
  // 180 g on one day of 90: a mean of 2 a day, and a deviation of √(180²/90 − 2²) = √356.
  const movements = [used('M1', 10, 180)];
  const s1 = [supplier('S1', 9, 2)];

  test('is mean use during the lead time and review days, plus a safety stock by the service level', () => {
    expect(answer({ movements }).point).toBe(14);
    expect(answer({ movements, materials: [paste({ supplier: 'S1' })], suppliers: s1 }).point).toBe(32);
    const safe = answer({
      movements,
      materials: [paste({ supplier: 'S1', serviceLevel: qty(95) })],
      suppliers: s1,
    });
    // z(95 %) = 1.6448536…: 32 + z·√(16·356 + 4·4).
    expect(safe.point).toBeCloseTo(32 + 1.644_853_626_951_472_2 * Math.sqrt(16 * 356 + 16), 6);
  });

  test('is Keep at least where that is larger', () => {
    expect(answer({ movements, materials: [paste({ keepAtLeast: qty(50) })] }).point).toBe(50);
    expect(answer({ movements, materials: [paste({ keepAtLeast: qty(5) })] }).point).toBe(14);
  });
});

describe('what to order', () => {
  const materials = [paste({ keepAtLeast: qty(100) })];
  const at = (quantity: number) => [lot('A', 'Paste', ago(30), quantity)];

  test('is nothing above the point, and low at it or below', () => {
    expect(answer({ materials, lots: at(101) })).toMatchObject({ isLow: false, suggested: 0 });
    expect(answer({ materials, lots: at(100) })).toMatchObject({ isLow: true, suggested: 0 });
    expect(answer({ materials, lots: at(40) })).toMatchObject({ isLow: true, suggested: 60 });
  });

  test('is never low at a point of 0', () => {
    expect(answer({ lots: [] })).toMatchObject({ point: 0, at: 0, isLow: false });
  });

  test('comes up to the point and the cover days, in whole packs of the supplier’s best offer', () => {
    const lots = [lot('A', 'Paste', ago(30), 220)];
    const movements = [used('M1', 10, 180)];
    const want = 100 + 2 * 30 - 40;
    expect(answer({ materials, lots, movements }).suggested).toBe(want);
    const named = [paste({ keepAtLeast: qty(100), supplier: 'S1' })];
    const suppliers = [supplier('S1', 0), supplier('S2', 0)];
    const offers = [offer('Paste', 50, 10), offer('Paste', 1, '0.01', { supplier: 'S2' })];
    expect(answer({ materials: named, suppliers, offers, lots, movements }).suggested).toBe(150);
    const others = [offer('Paste', 0.05, 10, { supplier: 'S2', unit: 'kg' })];
    expect(answer({ materials: named, suppliers, offers: others, lots, movements }).suggested).toBe(150);
  });

  test('is no more than is used up before it goes off', () => {
    const lots = [lot('A', 'Paste', ago(30), 220)];
    const movements = [used('M1', 10, 180)];
    const short = [paste({ keepAtLeast: qty(100), lifeSealedDays: 55 })];
    expect(answer({ materials: short, lots, movements }).suggested).toBe(110);
    const offers = [offer('Paste', 50, 10)];
    expect(answer({ materials: short, lots, movements, offers }).suggested).toBe(100);
    const made = { materials, lots, movements, recipes: [recipe('R', 'Paste', 100, { life: 7 })] };
    expect(answer(made).suggested).toBe(14);
  });

  test('says in a sentence why nothing is suggested', () => {
    const sentence = (some: Partial<Records>) =>
      onlyOf(noticesOn(TODAY, some), 'low').map(({ message }) => message);
    const short = [paste({ keepAtLeast: qty(100), lifeSealedDays: 5 })];
    expect(sentence({ materials, lots: at(100) })).toEqual([
      'Paste: 100 g left over, with what is on order and after what is planned; order when down to 100 g. ' +
        'None is being used up, so that nothing is suggested yet.',
    ]);
    const fresh = [lot('A', 'Paste', ago(2), 220)];
    const today = [used('M1', 0, 180)];
    expect(
      sentence({ materials: short, lots: fresh, movements: today, offers: [offer('Paste', 50, 10)] }),
    ).toEqual([
      'Paste: 40 g left over, with what is on order and after what is planned; order when down to 100 g. ' +
        'No whole pack would be used up before it goes off.',
    ]);
  });
});

describe('on order', () => {
  const suppliers = [supplier('S1', 10)];
  const orders = [order('O1', '2026-03-20'), order('O2', '2026-04-02')];
  const orderLines = [orderLine('O1', '1', 'Paste', 3, 100), orderLine('O2', '1', 'Paste', 9, 100)];
  const arrived = (line: string | undefined, quantity: number, received = '2026-03-25') =>
    lot('B', 'Paste', received, quantity, {
      order: 'o1',
      ...(line === undefined ? {} : { orderLine: line }),
    });

  test('are the lines of orders given by then, less the lots that name them', () => {
    expect(answer({ suppliers, orders, orderLines }).incoming).toBe(300);
    expect(answer({ suppliers, orders, orderLines, lots: [arrived('1', 120)] }).incoming).toBe(180);
    expect(answer({ suppliers, orders, orderLines, lots: [arrived('1', 500)] }).incoming).toBe(0);
    expect(answer({ suppliers, orders, orderLines, lots: [arrived('1', 120, '2026-04-02')] }).incoming).toBe(
      300,
    );
    expect(answer({ suppliers, orders, orderLines, lots: [arrived(undefined, 120)] }).incoming).toBe(180);
  });

  test('are not those received or cancelled', () => {
    for (const state of ['Received', 'cancelled ']) {
      expect(answer({ suppliers, orderLines, orders: [order('O1', '2026-03-20', { state })] }).incoming).toBe(
        0,
      );
    }
    expect(
      answer({ suppliers, orderLines, orders: [order('O1', '2026-03-20', { state: 'Sent' })] }).incoming,
    ).toBe(300);
  });

  test('lose a lot that names the order alone once, whichever line comes first', () => {
    const two = [orderLine('O1', '1', 'Paste', 1, 50), orderLine('O1', '2', 'Paste', 1, 100)];
    const lots = [arrived(undefined, 80)];
    expect(answer({ suppliers, orders, orderLines: two, lots }).incoming).toBe(70);
    expect(answer({ suppliers, orders, orderLines: two.toReversed(), lots }).incoming).toBe(70);
    const without = [orderLine('O1', null, 'Paste', 1, 50), ...two];
    expect(answer({ suppliers, orders, orderLines: without, lots }).incoming).toBe(120);
  });

  test('count in the position, with what may be used, less what is planned', () => {
    const lots = [lot('A', 'Paste', ago(1), 40), lot('C', 'Paste', ago(1), 7, { state: 'Set aside' })];
    const treatments = [treatment('Lining')];
    const usageRates = [rate('Lining', 'Paste', 2)];
    const rows = [plan('L1', 'Lining', 10)];
    const entries = [entry('E1', '2026-03-31', 'Lining', 3)];
    const given = answer({
      suppliers,
      orders,
      orderLines,
      lots,
      treatments,
      usageRates,
      plan: rows,
      entries,
    });
    // The 3 leaves logged, not drawn yet, come off the plan row: 7 planned and 3 undrawn.
    expect(given).toMatchObject({ incoming: 300, ahead: 20, at: 320 });
  });
});
