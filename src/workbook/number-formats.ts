import type { NumberLook } from './port.ts';

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
