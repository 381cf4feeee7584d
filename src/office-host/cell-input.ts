import { parseDay } from '../core/day.ts';
import { type DateSystem, serialOfDay } from '../core/serial-date.ts';
import { isFormula } from './formula-check.ts';
import { HostError, invalidArgument } from './host-error.ts';
import type { Cell } from './memory-workbook.ts';
import type { CellScalar } from './workbook-description.ts';

/**
 * What the program makes of a value that is written to a cell or typed into it, in English (United States) style.
 * Documented: null leaves a cell as it is, '' clears it, a leading =, + or - makes a formula, a number format of @
 * keeps text as text. That texts which look like numbers, days, times and TRUE change their type is reported, and is
 * what typing does; where the exact reach isn't known, the stricter reading is taken: the text is changed.
 */

export interface InputRules {
  readonly dateSystem: DateSystem;
  /** The year that a day without one is taken to be in. */
  readonly year: number;
  /**
   * Whether a leading apostrophe is dropped in a cell that is formatted as text, too. It is not documented; an adapter
   * should come out right either way.
   */
  readonly apostropheInTextCell: 'dropped' | 'kept';
}

const MAX_TEXT = 32_767;
const MAX_FORMULA = 8192;
const NO_RESULT = '#CALC!';
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH =
  '(jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec|january|february|march|april|august|september|october|november|december)';

interface Typed {
  readonly value: CellScalar;
  /** The number format that the program gives along, where the cell has none yet. */
  readonly numberFormat?: string;
}

function asNumber(text: string): Typed | null {
  const found =
    /^(?<minus>[-+(]?)(?<money>\$?)(?<digits>(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d*)?|\.\d+)(?<power>e[+-]?\d+)?(?<percent>%?)(?<close>\)?)$/i.exec(
      text.trim(),
    )?.groups;
  if (!found || (found['minus'] === '(') !== (found['close'] === ')')) return null;
  const size = Number(`${(found['digits'] ?? '').replaceAll(',', '')}${found['power'] ?? ''}`);
  if (!Number.isFinite(size)) return null;
  const signed = found['minus'] === '-' || found['minus'] === '(' ? -size : size;
  if (found['percent']) {
    const whole = !(found['digits'] ?? '').includes('.');
    return { value: signed / 100, numberFormat: whole ? '0%' : '0.00%' };
  }
  if (found['money']) return { value: signed, numberFormat: '$#,##0_);[Red]($#,##0)' };
  if (found['power']) return { value: signed, numberFormat: '0.00E+00' };
  return (found['digits'] ?? '').includes(',') ? { value: signed, numberFormat: '#,##0' } : { value: signed };
}

function asFraction(text: string): Typed | null {
  const found = /^(-?)(\d+) (\d+)\/(\d+)$/.exec(text.trim());
  if (!found || Number(found[4]) === 0) return null;
  const size = Number(found[2]) + Number(found[3]) / Number(found[4]);
  return { value: found[1] ? -size : size, numberFormat: '# ?/?' };
}

const fullYear = (text: string): number => {
  const year = Number(text);
  return text.length > 2 ? year : year + (year < 30 ? 2000 : 1900);
};

