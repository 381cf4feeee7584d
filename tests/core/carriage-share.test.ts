import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shareOut } from '../../src/core/carriage-share.ts';
import { type Exact, ratio, sum, ZERO } from '../../src/core/exact-number.ts';

const someWeights = fc.array(fc.bigInt({ min: 0n, max: 10n ** 9n }), { minLength: 1, maxLength: 12 });
const total = (values: readonly bigint[]): bigint => values.reduce((all, value) => all + value, 0n);

describe('sharing out by largest remainders', () => {
  test('gives shares that are exactly the amount together, and none a whole coin off', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 9n }), someWeights, (amount, weights) => {
        const shares = shareOut(amount, weights);
        if (total(weights) === 0n) {
          expect(shares).toBeNull();
          return;
        }
        expect(total(shares ?? [])).toBe(amount);
        weights.forEach((weight, place) => {
          const off = ratio(shares?.[place] ?? -1n, 1).sub(ratio(amount * weight, total(weights)));
          expect(off.abs().compare(1)).toBeLessThan(0);
          if (weight === 0n) expect(shares?.[place]).toBe(0n);
        });
      }),
    );
  });

  test('no other way to share out so many coins misses the exact shares by less in all', () => {
    const few = fc.array(fc.bigInt({ min: 0n, max: 30n }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 14n }), few, (amount, weights) => {
        fc.pre(total(weights) > 0n);
        const missedBy = (shares: readonly bigint[]): Exact =>
          sum(
            weights.map((weight, place) =>
              ratio(shares[place] ?? 0n, 1)
                .sub(ratio(amount * weight, total(weights)))
                .abs(),
            ),
          );
        const least = everyWay(amount, weights.length)
          .map(missedBy)
          .reduce((a, b) => (a.compare(b) <= 0 ? a : b));
        expect(missedBy(shareOut(amount, weights) ?? []).sub(least)).toEqual(ZERO);
      }),
    );
  });

  test('of equals the first get the coins that are left', () => {
    expect(shareOut(5n, [1n, 1n, 1n])).toEqual([2n, 2n, 1n]);
    expect(shareOut(1n, [0n, 7n, 7n])).toEqual([0n, 1n, 0n]);
  });

  // The 120 seats that a bill of 1792 gave to fifteen states by the census of 1790 (populations and seats from memory;
  // the quotas recomputed: each seats below is its quota rounded down, or up for the largest fractions).
  test('gives each state the seats that it was given by this method in 1792', () => {
    const states: readonly (readonly [population: bigint, seats: bigint])[] = [
      [630_560n, 21n],
      [475_327n, 16n],
      [432_879n, 14n],
      [353_523n, 12n],
      [331_589n, 11n],
      [278_514n, 9n],
      [236_841n, 8n],
      [206_236n, 7n],
      [179_570n, 6n],
      [141_822n, 5n],
      [85_533n, 3n],
      [70_835n, 2n],
      [68_705n, 2n],
      [68_446n, 2n],
      [55_540n, 2n],
    ];
    expect(total(states.map(([population]) => population))).toBe(3_615_920n);
    expect(
      shareOut(
        120n,
        states.map(([population]) => population),
      ),
    ).toEqual(states.map(([, seats]) => seats));
  });
});

/** Every way to share out some coins among some. */
function everyWay(amount: bigint, among: number): bigint[][] {
  if (among === 1) return [[amount]];
  return Array.from({ length: Number(amount) + 1 }, (_, own) =>
    everyWay(amount - BigInt(own), among - 1).map((rest) => [BigInt(own), ...rest]),
  ).flat();
}
