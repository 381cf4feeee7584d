import { describe, expect, test } from 'vitest';
import type { OfficeHostOptions } from '../../src/office-host/office-host.ts';
import { bench, valuesOf } from './bench.ts';

interface Written {
  readonly value: unknown;
  readonly formula: unknown;
  readonly numberFormat: unknown;
}

const shared = bench({ year: 2026 });
let lastRow = 0;

/** What a cell, blank before, holds after something is written to it by the real client. */
async function written(input: unknown, numberFormat?: string, options?: OfficeHostOptions): Promise<Written> {
  const { a } = options ? bench(options) : shared;
  return a.Excel.run(async (context) => {
    const cell = context.workbook.worksheets.getItem('Blank').getRange(`B${++lastRow}`);
    if (numberFormat !== undefined) cell.numberFormat = [[numberFormat]];
    cell.values = [[input]];
    cell.load('values,formulas,numberFormat');
    await context.sync();
    return {
      value: cell.values[0]?.[0],
      formula: cell.formulas[0]?.[0],
      numberFormat: cell.numberFormat[0]?.[0],
    };
  });
}

describe('a value that is written', () => {
  test.each([
    ['Kozo', 'Kozo', 'General'],
    ['007', 7, 'General'],
    ['-5', -5, 'General'],
    ['1,250', 1250, '#,##0'],
    ['1,25', '1,25', 'General'],
    ['12%', 0.12, '0%'],
    ['1E5', 100_000, '0.00E+00'],
    ['$3.50', 3.5, '$#,##0_);[Red]($#,##0)'],
    ['TRUE', true, 'General'],
    ['true', true, 'General'],
    ['2026-03-01', 46_082, 'm/d/yyyy'],
    ['3/1/2026', 46_082, 'm/d/yyyy'],
    ['3-4', 46_085, 'd-mmm'],
    ['MAR1', 46_082, 'd-mmm'],
    ['1-Mar', 46_082, 'd-mmm'],
    ['13-14', '13-14', 'General'],
    ['2026-02-30', '2026-02-30', 'General'],
    ['10:30', 0.4375, 'h:mm'],
    ['1 1/2', 1.5, '# ?/?'],
    ["'007", '007', 'General'],
    ["'=1+1", '=1+1', 'General'],
    ['=', '=', 'General'],
    ['', '', 'General'],
    [true, true, 'General'],
    [0.1, 0.1, 'General'],
  ])('%j becomes %j, shown as %s', async (input, value, numberFormat) => {
    expect(await written(input)).toEqual({ value, formula: value, numberFormat });
  });

  test.each(['007', '=1+1', '3-4', '1E5', 'TRUE', '-5', '@home', '2026-03-01', '- fine brush'])(
    '%j stays text in a cell that is formatted as text first',
    async (input) => {
      expect(await written(input, '@')).toEqual({ value: input, formula: input, numberFormat: '@' });
    },
  );

  test('a number becomes text in a cell that is formatted as text', async () => {
    expect((await written(12.5, '@')).value).toBe('12.5');
  });

  test('an apostrophe in a text cell: dropped, or kept where so wanted', async () => {
    expect((await written("'tis", '@')).value).toBe('tis');
    expect((await written("'tis", '@', { apostropheInTextCell: 'kept' })).value).toBe("'tis");
    expect((await written("'tis", undefined, { apostropheInTextCell: 'kept' })).value).toBe('tis');
  });

  test('formatting as text after writing is too late', async () => {
    const { a } = bench();
    const value = await a.Excel.run(async (context) => {
      const cell = context.workbook.worksheets.getItem('Blank').getRange('A1');
      cell.values = [['007']];
      cell.numberFormat = [['@']];
      cell.load('values');
      await context.sync();
      return cell.values[0]?.[0] as unknown;
    });
    expect(value).toBe(7);
  });

  test('a date in the 1904 system has its own serial', async () => {
    const { a } = bench({}, { dateSystem: 1904, sheets: [{ name: 'Blank' }] });
    const seen = await a.Excel.run(async (context) => {
      const cell = context.workbook.worksheets.getItem('Blank').getRange('A1');
      cell.values = [['2026-03-01']];
      cell.load('values');
      await context.sync();
      return cell.values;
    });
    expect(seen).toEqual([[46_082 - 1462]]);
  });

  test.each([
    ['=SUM(A1:B2)', '=SUM(A1:B2)'],
    ['+A1*2', '=+A1*2'],
    ['-(A1)', '=-(A1)'],
    ['=IF([@Lot]="x",,\'My sums\'!$A$1%)', '=IF([@Lot]="x",,\'My sums\'!$A$1%)'],
    ['=Lots[[#Totals],[Quantity]]', '=Lots[[#Totals],[Quantity]]'],
    ['={1,2;3,4}', '={1,2;3,4}'],
    ['=A1:INDEX(B:B,COUNT(1:3))', '=A1:INDEX(B:B,COUNT(1:3))'],
    ['=NOW()', '=NOW()'],
    ['@A1', '=@A1'],
  ])('%s is a formula', async (input, formula) => {
    expect(await written(input)).toMatchObject({ formula, value: '#CALC!' });
  });

  test.each([
    '=1+',
    '=(1',
    '=1)',
    '="a',
    '=SUM(1,2',
    '- fine brush',
    '=a b',
    '+1 555',
    '=1 2',
    '=*2',
    '=)',
    '=#',
  ])('%j is no formula, and refused', async (input) => {
    await expect(written(input)).rejects.toMatchObject({ code: 'InvalidArgument' });
  });

  test('a number format stands where one was given before', async () => {
    expect(await written('2026-03-01', 'yyyy-mm-dd')).toMatchObject({
      value: 46_082,
      numberFormat: 'yyyy-mm-dd',
    });
  });

  test('too long a text, and too long a formula', async () => {
    await expect(written('x'.repeat(32_768))).rejects.toMatchObject({ code: 'InvalidArgument' });
    await expect(written(`=${'1+'.repeat(5000)}1`)).rejects.toMatchObject({
      code: 'FormulaLengthExceedsLimit',
    });
  });
});

