import { describe, expect, test } from 'vitest';
import { keepBooks } from '../../src/core/check.ts';
import type { Records, UnreadableIdentifiers } from '../../src/core/records.ts';
import { lot, material, movement, on, place, recipe, recipePart, rowOf } from './helpers/stock-records.ts';
import { figuresOf, ledgerOf, recordsOf, settingsOf } from './helpers/studio-of.ts';
import {
  entry,
  item,
  job,
  offer,
  order,
  orderLine,
  plan,
  rate,
  supplier,
  treatment,
} from './helpers/work-records.ts';

const base: Partial<Records> = {
  materials: [material('Paste', 'g')],
  lots: [lot('A', 'Paste', '2026-03-01', 10)],
  treatments: [treatment('Lining')],
  jobs: [job('J1')],
  items: [item('J1', 'I1')],
  suppliers: [supplier('S1')],
  places: [place('Shelf')],
  recipes: [recipe('R', 'Paste', 10)],
  orders: [order('O1', '2026-03-01')],
  orderLines: [orderLine('O1', '1', 'Paste', 1, 1)],
};

function quote(name: string, version: number): Records['quotes'][number] {
  const unsaid = { madeOn: on('2026-03-01'), state: null, currency: null, total: null };
  return { quote: name, version, job: 'J1', ...unsaid, ...rowOf('Quotes') };
}

function said(some: Partial<Records>, unreadable: UnreadableIdentifiers = {}): string[] {
  return keepBooks(recordsOf({ ...base, ...some }), settingsOf({}), unreadable).notices.map(
    ({ code, at, message }) => `${code} ${at.place.table} ${at.column} | ${message}`,
  );
}

const unknown = (some: Partial<Records>): string[] => said(some).map((text) => text.split(' | ')[0] ?? '');

describe('a name that no row bears', () => {
  test('is said with the cell, the name and what would be right', () => {
    expect(said({ lots: [lot('A', 'Pasta', '2026-03-01', 10)] })).toEqual([
      'unknown-reference Paste Material | There is no Pasta in Materials: add it there, or correct Material here.',
    ]);
  });

  test.each<[string, Partial<Records>, string]>([
    [
      'supplier of a material',
      { materials: [material('Paste', 'g', { supplier: 'X' })] },
      'Materials Supplier',
    ],
    [
      'supplier of a lot',
      { lots: [lot('A', 'Paste', '2026-03-01', 1, { supplier: 'X' })] },
      'Paste Supplier',
    ],
    ['place of a lot', { lots: [lot('A', 'Paste', '2026-03-01', 1, { place: 'X' })] }, 'Paste Place'],
    ['recipe of a lot', { lots: [lot('A', 'Paste', '2026-03-01', 1, { recipe: 'X' })] }, 'Paste Recipe'],
    ['order of a lot', { lots: [lot('A', 'Paste', '2026-03-01', 1, { order: 'X' })] }, 'Paste Order'],
    [
      'line of an order',
      { lots: [lot('A', 'Paste', '2026-03-01', 1, { order: 'O1', orderLine: '2' })] },
      'Paste Order line',
    ],
    ['lot of a movement', { movements: [movement('M', '2026-03-01', 'Use', 'X', 1)] }, 'Movements Lot'],
    [
      'job of a movement',
      { movements: [movement('M', '2026-03-01', 'Use', 'A', 1, { job: 'X' })] },
      'Movements Job',
    ],
    [
      'item of another job',
      { movements: [movement('M', '2026-03-01', 'Use', 'A', 1, { job: 'STUDIO', item: 'I1' })] },
      'Movements Item',
    ],
    [
      'entry of a movement',
      { movements: [movement('M', '2026-03-01', 'Use', 'A', 1, { entry: 'X' })] },
      'Movements Entry',
    ],
    [
      'job of an entry',
      { entries: [entry('E', '2026-03-01', 'Lining', 1, { job: 'X' })] },
      'TreatmentLog Job',
    ],
    ['treatment of an entry', { entries: [entry('E', '2026-03-01', 'X', 1)] }, 'TreatmentLog Treatment'],
    ['treatment of a rate', { usageRates: [rate('X', 'Paste', 1)] }, 'UsageRates Treatment'],
    ['material of a rate', { usageRates: [rate('Lining', 'X', 1)] }, 'UsageRates Material'],
    ['material that a recipe makes', { recipes: [recipe('R', 'X', 1)] }, 'Recipes Makes'],
    ['recipe of a part', { recipeParts: [recipePart('X', 'Paste', 1)] }, 'RecipeParts Recipe'],
    ['material of a part', { recipeParts: [recipePart('R', 'X', 1)] }, 'RecipeParts Material'],
    ['job of an item', { items: [item('X', 'I1')] }, 'Items Job'],
    ['job of a plan row', { plan: [plan('L', 'Lining', 1, { job: 'X' })] }, 'Plan Job'],
    ['item of a plan row', { plan: [plan('L', 'Lining', 1, { item: 'X' })] }, 'Plan Item'],
    ['treatment of a plan row', { plan: [plan('L', 'X', 1)] }, 'Plan Treatment'],
    ['supplier of an offer', { offers: [offer('Paste', 1, 1, { supplier: 'X' })] }, 'Offers Supplier'],
    ['material of an offer', { offers: [offer('X', 1, 1)] }, 'Offers Material'],
    ['supplier of an order', { orders: [order('O1', '2026-03-01', { supplier: 'X' })] }, 'Orders Supplier'],
    ['material of an order line', { orderLines: [orderLine('O1', '1', 'X', 1, 1)] }, 'OrderLines Material'],
    ['order of an order line', { orderLines: [orderLine('X', '1', 'Paste', 1, 1)] }, 'OrderLines Order'],
  ])('%s is noticed where it stands', (_name, some, where) => {
    expect(unknown(some)).toEqual([`unknown-reference ${where}`]);
  });

  test('is compared trimmed, and case ignored', () => {
    const movements = [movement('M', '2026-03-01', 'Use', ' a ', 1, { job: 'j1', item: 'i1 ' })];
    expect(said({ movements })).toEqual([]);
    expect(
      ledgerOf({ ...base, movements })
        .accounts.values()
        .next().value?.postings,
    ).toHaveLength(1);
  });

  test('need not be STUDIO, which takes work that is nobody’s', () => {
    expect(said({ entries: [entry('E', '2026-03-01', 'Lining', 1, { job: 'studio' })] })).toEqual([]);
  });
});

