import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { USUAL_CLASS_LIMITS, valueClasses, type YearlyUse } from '../../../src/core/buying/value-classes.ts';
import { runs, SEED } from '../helpers/random-studio.ts';

/**
 * Heizer & Render, Operations Management, example 12.1: ten items with their yearly use and unit cost, read. The book
 * rounds its percents so that they add up (11.3 for 11.35, 6.4 for 6.46); recomputed to two decimals.
 */
const TEN_ITEMS = [
  [1000, 90, 38.78],
  [500, 154, 33.18],
  [1550, 17, 11.35],
  [350, 42.86, 6.46],
  [1000, 12.5, 5.39],
  [600, 14.17, 3.66],
  [2000, 0.6, 0.52],
  [100, 8.5, 0.37],
  [1200, 0.42, 0.22],
  [250, 0.6, 0.06],
] as const;

function tenItems(firstCost = 90): YearlyUse[] {
  return TEN_ITEMS.map(([quantity, unitCost], place) => ({
    material: `M${place + 1}`,
    quantity,
    unitCost: place === 0 ? firstCost : unitCost,
  }));
}

describe('the published example', () => {
  test('percents and classes', () => {
    const { materials, classes, value } = valueClasses(tenItems(), USUAL_CLASS_LIMITS);
    expect(Math.round(value)).toBe(232_057);
    expect(materials.map(({ material }) => material)).toEqual(tenItems().map(({ material }) => material));
    for (const [place, { percent }] of materials.entries())
      expect(percent).toBeCloseTo(TEN_ITEMS[place]?.[2] ?? Number.NaN, 1);
    expect(materials.map(({ valueClass }) => valueClass).join('')).toBe('AABBBCCCCC');
    expect(classes.map((each) => [each.valueClass, each.materials, Math.round(each.percent)])).toEqual([
      ['A', 2, 72],
      ['B', 3, 23],
      ['C', 5, 5],
    ]);
  });

  test('with the first item at 120', () => {
    const { classes, value } = valueClasses(tenItems(120), USUAL_CLASS_LIMITS);
    expect(Math.round(value)).toBe(262_057);
    expect(Math.round(classes[0]?.percent ?? 0)).toBe(75);
  });
});

const anyUses: fc.Arbitrary<YearlyUse[]> = fc
  .array(
    fc.record({
      quantity: fc.integer({ min: 0, max: 50 }),
      unitCost: fc.option(fc.integer({ min: 0, max: 900 }), { freq: 8 }),
    }),
    { maxLength: 12 },
  )
  .map((uses) => uses.map((each, place) => ({ ...each, material: `M${place}` })));
const anyLimits = fc
  .tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 99 }))
  .map(([one, other]) => ({ a: Math.min(one, other), ab: Math.max(one, other) }));

describe(`properties (seed ${SEED})`, () => {
  test('A are the fewest that reach its share, A and B the fewest that reach theirs', () => {
    let both = 0;
    fc.assert(
      fc.property(anyUses, anyLimits, (uses, limits) => {
        const { materials, value } = valueClasses(uses, limits);
        const values = uses
          .map(({ quantity, unitCost }) => quantity * (unitCost ?? 0))
          .toSorted((a, b) => b - a);
        const fewest = (percent: number): number => {
          let reached = 0;
          const place = [0, ...values].findIndex((each) => {
            reached += each;
            return reached * 100 >= percent * value;
          });
          return value > 0 ? place : 0;
        };
        const inClasses = (names: string) =>
          materials.filter(({ valueClass }) => names.includes(valueClass)).length;
        expect(inClasses('A')).toBe(fewest(limits.a));
        expect(inClasses('AB')).toBe(fewest(limits.ab));
        expect(materials.map(({ valueClass }) => valueClass).join('')).toMatch(/^A*B*C*$/);
        both += inClasses('A') > 0 && inClasses('C') > 0 ? 1 : 0;
      }),
      runs(2000),
    );
    expect(both).toBeGreaterThan(500);
  });

  test('the classes hold all materials and all money, and what has no cost stands apart', () => {
    fc.assert(
      fc.property(anyUses, anyLimits, (uses, limits) => {
        const { materials, classes, value, withoutCost } = valueClasses(uses, limits);
        expect(materials.length + withoutCost.length).toBe(uses.length);
        expect(classes.map(({ valueClass }) => valueClass)).toEqual(['A', 'B', 'C']);
        expect(classes.reduce((sum, each) => sum + each.materials, 0)).toBe(materials.length);
        expect(classes.reduce((sum, each) => sum + each.value, 0)).toBe(value);
        expect(classes.reduce((sum, each) => sum + each.percent, 0)).toBeCloseTo(value > 0 ? 100 : 0, 6);
        const free = uses.filter(({ unitCost }) => unitCost === null).map(({ material }) => material);
        expect(withoutCost).toEqual(free);
      }),
      runs(1000),
    );
  });

  test('a share that is reached to the last bit is reached', () => {
    // In doubles 57 ÷ 100 × 100 is a little less than 57.
    const uses = [57, 43].map((unitCost) => ({ material: `M${unitCost}`, quantity: 1, unitCost }));
    const classes = valueClasses(uses, { a: 57, ab: 95 }).materials.map(({ valueClass }) => valueClass);
    expect(classes).toEqual(['A', 'B']);
  });

  test('what is not used takes none of the money', () => {
    const { materials } = valueClasses([{ material: 'M', quantity: 0, unitCost: 9 }], USUAL_CLASS_LIMITS);
    expect(materials).toEqual([{ material: 'M', value: 0, percent: 0, valueClass: 'C' }]);
  });
});
