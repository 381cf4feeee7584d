import { describe, expect, test } from 'vitest';
import { bench, STUDIO } from './bench.ts';

describe('reading', () => {
  const shared = bench();

  test('tables, ranges and sheets in one round trip', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const { tables, worksheets } = context.workbook;
      const body = tables
        .getItem('lots')
        .getDataBodyRange()
        .load('values,formulas,numberFormat,address,text');
      const header = tables.getItem('Lots').getHeaderRowRange().load('values');
      const sheets = worksheets.load('items/name,items/visibility');
      const none = tables.getItemOrNullObject('Nothing');
      const sums = tables.getItem('Sums').load('name,showTotals,worksheet/name');
      await context.sync();
      return {
        values: body.values,
        numberFormat: body.numberFormat[0],
        text: body.text[0],
        address: body.address,
        header: header.values,
        sheets: sheets.items.map(({ name }) => name),
        none: none.isNullObject,
        sums: [sums.name, sums.showTotals, sums.worksheet.name],
      };
    });
    expect(seen).toEqual({
      values: [
        ['L-1', 'Tissue', 12],
        ['L-2', 'Starch', 3],
      ],
      numberFormat: ['General', 'General', '0.00'],
      text: ['L-1', 'Tissue', '12.00'],
      address: 'Stock!B4:D5',
      header: [['Lot', 'Material', 'Quantity']],
      sheets: STUDIO.sheets.map(({ name }) => name),
      none: true,
      sums: ['Sums', true, 'My sums'],
    });
    expect(a.statistics.requests).toBe(1);
  });

  test('all tables with columns, through the collection', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const tables = context.workbook.tables.load('items/name,items/columns/items/name,items/rows/count');
      await context.sync();
      return tables.items.map((table) => [
        table.name,
        table.columns.items.map(({ name }) => name),
        table.rows.count,
      ]);
    });
    expect(seen).toEqual([
      ['Lots', ['Lot', 'Material', 'Quantity'], 2],
      ['Sums', ['Item', 'Price', 'Twice'], 2],
    ]);
  });

  test('formulas: as they are written, with the stored result, or #CALC! where there is none', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const whole = context.workbook.tables.getItem('Sums').getRange().load('values,formulas,valueTypes');
      await context.sync();
      return [whole.formulas[1], whole.values[1], whole.valueTypes[1], whole.formulas[3], whole.values[3]];
    });
    expect(seen).toEqual([
      ['pen', 2, '=[@Price]*2'],
      ['pen', 2, '#CALC!'],
      ['String', 'Double', 'Error'],
      ['Total', '', '=SUBTOTAL(109,[Twice])'],
      ['Total', '', 10],
    ]);
  });

  test('an evaluator works formulas out when they are read', async () => {
    const { a } = bench({
      evaluate: (formula, { row, column, valueAt }) =>
        formula === '=[@Price]*2' ? Number(valueAt(row, column - 1)) * 2 : undefined,
    });
    const seen = await a.Excel.run(async (context) => {
      const body = context.workbook.tables.getItem('Sums').getDataBodyRange();
      body.getCell(0, 1).values = [[8]];
      body.load('values');
      await context.sync();
      return body.values;
    });
    expect(seen).toEqual([
      ['pen', 8, 16],
      ['ink', 3, 6],
    ]);
  });

  test.each([
    ['getCell', (range: Excel.Range) => range.getCell(1, 2), 'Stock!D5'],
    ['getRow', (range: Excel.Range) => range.getRow(1), 'Stock!B5:D5'],
    ['getColumn', (range: Excel.Range) => range.getColumn(2), 'Stock!D4:D5'],
    ['getLastRow', (range: Excel.Range) => range.getLastRow(), 'Stock!B5:D5'],
    ['getLastColumn', (range: Excel.Range) => range.getLastColumn(), 'Stock!D4:D5'],
    ['getLastCell', (range: Excel.Range) => range.getLastCell(), 'Stock!D5'],
    ['getRowsBelow', (range: Excel.Range) => range.getRowsBelow(3), 'Stock!B6:D8'],
    ['getRowsBelow, within', (range: Excel.Range) => range.getRowsBelow(-1), 'Stock!B5:D5'],
    ['getRowsAbove', (range: Excel.Range) => range.getRowsAbove(2), 'Stock!B2:D3'],
    ['getOffsetRange', (range: Excel.Range) => range.getOffsetRange(1, -1), 'Stock!A5:C6'],
    ['getResizedRange', (range: Excel.Range) => range.getResizedRange(2, -1), 'Stock!B4:C7'],
    ['getEntireRow', (range: Excel.Range) => range.getEntireRow(), 'Stock!4:5'],
    ['getEntireColumn', (range: Excel.Range) => range.getEntireColumn(), 'Stock!B:D'],
    ['getBoundingRect', (range: Excel.Range) => range.getBoundingRect('F9'), 'Stock!B4:F9'],
    ['getIntersection', (range: Excel.Range) => range.getIntersection('C1:Z4'), 'Stock!C4:D4'],
    ['getAbsoluteResizedRange', (range: Excel.Range) => range.getAbsoluteResizedRange(1, 1), 'Stock!B4'],
    ['getColumnsAfter', (range: Excel.Range) => range.getColumnsAfter(2), 'Stock!E4:F5'],
    ['getColumnsBefore', (range: Excel.Range) => range.getColumnsBefore(1), 'Stock!A4:A5'],
  ])('%s', async (_, derive, address) => {
    const seen = await shared.a.Excel.run(async (context) => {
      const range = derive(context.workbook.tables.getItem('Lots').getDataBodyRange()).load('address');
      await context.sync();
      return range.address;
    });
    expect(seen).toBe(address);
  });

  test('what lies outside the sheet is refused', async () => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        context.workbook.worksheets.getItem('Stock').getRange('A1').getOffsetRange(-1, 0).load('address');
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'InvalidArgument' });
  });

  test('used ranges: of a sheet, of part of it, of a blank one', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const stock = context.workbook.worksheets.getItem('Stock');
      const blank = context.workbook.worksheets.getItem('Blank');
      const whole = stock.getUsedRange().load('address');
      const part = stock.getRange('A4:B99').getUsedRangeOrNullObject(true).load('address');
      const none = blank.getUsedRangeOrNullObject();
      const first = blank.getUsedRange().load('address');
      const apart = stock.getRange('A1').getIntersectionOrNullObject('B2');
      await context.sync();
      return [whole.address, part.address, none.isNullObject, first.address, apart.isNullObject];
    });
    expect(seen).toEqual(['Stock!B3:D5', 'Stock!B4:B5', true, 'Blank!A1', true]);
  });

  test('columns by name and by place, with their parts', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const { columns } = context.workbook.tables.getItem('Sums');
      const column = columns.getItem('Price').load('index,name,values');
      const parts = [
        column.getHeaderRowRange(),
        column.getDataBodyRange(),
        column.getTotalRowRange(),
        column.getRange(),
      ].map((range) => range.load('address'));
      const none = columns.getItemOrNullObject('Nothing');
      await context.sync();
      return [column.index, column.values, parts.map(({ address }) => address), none.isNullObject];
    });
    expect(seen).toEqual([
      1,
      [['Price'], [2], [3], ['']],
      ["'My sums'!B1", "'My sums'!B2:B3", "'My sums'!B4", "'My sums'!B1:B4"],
      true,
    ]);
  });

  test('a range held on to follows its cells, and is gone with them', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Stock');
      const cell = sheet.getRange('D5').load('address');
      await context.sync();
      sheet.getRange('1:2').insert('Down');
      cell.load('address,values');
      await context.sync();
      expect([cell.address, cell.values]).toEqual(['Stock!D7', [[3]]]);
      sheet.getRange('B7:D7').delete('Up');
      await context.sync();
      cell.load('values');
      await expect(context.sync()).rejects.toMatchObject({ code: 'InvalidReference' });
    });
  });

  test('the date system is told by a function, without a cell being touched', async () => {
    const serial = async (dateSystem: 1900 | 1904): Promise<number> =>
      bench({}, { ...STUDIO, dateSystem }).a.Excel.run(async (context) => {
        const result = context.workbook.functions.date(1904, 1, 1).load('value');
        await context.sync();
        return result.value;
      });
    expect([await serial(1900), await serial(1904)]).toEqual([1462, 0]);
  });
});
