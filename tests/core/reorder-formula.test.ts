import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dailyStatistics,
  leadTimeDeviation,
  type ReorderFigures,
  reorderPoint,
  ServiceLevelError,
  serviceFactor,
} from '../../src/core/reorder-formula.ts';

const amount = fc.double({ min: 0, max: 1000, noNaN: true });
const someDays = fc.array(amount, { minLength: 1, maxLength: 365 });
const level = fc.double({ min: 0.1, max: 99.9, noNaN: true });
const someFigures: fc.Arbitrary<ReorderFigures> = fc.record({
  keepAtLeast: amount,
  meanDaily: amount,
  deviationDaily: amount,
  leadDays: amount,
  leadSpreadDays: amount,
  factor: fc.double({ min: 0, max: 4, noNaN: true }),
});

describe('properties', () => {
  test('the mean lies between the least and the most, and times the days it is the total', () => {
    fc.assert(
      fc.property(someDays, (daily) => {
        const { mean } = dailyStatistics(daily);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...daily) - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...daily) + 1e-9);
        expect(mean * daily.length).toBeCloseTo(
          daily.reduce((total, quantity) => total + quantity, 0),
          6,
        );
      }),
    );
  });

  test('the variance is the mean of the squares less the square of the mean', () => {
    fc.assert(
      fc.property(someDays, (daily) => {
        const { mean, deviation } = dailyStatistics(daily);
        const squares = dailyStatistics(daily.map((quantity) => quantity ** 2)).mean;
        expect(deviation ** 2).toBeCloseTo(squares - mean ** 2, 5);
      }),
    );
  });

  test('the order of the days does not matter, and the same on every day does not deviate', () => {
    fc.assert(
      fc.property(someDays, (daily) => {
        const turned = dailyStatistics(daily.toReversed());
        expect(turned.mean).toBeCloseTo(dailyStatistics(daily).mean, 8);
        expect(turned.deviation).toBeCloseTo(dailyStatistics(daily).deviation, 8);
      }),
    );
    fc.assert(
      fc.property(amount, fc.integer({ min: 1, max: 365 }), (quantity, days) => {
        expect(dailyStatistics(Array.from({ length: days }, () => quantity)).deviation).toBeCloseTo(0, 8);
      }),
    );
  });

  test('the factor is symmetric about 50 % and rises with the service level', () => {
    fc.assert(
      fc.property(level, level, (a, b) => {
        expect(serviceFactor(100 - a)).toBeCloseTo(-serviceFactor(a), 8);
        if (b - a > 1e-9) expect(serviceFactor(b)).toBeGreaterThan(serviceFactor(a));
      }),
    );
  });

  test('the variances of use and of lead time add up', () => {
    fc.assert(
      fc.property(amount, amount, amount, amount, (leadDays, deviation, mean, spread) => {
        const both = leadTimeDeviation(leadDays, deviation, mean, spread);
        const use = leadTimeDeviation(leadDays, deviation, mean, 0);
        const lead = leadTimeDeviation(leadDays, 0, mean, spread);
        expect(Math.abs(both - Math.hypot(use, lead))).toBeLessThanOrEqual(1e-9 * Math.max(1, both));
      }),
    );
  });

  test('the reorder point is never below Keep at least nor below the mean use during the lead time', () => {
    fc.assert(
      fc.property(someFigures, (figures) => {
        const point = reorderPoint(figures);
        expect(point).toBeGreaterThanOrEqual(figures.keepAtLeast);
        expect(point).toBeGreaterThanOrEqual(figures.meanDaily * figures.leadDays);
        expect(reorderPoint({ ...figures, factor: figures.factor + 0.5 })).toBeGreaterThanOrEqual(point);
      }),
    );
  });
});

test.each([5e-298, 1e-20, 99.9999999999999])(
  'a service level of %d %% gives a reorder point of at least Keep at least, with and without deviation',
  (percent) => {
    const figures = { keepAtLeast: 2, meanDaily: 0, leadDays: 10, leadSpreadDays: 0 };
    const factor = serviceFactor(percent);
    expect(reorderPoint({ ...figures, deviationDaily: 0, factor })).toBe(2);
    const point = reorderPoint({ ...figures, deviationDaily: 1, factor });
    expect(point).toBeGreaterThanOrEqual(2);
    expect(Number.isFinite(point)).toBe(true);
  },
);

