import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { benchQuantity } from '../../src/core/bench-quantity.ts';
import { ZERO } from '../../src/core/exact-number.ts';
import { findUnit, UNIT_NAMES, unitNamed } from '../../src/core/unit.ts';
import { fractions, positiveDecimals } from './arbitraries.ts';
import { qty, unit } from './helpers/stock-records.ts';

function atTheBench(quantity: string, name: string): string {
  const bench = benchQuantity(qty(quantity), unit(name));
  return `${bench.quantity.toString()} ${bench.unit.name}`;
}

describe('units that a bench uses', () => {
  test.each([
    ['0.0125', 'l', '12.5 ml'],
    ['1500', 'mg', '1.5 g'],
    ['0.4', 'g', '0.4 g'],
    ['0.04', 'g', '40 mg'],
    ['0.0002', 'mg', '0.0002 mg'],
    ['950', 'g', '950 g'],
    ['2500', 'g', '2.5 kg'],
    ['0.25', 'kg', '250 g'],
    ['0.5', 'l', '500 ml'],
    ['1250', 'ml', '1.25 l'],
    // Longer than people are shown in litres.
    ['1234.5', 'ml', '1234.5 ml'],
    ['24000', 'cm2', '2.4 m2'],
    ['0.3', 'm', '30 cm'],
    ['192', 'fl oz', '1.5 gal'],
    ['200', 'fl oz', '200 fl oz'],
    ['0.25', 'gal', '32 fl oz'],
    ['0.25', 'imp gal', '40 imp fl oz'],
    ['0.5', 'lb', '8 oz'],
    ['24', 'oz', '1.5 lb'],
    ['0.5', 'sheet', '0.5 sheet'],
    ['0', 'l', '0 l'],
  ])('%s %s is %s', (quantity, name, bench) => {
    expect(atTheBench(quantity, name)).toBe(bench);
  });

  const METRIC = new Set(['mg', 'g', 'kg', 'ml', 'l', 'cm2', 'dm2', 'm2', 'mm', 'cm', 'm']);
  const IMPERIAL = new Set(['imp fl oz', 'imp gal']);
  const family = (name: string): string =>
    METRIC.has(name) ? 'metric' : IMPERIAL.has(name) ? 'imperial' : 'other';

  test('the value never changes, nor the family of the unit', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          positiveDecimals,
          fractions.map((value) => value.abs()),
        ),
        fc.constantFrom(...UNIT_NAMES),
        (quantity, name) => {
          const bench = benchQuantity(quantity, unitNamed(name));
          expect(bench.quantity.mul(bench.unit.inBase).equals(quantity.mul(unitNamed(name).inBase))).toBe(
            true,
          );
          expect(bench.unit.dimension).toBe(findUnit(name)?.dimension);
          expect(family(bench.unit.name)).toBe(family(name));
          expect(bench.quantity.compare(ZERO) >= 0).toBe(true);
          // Twice is once.
          expect(benchQuantity(bench.quantity, bench.unit).unit).toBe(bench.unit);
        },
      ),
    );
  });
});
