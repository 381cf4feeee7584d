import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import type { DateSystem } from '../../src/core/serial-date.ts';
import { date, formula, type LiteralCell, percent, problem } from '../helpers/literal.ts';
import { reading } from '../helpers/snapshot.ts';

const LOT = { Lot: 'T-1', Material: 'Tissue 5', Received: date('2026-01-10'), Quantity: 2, Unit: 'sheet' };

/** Reads a lot of which one cell holds something else: the record, if there is one, and the notices. */
function lotWith(header: string, cell: LiteralCell, dateSystem: DateSystem = 1900) {
  const { records, notices } = reading({ Tissue: [{ ...LOT, [header]: cell }] }, dateSystem);
  return { lot: records.lots[0], notices, message: notices[0]?.message };
}

describe('text and identifiers', () => {
  test.each([
    [7, '7'],
    [0.1 + 0.2, '0.3'],
    [20260403, '20260403'],
    ['  T 1 ', 'T 1'],
    ['1E5', '1E5'],
    [true, 'TRUE'],
    [formula('T-9'), 'T-9'],
    [date('2026-04-03'), '2026-04-03'],
  ])('%j as an identifier is %s', (cell, expected) => {
    expect(lotWith('Lot', cell)).toMatchObject({ lot: { lot: expected }, notices: [] });
  });

  test('a blank identifier, or one of spaces, is no fault', () => {
    expect(lotWith('Lot', null)).toMatchObject({ lot: { lot: null }, notices: [] });
    expect(lotWith('Lot', '  ')).toMatchObject({ lot: { lot: null }, notices: [] });
  });

  test('an error in place of an identifier leaves the row out', () => {
    const { lot, message, notices } = lotWith('Lot', problem('#REF!'));
    expect(lot).toBeUndefined();
    expect(message).toBe(
      'Tissue!A2 (Lot) holds the error #REF!: mend the formula, or type the value itself.',
    );
    expect(notices[0]).toMatchObject({ code: 'unreadable', subject: '2', at: { column: 'Lot' } });
  });

  test('an error in free text is no matter', () => {
    expect(lotWith('Notes', problem('#N/A'))).toMatchObject({ lot: { lot: 'T-1' }, notices: [] });
  });
});

describe('numbers', () => {
  test.each([
    [0.1 + 0.2, '0.3'],
    [1 / 3, '0.333333333333333'],
    ['12.5', '12.5'],
    [' 1e-3 ', '0.001'],
    [percent(5), '5'],
    [percent(12.5), '12.5'],
    [formula(4), '4'],
    [123456789012, '123456789012'],
  ])('%j is %s', (cell, expected) => {
    const { lot, notices } = lotWith('Quantity', cell);
    expect(notices).toEqual([]);
    expect(lot?.quantity.toString()).toBe(expected);
  });

  test.each<[LiteralCell, string]>([
    [
      '0.5 m',
      '“0.5 m”: the number alone is right here, without its unit, and counted in the unit that this row goes by: 0.5 only if that is m.',
    ],
    [
      '1,5',
      '“1,5”: a plain number is right, with a point for the decimals and nothing between the thousands, such as 1234.5.',
    ],
    [
      '1,000',
      '“1,000”: a plain number is right, with a point for the decimals and nothing between the thousands, such as 1234.5.',
    ],
    ['about 500', '“about 500”: a plain number above 0 is right, such as 12.5.'],
    [0, '“0”: a plain number above 0 is right, such as 12.5.'],
    [-3, '“-3”: a plain number above 0 is right, such as 12.5.'],
    [0.1 + 0.2 - 0.3, '“5.55111512312578e-17”: a plain number above 0 is right, such as 12.5.'],
    [true, '“TRUE”: a plain number above 0 is right, such as 12.5.'],
    [
      date('2026-04-03'),
      'the date 2026-04-03: a number is right here: format the cell as a number and type it again.',
    ],
    [
      { value: 60, look: 'date' },
      'a date: a number is right here: format the cell as a number and type it again.',
    ],
    [problem('#DIV/0!'), 'the error #DIV/0!: mend the formula, or type the value itself.'],
    [
      problem('=A1*2'),
      'the formula =A1*2, of which the file holds no result: save the workbook once in a spreadsheet program, which works it out, or type the value itself.',
    ],
    [null, 'nothing: this cell must be filled.'],
    [1e300, '“1e+300”: a number below a million million is right.'],
    ['9'.repeat(100), `“${'9'.repeat(60)}…”: a number below a million million is right.`],
  ])('%j is refused', (cell, expected) => {
    const { lot, message } = lotWith('Quantity', cell);
    expect(lot).toBeUndefined();
    expect(message).toBe(`Tissue!D2 (Quantity) holds ${expected}`);
  });

  test('a whole number is read to 15 digits as well', () => {
    const material = { Material: 'Tissue 5', Kind: 'Tissue', 'Stock unit': 'sheet' };
    const read = (cell: LiteralCell) => reading({ Materials: [{ ...material, 'Life sealed days': cell }] });
    expect(read(0.1 * 3 * 10).records.materials[0]?.lifeSealedDays).toBe(3);
    expect(read('14').records.materials[0]?.lifeSealedDays).toBe(14);
    expect(read(0).records.materials[0]?.lifeSealedDays).toBe(0);
    for (const bad of [2.5, -1, 'a month', 1e9]) {
      expect(read(bad).notices[0]?.message).toMatch(/a whole number is right, 0 or more, such as 14\.$/);
    }
  });
});

