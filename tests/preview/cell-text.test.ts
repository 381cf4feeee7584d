import { describe, expect, it } from 'vitest';
import type { ShownCell } from '../../src/files/tab-cells.ts';
import { parseBlock, writeBlock } from '../../src/preview/model/cell-block.ts';
import { cellText } from '../../src/preview/model/cell-text.ts';

const cell = (
  value: ShownCell['value'],
  format = 'General',
  look: ShownCell['look'] = 'plain',
): ShownCell => ({
  column: 1,
  value,
  formula: null,
  format,
  look,
});

describe('what a cell shows', () => {
  it.each<[ShownCell | undefined, string, string]>([
    [undefined, '', 'left'],
    [cell('text'), 'text', 'left'],
    [cell(true), 'TRUE', 'left'],
    [cell(1234.5, '#,##0.00'), '1,234.50', 'right'],
    [cell(0.19, '0%', 'percent'), '19%', 'right'],
    [cell(45_569, 'yyyy-mm-dd', 'date'), '2024-10-04', 'right'],
    [cell(0.1), '0.1', 'right'],
  ])('%j', (given, text, side) => {
    expect(cellText(given, 1900)).toEqual({ text, side, trouble: null });
  });

  it('counts days from 1904 where the file does', () => {
    expect(cellText(cell(45_569 - 1462, 'yyyy-mm-dd', 'date'), 1904).text).toBe('2024-10-04');
  });

  it('never shows a wrong value: the day that never was, a formula without a result, a broken format', () => {
    expect(cellText(cell(60, 'yyyy-mm-dd', 'date'), 1900).text).toBe('60');
    expect(cellText(cell({ shown: '=A1*2' }), 1900)).toMatchObject({ text: '=…', trouble: 'no result' });
    expect(cellText(cell({ shown: '#N/A' }), 1900)).toMatchObject({ text: '#N/A', trouble: 'error' });
    expect(cellText(cell(5, '0.0.0;;"'), 1900).text).not.toBe('');
  });
});

describe('blocks of cells on the clipboard', () => {
  it.each<[string, string[][]]>([
    [
      'a\tb\nc\td',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    ['a\tb\r\n', [['a', 'b']]],
    [
      'a\t\n\tb',
      [
        ['a', ''],
        ['', 'b'],
      ],
    ],
    ['a\t', [['a', '']]],
    ['"two\nlines"\tb', [['two\nlines', 'b']]],
    ['"say ""no"""', [['say "no"']]],
    ['"A4" paper\tx', [['"A4" paper', 'x']]],
    ['', []],
  ])('%j is read', (text, rows) => {
    expect(parseBlock(text)).toEqual(rows);
  });

  it('come back as they were written', () => {
    const rows = [
      ['a\nb', '"q"', 'plain "q"'],
      ['', 'x\ty', ''],
    ];
    expect(parseBlock(writeBlock(rows))).toEqual(rows);
  });
});