describe('outside checks', () => {
  test('mean 5 and population standard deviation 2', () => {
    // The usual example 2 4 4 4 5 5 7 9 of encyclopaedias: from memory.
    expect(dailyStatistics([2, 4, 4, 4, 5, 5, 7, 9])).toEqual({ mean: 5, deviation: 2 });
  });

  test('the squared coefficient of variation of an intermittent demand is 0.79778', () => {
    // Series productC of an R data package, the sizes of its 11 demands, read; 0.79778 is the population
    // figure (the sample figure is 0.87756), both recomputed elsewhere.
    const { mean, deviation } = dailyStatistics([2, 1, 11, 2, 6, 3, 7, 3, 1, 1, 1]);
    expect((deviation / mean) ** 2).toBeCloseTo(0.79778, 5);
  });

  test.each([
    // Standard normal quantiles: from memory, and the same by Python's statistics.NormalDist().inv_cdf, run.
    [50, 0],
    [80, 0.8416212335729],
    [90, 1.2815515655446],
    [95, 1.6448536269515],
    [97.5, 1.9599639845401],
    [99, 2.326347874040841],
    [99.9, 3.090232306167813],
    [1, -2.326347874040841],
  ])('the factor of %d %% is %d', (percent, z) => {
    expect(serviceFactor(percent)).toBeCloseTo(z, 12);
  });

  test.each([
    // z and the share Φ(z) below it, computed with scipy 1.17.1. (The loss L(z) of the same table is another
    // thing: it gives the expected shortfall, of which no service factor is made here.)
    [-1, 0.1586552539],
    [0.25, 0.5987063257],
    [0.5, 0.6914624613],
    [0.85, 0.8023374569],
    [1, 0.8413447461],
    [1.3, 0.9031995154],
    [1.65, 0.950528532],
    [2, 0.9772498681],
    [2.35, 0.9906132945],
    [3, 0.998650102],
  ])('the factor %d belongs to the share %d', (z, share) => {
    expect(serviceFactor(100 * share)).toBeCloseTo(z, 7);
  });

  test('reorder at 326.1: 30 ± 5 a day, 10 days, z 1.65', () => {
    // Taylor, Introduction to Management Science: data and z read; the final number from memory.
    const figures = { keepAtLeast: 0, meanDaily: 30, deviationDaily: 5, leadDays: 10, leadSpreadDays: 0 };
    expect(reorderPoint({ ...figures, factor: 1.65 })).toBeCloseTo(326.1, 1);
    // With the exact z of 95 % the safety stock is 26.007: recomputed.
    expect(reorderPoint({ ...figures, factor: serviceFactor(95) }) - 300).toBeCloseTo(26.007, 3);
  });

  test('reorder at 118: 12 ± 4 a day, 9 days, 80 %', () => {
    // A textbook exercise with its solution, read: safety stock 10.1.
    const point = reorderPoint({
      keepAtLeast: 0,
      meanDaily: 12,
      deviationDaily: 4,
      leadDays: 9,
      leadSpreadDays: 0,
      factor: serviceFactor(80),
    });
    expect(point - 108).toBeCloseTo(10.1, 1);
    expect(Math.round(point)).toBe(118);
  });

  test('reorder at 70.19: 2.5 ± 1.2 a day, 25 days, 90 %', () => {
    // A textbook exercise: data read; safety stock 7.69 and the point recomputed.
    const point = reorderPoint({
      keepAtLeast: 0,
      meanDaily: 2.5,
      deviationDaily: 1.2,
      leadDays: 25,
      leadSpreadDays: 0,
      factor: serviceFactor(90),
    });
    expect(point).toBeCloseTo(70.19, 2);
  });

  test('250 ± 150 a week, 2 weeks: σ 212.13; a point of 600 is a cycle service of 68 %, not of 96 %', () => {
    // Chopra & Meindl, Supply Chain Management, exercise 11-4, worksheet read: σ 212, safety stock 100, cycle
    // service 0.68 (0.68132 recomputed), fill rate 0.96.
    expect(leadTimeDeviation(2, 150, 250, 0)).toBeCloseTo(212.13, 2);
    const figures = { keepAtLeast: 0, meanDaily: 250, deviationDaily: 150, leadDays: 2, leadSpreadDays: 0 };
    expect(reorderPoint({ ...figures, factor: serviceFactor(68.132) })).toBeCloseTo(600, 1);
    expect(reorderPoint({ ...figures, factor: serviceFactor(95.614) })).toBeGreaterThan(850);
  });

  test('2500 ± 500 a week, 2 weeks: σ 707.1; a point of 6000 is a cycle service of 92.14 %', () => {
    // Chopra & Meindl, Supply Chain Management: from memory, recomputed.
    expect(leadTimeDeviation(2, 500, 2500, 0)).toBeCloseTo(707.1, 1);
    const figures = { keepAtLeast: 0, meanDaily: 2500, deviationDaily: 500, leadDays: 2, leadSpreadDays: 0 };
    expect(Math.abs(reorderPoint({ ...figures, factor: serviceFactor(92.14) }) - 6000)).toBeLessThan(0.5);
  });

  test('2500 ± 500 a day, 7 ± 7 days: σ 17 549.93, safety stock 22 491 at 90 %', () => {
    // Chopra & Meindl, Supply Chain Management: from memory, recomputed.
    expect(leadTimeDeviation(7, 500, 2500, 7)).toBeCloseTo(17_549.93, 2);
    const figures = { keepAtLeast: 0, meanDaily: 2500, deviationDaily: 500, leadDays: 7, leadSpreadDays: 7 };
    expect(reorderPoint({ ...figures, factor: serviceFactor(90) }) - 17_500).toBeCloseTo(22_491.1, 1);
  });
});

