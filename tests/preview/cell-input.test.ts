import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Day, parseDay } from '../../src/core/day.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import type { ShownCell } from '../../src/files/tab-cells.ts';
import type { TypedCell } from '../../src/files/typed-cell.ts';
import { inputOf, parseInput } from '../../src/preview/model/cell-input.ts';

const PLAIN = { format: 'General', look: 'plain' } as const;
const PERCENT = { format: '0%', look: 'percent' } as const;
const TEXT = { format: '@', look: 'plain' } as const;
const DATE = { format: 'yyyy-mm-dd', look: 'date' } as const;

const read = (typed: string, cell: Pick<ShownCell, 'format' | 'look'> = PLAIN) =>
  parseInput(typed, cell, 1900);
const text = (value: string): TypedCell => ({ kind: 'text', text: value });
const number = (value: number): TypedCell => ({ kind: 'number', number: value });

describe('what is typed', () => {
  it.each<[string, TypedCell]>([
    ['', { kind: 'blank' }],
    ['12.5', number(12.5)],
    ['-3', number(-3)],
    ['.5', number(0.5)],
    [' 4 ', number(4)],
    ['0', number(0)],
    ['0.10', number(0.1)],
    ['20%', { kind: 'percent', number: 0.2 }],
    ['12.5 %', { kind: 'percent', number: 0.125 }],
    ['2026-11-16', { kind: 'day', day: parseDay('2026-11-16') as Day }],
    ['true', { kind: 'boolean', value: true }],
    ['=SUM(A1:A2)', { kind: 'formula', formula: 'SUM(A1:A2)' }],
  ])('%j is one plain thing', (typed, cell) => {
    expect(read(typed)).toEqual(cell);
  });

  it.each([
    '007',
    '1E5',
    '3-4',
    '1,5',
    '1,234',
    '12 g',
    '2026-02-30',
    '1899-12-31',
    '=',
    '1234567890123456',
    ' x ',
  ])('%j stays text', (typed) => {
    expect(read(typed)).toEqual(text(typed));
  });

  it('an apostrophe keeps text, and is not part of it', () => {
    expect(read("'=1+1")).toEqual(text('=1+1'));
    expect(read("'12")).toEqual(text('12'));
  });

  it('is text in a cell for text, formulas too', () => {
    for (const typed of ['12', '2026-11-16', '=A1', 'true']) expect(read(typed, TEXT)).toEqual(text(typed));
  });

  it('a number in a cell for percentages is one', () => {
    expect(read('19', PERCENT)).toEqual({ kind: 'percent', number: 0.19 });
    expect(read('7.7', PERCENT)).toEqual({ kind: 'percent', number: 0.077 });
  });
});

describe('what stands in the editor', () => {
  const shown = (value: ShownCell['value'], cell: Pick<ShownCell, 'format' | 'look'> = PLAIN): ShownCell => ({
    column: 1,
    value,
    formula: null,
    ...cell,
  });

  it('is the day, the percentage, the formula', () => {
    const serial = serialOfDay(parseDay('2026-04-03') as Day, 1904);
    expect(inputOf(shown(serial, DATE), 1904)).toBe('2026-04-03');
    expect(inputOf(shown(0.077, PERCENT), 1900)).toBe('7.7%');
    expect(inputOf({ ...shown(3), formula: 'A1*2' }, 1900)).toBe('=A1*2');
    expect(inputOf(undefined, 1900)).toBe('');
  });

  it('gives the same cell when it is typed again, whatever the cell holds', () => {
    const values = fc.oneof(
      fc.string(),
      fc.constantFrom('=1', "'x", '12', '007', 'TRUE', '2026-01-01', '5%', ' 7', ''),
      fc.integer({ min: -1_000_000, max: 1_000_000 }).map((each) => each / 1000),
      fc.boolean(),
    );
    fc.assert(
      fc.property(values, fc.constantFrom(PLAIN, TEXT, PERCENT), (value, cell) => {
        const again = parseInput(inputOf(shown(value, cell), 1900), cell, 1900);
        switch (again.kind) {
          case 'blank':
            return value === '';
          case 'text':
            return again.text === (typeof value === 'string' ? value : inputOf(shown(value, cell), 1900));
          case 'number':
          case 'percent':
            return Math.abs(again.number - Number(value)) < 1e-12 && typeof value === 'number';
          case 'boolean':
            return again.value === value;
          default:
            return false;
        }
      }),
      { numRuns: 500 },
    );
  });
});
