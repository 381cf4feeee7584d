import type { CellValue } from '../workbook/port.ts';

/** The number format under which whatever is written stays text. */
export const TEXT_FORMAT = '@';
export const GENERAL_FORMAT = 'General';

/** The errors that a cell can show; they come as text, in English whatever the language. */
const ERRORS: ReadonlySet<string> = new Set([
  '#NULL!',
  '#DIV/0!',
  '#VALUE!',
  '#REF!',
  '#NAME?',
  '#NUM!',
  '#N/A',
  '#GETTING_DATA',
  '#SPILL!',
  '#CALC!',
  '#FIELD!',
  '#BLOCKED!',
  '#CONNECT!',
  '#BUSY!',
  '#UNKNOWN!',
  '#EXTERNAL!',
  '#PYTHON!',
  '#TIMEOUT!',
]);

/**
 * Whether a cell holds a formula. A text that begins with an equals sign shows itself; a formula shows its result.
 * @param formula what the program gives as the cell's formula
 * @param value what it gives as its value
 */
export function isFormula(formula: unknown, value: unknown): boolean {
  return typeof formula === 'string' && formula.startsWith('=') && formula !== value;
}

/** The value of a cell, from what the program gives as its value, formula and number format. */
export function cellValue(value: unknown, hasFormula: boolean, numberFormat: unknown): CellValue {
  if (value === '' || value === null || value === undefined) return hasFormula ? '' : null;
  if (typeof value === 'string') {
    const isText = numberFormat === TEXT_FORMAT && !hasFormula;
    return ERRORS.has(value) && !isText ? { shown: value } : value;
  }
  return typeof value === 'number' || typeof value === 'boolean' ? value : { shown: JSON.stringify(value) };
}

/** The number format that the program gave for a cell. */
export function formatAt(numberFormats: readonly unknown[] | undefined, column: number): string {
  const format = numberFormats?.[column];
  return typeof format === 'string' ? format : GENERAL_FORMAT;
}
