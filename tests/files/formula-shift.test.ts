import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mapReferences } from '../../src/files/formula-references.ts';
import { shiftFormula, translateFormula } from '../../src/files/formula-shift.ts';

describe('a formula copied to another cell', () => {
  it.each([
    ['A2*2', 'B5*2'],
    ['$A2+A$2+$A$2', '$A5+B$2+$A$2'],
    ['SUM(A2:B9)', 'SUM(B5:C12)'],
    ["Stock!A2+'My tab'!A2", "Stock!B5+'My tab'!B5"],
    ['"A2"&A2&"say ""A2"""', '"A2"&B5&"say ""A2"""'],
    ['Lots[[#This Row],[A2]]+A2', 'Lots[[#This Row],[A2]]+B5'],
    ['LOG10(A2)+A2.x+1E5+TAX_A2', 'LOG10(B5)+A2.x+1E5+TAX_A2'],
    ['A:A+2:3+$A:B', 'B:B+5:6+$A:C'],
    ['XFE2+A1048577', 'XFE2+A1048577'],
    ['XFD1+A1', '#REF!+B4'],
    ['[1]Stock!A2', '[1]Stock!A2'],
    ['a2', 'B5'],
    ['A2#+_xlfn.SINGLE(A2)', 'B5#+_xlfn.SINGLE(B5)'],
  ])('%s becomes %s', (formula, copied) => {
    expect(translateFormula(formula, 3, 1)).toBe(copied);
  });
});

it('writes a formula back as it was where nothing moves', () => {
  const pieces = [
    'a2',
    '$B$07',
    ':',
    'Stock!',
    "'It''s'!",
    '[',
    ']',
    '"',
    "'",
    '(',
    ',',
    '1E5',
    'Lots[Qty]',
    '#',
    'ä',
    '3:4',
    'A:c',
    ' ',
  ];
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...pieces)), (parts) => {
      const formula = parts.join('');
      expect(mapReferences(formula, (reference) => reference)).toBe(formula);
    }),
  );
});

describe('a formula after two rows were put in before row 5 of the tab "My tab"', () => {
  const shift = { tab: 'My tab', at: 5, count: 2 };
  it.each([
    ['A4+A5+$A$9', 'Other', 'A4+A5+$A$9'],
    ['A4+A5+$A$9', 'my tab', 'A4+A7+$A$11'],
    ["'My tab'!A4:A5", 'Other', "'My tab'!A4:A7"],
    ["'MY TAB'!A9+A9", 'Other', "'MY TAB'!A11+A9"],
    ["'My tab'!$4:$6", null, "'My tab'!$4:$8"],
    ["'My tab'!A:B+Stock!A9", 'Other', "'My tab'!A:B+Stock!A9"],
    ["'My tab:Other'!A9", 'Other', "'My tab:Other'!A9"],
    ["'[1]My tab'!A9", 'Other', "'[1]My tab'!A9"],
    ["'My tab'!A9:'My tab'!B10", 'Other', "'My tab'!A11:'My tab'!B12"],
    ['SUM(Lots[Quantity])', 'My tab', 'SUM(Lots[Quantity])'],
    ["'My tab'!total+A9", 'Other', "'My tab'!total+A9"],
  ])('%s on the tab %s becomes %s', (formula, tab, shifted) => {
    expect(shiftFormula(formula, tab, shift)).toBe(shifted);
  });

  it('leaves what counts from the cell of a rule', () => {
    expect(shiftFormula('A9+A$9', 'My tab', shift, true)).toBe('A9+A$11');
  });
});
