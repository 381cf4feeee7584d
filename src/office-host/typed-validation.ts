import { intersection, parseArea, splitAddress } from './cell-area.ts';
import { HostError } from './host-error.ts';
import {
  type Cell,
  cellAt,
  findSheet,
  type MemoryWorkbook,
  type Sheet,
  type Validation,
} from './memory-workbook.ts';
import type { CellScalar, ValidationAlert } from './workbook-description.ts';

/** What data validation says to a cell that was typed. Writes of add-ins are never asked ("Add data validation to Excel ranges"). */
export type ValidationVerdict =
  | { readonly kind: 'fine' }
  /** There is a rule that this host can't work out: a formula. */
  | { readonly kind: 'unchecked' }
  | { readonly kind: 'against'; readonly alert: ValidationAlert };

type Rule = NonNullable<Validation['rule']>[string];

const DEFAULT_ALERT: ValidationAlert = {
  message: "The value doesn't match the data validation restrictions defined for this cell.",
  showAlert: true,
  style: 'Stop',
  title: '',
};

/** The texts that a list allows; null where it stands in a formula that isn't a plain range. */
function listed(workbook: MemoryWorkbook, sheet: Sheet, source: unknown): readonly string[] | null {
  if (typeof source !== 'string') return null;
  if (!source.startsWith('=')) return source.split(',').map((text) => text.trim());
  const { sheet: name, rest } = splitAddress(source.slice(1));
  const other = name === null ? sheet : findSheet(workbook, name);
  try {
    const of = parseArea(rest);
    if (!other || of.rows > 100_000) return null;
    return Array.from({ length: of.rows * of.columns }, (_, index) => {
      const row = of.row + Math.floor(index / of.columns);
      return String(cellAt(other, row, of.column + (index % of.columns)).value);
    }).filter((text) => text !== '');
  } catch (error) {
    if (error instanceof HostError) return null;
    throw error;
  }
}

/** Whether a number is within what a rule allows; null where the rule's bounds aren't plain numbers. */
function within(number: number, rule: Rule): boolean | null {
  const bound = (given: unknown): number =>
    given === '' || given === undefined ? Number.NaN : Number(given);
  const [low, high] = [bound(rule['formula1']), bound(rule['formula2'])];
  const two = rule['operator'] === 'Between' || rule['operator'] === 'NotBetween';
  if (Number.isNaN(low) || (two && Number.isNaN(high))) return null;
  switch (rule['operator']) {
    case 'Between':
      return number >= low && number <= high;
    case 'NotBetween':
      return number < low || number > high;
    case 'EqualTo':
      return number === low;
    case 'NotEqualTo':
      return number !== low;
    case 'GreaterThan':
      return number > low;
    case 'LessThan':
      return number < low;
    case 'GreaterThanOrEqualTo':
      return number >= low;
    case 'LessThanOrEqualTo':
      return number <= low;
    default:
      return null;
  }
}

function allows(
  workbook: MemoryWorkbook,
  sheet: Sheet,
  kind: string,
  rule: Rule,
  value: CellScalar,
): boolean | null {
  switch (kind) {
    case 'list': {
      const texts = listed(workbook, sheet, rule['source']);
      // A list written out tells capitals from small letters, one in cells doesn't; the former is the stricter.
      return texts?.includes(String(value)) ?? null;
    }
    case 'textLength':
      return within(String(value).length, rule);
    case 'wholeNumber':
      return typeof value === 'number' && Number.isInteger(value) ? within(value, rule) : false;
    case 'decimal':
    case 'date':
    case 'time':
      return typeof value === 'number' ? within(value, rule) : false;
    default:
      return null;
  }
}

/** Looks a typed cell up in the rules of its sheet. */
export function validationVerdict(
  workbook: MemoryWorkbook,
  sheet: Sheet,
  row: number,
  column: number,
  typed: Cell,
): ValidationVerdict {
  const at = { row, column, rows: 1, columns: 1 };
  const found = sheet.validations.findLast(({ area }) => intersection(area, at) !== null);
  const [kind, rule] = Object.entries(found?.rule ?? {})[0] ?? [];
  if (!found || kind === undefined || rule === undefined) return { kind: 'fine' };
  if (typed.formula !== undefined) return { kind: 'unchecked' };
  if (typed.value === '' && found.ignoreBlanks) return { kind: 'fine' };
  const allowed = allows(workbook, sheet, kind, rule, typed.value);
  if (allowed === null) return { kind: 'unchecked' };
  const alert = found.errorAlert ?? DEFAULT_ALERT;
  return allowed || !alert.showAlert ? { kind: 'fine' } : { kind: 'against', alert };
}