function dayNumber(year: number, month: number, day: number, rules: InputRules): number | null {
  const iso = `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  const parsed = parseDay(iso);
  return parsed === null || year < 1904 ? null : serialOfDay(parsed, rules.dateSystem);
}

function asDay(text: string, rules: InputRules): Typed | null {
  const plain = text.trim().toLowerCase();
  const made = (year: number, month: number, day: number, numberFormat: string): Typed | null => {
    const value = dayNumber(year, month, day, rules);
    return value === null ? null : { value, numberFormat };
  };
  const monthOf = (name: string): number => MONTHS.indexOf(name.slice(0, 3)) + 1;
  let found = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})$/.exec(plain);
  if (found) return made(Number(found[1]), Number(found[2]), Number(found[3]), 'm/d/yyyy');
  found = /^(\d{1,2})[-/](\d{1,2})[-/](\d{2}|\d{4})$/.exec(plain);
  if (found) return made(fullYear(found[3] ?? ''), Number(found[1]), Number(found[2]), 'm/d/yyyy');
  found = /^(\d{1,2})[-/](\d{1,2})$/.exec(plain);
  if (found) return made(rules.year, Number(found[1]), Number(found[2]), 'd-mmm');
  found = /^(\d{1,2})[-/](\d{4})$/.exec(plain);
  if (found) return made(Number(found[2]), Number(found[1]), 1, 'mmm-yy');
  found = new RegExp(`^(\\d{1,2})[- ]?${MONTH}(?:[- ](\\d{2}|\\d{4}))?$`).exec(plain);
  if (found) {
    const year = found[3] === undefined ? rules.year : fullYear(found[3]);
    return made(
      year,
      monthOf(found[2] ?? ''),
      Number(found[1]),
      found[3] === undefined ? 'd-mmm' : 'd-mmm-yy',
    );
  }
  found = new RegExp(`^${MONTH}[- ]?(\\d{1,4})(?:, ?(\\d{4}))?$`).exec(plain);
  if (!found) return null;
  const number = Number(found[2]);
  const month = monthOf(found[1] ?? '');
  if (found[3] !== undefined) return made(Number(found[3]), month, number, 'd-mmm-yy');
  if (number >= 1 && number <= 31) return made(rules.year, month, number, 'd-mmm');
  return made(fullYear(found[2] ?? ''), month, 1, 'mmm-yy');
}

function asTime(text: string): Typed | null {
  const found = /^(\d{1,4}):([0-5]?\d)(?::([0-5]?\d))?(?: ?([ap])m?)?$/i.exec(text.trim());
  if (!found) return null;
  const half = found[4]?.toLowerCase();
  const hours = Number(found[1]);
  if (half && (hours < 1 || hours > 12)) return null;
  const hour = half ? (hours % 12) + (half === 'p' ? 12 : 0) : hours;
  const seconds = (hour * 60 + Number(found[2])) * 60 + Number(found[3] ?? 0);
  return { value: seconds / 86_400, numberFormat: found[3] === undefined ? 'h:mm' : 'h:mm:ss' };
}

function typedText(text: string, rules: InputRules): Typed {
  if (/^(?:true|false)$/i.test(text.trim())) return { value: text.trim().toLowerCase() === 'true' };
  return asNumber(text) ?? asFraction(text) ?? asDay(text, rules) ?? asTime(text) ?? { value: text };
}

function formulaCell(formula: string, old: Cell): Cell {
  if (formula.length > MAX_FORMULA) {
    throw new HostError('FormulaLengthExceedsLimit', 'The formula is longer than 8,192 characters.');
  }
  if (!isFormula(formula)) throw invalidArgument();
  return { ...old, formula, value: NO_RESULT };
}

function plainCell(old: Cell, value: CellScalar, numberFormat = old.numberFormat): Cell {
  return {
    value,
    numberFormat,
    ...(old.format === undefined ? {} : { format: old.format }),
  };
}

/**
 * The cell after a value is written to it or typed into it.
 * Throws `InvalidArgument` for what is no value, and for a formula that the program can't read.
 */
export function cellAfterInput(old: Cell, input: unknown, rules: InputRules): Cell {
  if (input === null || input === undefined) return old;
  if (input === '') return plainCell(old, '');
  const isText = old.numberFormat === '@';
  if (typeof input === 'number' || typeof input === 'boolean') {
    if (typeof input === 'number' && !Number.isFinite(input)) throw invalidArgument();
    // In a cell formatted as text a number becomes text; it is not documented for what is not text, and the stricter.
    return plainCell(old, isText ? String(input).toUpperCase() : input);
  }
  if (typeof input !== 'string' || input.length > MAX_TEXT) throw invalidArgument();
  if (input.startsWith("'") && !(isText && rules.apostropheInTextCell === 'kept')) {
    return plainCell(old, input.slice(1));
  }
  if (isText) return plainCell(old, input);
  const number = asNumber(input);
  if (!number && /^[=+\-@]/.test(input) && input.length > 1) {
    return formulaCell(input.startsWith('=') ? input : `=${input}`, old);
  }
  const typed = number ?? typedText(input, rules);
  const given = old.numberFormat === 'General' ? typed.numberFormat : undefined;
  return plainCell(old, typed.value, given);
}
