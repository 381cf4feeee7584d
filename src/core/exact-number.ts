import Fraction from 'fraction.js';

/** A quantity, a price or a rate as an exact fraction: a third of a sheet, used three times, is one sheet. */
export type Exact = Fraction;

export const ZERO: Exact = new Fraction(0);
export const ONE: Exact = new Fraction(1);
const HUNDRED = new Fraction(100);

/** The most decimals that a written quantity has. */
export const QUANTITY_DECIMALS = 6;

/** Spreadsheets keep 15 significant digits; what a number has beyond them is noise (0.1 + 0.2). */
const SIGNIFICANT_DIGITS = 15;

const PLAIN_NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i;

/** Exactly numerator ÷ denominator, both whole. */
export function ratio(numerator: number | bigint, denominator: number | bigint): Exact {
  return new Fraction(BigInt(numerator), BigInt(denominator));
}

/** The exact value of a finite number as a spreadsheet shows it, read to 15 significant digits. */
export function exact(value: number): Exact {
  if (Number.isInteger(value) && Math.abs(value) < 1e15) return new Fraction(value);
  return decimal(value.toPrecision(SIGNIFICANT_DIGITS));
}

/** The exact value of a plain decimal text such as "28.349523125" or "1e-3"; the text must be one. */
export function decimal(text: string): Exact {
  const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e');
  const [whole = '', fraction = ''] = mantissa.split('.');
  const digits = BigInt(`${whole}${fraction}`);
  const power = Number(exponent) - fraction.length;
  return power >= 0
    ? new Fraction(digits * 10n ** BigInt(power))
    : new Fraction(digits, 10n ** BigInt(-power));
}

/**
 * Reads a number typed as text: digits with at most one decimal point, a sign, an exponent.
 * @returns null for anything else ("12 g", "about 500", "1,5", "1,000"), which could mean more than one
 *   thing.
 */
export function parsePlainNumber(text: string): Exact | null {
  const trimmed = text.trim();
  if (!PLAIN_NUMBER.test(trimmed)) return null;
  const value = Number(trimmed);
  return Number.isFinite(value) ? exact(value) : null;
}

/** The nearest whole number, halves away from zero. */
export function roundHalfAway(value: Exact): bigint {
  const magnitude = (2n * value.n + value.d) / (2n * value.d);
  return value.s < 0n ? -magnitude : magnitude;
}

/** The nearest quantity that can be written: at most 6 decimals, halves away from zero. */
export function roundQuantity(value: Exact): Exact {
  const scale = 10n ** BigInt(QUANTITY_DECIMALS);
  return value.d === 1n ? value : new Fraction(roundHalfAway(value.mul(new Fraction(scale))), scale);
}

/** The largest quantity with at most 6 decimals that is not above `value`. */
export function floorQuantity(value: Exact): Exact {
  return value.floor(QUANTITY_DECIMALS);
}

/** `value` × percent ÷ 100. */
export function percentOf(value: Exact, percent: Exact): Exact {
  return value.mul(percent).div(HUNDRED);
}

/** The quantity as a JSON number with at most 6 decimals. */
export function quantityNumber(value: Exact): number {
  return roundQuantity(value).valueOf();
}

/** The smaller of two. */
export function smaller(a: Exact, b: Exact): Exact {
  return a.compare(b) <= 0 ? a : b;
}

/** The larger of two. */
export function larger(a: Exact, b: Exact): Exact {
  return a.compare(b) >= 0 ? a : b;
}

/** The sum of any number of quantities; 0 for none. */
export function sum(values: Iterable<Exact>): Exact {
  let total = ZERO;
  for (const value of values) total = total.add(value);
  return total;
}
