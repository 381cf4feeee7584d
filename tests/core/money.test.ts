import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimal, exact, ratio } from '../../src/core/exact-number.ts';
import { currencyOf, fromCoins, moneyText, percentOfCoins, toCoins } from '../../src/core/money.ts';
import { fractions } from './arbitraries.ts';

const EURO = currencyOf('EUR', null);
const coins = fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n });
const aCurrency = fc.integer({ min: 0, max: 4 }).map((places) => currencyOf('XYZ', places));

describe('properties', () => {
  test('coins are read back from the amount and from its text', () => {
    fc.assert(
      fc.property(coins, aCurrency, (amount, currency) => {
        expect(toCoins(fromCoins(amount, currency), currency)).toBe(amount);
        expect(toCoins(decimal(moneyText(amount, currency)), currency)).toBe(amount);
      }),
    );
  });

  test('the text has as many decimals as the coin, and a digit before them', () => {
    fc.assert(
      fc.property(coins, aCurrency, (amount, currency) => {
        const places = currency.decimals === 0 ? '' : `\\.\\d{${currency.decimals}}`;
        expect(moneyText(amount, currency)).toMatch(new RegExp(`^-?(?:0|[1-9]\\d*)${places}$`));
      }),
    );
  });

  test('an amount is at most half a coin off, and a credit is rounded like a charge', () => {
    fc.assert(
      fc.property(fractions, aCurrency, (amount, currency) => {
        const rounded = toCoins(amount, currency);
        const off = fromCoins(rounded, currency).sub(amount).abs();
        expect(off.compare(ratio(1n, 2n * 10n ** BigInt(currency.decimals)))).toBeLessThanOrEqual(0);
        expect(toCoins(amount.neg(), currency)).toBe(-rounded);
      }),
    );
  });

  test('100 % of an amount is the amount', () => {
    fc.assert(fc.property(coins, (amount) => percentOfCoins(amount, exact(100)) === amount));
  });
});

describe('outside checks', () => {
  const listOne = readFileSync(
    createRequire(import.meta.url).resolve('currency-codes/iso-4217-list-one.xml'),
    'utf8',
  );
  const listed = new Map(
    [...listOne.matchAll(/<Ccy>([A-Z]{3})<\/Ccy>[\s\S]*?<CcyMnrUnts>([^<]+)<\/CcyMnrUnts>/g)].map(
      ([, code, decimals]) => [code ?? '', decimals ?? ''] as const,
    ),
  );

  test('every currency has the decimals of ISO 4217 list one', () => {
    // The standard's own list as its maintenance agency publishes it, 2024-06-25; N.A. is gold and the like.
    const money = [...listed].filter(([, decimals]) => decimals !== 'N.A.');
    expect(money.length).toBeGreaterThan(150);
    for (const [code, decimals] of money)
      expect(currencyOf(code, null), code).toEqual({ code, decimals: Number(decimals) });
  });

  test.each([
    // ISO 4217: from memory, and as list one has them.
    ['EUR', 2],
    ['GBP', 2],
    ['USD', 2],
    ['JPY', 0],
    ['KWD', 3],
    ['IQD', 3],
    ['HUF', 2],
    ['CLF', 4],
  ])('%s has %i decimals', (code, decimals) => {
    expect(currencyOf(code, null).decimals).toBe(decimals);
    expect(listed.get(code)).toBe(String(decimals));
  });

  test('a periodic weighted average: 9000 units for 40 250, of which 4000 are used', () => {
    // A textbook exercise with its solution, read: 4.4722; used 17 889; left 22 361.
    const each = exact(40_250).div(9000);
    const whole = currencyOf('USD', 0);
    expect(moneyText(toCoins(each, currencyOf('USD', 4)), currencyOf('USD', 4))).toBe('4.4722');
    expect(moneyText(toCoins(each.mul(4000), whole), whole)).toBe('17889');
    expect(moneyText(toCoins(each.mul(5000), whole), whole)).toBe('22361');
  });

  test('a moving average keeps its exact fraction until it is rounded', () => {
    // The same exercise, read: averages 4.4167 and 4.6166 (exactly 4.61667, recomputed); used 17 167; left
    // 23 083.
    const first = exact(1000)
      .mul(exact(4.25))
      .add(exact(2000).mul(exact(4.5)))
      .div(3000);
    const used = exact(3000).mul(exact(4.25)).add(first.mul(1000));
    const left = first.mul(2000).add(exact(3000).mul(exact(4.75)));
    expect(first.valueOf()).toBeCloseTo(4.4167, 4);
    expect(left.div(5000).valueOf()).toBeCloseTo(4.61667, 5);
    expect(moneyText(toCoins(used, EURO), EURO)).toBe('17166.67');
    expect(moneyText(toCoins(left, EURO), EURO)).toBe('23083.33');
  });
});

describe('edges', () => {
  test.each([
    [1240n, '12.40'],
    [5n, '0.05'],
    [-5n, '-0.05'],
    [0n, '0.00'],
    [100n, '1.00'],
    [-123_456n, '-1234.56'],
  ])('%s cents are %s', (amount, text) => {
    expect(moneyText(amount, EURO)).toBe(text);
  });

  test('halves go away from zero', () => {
    expect(toCoins(exact(0.125), EURO)).toBe(13n);
    expect(toCoins(exact(-0.125), EURO)).toBe(-13n);
    expect(toCoins(exact(1.005), EURO)).toBe(101n);
    expect(percentOfCoins(250n, exact(1))).toBe(3n);
    expect(percentOfCoins(-250n, exact(1))).toBe(-3n);
  });

  test('the setting wins over the list, also with 0', () => {
    expect(currencyOf('EUR', 0).decimals).toBe(0);
    expect(moneyText(300n, currencyOf('JPY', null))).toBe('300');
  });

  test('a code is found in any case; one that is not listed has two decimals', () => {
    expect(currencyOf(' jpy ', null)).toEqual({ code: 'JPY', decimals: 0 });
    expect(currencyOf('points', null)).toEqual({ code: 'points', decimals: 2 });
    expect(currencyOf('', null)).toEqual({ code: '', decimals: 2 });
  });
});
