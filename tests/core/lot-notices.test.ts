import { describe, expect, test } from 'vitest';
import { base, lotWith, paste, said, TODAY } from './helpers/one-lot.ts';
import { lot, movement, type PlainLot, qty } from './helpers/stock-records.ts';
import { brief, noticesOn } from './helpers/studio-of.ts';

const use = (name: string, date: string, quantity: number) => movement(name, date, 'Use', 'A', quantity);

describe('a lot that goes off', () => {
  test('is expiring from warn days before, its last day included, then expired', () => {
    const codes = (day: string) => brief(noticesOn(day, { ...base, ...lotWith({ useBy: '2026-04-20' }) }));
    expect(codes('2026-04-05')).toEqual([]);
    expect(codes('2026-04-06')).toEqual(['expiring A']);
    expect(codes('2026-04-20')).toEqual(['expiring A']);
    expect(codes('2026-04-21')).toEqual(['expired A']);
  });

  test('reads well', () => {
    expect(said('expiring', lotWith({ useBy: '2026-04-03' }))).toEqual([
      ['note', 'A', 'Lot', 'Lot A (Paste) is good until 3 Apr 2026 (printed date); left in it: 10 g.'],
    ]);
    expect(said('expiring', lotWith({ useBy: TODAY }))[0]?.[3]).toBe(
      'Lot A (Paste) is good until today (printed date); left in it: 10 g.',
    );
    expect(said('expired', lotWith({ useBy: '2026-03-31' }))).toEqual([
      [
        'warn',
        'A',
        'Lot',
        'Lot A (Paste) was good until 31 Mar 2026 (printed date); left in it: 10 g. It is not drawn on by itself any more.',
      ],
    ]);
  });

  test('is not noticed once it is empty or discarded, nor before it is received; set aside it is', () => {
    const old = { useBy: '2026-03-15' };
    const empty = { ...lotWith(old), movements: [movement('M1', '2026-03-20', 'Waste', 'A', 10)] };
    expect(said('expired', empty)).toEqual([]);
    expect(said('expired', lotWith({ ...old, state: 'Discarded' }))).toEqual([]);
    expect(said('expired', lotWith({ ...old, state: 'Discarded', since: '2026-04-02' }))).toHaveLength(1);
    expect(said('expired', lotWith({ ...old, state: 'Set aside' }))).toHaveLength(1);
    expect(said('expired', { lots: [lot('A', 'Paste', '2026-04-02', 10, old)] })).toEqual([]);
  });
});

describe('the pH of a lot', () => {
  const limits = { phLow: qty(8), phHigh: qty('9.5') };
  const outside = (ph: string, more: Partial<typeof limits>, lotMore: PlainLot = {}) =>
    said('ph-outside', { materials: [paste(more)], ...lotWith({ ph, ...lotMore }) });

  test('is noticed outside what its material should have, the limits themselves are inside', () => {
    expect(outside('7.9', limits)).toEqual([
      [
        'warn',
        'A',
        'pH',
        'Lot A (Paste) has pH 7.9; by Materials it should have 8 to 9.5. Measure again, or set the lot aside.',
      ],
    ]);
    expect(outside('9.6', limits)).toHaveLength(1);
    expect(outside('8', limits)).toEqual([]);
    expect(outside('9.5', limits)).toEqual([]);
  });

  test('may have one limit only, or none', () => {
    expect(outside('3', { phHigh: qty(9) })).toEqual([]);
    expect(outside('9.1', { phHigh: qty(9) })[0]?.[3]).toContain('it should have at most 9.');
    expect(outside('4', { phLow: qty(5) })[0]?.[3]).toContain('it should have at least 5.');
    expect(outside('12', {})).toEqual([]);
  });

  test('matters only while the lot is here with something left in it', () => {
    expect(outside('3', limits, { state: 'Discarded' })).toEqual([]);
    const empty = { movements: [movement('M1', '2026-03-20', 'Waste', 'A', 10)] };
    expect(said('ph-outside', { materials: [paste(limits)], ...lotWith({ ph: 3 }), ...empty })).toEqual([]);
  });
});

describe('a test of which a part is missing', () => {
  test('is unreadable and says what is blank', () => {
    expect(said('unreadable', lotWith({ retested: '2026-03-20' }))).toEqual([
      [
        'stop',
        'A',
        'Retested until',
        'Retested until of lot A (Paste) is blank while Retested is filled, so the test is not taken into account: ' +
          'enter the day until which it was found good, or clear Retested.',
      ],
    ]);
    expect(said('unreadable', lotWith({ retestedUntil: '2026-08-20' }))[0]?.slice(2)).toEqual([
      'Retested',
      'Retested of lot A (Paste) is blank while Retested until is filled, so the test is not taken into account: ' +
        'enter the day of the test, or clear Retested until.',
    ]);
    expect(said('unreadable', lotWith({ retested: '2026-03-20', retestedUntil: '2026-08-20' }))).toEqual([]);
  });

  test('that can’t be read is not noticed a second time', () => {
    const bad = { retested: '2026-03-20', unreadable: ['Retested until'] };
    expect(said('unreadable', lotWith(bad))).toEqual([]);
  });
});

