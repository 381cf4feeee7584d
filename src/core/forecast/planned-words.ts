import { exact } from '../exact-number.ts';
import { unitNamed } from '../unit.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../wording.ts';

/** What is less than this of a unit is nothing: planned figures are not exact. */
const LEAST = 1e-6;
const SHOWN_DIGITS = 3;

/**
 * A quantity that rests on what will probably be used, for people: to three digits, or without decimals where it has
 * more before the point, as nobody knows it better.
 * @param unit the name of a unit
 */
export function plannedWords(quantity: number, unit: string): string {
  const number = plannedFigure(quantity);
  return `${number} ${unitFor(number, unitNamed(unit))}`;
}

/**
 * A quantity as it was worked out, with at most three decimals: what is to be made, what a job needs.
 * @param unit the name of a unit
 */
export function exactWords(quantity: number, unit: string): string {
  return spokenQuantity(exact(quantity), unitNamed(unit));
}

/** The number of such a quantity without its unit. */
export function plannedFigure(quantity: number): string {
  const size = Math.abs(quantity);
  if (size <= LEAST) return '0';
  const shown =
    size >= 10 ** (SHOWN_DIGITS - 1) ? Math.round(quantity) : Number(quantity.toPrecision(SHOWN_DIGITS));
  return spokenNumber(exact(shown));
}
