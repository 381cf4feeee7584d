import { describe, expect, test } from 'vitest';
import type { ValidationDescription } from '../../src/office-host/workbook-description.ts';
import { bench } from './bench.ts';

/** What validation says when something is typed into a cell under a rule. */
function typed(
  rule: ValidationDescription['rule'],
  input: string,
  more: Partial<ValidationDescription> = {},
): string {
  const { host } = bench(
    {},
    {
      sheets: [
        {
          name: 'One',
          cells: { C1: [['Tissue'], ['Paste']] },
          validations: [{ address: 'A1:A9', rule, ...more }],
        },
      ],
    },
  );
  return host.person('a').type('One!A2', input).kind;
}

describe('validation of what is typed', () => {
  test.each<[string, ValidationDescription['rule'], string, string]>([
    ['a list', { list: { inCellDropDown: true, source: 'Tissue, Paste' } }, 'Paste', 'fine'],
    ['a list', { list: { inCellDropDown: true, source: 'Tissue, Paste' } }, 'paste', 'against'],
    ['a list in cells', { list: { inCellDropDown: true, source: '=$C$1:$C$2' } }, 'Tissue', 'fine'],
    ['a list in cells', { list: { inCellDropDown: true, source: '=One!C1:C2' } }, 'Starch', 'against'],
    [
      'a list by formula',
      { list: { inCellDropDown: true, source: '=INDIRECT("x")' } },
      'Starch',
      'unchecked',
    ],
    ['whole numbers', { wholeNumber: { formula1: 1, formula2: 9, operator: 'Between' } }, '9', 'fine'],
    ['whole numbers', { wholeNumber: { formula1: 1, formula2: 9, operator: 'Between' } }, '2.5', 'against'],
    ['numbers', { decimal: { formula1: 0, operator: 'GreaterThan' } }, 'text', 'against'],
    ['numbers', { decimal: { formula1: '=B1', operator: 'GreaterThan' } }, '1', 'unchecked'],
    ['numbers', { decimal: { formula1: 0, operator: 'GreaterThan' } }, '=B1', 'unchecked'],
    ['days', { date: { formula1: 46_000, operator: 'GreaterThanOrEqualTo' } }, '2026-03-01', 'fine'],
    ['days', { date: { formula1: 46_000, operator: 'LessThan' } }, '2026-03-01', 'against'],
    ['lengths', { textLength: { formula1: 3, operator: 'LessThanOrEqualTo' } }, 'abcd', 'against'],
    ['lengths', { textLength: { formula1: 4, operator: 'EqualTo' } }, 'abcd', 'fine'],
    ['a formula', { custom: { formula: '=A2>0' } }, '1', 'unchecked'],
  ])('%s: %j, typed %j: %s', (_, rule, input, verdict) => {
    expect(typed(rule, input)).toBe(verdict);
  });

  test('blanks, where they are let through and where not', () => {
    const rule = { list: { inCellDropDown: true, source: 'a,b' } };
    expect(typed(rule, '')).toBe('fine');
    expect(typed(rule, '', { ignoreBlanks: false })).toBe('against');
  });

  test("an alert that only warns lets it be written; one that isn't shown says nothing", () => {
    const rule = { list: { inCellDropDown: true, source: 'a,b' } };
    const alert = { message: '', showAlert: true, style: 'Warning', title: '' } as const;
    expect(typed(rule, 'c', { errorAlert: alert })).toBe('against');
    expect(typed(rule, 'c', { errorAlert: { ...alert, showAlert: false } })).toBe('fine');
  });
});