describe('a lot used against the rules', () => {
  test('more than recorded is overdrawn, unless it is discarded', () => {
    const movements = [use('M1', '2026-03-05', 12)];
    expect(said('overdrawn', { movements })).toEqual([
      [
        'stop',
        'A',
        'Quantity',
        'Lot A (Paste): more used than recorded, by 2 g. Weigh or count what is there and enter a Count in Movements, or reverse what was drawn from it by mistake.',
      ],
    ]);
    expect(said('overdrawn', { movements, ...lotWith({ state: 'Discarded' }) })).toEqual([]);
  });

  test('after its last day is expired-used, by Use and Make only, unless reversed by then', () => {
    const movements = [
      use('M1', '2026-03-15', 1),
      use('M2', '2026-03-16', 1),
      movement('M3', '2026-03-17', 'Make', 'A', 1),
      movement('M4', '2026-03-18', 'Waste', 'A', 1),
      use('M5', '2026-03-19', 1),
      movement('M6', '2026-03-25', 'Use', 'A', -1, { reverses: 'M5' }),
      use('M7', '2026-04-02', 1),
    ];
    const off = { ...lotWith({ useBy: '2026-03-15' }), movements };
    expect(said('expired-used', off)).toEqual([
      [
        'warn',
        'A',
        'Lot',
        'Lot A (Paste) was used on 17 Mar 2026, after 15 Mar 2026, the last day it was good (2 movements in all).',
      ],
    ]);
    expect(said('expired-used', off, '2026-03-24')[0]?.[3]).toContain('3 movements');
    expect(said('expired-used', off, '2026-03-15')).toEqual([]);
  });

  test('while set aside or discarded is set-aside-used, from State since on', () => {
    const movements = [use('M1', '2026-03-09', 1), use('M2', '2026-03-10', 1)];
    const barred = (more: PlainLot) => said('set-aside-used', { ...lotWith(more), movements });
    expect(barred({ state: 'Set aside', since: '2026-03-10' })).toEqual([
      [
        'stop',
        'A',
        'State',
        'Lot A (Paste) was used on 10 Mar 2026 although it was set aside (1 movement in all). ' +
          'Reverse what is wrong, or correct State or State since.',
      ],
    ]);
    expect(barred({ state: 'Set aside', since: '2026-03-11' })).toEqual([]);
    expect(barred({ state: 'Discarded' })[0]?.[3]).toContain(
      'although it was discarded (2 movements in all)',
    );
  });

  test('may be both', () => {
    const some = {
      ...lotWith({ useBy: '2026-03-05', state: 'Set aside' }),
      movements: [use('M1', '2026-03-09', 1)],
    };
    expect(brief(noticesOn(TODAY, { ...base, ...some }))).toEqual([
      'set-aside-used A',
      'expired A',
      'expired-used A',
      'low Paste',
    ]);
  });
});

describe('a movement', () => {
  test('before its lot was received is too early, unless it is reversed', () => {
    const movements = [use('M1', '2026-02-27', 1)];
    expect(said('too-early', { movements })).toEqual([
      [
        'warn',
        'M1',
        'Date',
        'Movement of 27 Feb 2026 on lot A, which was received only on 1 Mar 2026: it counts from that day. ' +
          'Correct Received of the lot, or reverse the movement.',
      ],
    ]);
    const reversed = [...movements, movement('M2', '2026-02-28', 'Use', 'A', -1, { reverses: 'M1' })];
    expect(said('too-early', { movements: reversed })).toEqual([]);
  });

  test('in a unit that does not lead to the lot’s is not counted, and said', () => {
    const movements = [movement('M1', '2026-03-05', 'Use', 'A', 1, { unit: 'ml' })];
    expect(said('no-conversion', { movements })).toEqual([
      [
        'stop',
        'M1',
        'Unit',
        'Unit holds ml, and nothing says how many g of Paste one ml is: give the size of the sheet, the grammage, ' +
          'the density or the uses that link them, or another unit. Until then it is not taken into account for lot A.',
      ],
    ]);
  });
});

describe('a count', () => {
  const differs = (more: PlainLot) =>
    said('count-differs', { ...lotWith(more), movements: [use('M1', '2026-03-05', 2)] });

  test('is a Left that was typed over and differs from the ledger', () => {
    expect(differs({ left: 7, written: 8 })).toEqual([
      [
        'warn',
        'A',
        'Left',
        'Left of lot A (Paste) was typed over with 7 g; by its movements it is 8 g. ' +
          'To keep your figure add a row to Movements, Count, quantity -1, unit g; else clear the cell.',
      ],
    ]);
    expect(differs({ left: 7 })).toHaveLength(1);
    expect(differs({ left: 0, written: 8 })).toHaveLength(1);
  });

  test('is none where Left is blank, stale, or what the ledger says', () => {
    expect(differs({ written: 9 })).toEqual([]);
    expect(differs({ left: 9, written: 9 })).toEqual([]);
    expect(differs({ left: 8, written: 9 })).toEqual([]);
  });
});
