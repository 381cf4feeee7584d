import type { NumberLook } from '../workbook/port.ts';

/** The built-in formats that show a date or a time (ISO/IEC 29500-1, 18.8.30), East Asian ones included. */
const BUILT_IN_DATES: readonly (readonly [number, number])[] = [
  [14, 22],
  [27, 36],
  [45, 47],
  [50, 58],
];
const BUILT_IN_PERCENTS: ReadonlySet<number> = new Set([9, 10]);

/** What a built-in number format makes of a number. */
export function lookOfBuiltIn(id: number): NumberLook {
  if (BUILT_IN_PERCENTS.has(id)) return 'percent';
  return BUILT_IN_DATES.some(([from, to]) => id >= from && id <= to) ? 'date' : 'plain';
}

/**
 * The codes of the built-in formats (ISO/IEC 29500-1, 18.8.30), as far as they don't depend on a language. The two
 * that follow the reader's own way of writing a date are given as year, month and day.
 */
const BUILT_IN_CODES: Readonly<Record<number, string>> = {
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  12: '# ?/?',
  13: '# ??/??',
  14: 'yyyy-mm-dd',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'yyyy-mm-dd h:mm',
  37: '#,##0;(#,##0)',
  38: '#,##0;(#,##0)',
  39: '#,##0.00;(#,##0.00)',
  40: '#,##0.00;(#,##0.00)',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  47: 'mm:ss.0',
  48: '##0.0E+0',
  49: '@',
};

/** The code of a built-in format; General for one that has none. */
export function builtInCode(id: number): string {
  const code = BUILT_IN_CODES[id];
  if (code !== undefined) return code;
  return lookOfBuiltIn(id) === 'date' ? 'yyyy-mm-dd' : 'General';
}
