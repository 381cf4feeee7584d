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

/** What a number format code makes of a number. */
export function lookOfCode(code: string): NumberLook {
  // Elapsed time ([h]:mm) is a time; other brackets are colours, conditions and locales.
  if (/\[(?:h+|m+|s+)\]/i.test(code)) return 'date';
  const bare = code
    .replace(/"[^"]*"?/g, '')
    .replace(/\\./g, '')
    .replace(/[_*]./g, '')
    .replace(/\[[^\]]*\]/g, '');
  if (bare.includes('%')) return 'percent';
  if (/general|standard/i.test(bare)) return 'plain';
  if (/[ydhs]/i.test(bare)) return 'date';
  // Months alone are a date ("mmmm"); beside digits an m is more likely a metre that wasn't quoted.
  return /m/i.test(bare) && !/[0#?]/.test(bare) ? 'date' : 'plain';
}
