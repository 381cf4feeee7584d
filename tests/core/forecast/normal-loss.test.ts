import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectedShortage, fillRate } from '../../../src/core/forecast/normal-loss.ts';

/** The loss of a standard normal need. */
const loss = (z: number): number => expectedShortage(z, 0, 1);

describe('outside checks', () => {
  test.each([
    // L(z) computed with scipy 1.17.1.
    [0, 0.398_942],
    [0.25, 0.286_345],
    [0.5, 0.197_797],
    [0.75, 0.131_167],
    [1, 0.083_315],
    [1.28, 0.047_499],
    [1.5, 0.029_307],
    [1.645, 0.020_886],
    [1.75, 0.016_174],
    [2, 0.008_491],
    [2.33, 0.003_352],
    [2.5, 0.002_004],
    [3, 0.000_382],
  ])('L(%d) is %d', (z, value) => {
    expect(Math.abs(loss(z) - value)).toBeLessThan(6e-7);
  });

  test.each([
    // The same table below 0.
    [-3, 3.000_382_154_3],
    [-2, 2.008_490_702_6],
    [-1.6, 1.623_241_968],
  ])('L(%d) is %d', (z, value) => {
    expect(loss(z)).toBeCloseTo(value, 9);
  });

  test('a published table has 0.112 at 0.8416; its 0.00352 at 2.33 is a misprint for 0.00335', () => {
    // A table of lecture notes: read. The misprint shows between its neighbours, as the loss falls.
    expect(loss(0.8416)).toBeCloseTo(0.112, 3);
    // At the exact z of 80 %: recomputed with the complementary error function of another language.
    expect(loss(0.841_621_233_572_9)).toBeCloseTo(0.111_637_673_7, 9);
    expect(loss(2.33)).toBeCloseTo(0.003_35, 5);
    expect(Math.abs(loss(2.33) - 0.003_52)).toBeGreaterThan(1.5e-4);
  });

  test('250 ± 150 a week, 2 weeks, ordered at 600 by 1000: 43.86 short for each order, 96 % served', () => {
    // Chopra & Meindl, Supply Chain Management, exercise 11-4, worksheet read: 43.86 and 0.96; 43.8613 and 0.95614
    // recomputed. The chance that nothing is short is only 68 %.
    const deviation = 150 * Math.sqrt(2);
    expect(expectedShortage(600, 500, deviation)).toBeCloseTo(43.8613, 4);
    expect(fillRate(600, 500, deviation, 1000)).toBeCloseTo(0.956_14, 5);
  });

  test('2500 ± 500 a week, 2 weeks, ordered at 6000 by 10 000: 25.13 short for each order, 99.75 % served', () => {
    // Chopra & Meindl, Supply Chain Management: from memory, recomputed.
    const deviation = 500 * Math.sqrt(2);
    expect(expectedShortage(6000, 5000, deviation)).toBeCloseTo(25.127, 3);
    expect(fillRate(6000, 5000, deviation, 10_000)).toBeCloseTo(0.997_49, 5);
  });

  test('the same serves 97.5 % with a safety stock of 66.7', () => {
    // Chopra & Meindl, Supply Chain Management: from memory, recomputed.
    expect(fillRate(5066.7, 5000, 500 * Math.sqrt(2), 10_000)).toBeCloseTo(0.975, 5);
  });

  test.each([
    // A published newsvendor exercise, N(1000, 200): data read; what isn't served recomputed.
    [1051, 56.87],
    [1169, 22.19],
  ])('of a need of 1000 ± 200, %d leave %d unserved', (level, short) => {
    expect(expectedShortage(level, 1000, 200)).toBeCloseTo(short, 2);
  });
});

describe('properties', () => {
  const amount = fc.double({ min: 0, max: 1000, noNaN: true });
  const wide = fc.double({ min: 0.1, max: 1000, noNaN: true });

  test('what is short less what is left over is the mean less the level', () => {
    fc.assert(
      fc.property(amount, amount, wide, (level, mean, deviation) => {
        const leftOver = expectedShortage(-level, -mean, deviation);
        const difference = expectedShortage(level, mean, deviation) - leftOver;
        expect(Math.abs(difference - (mean - level))).toBeLessThan(1e-8 * (level + mean + deviation));
      }),
    );
  });

  test('a certain need is short by what is missing, and a nearly certain one by nearly that', () => {
    fc.assert(
      fc.property(amount, amount, (level, mean) => {
        expect(expectedShortage(level, mean, 0)).toBe(Math.max(mean - level, 0));
        expect(Math.abs(expectedShortage(level, mean, 1e-6) - expectedShortage(level, mean, 0))).toBeLessThan(
          1e-6,
        );
      }),
    );
  });

  test('the share served lies between 0 and 1 and rises with the level', () => {
    fc.assert(
      fc.property(amount, amount, amount, wide, (level, more, mean, deviation) => {
        const low = fillRate(level, mean, deviation, 100);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(fillRate(level + more, mean, deviation, 100)).toBeGreaterThanOrEqual(low - 1e-12);
        expect(fillRate(level + more, mean, deviation, 100)).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
  });
});
