import { describe, expect, test } from 'vitest';
import type { Records } from '../../src/core/records.ts';
import { lotFigures } from '../../src/core/stock.ts';
import { lot, material, movement, type PlainMovement } from './helpers/stock-records.ts';
import { account, ledgerOf, noticesOn, on } from './helpers/studio-of.ts';
import { entry, item, job, treatment } from './helpers/work-records.ts';

const base: Partial<Records> = {
  materials: [material('Paste', 'g')],
  lots: [lot('A', 'Paste', '2026-03-01', 10), lot('B', 'Paste', '2026-03-01', 10)],
  jobs: [job('J1'), job('J2')],
  items: [item('J1', 'I1'), item('J1', 'I2')],
  treatments: [treatment('Lining')],
  entries: [entry('E1', '2026-03-02', 'Lining', 1), entry('E2', '2026-03-02', 'Lining', 1)],
};
const links = { job: 'J1', item: 'I1', entry: 'E1' };
const original = movement('M1', '2026-03-05', 'Use', 'A', 2, links);

/** What is left of lot A, and the notices about rows that can't be read: subject, column and sentence. */
function outcome(movements: Records['movements']) {
  const records = { ...base, movements };
  return {
    left: lotFigures(account(ledgerOf(records), 'A'), on('2026-03-31')).left.valueOf(),
    unreadable: noticesOn('2026-03-31', records)
      .filter(({ code }) => code === 'unreadable')
      .map(({ subject, at, message }) => [subject, at.column, message]),
  };
}

describe('a reversing row', () => {
  test('takes its original back, case and spacing aside', () => {
    const reversal = movement('M2', '2026-03-05', 'Use', ' a', -2, {
      ...links,
      entry: 'e1',
      reverses: 'm1 ',
    });
    expect(outcome([original, reversal])).toEqual({ left: 10, unreadable: [] });
    expect(outcome([reversal, original])).toEqual({ left: 10, unreadable: [] });
  });

  test.each<[Records['movements'][number]['kind'], number, number]>([
    ['Waste', 3, 7],
    ['Make', 3, 7],
    ['Carried', 3, 7],
    ['Put back', 3, 13],
    ['Count', 3, 13],
    ['Count', -3, 7],
  ])('turns the sign of a %s of %d', (kind, quantity, between) => {
    const rows = [
      movement('M1', '2026-03-05', kind, 'A', quantity),
      movement('M2', '2026-03-07', kind, 'A', -quantity, { reverses: 'M1' }),
    ];
    expect(outcome(rows.slice(0, 1)).left).toBe(between);
    expect(outcome(rows)).toEqual({ left: 10, unreadable: [] });
  });

  test.each<[string, string, string, PlainMovement, string, string]>([
    [
      'another kind',
      '2026-03-05',
      'A',
      links,
      'Kind',
      'Kind holds Waste: a row that reverses M1 repeats its Kind, Use.',
    ],
    [
      'another lot',
      '2026-03-05',
      'B',
      links,
      'Lot',
      'Lot holds B: a row that reverses M1 repeats its Lot, A.',
    ],
    [
      'another unit',
      '2026-03-05',
      'A',
      { ...links, unit: 'mg' },
      'Unit',
      'Unit holds mg: a row that reverses M1 repeats its Unit, g.',
    ],
    [
      'another job',
      '2026-03-05',
      'A',
      { ...links, job: 'J2' },
      'Job',
      'Job holds J2: a row that reverses M1 repeats its Job, J1.',
    ],
    [
      'another item',
      '2026-03-05',
      'A',
      { ...links, item: 'I2' },
      'Item',
      'Item holds I2: a row that reverses M1 repeats its Item, I1.',
    ],
    [
      'no entry',
      '2026-03-05',
      'A',
      { job: 'J1', item: 'I1' },
      'Entry',
      'Entry holds nothing: a row that reverses M1 repeats its Entry, E1.',
    ],
    [
      'an earlier day',
      '2026-03-04',
      'A',
      links,
      'Date',
      'Date holds 4 Mar 2026, before the 5 Mar 2026 of M1, which this row reverses: the same day or a later one is right.',
    ],
  ])('with %s is not counted, and said', (name, date, of, more, column, message) => {
    const kind = name === 'another kind' ? 'Waste' : 'Use';
    const reversal = movement('M2', date, kind, of, -2, { ...more, reverses: 'M1' });
    expect(outcome([original, reversal])).toEqual({ left: 8, unreadable: [['M2', column, message]] });
  });

  test('with another quantity is not counted, and said', () => {
    const reversal = movement('M2', '2026-03-05', 'Use', 'A', -1, { ...links, reverses: 'M1' });
    const message = 'Quantity holds -1: a row that reverses M1 has its quantity negated, -2.';
    expect(outcome([original, reversal])).toEqual({ left: 8, unreadable: [['M2', 'Quantity', message]] });
  });

  test('is the only one: a second is not counted', () => {
    const rows = [
      original,
      movement('M3', '2026-03-06', 'Use', 'A', -2, { ...links, reverses: 'M1' }),
      movement('M2', '2026-03-07', 'Use', 'A', -2, { ...links, reverses: 'M1' }),
    ];
    const message = 'Reverses names M1, which another row has reversed already: a movement is reversed once.';
    expect(outcome(rows)).toEqual({ left: 10, unreadable: [['M2', 'Reverses', message]] });
  });

  test('is never reversed itself, nor does it reverse itself', () => {
    const reversal = movement('M2', '2026-03-05', 'Use', 'A', -2, { ...links, reverses: 'M1' });
    const again = movement('M3', '2026-03-06', 'Use', 'A', 2, { ...links, reverses: 'M2' });
    const message =
      'Reverses names M2, which is a reversal itself: a reversal is never reversed; write the movement anew.';
    expect(outcome([original, reversal, again])).toEqual({
      left: 10,
      unreadable: [['M3', 'Reverses', message]],
    });
    const itself = movement('M4', '2026-03-05', 'Use', 'A', -2, { reverses: 'M4' });
    expect(outcome([itself]).left).toBe(10);
    expect(outcome([itself]).unreadable).toHaveLength(1);
  });
});

describe('a quantity below 0 that reverses nothing', () => {
  test.each(['Use', 'Waste', 'Make', 'Put back'] as const)('can not be read for a %s', (kind) => {
    const { left, unreadable } = outcome([movement('M1', '2026-03-05', kind, 'A', -2)]);
    expect(left).toBe(10);
    expect(unreadable).toEqual([
      [
        'M1',
        'Quantity',
        `Quantity holds -2 for a ${kind} that reverses nothing: a quantity above 0 is right (the kind says whether it ` +
          `leaves the lot), or name in Reverses the movement that this row takes back.`,
      ],
    ]);
  });

  test('is right for a Count, and for a year carried over', () => {
    expect(outcome([movement('M1', '2026-03-05', 'Count', 'A', -2)])).toEqual({ left: 8, unreadable: [] });
    expect(outcome([movement('M1', '2026-03-05', 'Carried', 'A', -2)])).toEqual({ left: 12, unreadable: [] });
  });

  test('whose original no row bears is an unknown reference, and not counted', () => {
    const movements = [movement('M1', '2026-03-05', 'Use', 'A', -2, { reverses: 'M0' })];
    expect(outcome(movements)).toEqual({ left: 10, unreadable: [] });
    expect(
      noticesOn('2026-03-31', { ...base, movements }).map(({ code, at }) => `${code} ${at.column}`),
    ).toContain('unknown-reference Reverses');
  });
});
