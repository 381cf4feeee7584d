import { describe, expect, test } from 'vitest';
import type { Records } from '../../src/core/records.ts';
import { lot, material, movement, recipe, recipePart } from './helpers/stock-records.ts';
import { noticesOn, onlyOf } from './helpers/studio-of.ts';
import { entry, job, order, orderLine, plan, rate, supplier, treatment } from './helpers/work-records.ts';

const TODAY = '2026-04-01';
const base: Partial<Records> = {
  materials: [material('Paste', 'g'), material('Starch', 'g')],
  suppliers: [supplier('S1', 10)],
  treatments: [treatment('Lining')],
  usageRates: [rate('Lining', 'Paste', 1)],
  jobs: [job('J1'), job('J2')],
};

function short(some: Partial<Records>): string[] {
  return onlyOf(noticesOn(TODAY, { ...base, ...some }), 'short-for-job').map(
    ({ subject, message }) => `${subject} | ${message}`,
  );
}

const later = plan('L1', 'Lining', 30, { planned: '2026-04-20' });

describe('short for a job', () => {
  test('is a plan row that needs more than can be used on its day', () => {
    expect(short({ plan: [later], lots: [lot('A', 'Paste', '2026-03-01', 30)] })).toEqual([]);
    expect(short({ plan: [later], lots: [lot('A', 'Paste', '2026-03-01', 29)] })).toEqual([
      'J1 | J1: Lining on 20 Apr 2026 needs 30 g of Paste; missing on that day: 1 g.',
    ]);
  });

  test('judges lots on that day: gone off, set aside or received by then', () => {
    const whole = (more: Parameters<typeof lot>[4], received = '2026-03-01') =>
      short({ plan: [later], lots: [lot('A', 'Paste', received, 30, more)] }).length;
    expect(whole({ useBy: '2026-04-20' })).toBe(0);
    expect(whole({ useBy: '2026-04-19' })).toBe(1);
    expect(whole({ state: 'Set aside', since: '2026-04-20' })).toBe(1);
    expect(whole({ state: 'Set aside', since: '2026-04-21' })).toBe(0);
    expect(whole({}, '2026-04-20')).toBe(0);
    expect(whole({}, '2026-04-21')).toBe(1);
  });

  test('takes off what earlier rows need, also of other jobs; says all rows of a job in one notice', () => {
    const rows = [
      plan('L1', 'Lining', 30, { planned: '2026-04-20' }),
      plan('L2', 'Lining', 20, { planned: '2026-04-10', job: 'J2' }),
      plan('L3', 'Lining', 5, { planned: '2026-04-21', job: 'j1' }),
      plan('L4', 'Lining', 5, { planned: '2026-04-22', job: 'J1' }),
    ];
    expect(short({ plan: rows, lots: [lot('A', 'Paste', '2026-03-01', 40)] })).toEqual([
      'J1 | J1: Lining on 20 Apr 2026 needs 30 g of Paste; missing on that day: 10 g, and for 2 later plan rows as well.',
    ]);
  });

  test('lets earlier rows use up lots that will have gone off', () => {
    const rows = [plan('L2', 'Lining', 20, { planned: '2026-04-10' }), later];
    const lots = [
      lot('A', 'Paste', '2026-03-01', 20, { useBy: '2026-04-10' }),
      lot('B', 'Paste', '2026-03-01', 30),
    ];
    expect(short({ plan: rows, lots })).toEqual([]);
  });

  test('takes off what the log has not drawn', () => {
    const entries = [entry('E1', '2026-03-10', 'Lining', 10, { job: 'J2' })];
    const lots = [lot('A', 'Paste', '2026-03-01', 35)];
    expect(short({ plan: [later], lots, entries })[0]).toContain('missing on that day: 5 g');
    const movements = [movement('M1', '2026-03-10', 'Use', 'A', 10, { entry: 'E1' })];
    expect(short({ plan: [later], lots: [lot('A', 'Paste', '2026-03-01', 40)], entries, movements })).toEqual(
      [],
    );
  });

  test('takes off what the log could not draw on its day from what came later', () => {
    const entries = [entry('E1', '2026-03-10', 'Lining', 10, { job: 'J2' })];
    const lots = [lot('A', 'Paste', '2026-03-20', 35)];
    expect(short({ plan: [later], lots, entries })[0]).toContain('missing on that day: 5 g');
    const orders = [order('O1', '2026-03-30', { expected: '2026-04-20' })];
    const orderLines = [orderLine('O1', '1', 'Paste', 35, 1)];
    expect(short({ plan: [later], orders, orderLines, entries })[0]).toContain('missing on that day: 5 g');
  });

  test('adds orders expected by then, by Expected or the supplier’s lead time', () => {
    const orderLines = [orderLine('O1', '1', 'Paste', 3, 10)];
    const missing = (orders: Records['orders'], materials = base.materials ?? []) =>
      short({ plan: [later], orders, orderLines, materials }).length;
    expect(missing([order('O1', '2026-03-30', { expected: '2026-04-20' })])).toBe(0);
    expect(missing([order('O1', '2026-03-30', { expected: '2026-04-21' })])).toBe(1);
    expect(missing([order('O1', '2026-03-30')])).toBe(1);
    const supplied = [material('Paste', 'g', { supplier: 'S1' })];
    expect(missing([order('O1', '2026-03-30')], supplied)).toBe(0);
    expect(missing([order('O1', '2026-03-30', { state: 'Cancelled' })], supplied)).toBe(1);
  });

  test('counts an order once for two rows', () => {
    const orders = [order('O1', '2026-03-30', { expected: '2026-04-02' })];
    const orderLines = [orderLine('O1', '1', 'Paste', 4, 10)];
    const rows = [later, plan('L2', 'Lining', 30, { planned: '2026-04-21', job: 'J2' })];
    expect(short({ plan: rows, orders, orderLines })).toEqual([
      'J2 | J2: Lining on 21 Apr 2026 needs 30 g of Paste; missing on that day: 20 g.',
    ]);
  });

  test('does not count what could still be made', () => {
    const recipes = [recipe('R', 'Paste', 100)];
    const recipeParts = [recipePart('R', 'Starch', 20)];
    const lots = [lot('S', 'Starch', '2026-03-01', 500)];
    expect(short({ plan: [later], lots, recipes, recipeParts })).toHaveLength(1);
  });

  test('never comes of what is not counted', () => {
    expect(short({ plan: [later], materials: [material('Paste', 'g', { counted: false })] })).toEqual([]);
  });

  test('does not depend on the order of the log', () => {
    const lots = [
      lot('A', 'Paste', '2026-03-01', 10, { useBy: '2026-03-20' }),
      lot('B', 'Paste', '2026-03-12', 10, { useBy: '2026-04-19' }),
    ];
    const entries = [entry('E1', '2026-03-10', 'Lining', 10), entry('E2', '2026-03-15', 'Lining', 10)];
    const rows = [plan('L1', 'Lining', 1, { planned: '2026-04-10', job: 'J2' })];
    const inOrder = short({ plan: rows, lots, entries });
    expect(inOrder[0]).toContain('missing on that day: 1 g');
    expect(short({ plan: rows, lots, entries: entries.toReversed() })).toEqual(inOrder);
  });
});
