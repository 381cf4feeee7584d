import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceAt, levelForChance, levelForShareServed } from '../../../src/core/forecast/service-levels.ts';
import { serviceFactor } from '../../../src/core/reorder-formula.ts';

/** The usual needs of a normal distribution: as many as are asked for, each as likely as the others. */
function normalNeeds(mean: number, deviation: number, count: number): Float64Array {
  return Float64Array.from(
    { length: count },
    (_, place) => mean + deviation * serviceFactor((100 * (place + 0.5)) / count),
  );
}

describe('outside checks', () => {
  // Chopra & Meindl, Supply Chain Management, a newsvendor with a discrete need of 400, 500, … 1700: from memory, the
  // results recomputed.
  const HUNDREDTHS = [1, 2, 4, 8, 9, 11, 16, 20, 11, 10, 4, 2, 1, 1];
  const needs = Float64Array.from(
    HUNDREDTHS.flatMap((count, place) => Array.from({ length: count }, () => 400 + 100 * place)),
  );

  test('of a discrete need, 1300 is the least with a chance of 0.9167', () => {
    expect(needs.reduce((total, need) => total + need, 0) / needs.length).toBeCloseTo(1026, 9);
    // Cost 45, price 100, salvage 40.
    expect(levelForChance(needs, (100 - 45) / (100 - 40))).toBe(1300);
    expect(chanceAt(needs, 1300)).toBeCloseTo(0.92, 12);
    expect(chanceAt(needs, 1299)).toBeCloseTo(0.82, 12);
  });

  test('1300 earns the most: 54 160, and 1000 earns 49 900', () => {
    const profit = (bought: number): number =>
      needs.reduce(
        (total, need) => total + 100 * Math.min(need, bought) + 40 * Math.max(bought - need, 0),
        0,
      ) /
        needs.length -
      45 * bought;
    expect(profit(1300)).toBeCloseTo(54_160, 6);
    expect(profit(1000)).toBeCloseTo(49_900, 6);
    expect(Math.max(...[...new Set(needs)].map(profit))).toBe(profit(1300));
  });

  test.each([
    // Newsvendors with a normal need. The first: Chopra & Meindl, from memory, recomputed.
    { mean: 350, deviation: 100, under: 150, over: 20, z: 1.1868, quantity: 468.7 },
    // Published exercises: data read, results recomputed. The last lies below the mean.
    { mean: 1000, deviation: 200, under: 30, over: 20, z: 0.2533, quantity: 1050.67 },
    { mean: 1000, deviation: 200, under: 40, over: 10, z: 0.8416, quantity: 1168.3 },
    { mean: 10_000, deviation: 2000, under: 5, over: 7, z: -0.2104, quantity: 9579 },
  ])('$quantity of a need of $mean ± $deviation', ({ mean, deviation, under, over, z, quantity }) => {
    const chance = under / (under + over);
    expect(serviceFactor(100 * chance)).toBeCloseTo(z, 4);
    const exactly = mean + deviation * serviceFactor(100 * chance);
    expect(Math.abs(exactly - quantity)).toBeLessThan(0.5);
    expect(Math.abs(levelForChance(normalNeeds(mean, deviation, 20_000), chance) - exactly)).toBeLessThan(
      deviation / 1000,
    );
  });

  test('5000 ± 707.1 ordered by 10 000 takes 66.7 more to serve 97.5 %', () => {
    // Chopra & Meindl, Supply Chain Management: from memory, recomputed (z 0.0943).
    const level = levelForShareServed(normalNeeds(5000, 500 * Math.sqrt(2), 20_000), 0.975, 10_000);
    expect(Math.abs(level - 5066.7)).toBeLessThan(0.5);
  });

  test('500 ± 212.1 ordered by 1000 at 600 has a chance of 68 % and serves 96 %', () => {
    // Chopra & Meindl, exercise 11-4, worksheet read: 0.68 (0.68132) and 0.96 (0.95614, recomputed).
    const normal = normalNeeds(500, 150 * Math.sqrt(2), 20_000);
    expect(chanceAt(normal, 600)).toBeCloseTo(0.681_32, 3);
    expect(Math.abs(levelForShareServed(normal, 0.956_14, 1000) - 600)).toBeLessThan(0.5);
  });
});

describe('properties', () => {
  const someNeeds = fc
    .array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 50 })
    .map((needs) => Float64Array.from(needs).sort());
  const share = fc.double({ min: 0.01, max: 1, noNaN: true });

  function served(needs: Float64Array, level: number, orderQuantity: number): number {
    const short = needs.reduce((total, need) => total + Math.max(need - level, 0), 0) / needs.length;
    return 1 - short / orderQuantity;
  }

  test('the level for a chance is the smallest of the needs that has it', () => {
    fc.assert(
      fc.property(someNeeds, share, (needs, chance) => {
        const level = levelForChance(needs, chance);
        expect(needs).toContain(level);
        expect(chanceAt(needs, level)).toBeGreaterThanOrEqual(chance - 1e-9);
        const smaller = needs.filter((need) => need < level * (1 - 1e-6));
        expect(smaller.length / needs.length).toBeLessThan(chance);
      }),
    );
  });

  test('the level for a share serves that share, and nothing less does unless it is 0', () => {
    fc.assert(
      fc.property(
        someNeeds,
        share,
        fc.double({ min: 1, max: 1000, noNaN: true }),
        (needs, asked, quantity) => {
          const level = levelForShareServed(needs, asked, quantity);
          expect(level).toBeGreaterThanOrEqual(0);
          expect(served(needs, level, quantity)).toBeGreaterThanOrEqual(asked - 1e-9);
          if (level > 0) expect(served(needs, level - 1e-3, quantity)).toBeLessThan(asked);
        },
      ),
    );
  });

  test('a chance that is met exactly takes no need more, though 0.07 × 100 is a little above 7 in the machine', () => {
    const needs = Float64Array.from({ length: 100 }, (_, place) => place + 1);
    expect(levelForChance(needs, 0.07)).toBe(7);
    expect(levelForChance(needs, 0.0701)).toBe(8);
  });

  test('with nothing ordered no need may stay unserved', () => {
    fc.assert(
      fc.property(someNeeds, share, (needs, asked) => {
        expect(levelForShareServed(needs, asked, 0)).toBe(needs.at(-1));
      }),
    );
  });
});
