import { type Exact, parsePlainNumber } from '../../core/exact-number.ts';

/** What stands in a field for a number. */
export type NumberText =
  | { readonly kind: 'blank' }
  | { readonly kind: 'number'; readonly number: Exact }
  /** The message says what stands there and what would be right. */
  | { readonly kind: 'not a number'; readonly message: string };

/** Reads what was typed into a field for a number: digits with at most one decimal point. */
export function readNumber(text: string): NumberText {
  if (text.trim() === '') return { kind: 'blank' };
  const number = parsePlainNumber(text);
  if (number !== null) return { kind: 'number', number };
  const comma = /^[+-]?\d*,\d+$/.test(text.trim()) ? ', with a point for the decimals' : '';
  return {
    kind: 'not a number',
    message: `${text.trim()} can’t be read as a number: a plain number is right, such as 12.5${comma}.`,
  };
}
