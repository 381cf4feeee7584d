import { contains, intersection } from '../cell-area.ts';
import type { RangeSubject } from '../client-state.ts';
import { invalidArgument } from '../host-error.ts';
import type { Validation } from '../memory-workbook.ts';
import type { Json } from '../request.ts';
import { areaOf, text, truth } from './arguments.ts';
import type { ObjectKind } from './object-kind.ts';

const TYPES: Readonly<Record<string, string>> = {
  wholeNumber: 'WholeNumber',
  decimal: 'Decimal',
  list: 'List',
  date: 'Date',
  time: 'Time',
  textLength: 'TextLength',
  custom: 'Custom',
};
const NONE = {
  rule: null,
  ignoreBlanks: true,
  prompt: null,
  errorAlert: null,
} satisfies Omit<Validation, 'area'>;

/** The validation of a range: one for all its cells, none, or several. */
function validationOf(range: RangeSubject): Omit<Validation, 'area'> | 'several' {
  const of = areaOf(range);
  const last = range.sheet.validations.findLast((each) => intersection(each.area, of) !== null);
  if (!last) return NONE;
  return contains(last.area, of) ? last : 'several';
}

/** Puts a validation over a range; what it covers wholly is gone. */
function put(range: RangeSubject, fields: Partial<Omit<Validation, 'area'>>): void {
  const of = areaOf(range);
  const old = validationOf(range);
  const rest = range.sheet.validations.filter((each) => !contains(of, each.area));
  range.sheet.validations = [...rest, { ...(old === 'several' ? NONE : old), ...fields, area: of }];
}

const isObject = (value: Json): value is { readonly [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const one = (range: RangeSubject): Omit<Validation, 'area'> | null => {
  const found = validationOf(range);
  return found === 'several' ? null : found;
};

export const dataValidationKind: ObjectKind<RangeSubject> = {
  scalars: {
    ErrorAlert: (range) => toJson(one(range)?.errorAlert),
    IgnoreBlanks: (range) => one(range)?.ignoreBlanks ?? null,
    Prompt: (range) => toJson(one(range)?.prompt),
    Rule: (range) => toJson(one(range)?.rule),
    Type: (range) => {
      const found = one(range);
      if (!found) return 'Inconsistent';
      return TYPES[Object.keys(found.rule ?? {})[0] ?? ''] ?? 'None';
    },
  },
  setters: {
    ErrorAlert: (range, value) => {
      if (!isObject(value)) throw invalidArgument();
      const { message = '', showAlert = true, style = 'Stop', title = '' } = value;
      if (style !== 'Stop' && style !== 'Warning' && style !== 'Information') throw invalidArgument();
      put(range, {
        errorAlert: { message: text(message), showAlert: truth(showAlert), style, title: text(title) },
      });
    },
    IgnoreBlanks: (range, value) => {
      put(range, { ignoreBlanks: truth(value) });
    },
    Prompt: (range, value) => {
      if (!isObject(value)) throw invalidArgument();
      const { message = '', showPrompt = true, title = '' } = value;
      put(range, {
        prompt: { message: text(message), showPrompt: truth(showPrompt), title: text(title) },
      });
    },
    Rule: (range, value) => {
      // Documented: one type of rule at a time.
      const kinds = isObject(value) ? Object.keys(value) : [];
      const [kind = ''] = kinds;
      const rule = isObject(value) ? value[kind] : null;
      if (kinds.length !== 1 || !(kind in TYPES) || rule === undefined || !isObject(rule))
        throw invalidArgument();
      const list = rule['source'];
      if (kind === 'list' && typeof list === 'string' && !list.startsWith('=') && list.length > 255) {
        // A list written out in the rule has at most 255 characters.
        throw invalidArgument();
      }
      put(range, { rule: value as NonNullable<Validation['rule']> });
    },
  },
  edits: {
    Clear: (range) => {
      const of = areaOf(range);
      const rest = range.sheet.validations.filter((each) => !contains(of, each.area));
      const touched = rest.some((each) => intersection(each.area, of) !== null);
      range.sheet.validations = touched ? [...rest, { ...NONE, area: of }] : rest;
      return null;
    },
  },
};

function toJson(value: unknown): Json {
  return value === undefined ? null : (value as Json);
}
