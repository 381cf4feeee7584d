import fc from 'fast-check';
import type { Day } from '../../src/core/day.ts';
import { type Exact, ratio } from '../../src/core/exact-number.ts';

/** Decimal numbers such as people write: up to six decimals, of either sign. */
export const decimals: fc.Arbitrary<Exact> = fc
  .tuple(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), fc.integer({ min: 0, max: 6 }))
  .map(([digits, places]) => ratio(digits, 10n ** BigInt(places)));

/** Decimal numbers above 0. */
export const positiveDecimals: fc.Arbitrary<Exact> = fc
  .tuple(fc.bigInt({ min: 1n, max: 10n ** 9n }), fc.integer({ min: 0, max: 6 }))
  .map(([digits, places]) => ratio(digits, 10n ** BigInt(places)));

/** Any fractions, also those without a finite decimal. */
export const fractions: fc.Arbitrary<Exact> = fc
  .tuple(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), fc.bigInt({ min: 1n, max: 10n ** 6n }))
  .map(([numerator, denominator]) => ratio(numerator, denominator));

/** Days from `first` to 9999-12-31. */
export function daysFrom(first: number): fc.Arbitrary<Day> {
  return fc.integer({ min: first, max: 2_932_896 }).map((day) => day as Day);
}
