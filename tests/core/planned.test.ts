import { describe, expect, test } from 'vitest';
import { quantityNumber } from '../../src/core/exact-number.ts';
import { plannedUses, undrawnUses } from '../../src/core/planned-use.ts';
import type { Records } from '../../src/core/records.ts';
import { lot, material, movement } from './helpers/stock-records.ts';
import { figuresOf, ledgerOf, on } from './helpers/studio-of.ts';
import { entry, job, type PlainRate, plan, rate, supplier, treatment } from './helpers/work-records.ts';

const TODAY = '2026-04-01';
const base: Partial<Records> = {
  materials: [material('Paste', 'g', { supplier: 'S1' })],
  suppliers: [supplier('S1', 3)],
  lots: [lot('A', 'Paste', '2026-03-01', 1000)],
  treatments: [treatment('Lining'), treatment('Mending')],
  usageRates: [rate('Lining', 'Paste', 1), rate('Mending', 'Paste', 1)],
  jobs: [job('J1'), job('J2', 'On the bench')],
};

/** Planned uses as `line quantity`, earliest first. */
function uses(rows: Records['plan'], some: Partial<Records> = {}): string[] {
  return plannedUses(ledgerOf({ ...base, plan: rows, ...some }), on(TODAY)).map(
    ({ row, quantity }) => `${row.record.line ?? ''} ${quantity.toString()}`,
  );
}

describe('what is planned', () => {
  test('are the rows of jobs booked or on the bench', () => {
    const stages = [
      'Enquiry',
      'Quoted',
      'Booked',
      'On the bench',
      'Finished',
      'Handed back',
      'Declined',
    ] as const;
    const jobs = [...stages.map((stage) => job(stage, stage)), job('none', null)];
    const rows = jobs.map((each) => plan(each.job, 'Lining', 1, { job: each.job ?? '' }));
    expect(uses(rows, { jobs })).toEqual(['Booked 1', 'On the bench 1']);
  });

  test('are not the rows that are done', () => {
    expect(uses([plan('L1', 'Lining', 1, { done: true }), plan('L2', 'Lining', 2, { done: false })])).toEqual(
      ['L2 2'],
    );
  });

  test('go by day; overdue and undated ones are for today', () => {
    const rows = [
      plan('L1', 'Lining', 1, { planned: '2026-04-02' }),
      plan('L2', 'Lining', 2),
      plan('L3', 'Lining', 3, { planned: '2026-03-01' }),
    ];
    expect(uses(rows)).toEqual(['L3 3', 'L2 2', 'L1 1']);
    const days = plannedUses(ledgerOf({ ...base, plan: rows }), on(TODAY)).map(({ day }) => day);
    expect(days).toEqual([on(TODAY), on(TODAY), on('2026-04-02')]);
  });

  test('are reduced by what is logged for the same job, item and treatment, earliest rows first', () => {
    const rows = [
      plan('L1', 'Lining', 5, { planned: '2026-04-02' }),
      plan('L2', 'Lining', 3, { planned: '2026-04-01' }),
      plan('L3', 'Lining', 7, { item: 'I' }),
      plan('L4', 'Mending', 7),
      plan('L5', 'Lining', 7, { job: 'J2' }),
    ];
    const entries = [
      entry('E1', '2026-03-02', 'Lining', 2),
      entry('E2', '2026-03-03', 'lining ', 2, { job: 'j1' }),
      entry('E3', '2026-04-02', 'Lining', 1),
    ];
    expect(uses(rows, { entries })).toEqual(['L3 7', 'L4 7', 'L5 7', 'L1 4']);
  });

  test('count a fixed quantity while an extent remains, once for what it is fixed per', () => {
    const rows = [
      plan('L1', 'Lining', 1, { planned: '2026-04-02' }),
      plan('L2', 'Lining', 2, { planned: '2026-04-02', job: 'J2' }),
      plan('L3', 'Lining', 3, { planned: '2026-04-03' }),
    ];
    const fixed = (more: PlainRate, some: Partial<Records> = {}) =>
      uses(rows, { usageRates: [rate('Lining', 'Paste', 1, { fixed: 100, ...more })], ...some });
    expect(fixed({})).toEqual(['L1 101', 'L2 102', 'L3 103']);
    expect(fixed({ per: 'day' })).toEqual(['L1 101', 'L2 2', 'L3 103']);
    expect(fixed({ per: 'job' })).toEqual(['L1 101', 'L2 102', 'L3 3']);
    expect(fixed({ per: 'job' }, { entries: [entry('E1', TODAY, 'Lining', '1.5')] })).toEqual([
      'L2 102',
      'L3 102.5',
    ]);
  });

  test('within the lead time and review days count as planned, their last day included', () => {
    const rows = [
      plan('L1', 'Lining', 1, { planned: '2026-04-11' }),
      plan('L2', 'Lining', 2, { planned: '2026-04-12' }),
    ];
    const { reorder } = figuresOf(ledgerOf({ ...base, plan: rows }), 'Paste', TODAY);
    expect(quantityNumber(reorder.planned)).toBe(1);
  });
});

describe('what the log has not drawn', () => {
  const undrawn = (some: Partial<Records>) =>
    undrawnUses(ledgerOf({ ...base, ...some }), on(TODAY)).map(
      ({ entry: of, quantity }) => `${of.name} ${quantity.toString()}`,
    );

  test('is all of an entry, or the rest of one drawn in part, in the order of drawing', () => {
    const entries = [
      entry('E3', '2026-03-20', 'Lining', 3),
      entry('E2', '2026-03-02', 'Lining', 9, { drawn: 'part', drawnFor: 7 }),
      entry('E1', '2026-03-01', 'Lining', 2, { drawn: 'yes', drawnFor: 2 }),
      entry('E4', '2026-04-02', 'Lining', 4),
    ];
    const movements = [
      movement('M1', '2026-03-01', 'Use', 'A', 2, { entry: 'E1' }),
      movement('M2', '2026-03-02', 'Use', 'A', 5, { entry: 'E2' }),
    ];
    expect(undrawn({ entries, movements })).toEqual(['E2 2', 'E3 3']);
  });

  test('is what is missing in all, where two rates take one material', () => {
    const usageRates = [rate('Lining', 'Paste', 1), rate('Lining', 'Paste', 0, { fixed: 5 })];
    const entries = [entry('E1', '2026-03-02', 'Lining', 5, { drawn: 'part', drawnFor: 5 })];
    const movements = [movement('M1', '2026-03-02', 'Use', 'A', 7, { entry: 'E1' })];
    expect(undrawn({ usageRates, entries, movements })).toEqual(['E1 3']);
  });
});
