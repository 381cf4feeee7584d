import fc from 'fast-check';

const used = fc.oneof(
  { weight: 3, arbitrary: fc.constant(0) },
  { weight: 1, arbitrary: fc.double({ min: 0.01, max: 100, noNaN: true }) },
);

/** What was used on each day or in each week, of every kind from nothing to use all the time. */
export function someUse(periods: { readonly min: number; readonly max: number }): fc.Arbitrary<number[]> {
  return fc.oneof(
    fc.array(used, { minLength: periods.min, maxLength: periods.max }),
    fc.array(fc.double({ min: 0.01, max: 100, noNaN: true }), {
      minLength: periods.min,
      maxLength: periods.max,
    }),
    fc
      .tuple(fc.array(used, { minLength: periods.min, maxLength: periods.max }), fc.nat({ max: periods.max }))
      .map(([values, quiet]) => values.map((value, period) => (period < values.length - quiet ? value : 0))),
  );
}

/** By how much all quantities are multiplied. */
export const factors = fc.constantFrom(0.5, 2, 3, 7.5, 12, 1000);
