import { format } from 'numfmt';
import { type DateSystem, dayOfSerial } from '../../core/serial-date.ts';
import type { ShownCell } from '../../files/tab-cells.ts';

/** A cell as the grid shows it. */
export interface CellText {
  readonly text: string;
  /** On which side it stands: numbers and days on the right, as they are compared. */
  readonly side: 'left' | 'right';
  /** What has to be told apart at a glance: an error, or a formula whose result nobody knows. */
  readonly trouble: 'error' | 'no result' | null;
}

const BLANK: CellText = { text: '', side: 'left', trouble: null };
const DAYS_BETWEEN_SYSTEMS = 1462;

/** The text that a cell shows: numbers by their format, formulas by their stored result. */
export function cellText(cell: ShownCell | undefined, dateSystem: DateSystem): CellText {
  const value = cell?.value ?? null;
  if (cell === undefined || value === null) return BLANK;
  if (typeof value === 'string') return { ...BLANK, text: value };
  if (typeof value === 'boolean') return { ...BLANK, text: value ? 'TRUE' : 'FALSE' };
  if (typeof value === 'object') {
    // A formula without a stored result: to show a value would be to guess one.
    if (value.shown.startsWith('=')) return { ...BLANK, text: '=…', trouble: 'no result' };
    return { ...BLANK, text: value.shown, trouble: 'error' };
  }
  return { ...BLANK, text: numberText(value, cell, dateSystem), side: 'right' };
}

function numberText(value: number, cell: ShownCell, dateSystem: DateSystem): string {
  // The formatter counts as the 1900 system does; a number that is no day is shown plainly, not as a wrong one.
  const isDay = cell.look === 'date';
  if (isDay && value >= 1 && dayOfSerial(value, dateSystem) === null) return String(value);
  const serial = isDay && dateSystem === 1904 ? value + DAYS_BETWEEN_SYSTEMS : value;
  return format(cell.format, serial, { throws: false, nbsp: false });
}