describe('a row with an unknown name', () => {
  test('is left out where it can not be worked out', () => {
    const { studio } = ledgerOf({
      ...base,
      lots: [lot('B', 'X', '2026-03-01', 1)],
      usageRates: [rate('Lining', 'X', 1), rate('Lining', 'Paste', 1)],
      entries: [entry('E1', '2026-03-01', 'X', 1), entry('E2', '2026-03-01', 'Lining', 1, { job: 'X' })],
      plan: [plan('L1', 'X', 1), plan('L2', 'Lining', 1, { job: 'X' })],
    });
    expect([studio.lots, studio.entries, studio.plan]).toEqual([[], [], []]);
    expect(studio.treatments[0]?.rates).toHaveLength(1);
  });

  test('counts where only a job, an entry or a supplier is unknown', () => {
    const ledger = ledgerOf({
      ...base,
      lots: [lot('A', 'Paste', '2026-03-01', 10, { supplier: 'X' })],
      movements: [movement('M', '2026-03-02', 'Use', 'A', 4, { job: 'X', entry: 'Y' })],
    });
    expect(figuresOf(ledger, 'Paste', '2026-04-01').left?.valueOf()).toBe(6);
  });
});

describe('a row that can not be read', () => {
  test('is told apart from one that is not there, and a movement on it is not noticed again', () => {
    const lots = new Set(['b']);
    expect(said({ movements: [movement('M', '2026-03-01', 'Use', 'B', 1)] }, { lots })).toEqual([]);
    const usageRates = [rate('Lining', 'Glue', 1)];
    expect(said({ usageRates }, { materials: new Set(['glue']) })).toEqual([
      "unknown-reference UsageRates Material | The row of Glue in Materials can't be read, and Material names it: mend that row first.",
    ]);
  });
});

describe('an identifier that stands twice', () => {
  test('is noticed at the second; both lots count, and the first serves references', () => {
    const lots = [lot('A', 'Paste', '2026-03-01', 10), lot('a', 'Paste', '2026-03-01', 5)];
    const movements = [movement('M', '2026-03-02', 'Use', 'A', 2)];
    const notices = said({ lots, movements });
    expect(notices).toHaveLength(1);
    expect(notices[0]).toContain('duplicate-id Paste Lot | Lot a stands in two rows');
    const ledger = ledgerOf({ ...base, lots, movements });
    expect([...ledger.accounts.values()].map(({ postings }) => postings.length)).toEqual([1, 0]);
    expect(figuresOf(ledger, 'Paste', '2026-04-01').left?.valueOf()).toBe(13);
  });

  test('of two movements both count', () => {
    const movements = [
      movement('M', '2026-03-02', 'Use', 'A', 2),
      movement('m', '2026-03-03', 'Use', 'A', 1),
    ];
    expect(figuresOf(ledgerOf({ ...base, movements }), 'Paste', '2026-04-01').left?.valueOf()).toBe(7);
    expect(unknown({ movements })).toEqual(['duplicate-id Movements Movement']);
  });

  test('is no duplicate within another job or order', () => {
    const items = [item('J1', 'I1'), item('STUDIO', 'I1')];
    const orders = [order('O1', '2026-03-01'), order('O2', '2026-03-01')];
    const orderLines = [orderLine('O1', '1', 'Paste', 1, 1), orderLine('O2', '1', 'Paste', 1, 1)];
    expect(said({ items, orders, orderLines })).toEqual([]);
    expect(unknown({ items: [item('J1', 'I1'), item('j1', 'i1')] })).toEqual(['duplicate-id Items Item']);
  });

  test('of a quote is its version; the notice is about the quote', () => {
    const quotes = [quote('Q1', 1), quote('Q1', 2), quote('q1', 2)];
    expect(unknown({ quotes })).toEqual(['duplicate-id Quotes Version']);
    const { notices } = keepBooks(recordsOf({ ...base, quotes }), settingsOf({}), {});
    expect(notices.map(({ subject }) => subject)).toEqual(['q1']);
  });

  test('may be blank in any number of rows', () => {
    expect(
      said({ entries: [entry(null, '2026-03-01', 'Lining', 1), entry(null, '2026-03-01', 'Lining', 1)] }),
    ).toEqual([]);
  });
});
