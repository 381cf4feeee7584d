import { isoDay } from '../core/day.ts';
import { type DateSystem, dayOfSerial } from '../core/serial-date.ts';
import { notImplemented } from './host-error.ts';
import type { CellScalar } from './workbook-description.ts';

/** Shows a number as its number format has it; undefined where that isn't known. */
export type DisplayText = (
  value: CellScalar,
  numberFormat: string,
  dateSystem: DateSystem,
) => string | undefined;

/** A number as General shows it: eleven digits at most. */
function general(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e11 || size < 1e-9) {
    const [digits = '', power = ''] = value.toExponential(5).split('e');
    const sign = power.startsWith('-') ? '-' : '+';
    return `${digits.replace(/\.?0+$/, '')}E${sign}${power.replace(/^[-+]/, '').padStart(2, '0')}`;
  }
  return String(Number(value.toPrecision(11)));
}

function fixed(value: number, numberFormat: string): string | undefined {
  const found = /^(#,##)?0(?:\.(0+))?(%)?$/.exec(numberFormat);
  if (!found) return undefined;
  const shown = (found[3] ? value * 100 : value).toFixed(found[2]?.length ?? 0);
  const grouped = found[1] ? shown.replace(/\B(?=(?:\d{3})+(?!\d))(?<!\.\d*)/g, ',') : shown;
  return `${grouped}${found[3] ?? ''}`;
}

function dated(value: number, numberFormat: string, dateSystem: DateSystem): string | undefined {
  if (!/^(?:m{1,2}\/d{1,2}\/y{2,4}|yyyy-mm-dd)$/.test(numberFormat)) return undefined;
  const day = dayOfSerial(value, dateSystem);
  if (day === null) return '########';
  const [year = '', month = '', date = ''] = isoDay(day).split('-');
  return numberFormat.replace(/y+|m+|d+/g, (part) => {
    if (part.startsWith('y')) return part.length > 2 ? year : year.slice(2);
    const number = part.startsWith('m') ? month : date;
    return part.length > 1 ? number : String(Number(number));
  });
}

/**
 * What a cell shows, whatever its width. A few number formats are known here; the caller's own `display` goes first.
 * Throws `NotImplemented` for others: a guess would be taken for what the program shows.
 */
export function shownText(
  value: CellScalar,
  numberFormat: string,
  dateSystem: DateSystem,
  display?: DisplayText,
): string {
  const given = display?.(value, numberFormat, dateSystem);
  if (given !== undefined) return given;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'string') return value;
  if (numberFormat === 'General' || numberFormat === '@') return general(value);
  const shown = fixed(value, numberFormat) ?? dated(value, numberFormat, dateSystem);
  if (shown === undefined) throw notImplemented(`Range.text of a number formatted as ${numberFormat}`);
  return shown;
}
