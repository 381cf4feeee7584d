import { describe, expect, test } from 'vitest';
import type { Records } from '../../src/core/records.ts';
import { lot, material, movement, type PlainMovement } from './helpers/stock-records.ts';
import { draw, ledgerOf, taken } from './helpers/studio-of.ts';
import { entry, job, type PlainRate, rate, treatment } from './helpers/work-records.ts';

const TODAY = '2026-04-01';
const materials = [material('Paste', 'g')];
const base: Partial<Records> = {
  materials,
  lots: [lot('P', 'Paste', '2026-03-01', 1000)],
  treatments: [treatment('Lining')],
  jobs: [job('J1'), job('J2')],
};

function drawn(more: PlainRate, some: Partial<Records>): string[] {
  return taken(draw(ledgerOf({ ...base, usageRates: [rate('Lining', 'Paste', 1, more)], ...some }), TODAY));
}

const use = (name: string, date: string, quantity: number, more: PlainMovement = {}) =>
  movement(name, date, 'Use', 'P', quantity, more);

const log = [
  entry('E3', '2026-03-11', 'Lining', 3),
  entry('E1', '2026-03-10', 'Lining', 1),
  entry('E2', '2026-03-10', 'Lining', 2, { job: 'J2' }),
  entry('E4', '2026-03-12', 'Lining', 4, { job: 'J2' }),
];

describe('a fixed quantity', () => {
  test('per entry is drawn by each, also where Fixed per is blank', () => {
    const each = ['E1 P 101 g', 'E2 P 102 g', 'E3 P 103 g', 'E4 P 104 g'];
    expect(drawn({ fixed: 100, per: 'entry' }, { entries: log })).toEqual(each);
    expect(drawn({ fixed: 100 }, { entries: log })).toEqual(each);
  });

  test('per day is drawn by the first entry of the day, whatever its job', () => {
    const expected = ['E1 P 101 g', 'E2 P 2 g', 'E3 P 103 g', 'E4 P 104 g'];
    expect(drawn({ fixed: 100, per: 'day' }, { entries: log })).toEqual(expected);
  });

  test('per job is drawn by the first entry in the job', () => {
    const expected = ['E1 P 101 g', 'E2 P 102 g', 'E3 P 3 g', 'E4 P 4 g'];
    expect(drawn({ fixed: 100, per: 'job' }, { entries: log })).toEqual(expected);
  });

  test('carries its waste', () => {
    expect(drawn({ fixed: 100, per: 'job', waste: 10 }, { entries: log.slice(0, 1) })).toEqual([
      'E3 P 113.3 g',
    ]);
  });

  test('is left to the entry that has it drawn, though an earlier one comes after', () => {
    const movements = [use('M1', '2026-03-11', 103, { entry: 'E3' })];
    const expected = ['E1 P 1 g', 'E2 P 102 g', 'E4 P 4 g'];
    expect(drawn({ fixed: 100, per: 'job' }, { entries: log, movements })).toEqual(expected);
  });

  test('is taken by the first that is still to be drawn where no drawn one has it', () => {
    const movements = [use('M1', '2026-03-10', 1, { entry: 'E1' })];
    const expected = ['E2 P 102 g', 'E3 P 103 g', 'E4 P 4 g'];
    expect(drawn({ fixed: 100, per: 'job' }, { entries: log, movements })).toEqual(expected);
  });

  test('goes back to the entry that took it when that is undone', () => {
    const movements = [
      use('M1', '2026-03-10', 101, { entry: 'E1' }),
      use('M2', '2026-03-11', 3, { entry: 'E3' }),
      use('M3', '2026-03-20', -101, { entry: 'E1', reverses: 'M1' }),
    ];
    const expected = ['E1 P 101 g', 'E2 P 102 g', 'E4 P 4 g'];
    expect(drawn({ fixed: 100, per: 'job' }, { entries: log, movements })).toEqual(expected);
  });

  test('is not mistaken for what another rate draws of the same material', () => {
    const usageRates = [rate('Lining', 'Paste', 1), rate('Lining', 'Paste', 0, { fixed: 100, per: 'job' })];
    const movements = [use('M2', '2026-03-11', 3, { entry: 'E3' })];
    const expected = ['E1 P 1 g', 'E1 P 100 g'];
    expect(drawn({}, { entries: log.slice(0, 2), movements, usageRates })).toEqual(expected);
  });

  test('is drawn once also where whole units hide it', () => {
    const movements = [use('M1', '2026-03-10', 1, { entry: 'E1' })];
    const usageRates = [rate('Lining', 'Paste', '0.5', { fixed: '0.5', per: 'job', whole: true })];
    const entries = [entry('E1', '2026-03-10', 'Lining', 1), entry('E3', '2026-03-11', 'Lining', 2)];
    expect(drawn({}, { entries, usageRates })).toEqual(['E1 P 1 g', 'E3 P 1 g']);
    expect(drawn({}, { entries, usageRates, movements })).toEqual(['E3 P 1 g']);
  });

  test('stays missing in whole units where a later entry has drawn as much without it', () => {
    const usageRates = [rate('Lining', 'Paste', '0.5', { fixed: '0.5', per: 'job', whole: true })];
    const entries = [entry('E1', '2026-02-10', 'Lining', 0), entry('E2', '2026-03-11', 'Lining', 1)];
    const first = draw(ledgerOf({ ...base, usageRates, entries }), TODAY);
    expect(taken(first)).toEqual(['E2 P 1 g', 'E1 - Paste 1 g']);
    expect(taken(draw(first.ledger, TODAY))).toEqual(['E1 - Paste 1 g']);
  });

  test('waits with an entry after today', () => {
    const entries = [entry('E1', '2026-04-02', 'Lining', 1), entry('E2', '2026-04-01', 'Lining', 2)];
    expect(drawn({ fixed: 100, per: 'job' }, { entries })).toEqual(['E2 P 102 g']);
  });

  test('stays with the entry that is drawn in part', () => {
    const entries = [
      entry('E1', '2026-03-10', 'Lining', 900, { drawn: 'part', drawnFor: 900 }),
      entry('E3', '2026-03-11', 'Lining', 3),
    ];
    const movements = [use('M1', '2026-03-10', 850, { entry: 'E1' })];
    expect(drawn({ fixed: 100, per: 'job' }, { entries, movements })).toEqual([
      'E1 P 150 g',
      'E3 - Paste 3 g',
    ]);
  });
});
