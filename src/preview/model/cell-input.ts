import { isoDay, parseDay } from '../../core/day.ts';
import { type DateSystem, dayOfSerial, serialOfDay } from '../../core/serial-date.ts';
import type { ShownCell } from '../../files/tab-cells.ts';
import type { TypedCell } from '../../files/typed-cell.ts';

const PLAIN_NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/;
const PERCENTAGE = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*%$/;
const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;
/** A spreadsheet keeps so many digits of a number. */
const MOST_DIGITS = 15;
const TEXT_FORMAT = '@';

/**
 * What a person means by what they typed. Only what is one plain thing becomes something else than text: a number
 * with a point, a percentage, a day YYYY-MM-DD, true or false, a formula. A leading apostrophe keeps text as it is;
 * so does a cell formatted as text. Numbers that would lose digits (007, more than 15) stay text.
 * @param cell the cell as it is, which tells whether a number means a percentage
 */
export function parseInput(
  typed: string,
  cell: Pick<ShownCell, 'format' | 'look'>,
  dateSystem: DateSystem,
): TypedCell {
  if (typed === '') return { kind: 'blank' };
  if (typed.startsWith("'")) return { kind: 'text', text: typed.slice(1) };
  const text = typed.trim();
  if (cell.format === TEXT_FORMAT || text === '') return { kind: 'text', text: typed };
  if (text.startsWith('=') && text.length > 1) return { kind: 'formula', formula: text.slice(1) };
  if (/^(?:true|false)$/i.test(text)) return { kind: 'boolean', value: text.toLowerCase() === 'true' };
  const day = ISO_DAY.test(text) ? parseDay(text) : null;
  // A day before the first serial can't be a date in a spreadsheet.
  if (day !== null && dayOfSerial(serialOfDay(day, dateSystem), dateSystem) === day)
    return { kind: 'day', day };
  const percentage = PERCENTAGE.exec(text)?.[1];
  if (percentage !== undefined && keepsDigits(percentage)) return percent(percentage);
  if (!PLAIN_NUMBER.test(text) || !keepsDigits(text)) return { kind: 'text', text: typed };
  return cell.look === 'percent' ? percent(text) : { kind: 'number', number: Number(text) };
}

function percent(digits: string): TypedCell {
  return { kind: 'percent', number: Number((Number(digits) / 100).toPrecision(MOST_DIGITS)) };
}

function keepsDigits(text: string): boolean {
  const digits = text.replace(/^[+-]/, '');
  if (/^0\d/.test(digits)) return false;
  return digits.replace('.', '').replace(/^0+/, '').length <= MOST_DIGITS;
}

/** What stands in the editor for a cell: typed again as it is, it gives the cell that is there. */
export function inputOf(cell: ShownCell | undefined, dateSystem: DateSystem): string {
  if (cell === undefined) return '';
  if (cell.formula !== null) return `=${cell.formula}`;
  const { value } = cell;
  if (value === null) return '';
  if (typeof value === 'object') return value.shown;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'number') return numberInput(value, cell, dateSystem);
  const again = parseInput(value, cell, dateSystem);
  return again.kind === 'text' && again.text === value ? value : `'${value}`;
}

function numberInput(value: number, { look }: ShownCell, dateSystem: DateSystem): string {
  if (look === 'date' && Number.isInteger(value)) {
    const day = dayOfSerial(value, dateSystem);
    if (day !== null) return isoDay(day);
  }
  const plain = String(Number((look === 'percent' ? value * 100 : value).toPrecision(MOST_DIGITS)));
  return look === 'percent' ? `${plain}%` : plain;
}
