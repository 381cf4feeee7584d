import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { check } from '../../src/core/check.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { lotFigures } from '../../src/core/stock.ts';
import { isSame, plainOf, plainStock } from './helpers/plain-simulation.ts';
import { dayAfter, runs, SEED, SPAN, someStudio } from './helpers/random-studio.ts';
import { ledgerOf, onlyOf } from './helpers/studio-of.ts';

describe(`against a plain simulation, day by day (seed ${SEED})`, () => {
  test('left, overdrawn, good until and usable are the same on every lot and day', () => {
    let compared = 0;
    let overdrawnSeen = 0;
    fc.assert(
      fc.property(someStudio, fc.integer({ min: 0, max: SPAN + 6 }), (records, offset) => {
        const ledger = ledgerOf(records);
        const today = dayAfter(offset);
        const plain = plainStock(records, today);
        const notices = check(ledger, today, []).notices;
        ledger.studio.lots.forEach((lot, place) => {
          const figures = lotFigures(accountIn(ledger, lot), today);
          const expected = plain[place];
          if (expected === undefined) throw new Error('a lot is missing');
          expect(isSame(plainOf(figures.left), expected.left), `left of ${lot.name}`).toBe(true);
          expect(figures.goodUntil, `good until of ${lot.name}`).toBe(expected.goodUntil);
          expect(figures.usable, `usable of ${lot.name}`).toBe(expected.usable);
          const isSaid = onlyOf(notices, 'overdrawn').some(({ subject }) => subject === lot.name);
          expect(isSaid, `overdrawn ${lot.name}`).toBe(expected.overdrawn && figures.state !== 'Discarded');
          compared += 1;
          if (isSaid) overdrawnSeen += 1;
        });
      }),
      runs(3000),
    );
    expect(compared).toBeGreaterThan(5000);
    expect(overdrawnSeen).toBeGreaterThan(100);
  });
});
