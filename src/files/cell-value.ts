import type { CellValue } from '../workbook/port.ts';
import { plainCellText, type SharedStrings } from './shared-strings.ts';

/**
 * The value that the text of a `v` element stands for.
 * @param type the attribute `t` of the cell, '' where it has none
 * @returns undefined where it refers to a shared text that isn't there
 */
export function cellValueIn(
  text: string,
  start: number,
  end: number,
  type: string,
  strings: SharedStrings,
): CellValue | undefined {
  switch (type) {
    case 's':
      return strings.texts[smallInteger(text, start, end)];
    case '':
    case 'n': {
      const source = text.slice(start, end);
      const number = Number(source);
      if (source.trim() === '') return null;
      return Number.isFinite(number) ? number : { shown: plainCellText(source) };
    }
    case 'b':
      return /^\s*(?:1|true)\s*$/.test(text.slice(start, end));
    case 'e':
      return { shown: plainCellText(text.slice(start, end)) };
    default:
      return plainCellText(text.slice(start, end));
  }
}

/** A whole number that stands in a text, read without cutting it out. */
export function smallInteger(text: string, start: number, end: number): number {
  let number = 0;
  for (let at = start; at < end; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return Number(text.slice(start, end));
    number = number * 10 + digit;
  }
  return number;
}
