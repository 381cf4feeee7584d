import { describe, expect, test } from 'vitest';
import { addDays, isoDay } from '../../src/core/day.ts';
import { dailyDemand } from '../../src/core/demand.ts';
import type { MaterialRecord, Records, Row } from '../../src/core/records.ts';
import { lot, material, movement, type PlainMovement } from './helpers/stock-records.ts';
import { ledgerOf, materialNamed, on } from './helpers/studio-of.ts';

const TODAY = '2026-04-01';
const paste = (more: Partial<Omit<MaterialRecord, keyof Row>> = {}) => material('Paste', 'g', more);

function ago(days: number): string {
  return isoDay(addDays(on(TODAY), -days));
}

const used = (name: string, days: number, quantity: number, more: PlainMovement = {}) =>
  movement(name, ago(days), 'Use', 'A', quantity, more);

describe('daily demand', () => {
  const demand = (movements: Records['movements'], lots = [lot('A', 'Paste', '2024-01-01', 1000)]) => {
    const ledger = ledgerOf({ materials: [paste()], lots, movements });
    return dailyDemand(ledger, materialNamed(ledger, 'Paste'), on(TODAY));
  };

  test('is Use, Waste and Make of each day, today the last; not Count, Put back or Carried', () => {
    const kinds = ['Use', 'Waste', 'Make', 'Count', 'Put back', 'Carried'] as const;
    const daily = demand(
      kinds.map((kind, place) => movement(`M${place}`, ago(5 - place), kind, 'A', 10 + place)),
    );
    expect(daily).toHaveLength(90);
    expect(daily.slice(-7)).toEqual([0, 10, 11, 12, 0, 0, 0]);
  });

  test('reaches back to the first movement of any kind, at least 90 days, at most 365', () => {
    expect(demand([])).toHaveLength(90);
    expect(demand([movement('M1', ago(89), 'Count', 'A', 1)])).toHaveLength(90);
    expect(demand([movement('M1', ago(90), 'Count', 'A', 1)])).toHaveLength(91);
    expect(demand([movement('M1', ago(364), 'Count', 'A', 1)])).toHaveLength(365);
    const long = demand([used('M1', 365, 7), used('M2', 364, 5)]);
    expect([long.length, long[0], long.reduce((total, each) => total + each, 0)]).toEqual([365, 5, 5]);
  });

  test('leaves out what is dated after today, and counts what came too early on the day it was received', () => {
    const lots = [lot('A', 'Paste', ago(10), 1000)];
    const daily = demand([used('M1', -1, 5), used('M2', 30, 4)], lots);
    expect(daily[daily.length - 11]).toBe(4);
    expect(daily.reduce((total, each) => total + each, 0)).toBe(4);
  });

  test('forgets a movement on its own day once it is reversed', () => {
    const movements = [used('M1', 20, 5), used('M2', 3, -5, { reverses: 'M1' }), used('M3', 20, 2)];
    const daily = demand(movements);
    expect([daily[daily.length - 21], daily[daily.length - 4]]).toEqual([2, 0]);
    const later = demand([used('M1', 20, 5), used('M2', -3, -5, { reverses: 'M1' })]);
    expect(later[later.length - 21]).toBe(5);
  });

  test('leaves out the waste of a lot that had gone off, but not its use', () => {
    const lots = [lot('A', 'Paste', '2024-01-01', 1000, { useBy: ago(10) })];
    const waste = (name: string, days: number) => movement(name, ago(days), 'Waste', 'A', 3);
    const daily = demand([waste('M1', 10), waste('M2', 9), used('M3', 8, 1)], lots);
    expect(daily.slice(-11, -7)).toEqual([3, 0, 1, 0]);
  });

  test('is in the stock unit', () => {
    const lots = [lot('A', 'Paste', '2024-01-01', 1, { unit: 'kg' })];
    expect(demand([used('M1', 0, 1, { unit: 'oz' })], lots).at(-1)).toBe(28.349523125);
  });
});
