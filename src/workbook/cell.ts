import { z } from 'zod';
import { type Day, isoDay, parseDay } from '../core/day.ts';
import { type Exact, exact, parsePlainNumber } from '../core/exact-number.ts';
import { dayOfSerial } from '../core/serial-date.ts';
import { findUnit, UNIT_NAMES, type Unit } from '../core/unit.ts';
import type { CellProblem, CellValue } from './port.ts';

/** A date that stands in a cell which is not for dates: spreadsheets make one of what is typed as "3-4". */
export interface StrayDate {
  readonly strayDate: Day;
}

/** The value of a cell as the schemas take it: percentages × 100, serials of the 1900 system. */
export type PreparedCell = CellValue | StrayDate;

/** Reads the value of one cell, or says what would be right: null is a blank cell. */
export type CellSchema<T> = z.ZodType<T | null, PreparedCell>;

type Filled = string | number | boolean;

/** The result of reading a filled cell: a value, or in words what would be right. */
type Reading<T> = { readonly value: T } | { readonly right: string };

function cell<T>(read: (value: Filled) => Reading<T>): CellSchema<T> {
  return z.custom<PreparedCell>().transform((value, context): T | null => {
    if (isBlank(value)) return null;
    const reading: Reading<T> = isFilled(value)
      ? read(value)
      : { right: 'type the value itself' };
    if ('value' in reading) return reading.value;
    context.issues.push({ code: 'custom', message: reading.right, input: value });
    return z.NEVER;
  });
}

/** Whether a cell is blank: nothing in it, or only spaces. */
export function isBlank(value: PreparedCell): value is null | string {
  return value === null || (typeof value === 'string' && value.trim() === '');
}

function isFilled(value: PreparedCell): value is Filled {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
}

/** What stands in a cell, as a message quotes it. */
export function shown(value: PreparedCell): string {
  if (value === null) return 'nothing';
  if (typeof value === 'string') return `“${value}”`;
  if (typeof value === 'object') {
    return 'strayDate' in value ? `the date ${isoDay(value.strayDate)}` : problemShown(value);
  }
  return `“${String(value)}”`;
}

function problemShown(problem: CellProblem): string {
  return problem.shown.startsWith('=')
    ? `the formula ${problem.shown}, of which the file holds no result`
    : `the error ${problem.shown}`;
}

/** Text as it stands, without the spaces around it; a number is taken as its digits. */
export const text: CellSchema<string> = cell((value) => ({ value: plainText(value) }));

/** Free text that nothing depends on: an error there is no matter. */
export const remark: CellSchema<string> = z
  .custom<PreparedCell>()
  .transform((value) => (isBlank(value) || !isFilled(value) ? null : plainText(value)));

function plainText(value: Filled): string {
  return typeof value === 'boolean' ? (value ? 'TRUE' : 'FALSE') : String(value).trim();
}

/** What a number may be. */
export type Bounds = 'any' | 'positive' | 'not negative' | 'percent below 100';

const BOUND_WORDS: Readonly<Record<Bounds, string>> = {
  any: 'a plain number is right, such as 12.5',
  positive: 'a plain number above 0 is right, such as 12.5',
  'not negative': 'a plain number is right, 0 or more, such as 12.5',
  'percent below 100': 'a percentage above 0 and below 100 is right, such as 95',
};

/** An exact number within bounds. */
export function number(bounds: Bounds): CellSchema<Exact> {
  return cell((value) => {
    const read =
      typeof value === 'number' ? exact(value) : typeof value === 'string' ? parsePlainNumber(value) : null;
    if (read === null) return { right: numberHint(value, bounds) };
    return inBounds(read, bounds) ? { value: read } : { right: BOUND_WORDS[bounds] };
  });
}

function inBounds(value: Exact, bounds: Bounds): boolean {
  switch (bounds) {
    case 'any':
      return true;
    case 'positive':
      return value.compare(0) > 0;
    case 'not negative':
      return value.compare(0) >= 0;
    case 'percent below 100':
      return value.compare(0) > 0 && value.compare(100) < 0;
  }
}

const NUMBER_WITH_UNIT = /^([\d.]+)\s*([^\d\s.,%].*)$/;

/** The hint for text where a number should be: the two usual slips are told apart. */
function numberHint(value: Filled, bounds: Bounds): string {
  const typed = String(value).trim();
  const withUnit = NUMBER_WITH_UNIT.exec(typed);
  const unit = withUnit?.[2] === undefined ? null : findUnit(withUnit[2]);
  if (unit !== null) return `the number alone is right here, ${withUnit?.[1]}; its unit has a column of its own`;
  if (/^[\d.,' ]*\d$/.test(typed) && /[,' ]/.test(typed)) {
    return 'a plain number is right, with a point for the decimals and nothing between the thousands, such as 1234.5';
  }
  return BOUND_WORDS[bounds];
}

/** A whole number of days, or a count, not negative. */
export const wholeNumber: CellSchema<number> = cell((value) => {
  const read = typeof value === 'string' ? parsePlainNumber(value)?.valueOf() : value;
  return typeof read === 'number' && Number.isInteger(read) && read >= 0
    ? { value: read }
    : { right: 'a whole number is right, 0 or more, such as 14' };
});

const AMBIGUOUS_DATE = /^\d{1,4}[./-]\d{1,2}[./-]\d{1,4}$/;

/** A calendar day: a real date, or text written YYYY-MM-DD. A date that could mean two days is refused. */
export const day: CellSchema<Day> = cell((value) => {
  const read =
    typeof value === 'number' ? dayOfSerial(value, 1900) : typeof value === 'string' ? parseDay(value) : null;
  if (read !== null) return { value: read };
  return {
    right: AMBIGUOUS_DATE.test(String(value).trim())
      ? 'this text could mean more than one day, or none; a real date is right, or text such as 2026-04-03'
      : 'a date is right, or text such as 2026-04-03',
  };
});

/** yes or no. */
export const yesNo: CellSchema<boolean> = cell((value) => {
  if (typeof value === 'boolean') return { value };
  const answer = String(value).trim().toLowerCase();
  if (answer === 'yes' || answer === 'true') return { value: true };
  if (answer === 'no' || answer === 'false') return { value: false };
  return { right: 'yes or no is right' };
});

/** Whether something is done: yes or no, or the day on which it was. */
export const done: CellSchema<boolean> = cell((value) => {
  if (typeof value === 'number') return { value: true };
  if (typeof value === 'string' && parseDay(value) !== null) return { value: true };
  const answer = yesNo.safeParse(value);
  return answer.success && answer.data !== null
    ? { value: answer.data }
    : { right: 'yes or no is right, or the date on which it was done' };
});

/** A unit of measure. */
export const unit: CellSchema<Unit> = cell((value) => {
  const found = typeof value === 'string' ? findUnit(value) : null;
  return found === null ? { right: `a unit is right, one of ${UNIT_NAMES.join(', ')}` } : { value: found };
});

/** One of a few fixed words; case and spacing are ignored. */
export function word<const W extends string>(words: readonly W[]): CellSchema<W> {
  const byKey = new Map(words.map((each) => [each.toLowerCase(), each]));
  const list = new Intl.ListFormat('en-GB', { type: 'disjunction' }).format(words);
  return cell((value) => {
    const found = byKey.get(String(value).trim().toLowerCase().replace(/\s+/g, ' '));
    return found === undefined ? { right: `${list} is right` } : { value: found };
  });
}