describe('days', () => {
  test.each<[LiteralCell, string]>([
    [date('2026-04-03'), '2026-04-03'],
    [{ value: 46115.75, look: 'date' }, '2026-04-03'],
    [46115, '2026-04-03'],
    ['2026-04-03', '2026-04-03'],
    [' 2026-04-03 ', '2026-04-03'],
    ['2026-04-03T14:30:00Z', '2026-04-03'],
    ['2026-04-03 14:30', '2026-04-03'],
    [{ value: 1, look: 'date' }, '1900-01-01'],
    [{ value: 59, look: 'date' }, '1900-02-28'],
    [{ value: 61, look: 'date' }, '1900-03-01'],
  ])('%j is %s', (cell, expected) => {
    const { lot, notices } = lotWith('Received', cell);
    expect(notices).toEqual([]);
    expect(lot && isoDay(lot.received)).toBe(expected);
  });

  test.each<[number, string]>([
    [0, '1904-01-01'],
    [44653, '2026-04-03'],
    [44653.999, '2026-04-03'],
  ])('%d in the 1904 system is %s', (serial, expected) => {
    const { lot } = lotWith('Received', { value: serial, look: 'date' }, 1904);
    expect(lot && isoDay(lot.received)).toBe(expected);
  });

  test.each<[LiteralCell, RegExp]>([
    [
      '03/04/2026',
      /“03\/04\/2026”: this text could mean more than one day, or none; a real date is right, or text such as/,
    ],
    ['3.4.26', /could mean more than one day/],
    ['2026-4-3', /could mean more than one day/],
    ['2026-02-30', /“2026-02-30”: this text could mean more than one day, or none/],
    ['spring', /“spring”: a date is right, or text such as 2026-04-03\.$/],
    [{ value: 60, look: 'date' }, /“60”: a date is right/],
    [2026, /“2026”: a date is right/],
    [-1, /“-1”: a date is right/],
    [20260403, /“20260403”: a date is right/],
    [true, /“TRUE”: a date is right/],
  ])('%j is refused', (cell, expected) => {
    const { lot, message } = lotWith('Received', cell);
    expect(lot).toBeUndefined();
    expect(message).toMatch(expected);
  });

  test('a serial beyond the last day of the 1904 system is no day of the other', () => {
    expect(lotWith('Received', { value: 2_957_100, look: 'date' }, 1904).message).toMatch(
      /“2957100”: a date is right/,
    );
    expect(lotWith('Received', { value: -100, look: 'date' }, 1904).message).toMatch(
      /“-100”: a date is right/,
    );
  });
});

describe('words, units, yes and no', () => {
  test.each(['Set aside', ' set  ASIDE ', 'SET\u00a0aside'])('the state %j', (cell) => {
    expect(lotWith('State', cell).lot?.state).toBe('Set aside');
  });

  test('a word that is not one of the list keeps the row, and the cell is noticed', () => {
    const { lot, notices } = lotWith('State', 'gone');
    expect(lot).toMatchObject({ lot: 'T-1', state: null });
    expect([...(lot?.unreadable ?? [])]).toEqual(['State']);
    expect(notices[0]).toMatchObject({
      subject: 'T-1',
      severity: 'stop',
      message: 'Tissue!L2 (State) holds “gone”: Usable, Set aside or Discarded is right.',
    });
  });

  test.each([
    ['Sheets', 'sheet'],
    [' SHEET ', 'sheet'],
    ['Fl  Oz', 'fl oz'],
    ['cm²', 'cm2'],
    ['Litres', 'l'],
    ['sq. in.', 'sq in'],
  ])('the unit %j is %s', (cell, expected) => {
    expect(lotWith('Unit', cell).lot?.unit.name).toBe(expected);
  });

  test('an unknown unit is refused with the list of those that are known', () => {
    expect(lotWith('Unit', 'quire').message).toMatch(
      /^Tissue!E2 \(Unit\) holds “quire”: a unit is right, one of mg, g, kg,/,
    );
    expect(lotWith('Unit', 5).message).toMatch(/“5”: a unit is right/);
  });

  test.each<[LiteralCell, boolean | null]>([
    ['yes', true],
    [' NO ', false],
    [true, true],
    ['false', false],
    [null, null],
  ])('counted: %j', (cell, expected) => {
    const { records, notices } = reading({
      Materials: [{ Material: 'Water', Kind: 'buffer', 'Stock unit': 'ml', Counted: cell }],
    });
    expect(notices).toEqual([]);
    expect(records.materials[0]?.counted).toBe(expected);
  });

  test.each<[LiteralCell, boolean | null]>([
    ['yes', true],
    [date('2026-04-01'), true],
    ['2026-04-01', true],
    ['no', false],
    [null, null],
  ])('done: %j', (cell, expected) => {
    const { records, notices } = reading({ Plan: [{ Job: 'A', Treatment: 'B', Extent: 1, Done: cell }] });
    expect(notices).toEqual([]);
    expect(records.plan[0]?.done).toBe(expected);
  });

  test('what is neither yes nor no is said', () => {
    const { notices } = reading({
      Plan: [
        { Job: 'A', Treatment: 'B', Extent: 1, Done: 'half' },
        { Job: 'A', Treatment: 'B', Extent: 1, Done: 0 },
      ],
    });
    expect(notices.map(({ message }) => message)).toEqual([
      'Plan!G2 (Done) holds “half”: yes or no is right, or the date on which it was done.',
      'Plan!G3 (Done) holds “0”: yes or no is right, or the date on which it was done.',
    ]);
  });
});
