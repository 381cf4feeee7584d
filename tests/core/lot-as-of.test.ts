import { describe, expect, test } from 'vitest';
import type { Records } from '../../src/core/records.ts';
import { lotFigures } from '../../src/core/stock.ts';
import { lot, material, movement, type PlainLot } from './helpers/stock-records.ts';
import { account, euro, figuresOf, ledgerOf, on } from './helpers/studio-of.ts';

const materials = [material('Paste', 'g')];

function figures(day: string, movements: Records['movements'], more: PlainLot = {}) {
  const ledger = ledgerOf({
    materials,
    lots: [lot('A', 'Paste', '2026-03-01', 10, { cost: 5, ...more })],
    movements,
  });
  const { left, state, usable, worth } = lotFigures(account(ledger, 'A'), on(day));
  return { left: left.valueOf(), state, usable, worth: euro(worth) };
}

describe('a lot on a day', () => {
  test('takes Use, Waste, Make and Carried off, puts Put back on, and lets a Count do either', () => {
    const movements = [
      movement('M1', '2026-03-02', 'Use', 'A', 1),
      movement('M2', '2026-03-03', 'Waste', 'A', '0.5'),
      movement('M3', '2026-03-04', 'Make', 'A', 2),
      movement('M4', '2026-03-05', 'Carried', 'A', 1),
      movement('M5', '2026-03-06', 'Put back', 'A', '0.25'),
      movement('M6', '2026-03-07', 'Count', 'A', '-0.75'),
      movement('M7', '2026-03-08', 'Count', 'A', 3),
    ];
    const lefts = ['01', '02', '03', '04', '05', '06', '07', '08', '31'].map(
      (day) => figures(`2026-03-${day}`, movements).left,
    );
    expect(lefts).toEqual([10, 9, 8.5, 6.5, 5.5, 5.75, 5, 8, 8]);
  });

  test('a year that was carried over may have put back more than it drew', () => {
    expect(figures('2026-03-31', [movement('M1', '2026-03-01', 'Carried', 'A', -2)]).left).toBe(12);
  });

  test('is listed before it is received, with nothing left and all its worth', () => {
    expect(figures('2026-02-28', [])).toEqual({ left: 0, state: 'Usable', usable: false, worth: '5.00' });
  });

  test('counts a movement before it was received from that day', () => {
    const early = [movement('M1', '2026-02-01', 'Use', 'A', 1)];
    expect(figures('2026-02-15', early).left).toBe(0);
    expect(figures('2026-03-01', early).left).toBe(9);
  });

  test('stays below nothing where more was used than recorded', () => {
    const movements = [
      movement('M1', '2026-03-02', 'Use', 'A', 12),
      movement('M2', '2026-03-04', 'Count', 'A', 3),
    ];
    expect(figures('2026-03-02', movements)).toEqual({
      left: -2,
      state: 'Usable',
      usable: false,
      worth: '-1.00',
    });
    expect(figures('2026-03-04', movements).left).toBe(1);
  });

  test('has nothing left below a millionth of its quantity, of either sign', () => {
    expect(figures('2026-03-02', [movement('M1', '2026-03-02', 'Use', 'A', '9.999991')]).left).toBe(0);
    expect(figures('2026-03-02', [movement('M1', '2026-03-02', 'Use', 'A', '10.000009')]).left).toBe(0);
    expect(figures('2026-03-02', [movement('M1', '2026-03-02', 'Use', 'A', '9.99999')]).left).toBe(0.00001);
  });

  test('is set aside from State since, and always where that is blank', () => {
    expect(figures('2026-03-09', [], { state: 'Set aside', since: '2026-03-10' })).toMatchObject({
      state: 'Usable',
      usable: true,
    });
    expect(figures('2026-03-10', [], { state: 'Set aside', since: '2026-03-10' })).toMatchObject({
      state: 'Set aside',
      usable: false,
    });
    expect(figures('2026-03-02', [], { state: 'Discarded' })).toMatchObject({ state: 'Discarded', left: 10 });
  });

  test('the movements of a day of which a reversal is one count it from its own day', () => {
    const movements = [
      movement('M1', '2026-03-02', 'Use', 'A', 4),
      movement('M2', '2026-03-05', 'Use', 'A', -4, { reverses: 'M1' }),
    ];
    expect(figures('2026-03-04', movements).left).toBe(6);
    expect(figures('2026-03-05', movements).left).toBe(10);
  });
});

describe('a material on a day', () => {
  test('adds up lots in its stock unit: expired, set aside and overdrawn ones left, discarded ones not', () => {
    const ledger = ledgerOf({
      materials,
      lots: [
        lot('good', 'Paste', '2026-03-01', '0.5', { unit: 'kg', useBy: '2026-05-01' }),
        lot('better', 'Paste', '2026-03-01', 4, { useBy: '2026-04-15' }),
        lot('expired', 'Paste', '2026-03-01', 30, { useBy: '2026-03-05' }),
        lot('aside', 'Paste', '2026-03-01', 10, { state: 'Set aside' }),
        lot('gone', 'Paste', '2026-03-01', 1000, { state: 'Discarded' }),
        lot('over', 'Paste', '2026-03-01', 1),
        lot('to come', 'Paste', '2026-04-02', 1),
      ],
      movements: [movement('M1', '2026-03-02', 'Use', 'over', 8)],
    });
    const { left, usable, goodUntil } = figuresOf(ledger, 'Paste', '2026-04-01');
    expect([left?.valueOf(), usable?.valueOf(), goodUntil]).toEqual([537, 504, on('2026-04-15')]);
  });

  test('has no worth as soon as a lot with something left has no cost', () => {
    const worth = (movements: Records['movements']) => {
      const lots = [lot('A', 'Paste', '2026-03-01', 1, { cost: 3 }), lot('B', 'Paste', '2026-03-01', 1)];
      return euro(figuresOf(ledgerOf({ materials, lots, movements }), 'Paste', '2026-03-31').worth);
    };
    expect(worth([])).toBe(null);
    expect(worth([movement('M1', '2026-03-02', 'Use', 'B', 1)])).toBe('3.00');
  });

  test('that is not counted has no left, no usable amount and no worth', () => {
    const ledger = ledgerOf({
      materials: [material('Water', 'l', { counted: false })],
      lots: [lot('W', 'Water', '2026-03-01', 5, { unit: 'l', cost: 1 })],
    });
    expect(figuresOf(ledger, 'Water', '2026-03-31')).toMatchObject({ left: null, usable: null, worth: null });
  });
});
