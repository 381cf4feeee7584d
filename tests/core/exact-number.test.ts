import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  decimal,
  exact,
  floorQuantity,
  larger,
  ONE,
  parsePlainNumber,
  percentOf,
  quantityNumber,
  ratio,
  roundHalfAway,
  roundQuantity,
  smaller,
  sum,
  ZERO,
} from '../../src/core/exact-number.ts';
import { decimals, fractions } from './arbitraries.ts';

const MILLIONTH = ratio(1, 1_000_000);
const HALF = ratio(1, 2);

describe('properties', () => {
  test('a number shows the same 15 significant digits afterwards', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e200, max: 1e200, noNaN: true }), (value) => {
        fc.pre(value === 0 || Math.abs(value) > 1e-100);
        expect(Number(exact(value).valueOf().toPrecision(15))).toBe(Number(value.toPrecision(15)) + 0);
      }),
    );
  });

  test('digits and a decimal point give exactly digits ÷ a power of ten', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.stringMatching(/^\d{1,12}$/),
        (whole, places) => {
          const sign = whole < 0 ? -1n : 1n;
          const scale = 10n ** BigInt(places.length);
          const expected = ratio(BigInt(whole) * scale + sign * BigInt(places), scale);
          expect(decimal(`${whole}.${places}`).equals(expected)).toBe(true);
        },
      ),
    );
  });

  test('a number typed as text is the same as the number itself', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e50, max: 1e50 }), (value) => {
        expect(parsePlainNumber(` ${value} `)?.equals(exact(value))).toBe(true);
      }),
    );
  });

  test('the nearest whole number is at most a half away, a half goes away from zero', () => {
    fc.assert(
      fc.property(fractions, (value) => {
        const off = ratio(roundHalfAway(value), 1).sub(value);
        expect(off.abs().compare(HALF)).toBeLessThanOrEqual(0);
        if (off.abs().equals(HALF)) expect(off.s).toBe(value.s);
        expect(roundHalfAway(value.neg())).toBe(-roundHalfAway(value));
      }),
    );
  });

  test('a written quantity is within half a millionth and stays as it is when written again', () => {
    fc.assert(
      fc.property(fractions, (value) => {
        const rounded = roundQuantity(value);
        expect(rounded.sub(value).abs().compare(MILLIONTH.mul(HALF))).toBeLessThanOrEqual(0);
        expect(roundQuantity(rounded).equals(rounded)).toBe(true);
      }),
    );
  });

  test('the floored quantity is not above the value and less than a millionth below', () => {
    fc.assert(
      fc.property(fractions, (value) => {
        const short = value.sub(floorQuantity(value));
        expect(short.compare(ZERO)).toBeGreaterThanOrEqual(0);
        expect(short.compare(MILLIONTH)).toBeLessThan(0);
      }),
    );
  });

  test('a written quantity is the number of its own decimal text', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), (millionths) => {
        expect(quantityNumber(ratio(millionths, 1_000_000))).toBe(Number(`${millionths}e-6`) + 0);
      }),
    );
  });

  test('the sum does not depend on the order, and smaller + larger is both', () => {
    fc.assert(
      fc.property(fc.array(fractions, { maxLength: 8 }), (values) => {
        expect(sum(values).equals(sum(values.toReversed()))).toBe(true);
      }),
    );
    fc.assert(
      fc.property(decimals, decimals, (a, b) => {
        expect(smaller(a, b).compare(larger(a, b))).toBeLessThanOrEqual(0);
        expect(smaller(a, b).add(larger(a, b)).equals(a.add(b))).toBe(true);
      }),
    );
  });
});

describe('outside checks', () => {
  test('the noise of binary numbers is gone', () => {
    // 0.1 + 0.2 = 0.30000000000000004 in IEEE 754 doubles: from memory, and as the platform itself has it.
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(exact(0.1 + 0.2).equals(ratio(3, 10))).toBe(true);
    expect(exact(1.005).equals(ratio(1005, 1000))).toBe(true);
  });

  test.each([
    // Halves away from zero, as the spreadsheet function ROUND has them: from memory.
    [2.5, 3n],
    [-2.5, -3n],
    [0.5, 1n],
    [-0.5, -1n],
    [1.4999, 1n],
    [-0.49, 0n],
    [0, 0n],
  ])('%d is rounded to %s', (value, rounded) => {
    expect(roundHalfAway(exact(value))).toBe(rounded);
  });

  test('a third of a sheet, used three times, is one sheet', () => {
    const third = ratio(1, 3);
    expect(sum([third, third, third]).equals(ONE)).toBe(true);
  });
});

describe('edges', () => {
  test.each([
    ['12', 12, 1],
    ['+12.', 12, 1],
    ['-.5', -1, 2],
    ['1e-3', 1, 1000],
    ['2.5E+2', 250, 1],
    ['-0', 0, 1],
    ['007', 7, 1],
  ])('"%s" is read as a number', (text, numerator, denominator) => {
    expect(parsePlainNumber(text)?.equals(ratio(numerator, denominator))).toBe(true);
  });

  test.each([
    '',
    '-',
    '.',
    '12 g',
    'about 500',
    '1,5',
    '1,000',
    '1 000',
    '0x10',
    '1e',
    '1e400',
    '1_000',
    '½',
    'NaN',
  ])('"%s" is not', (text) => {
    expect(parsePlainNumber(text)).toBeNull();
  });

  test('the 16th digit of a number typed as text is not kept', () => {
    expect(parsePlainNumber('1.0000000000000001')?.equals(ONE)).toBe(true);
    expect(parsePlainNumber('12345678901234567')?.equals(exact(12_345_678_901_234_600))).toBe(true);
  });

  test('floors downwards below zero too', () => {
    expect(floorQuantity(decimal('-0.1234565')).equals(decimal('-0.123457'))).toBe(true);
  });

  test('rounds the seventh decimal, halves away from zero', () => {
    expect(quantityNumber(decimal('0.0000005'))).toBe(0.000001);
    expect(quantityNumber(decimal('-0.0000005'))).toBe(-0.000001);
    expect(Object.is(quantityNumber(decimal('-0.0000004')), 0)).toBe(true);
  });

  test('the sum of nothing is 0; 7.5 % of 80 is 6', () => {
    expect(sum([]).equals(ZERO)).toBe(true);
    expect(percentOf(ratio(80, 1), decimal('7.5')).equals(ratio(6, 1))).toBe(true);
  });
});