describe('edges', () => {
  test('no days, one day', () => {
    expect(dailyStatistics([])).toEqual({ mean: 0, deviation: 0 });
    expect(dailyStatistics([3])).toEqual({ mean: 3, deviation: 0 });
  });

  test('one use in 90 days', () => {
    const daily = Array.from({ length: 90 }, () => 0);
    daily[40] = 9;
    expect(dailyStatistics(daily).mean).toBeCloseTo(0.1, 12);
    expect(dailyStatistics(daily).deviation).toBeCloseTo(Math.sqrt(0.89), 12);
  });

  test('no service level takes no safety stock', () => {
    expect(serviceFactor(null)).toBe(0);
  });

  test.each([0, 100, -5, 120, Number.NaN, Number.POSITIVE_INFINITY])(
    'a service level of %d is refused',
    (percent) => {
      expect(() => serviceFactor(percent)).toThrow(ServiceLevelError);
      expect(() => serviceFactor(percent)).toThrow('above 0 and below 100');
    },
  );

  test('no lead time, no history: Keep at least', () => {
    const none = {
      meanDaily: 0,
      deviationDaily: 0,
      leadDays: 0,
      leadSpreadDays: 0,
      factor: serviceFactor(99),
    };
    expect(reorderPoint({ ...none, keepAtLeast: 12 })).toBe(12);
    expect(reorderPoint({ ...none, keepAtLeast: 0 })).toBe(0);
    expect(reorderPoint({ ...none, keepAtLeast: 0, meanDaily: 4, deviationDaily: 2 })).toBe(0);
  });

  test('below 50 % the factor lowers the point, but not below Keep at least', () => {
    const figures = {
      meanDaily: 1,
      deviationDaily: 1,
      leadDays: 9,
      leadSpreadDays: 0,
      factor: serviceFactor(10),
    };
    expect(reorderPoint({ ...figures, keepAtLeast: 0 })).toBeCloseTo(9 - 3 * 1.2815515655, 8);
    expect(reorderPoint({ ...figures, keepAtLeast: 8 })).toBe(8);
  });
});
