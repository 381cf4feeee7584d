import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimal, exact, ZERO } from '../../src/core/exact-number.ts';
import { findUnit, UNIT_NAMES, unitNamed } from '../../src/core/unit.ts';

const aName = fc.constantFrom(...UNIT_NAMES);
const spaces = fc.stringMatching(/^[ \t\u00a0]{0,3}$/);

/** How many of `to` one of `from` is. */
const factor = (from: string, to: string) => unitNamed(from).inBase.div(unitNamed(to).inBase);

describe('properties', () => {
  test('a unit is found by its name in any case, with any spaces around and between', () => {
    const flips = fc.array(fc.boolean(), { minLength: 10, maxLength: 10 });
    fc.assert(
      fc.property(aName, flips, spaces, spaces, spaces, (name, upper, before, between, after) => {
        const typed = [...name].map((letter, at) => (upper[at] ? letter.toUpperCase() : letter)).join('');
        expect(findUnit(`${before}${typed.replaceAll(' ', ` ${between}`)}${after}`)).toBe(unitNamed(name));
      }),
    );
  });

  test('every unit is more than none of its base', () => {
    fc.assert(fc.property(aName, (name) => unitNamed(name).inBase.compare(ZERO) > 0));
  });

  test('text that is no unit is not taken for one', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const found = findUnit(text);
        expect(found === null || UNIT_NAMES.includes(found.name)).toBe(true);
      }),
    );
    expect(findUnit('constructor')).toBeNull();
    expect(findUnit('__proto__')).toBeNull();
  });
});

describe('outside checks', () => {
  test.each([
    // GNU Units 2.22 definitions.units, read.
    ['in', 'mm', '25.4'],
    ['ft', 'm', '0.3048'],
    ['yd', 'm', '0.9144'],
    ['oz', 'g', '28.349523125'],
    ['lb', 'g', '453.59237'],
    ['fl oz', 'ml', '29.5735295625'],
    ['gal', 'l', '3.785411784'],
    ['imp fl oz', 'ml', '28.4130625'],
    ['imp gal', 'l', '4.54609'],
    ['sq in', 'cm2', '6.4516'],
    // The prefixes of the SI: from memory.
    ['kg', 'g', '1000'],
    ['g', 'mg', '1000'],
    ['l', 'ml', '1000'],
    ['m', 'cm', '100'],
    ['cm', 'mm', '10'],
    ['m2', 'cm2', '10000'],
    ['m2', 'dm2', '100'],
    ['dm2', 'cm2', '100'],
    // Whole numbers by definition: from memory.
    ['lb', 'oz', '16'],
    ['ft', 'in', '12'],
    ['yd', 'ft', '3'],
    ['gal', 'fl oz', '128'],
    ['imp gal', 'imp fl oz', '160'],
  ])('one %s in %s is %s', (from, to, figure) => {
    expect(factor(from, to).toFraction()).toBe(decimal(figure).toFraction());
  });

  test.each([
    // GNU Units 2.22 definitions.units, read: cup, pint and quart (US), pint and quart (British), in ml.
    // How many make a gallon: from memory.
    ['gal', 16, '236.5882365'],
    ['gal', 8, '473.176473'],
    ['gal', 4, '946.352946'],
    ['imp gal', 8, '568.26125'],
    ['imp gal', 4, '1136.5225'],
  ])('1 %s is %i of %s ml', (gallon, count, millilitres) => {
    expect(factor(gallon, 'ml').equals(decimal(millilitres).mul(count))).toBe(true);
  });

  test('a foot and a yard square up', () => {
    // GNU Units 2.22 definitions.units, read: foot² 0.09290304 m², yard² 0.83612736 m².
    expect(factor('sq in', 'm2').mul(144).equals(decimal('0.09290304'))).toBe(true);
    expect(factor('sq in', 'm2').mul(1296).equals(decimal('0.83612736'))).toBe(true);
  });

  test('the US gallon is 231 cubic inches', () => {
    // GNU Units 2.22 definitions.units, read: inch³ 16.387064 ml.
    expect(factor('gal', 'ml').equals(decimal('16.387064').mul(231))).toBe(true);
  });

  test('the pound is 7000 grains', () => {
    // GNU Units 2.22 definitions.units, read: grain 64.79891 mg. 7000 grains to the pound: from memory.
    expect(factor('lb', 'mg').equals(decimal('64.79891').mul(7000))).toBe(true);
  });

  test('the imperial gallon is 1.20095 US gallons, and its fluid ounce is the smaller one', () => {
    // An exact-values chart citing NIST Weights and Measures, read second-hand.
    expect(factor('imp gal', 'gal').valueOf()).toBeCloseTo(1.20095, 5);
    expect(factor('imp fl oz', 'fl oz').valueOf()).toBeLessThan(1);
  });

  test('gal is the US gallon: 176.3 g of magnesium hydroxide in 8 gallons make 0.1 mol/l', () => {
    // "In an eight-gallon volume, a minimum of 176.3 grams of magnesium hydroxide is necessary to produce a
    // 0.1 M solution": JAIC 21 (1981) no. 1, art. 2, § 4, read. Molar mass 58.319 g/mol by own arithmetic.
    const moles = exact(176.3).div(decimal('58.319'));
    const strength = (gallon: string) => moles.div(factor(gallon, 'l').mul(8)).valueOf();
    expect(strength('gal')).toBeCloseTo(0.0998, 4);
    expect(strength('imp gal')).toBeCloseTo(0.0831, 4);
  });
});

describe('edges', () => {
  test.each([
    ['cm²', 'cm2'],
    ['㎠', 'cm2'],
    ['DM²', 'dm2'],
    ['m²', 'm2'],
    ['in²', 'sq in'],
    ['Sq. In.', 'sq in'],
    [' FL  OZ ', 'fl oz'],
    ['Imp Gal', 'imp gal'],
    ['ＭＬ', 'ml'],
    ['Litres', 'l'],
    ['SHEETS', 'sheet'],
    ['Uses', 'use'],
  ])('"%s" is %s', (text, name) => {
    expect(findUnit(text)?.name).toBe(name);
  });

  test.each(['', ' ', 'g/ml', 'uk gal', 'cup', 'f l oz', '2', 'sheet 1', 'g.'])('"%s" is no unit', (text) => {
    expect(findUnit(text)).toBeNull();
  });

  test('the program itself can only name units that exist', () => {
    expect(() => unitNamed('pint')).toThrow('pint');
  });
});
