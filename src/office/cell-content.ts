import { type DateSystem, serialOfDay } from '../core/serial-date.ts';
import { lookOfCode } from '../workbook/number-formats.ts';
import type { CellWrite } from '../workbook/port.ts';
import { GENERAL_FORMAT, isFormula, TEXT_FORMAT } from './cell-values.ts';

export const DAY_FORMAT = 'yyyy-mm-dd';

/** What a cell holds after a write: '' is blank. */
export function valueToWrite(cell: CellWrite, dateSystem: DateSystem): string | number {
  switch (cell.kind) {
    case 'blank':
      return '';
    case 'text':
      return cell.text;
    case 'number':
      return cell.number === 0 ? 0 : cell.number;
    case 'day':
      return serialOfDay(cell.day, dateSystem);
  }
}

/**
 * The number format that a cell must have before it is written; null where the one it has will do. Text needs the
 * format that keeps it text, a number must not have that one, and a day shows as a day.
 */
export function formatToWrite(cell: CellWrite, current: string): string | null {
  switch (cell.kind) {
    case 'blank':
      return null;
    case 'text':
      return cell.text === '' || current === TEXT_FORMAT ? null : TEXT_FORMAT;
    case 'number':
      return current === TEXT_FORMAT ? GENERAL_FORMAT : null;
    case 'day':
      return lookOfCode(current) === 'date' ? null : DAY_FORMAT;
  }
}

/** Numbers come back with at least 15 digits. */
const DIGITS = 1e-14;

/** Whether a cell holds what was written. Line ends may have been changed to the program's own. */
export function holdsWritten(found: unknown, wanted: string | number): boolean {
  if (typeof wanted === 'number') {
    return typeof found === 'number' && Math.abs(found - wanted) <= Math.abs(wanted) * DIGITS;
  }
  return typeof found === 'string' && found.replaceAll('\r\n', '\n') === wanted.replaceAll('\r\n', '\n');
}

/** What puts a cell back as it stood: the format under which it is to be written, its content, its own format. */
export interface CellBefore {
  readonly writeAs: string;
  readonly formula: string | number | boolean;
  readonly numberFormat: string;
}

/**
 * @param formula what the program gave as the cell's formula: a constant stands there as it is
 * @param value what it gave as its value
 */
export function cellBefore(formula: unknown, value: unknown, numberFormat: unknown): CellBefore {
  const own = typeof numberFormat === 'string' ? numberFormat : GENERAL_FORMAT;
  const content =
    typeof formula === 'string' || typeof formula === 'number' || typeof formula === 'boolean' ? formula : '';
  const isText = typeof content === 'string' && content !== '' && !isFormula(formula, value);
  return { writeAs: isText ? TEXT_FORMAT : own, formula: content, numberFormat: own };
}