describe('an array that is written', () => {
  test('null leaves a cell, an empty text clears it, and looks stay', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const body = context.workbook.tables.getItem('Lots').getDataBodyRange();
      body.values = [
        [null, '', 5],
        ['L-9', null, ''],
      ];
      await context.sync();
    });
    expect(await valuesOf(a, 'Stock', 'B4:D5')).toEqual([
      ['L-1', '', 5],
      ['L-9', 'Starch', ''],
    ]);
  });

  test('one value stands for all cells', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem('Blank').getRange('A1:B2');
      range.values = 7 as never;
      await context.sync();
    });
    expect(await valuesOf(a, 'Blank', 'A1:B2')).toEqual([
      [7, 7],
      [7, 7],
    ]);
  });

  test.each([
    ['too few rows', [[1, 2]]],
    [
      'too many columns',
      [
        [1, 2, 3],
        [1, 2, 3],
      ],
    ],
    ['ragged', [[1, 2], [1]]],
  ])('%s: refused, and nothing is written', async (_, values) => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        context.workbook.worksheets.getItem('Blank').getRange('A1:B2').values = values;
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'InvalidArgument' });
    expect(await valuesOf(a, 'Blank', 'A1:B2')).toEqual([
      ['', ''],
      ['', ''],
    ]);
  });

  test("one value that can't be: nothing of the array is written", async () => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        context.workbook.worksheets.getItem('Blank').getRange('A1:A2').values = [['fine'], ['=1+']];
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'InvalidArgument' });
    expect(await valuesOf(a, 'Blank', 'A1:A2')).toEqual([[''], ['']]);
  });

  test('over 1,500 cells: the library cuts it up, and all of it arrives', async () => {
    const { a } = bench();
    const values = Array.from({ length: 1200 }, (_, row) => [`k${row}`, row, null]);
    await a.Excel.run(async (context) => {
      context.workbook.tables.getItem('Lots').getDataBodyRange().getRowsBelow(1200).values = values;
      await context.sync();
    });
    expect(a.statistics.requests).toBe(1);
    const rows = await a.Excel.run(async (context) => {
      const body = context.workbook.tables.getItem('Lots').getDataBodyRange().load('values,rowCount');
      await context.sync();
      return [body.rowCount, body.values.at(-1)];
    });
    expect(rows).toEqual([1202, ['k1199', 1199, '']]);
  });
});
