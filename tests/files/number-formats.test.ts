import { describe, expect, it } from 'vitest';
import { lookOfBuiltIn } from '../../src/files/number-formats.ts';
import { lookOfCode } from '../../src/workbook/number-formats.ts';

describe('how a number format shows a number', () => {
  it.each([
    ['General', 'plain'],
    ['0.00', 'plain'],
    ['#,##0.00 [$€-407];[Red]-#,##0.00', 'plain'],
    ['0.0" day%"', 'plain'],
    ['0\\%', 'plain'],
    ['0_h*d', 'plain'],
    ['0.0 m', 'plain'],
    ['@', 'plain'],
    ['[Magenta]0', 'plain'],
    ['0.00E+00', 'plain'],
    ['0%', 'percent'],
    ['[<1]0.0%;0%', 'percent'],
    ['yyyy-mm-dd', 'date'],
    ['[$-409]d\\ mmm\\ yyyy', 'date'],
    ['DD.MM.YY', 'date'],
    ['mmmm', 'date'],
    ['hh:mm', 'date'],
    ['[h]:mm', 'date'],
  ])('%s is %s', (code, look) => {
    expect(lookOfCode(code)).toBe(look);
  });

  it('knows the built-in ones', () => {
    const looks = [0, 9, 10, 13, 14, 22, 23, 27, 36, 45, 47, 49, 50, 58, 59].map(lookOfBuiltIn);
    expect(looks.join(' ')).toBe(
      'plain percent percent plain date date plain date date date date plain date date plain',
    );
  });
});
