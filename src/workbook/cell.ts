import * as z from 'zod';
import { type Day, isoDay, parseDay } from '../core/day.ts';
import { type Exact, exact, parsePlainNumber, ZERO } from '../core/exact-number.ts';
import { dayOfSerial } from '../core/serial-date.ts';
import { findUnit, UNIT_NAMES, type Unit } from '../core/unit.ts';
import type { CellProblem, CellValue } from './port.ts';

// Elsewhere zod makes code from text, by which large tables are read twice as fast. In a page it would try whether it
// may, which the page's content security policy forbids and reports.
z.config({ jitless: 'document' in globalThis });

/** A date that stands in a cell which is not for dates: spreadsheets make one of what is typed as "3-4". */
export interface StrayDate {
  /** Null where the cell is shown as a date, but its number is no day's. */
  readonly strayDate: Day | null;
}

/** The value of a cell as the schemas take it: percentages × 100, serials of the 1900 system. */
export type PreparedCell = CellValue | StrayDate;

/** Reads the value of one cell, or says what would be right: null is a blank cell. */
export type CellSchema<T> = z.ZodType<T | null, PreparedCell>;

type Filled = string | number | boolean;

const SIGNIFICANT_DIGITS = 15;

/** The result of reading a filled cell: a value, or in words what would be right. */
type Reading<T> = { readonly value: T } | { readonly right: string };

function cell<T>(read: (value: Filled) => Reading<T>): CellSchema<T> {
  return z.custom<PreparedCell>().transform((value, context): T | null => {
    if (isBlank(value)) return null;
    const reading: Reading<T> = isFilled(value) ? read(value) : { right: mendingOf(value) };
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

/** How much of a long text a message quotes. */
const MOST_QUOTED = 60;

/** What stands in a cell, as a message quotes it: on one line, a long text cut. */
export function shown(value: PreparedCell): string {
  if (isBlank(value)) return 'nothing';
  if (!isFilled(value)) {
    if (!('strayDate' in value)) return problemShown(value);
    return value.strayDate === null ? 'a date' : `the date ${isoDay(value.strayDate)}`;
  }
  // Cut between characters, not in the middle of one.
  const quoted = Array.from(plainText(value).replace(/\s+/g, ' '));
  return `“${quoted.length > MOST_QUOTED ? `${quoted.slice(0, MOST_QUOTED).join('')}…` : quoted.join('')}”`;
}

/** What to do about a cell that holds nothing usable. */
function mendingOf(value: CellProblem | StrayDate): string {
  if ('strayDate' in value) return 'a number is right here: format the cell as a number and type it again';
  return isUncalculated(value)
    ? 'save the workbook once in a spreadsheet program, which works it out, or type the value itself'
    : 'mend the formula, or type the value itself';
}

function isUncalculated(problem: CellProblem): boolean {
  return problem.shown.startsWith('=');
}

function problemShown(problem: CellProblem): string {
  return isUncalculated(problem)
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
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'number' ? String(significant(value)) : value.trim();
}

/** A number as a spreadsheet shows it: what it has beyond 15 digits is noise. */
function significant(value: number): number {
  const rounded = Number(value.toPrecision(SIGNIFICANT_DIGITS));
  return Number.isFinite(rounded) ? rounded : value;
}

/** What a number may be. */
export type Bounds = 'any' | 'positive' | 'not negative' | 'percent below 100';

const BOUND_WORDS: Readonly<Record<Bounds, string>> = {
  any: 'a plain number is right, such as 12.5',
  positive: 'a plain number above 0 is right, such as 12.5',
  'not negative': 'a plain number is right, 0 or more, such as 12.5',
  'percent below 100': 'a percentage above 0 and below 100 is right, such as 95',
};

/** No bench has so much of anything: a slip of the fingers, or an identifier in the wrong column. */
const TOO_LARGE = 1e12;

/** Less than this is what a sum that should have come to nothing leaves behind (0.1 + 0.2 - 0.3), and is read as 0. */
const NOTHING = exact(1e-12);

/** An exact number within bounds. */
export function number(bounds: Bounds): CellSchema<Exact> {
  return cell((value) => {
    const given =
      typeof value === 'number' ? exact(value) : typeof value === 'string' ? parsePlainNumber(value) : null;
    if (given === null) return { right: numberHint(value, bounds) };
    if (given.abs().compare(TOO_LARGE) >= 0) return { right: 'a number below a million million is right' };
    const read = given.abs().compare(NOTHING) < 0 ? ZERO : given;
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
  const typed = plainText(value);
  const withUnit = NUMBER_WITH_UNIT.exec(typed);
  const unit = withUnit?.[2] === undefined ? null : findUnit(withUnit[2]);
  if (unit !== null) {
    return (
      `the number alone is right here, without its unit, and counted in the unit that this row goes by: ` +
      `${withUnit?.[1]} only if that is ${unit.name}`
    );
  }
  if (/^[\d.,' ]*\d$/.test(typed) && /[,' ]/.test(typed)) {
    return 'a plain number is right, with a point for the decimals and nothing between the thousands, such as 1234.5';
  }
  return BOUND_WORDS[bounds];
}

const LARGEST_COUNT = 1_000_000;

/** A whole number of days, or a count, not negative. */
export const wholeNumber: CellSchema<number> = wholeNumberTo(LARGEST_COUNT);

/** A whole number from 0 to a largest one. */
export function wholeNumberTo(largest: number): CellSchema<number> {
  return cell((value) => {
    const read = typeof value === 'string' ? parsePlainNumber(value)?.valueOf() : value;
    const rounded = typeof read === 'number' ? significant(read) : Number.NaN;
    if (Number.isInteger(rounded) && rounded >= 0 && rounded <= largest) return { value: rounded };
    const bound = largest === LARGEST_COUNT ? '0 or more, such as 14' : `from 0 to ${largest}`;
    return { right: `a whole number is right, ${bound}` };
  });
}

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
  if (typeof value === 'number' && dayOfSerial(value, 1900) !== null) return { value: true };
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
    const found = byKey.get(plainText(value).toLowerCase().replace(/\s+/g, ' '));
    return found === undefined ? { right: `${list} is right` } : { value: found };
  });
}
