import { describe, expect, test } from 'vitest';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import { bench, bodyOf, type Client, valuesOf } from './bench.ts';

type Work = (context: Excel.RequestContext) => unknown;

/** Does something with the real client, and gives what a table's whole range holds afterwards. */
async function tableAfter(a: Client, table: string, work: Work): Promise<unknown[][]> {
  return a.Excel.run(async (context) => {
    work(context);
    await context.sync();
    const range = context.workbook.tables.getItem(table).getRange().load('values');
    await context.sync();
    return range.values;
  });
}

const PLAIN: WorkbookDescription = {
  sheets: [
    {
      name: 'One',
      tables: [
        {
          name: 'Rows',
          at: 'A1',
          columns: [
            'Name',
            { name: 'Day', numberFormat: 'yyyy-mm-dd' },
            { name: 'Sum', formula: '=B2+$C$1' },
          ],
          rows: [['a', 1, { formula: '=B2+$C$1', value: 1 }]],
        },
      ],
      validations: [{ address: 'A2:A2', rule: { list: { inCellDropDown: true, source: 'a,b' } } }],
    },
  ],
};

describe('a table grows by what is written right below it', () => {
  test('by several rows; the looks of the row above, formulas and validation go along', async () => {
    const { a } = bench({}, PLAIN);
    const seen = await a.Excel.run(async (context) => {
      const table = context.workbook.tables.getItem('Rows');
      table.getDataBodyRange().getRowsBelow(2).values = [
        ['b', 2, null],
        ['c', 3, null],
      ];
      const body = table.getDataBodyRange().load('formulas,numberFormat');
      const { dataValidation } = table.columns.getItem('Name').getDataBodyRange();
      dataValidation.load('type,rule');
      await context.sync();
      return [body.formulas, body.numberFormat[2], dataValidation.type, dataValidation.rule.list?.source];
    });
    expect(seen).toEqual([
      [
        ['a', 1, '=B2+$C$1'],
        ['b', 2, '=B3+$C$1'],
        ['c', 3, '=B4+$C$1'],
      ],
      ['General', 'yyyy-mm-dd', 'General'],
      'List',
      'a,b',
    ]);
  });

  test('a format given first is kept, so that text stays text', async () => {
    const { a } = bench({}, PLAIN);
    const seen = await a.Excel.run(async (context) => {
      const table = context.workbook.tables.getItem('Rows');
      const below = table.getDataBodyRange().getRowsBelow(1);
      below.numberFormat = [['@', '@', null]] as string[][];
      below.values = [['007', '3-4', null]];
      const body = table.getDataBodyRange().getLastRow().load('values,numberFormat');
      await context.sync();
      return [body.values, body.numberFormat];
    });
    expect(seen).toEqual([[['007', '3-4', '#CALC!']], [['@', '@', 'General']]]);
  });

  test('by part of a row', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Stock').getRange('C6').values = [['Paste']];
      await context.sync();
    });
    expect(await bodyOf(a, 'Lots')).toHaveLength(3);
  });

  test.each([
    ['two rows below', 'B7:D7', 'Lots', 2],
    ['beside it', 'E6', 'Lots', 2],
    ['wider than it', 'B6:E6', 'Lots', 2],
  ])('not by what is written %s', async (_, address, table, rows) => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem('Stock').getRange(address);
      range.values = 'x' as never;
      await context.sync();
    });
    expect(await bodyOf(a, table)).toHaveLength(rows);
  });

  test('not by blanks, nor by formats', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem('Stock').getRange('B6:D6');
      range.numberFormat = 'yyyy-mm-dd' as never;
      range.values = [['', null, '']];
      await context.sync();
    });
    expect(await bodyOf(a, 'Lots')).toHaveLength(2);
  });

  test('not where something stands in the way', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Stock');
      sheet.getRange('D7').values = [['in the way']];
      sheet.getRange('B6:C7').values = [
        ['L-3', 'x'],
        ['L-4', 'y'],
      ];
      await context.sync();
    });
    expect(await bodyOf(a, 'Lots')).toHaveLength(2);
  });

  test('the totals row below is written over, and nothing grows', async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Sums', (context) => {
      const body = context.workbook.tables.getItem('Sums').getDataBodyRange();
      body.getRowsBelow(1).values = [['oops', 1, null]];
    });
    expect(rows).toHaveLength(4);
    expect(rows[3]?.slice(0, 2)).toEqual(['oops', 1]);
  });
});

describe('rows that are put in', () => {
  test('cells above a totals row make the table longer', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const table = context.workbook.tables.getItem('Sums');
      const space = table.getTotalRowRange().insert('Down');
      space.values = [['cup', 9, null]];
      space.load('address');
      const whole = table.getRange().load('formulas');
      await context.sync();
      return [space.address, whole.formulas];
    });
    expect(seen).toEqual([
      "'My sums'!A4:C4",
      [
        ['Item', 'Price', 'Twice'],
        ['pen', 2, '=[@Price]*2'],
        ['ink', 3, '=[@Price]*2'],
        ['cup', 9, '=[@Price]*2'],
        ['Total', '', '=SUBTOTAL(109,[Twice])'],
      ],
    ]);
  });

  test('whole rows move what lies below', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Stock').getRange('2:3').insert('Down');
      const table = context.workbook.tables.getItem('Lots').getRange().load('address');
      await context.sync();
      expect(table.address).toBe('Stock!B5:D7');
    });
  });

  test.each([
    ['part of a table', 'C4:C4'],
    ['part of it from above', 'C1'],
  ])('through %s: refused', async (_, address) => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        context.workbook.worksheets.getItem('Stock').getRange(address).insert('Down');
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'InsertDeleteConflict' });
  });

  test('rows.add: at the end, at a place, several, and a blank one', async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Sums', (context) => {
      const { rows: added } = context.workbook.tables.getItem('Sums');
      added.add(undefined, [
        ['cup', 9, null],
        ['jar', 8, null],
      ] as never);
      added.add(0, [['first', 1, null]] as never);
      added.add();
    });
    expect(rows.map(([first]) => first)).toEqual(['Item', 'first', 'pen', 'ink', 'cup', 'jar', '', 'Total']);
  });

  test('rows.add pushes down what lies below the table', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Stock');
      sheet.getRange('B6').values = [['']];
      sheet.getRange('B7').values = [['note']];
      const { rows } = context.workbook.tables.getItem('Lots');
      rows.add(undefined, [
        ['L-3', 'x', 1],
        ['L-4', 'y', 2],
      ]);
      await context.sync();
    });
    expect(await valuesOf(a, 'Stock', 'B6:B9')).toEqual([['L-3'], ['L-4'], [''], ['note']]);
  });

  test('rows.add with the wrong number of cells: refused', async () => {
    const { a } = bench();
    await expect(
      tableAfter(a, 'Lots', ({ workbook }) => workbook.tables.getItem('Lots').rows.add(undefined, [[1, 2]])),
    ).rejects.toMatchObject({
      code: 'InvalidArgument',
    });
  });
});

describe('rows that are taken out', () => {
  test('cells of the body, the rest moves up', async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Sums', ({ workbook }) => {
      workbook.tables.getItem('Sums').getDataBodyRange().getRow(0).delete('Up');
    });
    expect(rows.map(([first]) => first)).toEqual(['Item', 'ink', 'Total']);
  });

  test('a row as such, and the last one: a table keeps a blank row', async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Lots', ({ workbook }) => {
      const { rows: own } = workbook.tables.getItem('Lots');
      own.getItemAt(1).delete();
      own.getItemAt(0).delete();
    });
    expect(rows).toEqual([
      ['Lot', 'Material', 'Quantity'],
      ['', '', ''],
    ]);
  });

  test('all rows at once', async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Sums', ({ workbook }) => {
      workbook.tables.getItem('Sums').getDataBodyRange().delete('Up');
    });
    expect(rows.map((row) => row.slice(0, 2))).toEqual([
      ['Item', 'Price'],
      ['', ''],
      ['Total', ''],
    ]);
  });

  test('deleteRowsAt, where its requirement set is there', async () => {
    const { a } = bench({ requirementSets: { ExcelApi: '1.17', ExcelApiOnline: '1.1' } });
    const rows = await tableAfter(a, 'Lots', ({ workbook }) => {
      workbook.tables.getItem('Lots').rows.deleteRowsAt(0, 1);
    });
    expect(rows.map(([first]) => first)).toEqual(['Lot', 'L-2']);
  });

  test("the header can't be taken out, the whole table can", async () => {
    const { a } = bench();
    await expect(
      tableAfter(a, 'Lots', ({ workbook }) => {
        workbook.worksheets.getItem('Stock').getRange('B3:D3').delete('Up');
      }),
    ).rejects.toMatchObject({ code: 'InsertDeleteConflict' });
    await a.Excel.run(async (context) => {
      context.workbook.tables.getItem('Lots').delete();
      const gone = context.workbook.tables.getItemOrNullObject('Lots');
      await context.sync();
      expect(gone.isNullObject).toBe(true);
    });
  });
});

describe('tables', () => {
  test('resize: longer, shorter; refused where the header row would move', async () => {
    const { a } = bench();
    const resize = async (address: string): Promise<unknown[][]> =>
      tableAfter(a, 'Lots', ({ workbook }) => {
        workbook.tables.getItem('Lots').resize(address);
      });
    expect(await resize('B3:D8')).toHaveLength(6);
    expect(await resize('B3:D4')).toEqual([
      ['Lot', 'Material', 'Quantity'],
      ['L-1', 'Tissue', 12],
    ]);
    expect(await valuesOf(a, 'Stock', 'B5')).toEqual([['L-2']]);
    await expect(resize('B4:D8')).rejects.toMatchObject({ code: 'InvalidArgument' });
    await expect(resize('B3:D3')).rejects.toMatchObject({ code: 'InvalidArgument' });
    expect((await resize('B3:E4'))[0]).toEqual(['Lot', 'Material', 'Quantity', 'Column4']);
  });

  test('resize takes the totals row along', async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Sums', ({ workbook }) => {
      workbook.tables.getItem('Sums').resize('A1:C6');
    });
    expect(rows.map(([first]) => first)).toEqual(['Item', 'pen', 'ink', '', '', 'Total']);
  });

  test('a new table: headers are text and no two alike, and it has one blank row at least', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Blank');
      sheet.getRange('A1:D1').values = [['Lot', 'lot', 5, '']];
      const table = sheet.tables.add('A1:D1', true);
      table.name = 'Fresh';
      table.load('name,style');
      const whole = table.getRange().load('values,address');
      await context.sync();
      return [table.name, table.style, whole.address, whole.values];
    });
    expect(seen).toEqual([
      'Fresh',
      'TableStyleMedium2',
      'Blank!A1:D2',
      [
        ['Lot', 'lot2', '5', 'Column4'],
        ['', '', '', ''],
      ],
    ]);
  });

  test('a table without headers of its own gets a header row above', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Blank');
      sheet.getRange('A1:A2').values = [['x'], ['y']];
      const range = context.workbook.tables.add('Blank!A1:A2', false).getRange().load('values');
      await context.sync();
      return range.values;
    });
    expect(seen).toEqual([['Column1'], ['x'], ['y']]);
  });

  test.each([
    ['over another table', 'Stock!A1:C3'],
    ['nowhere', 'Stock!A0'],
  ])('a new table %s: refused', async (_, address) => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        context.workbook.tables.add(address, true);
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'InvalidArgument' });
  });

  test("writing a header renames the column; what can't be a header is mended", async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Lots', ({ workbook }) => {
      workbook.tables.getItem('Lots').getHeaderRowRange().values = [['Code', 'code', '']];
    });
    expect(rows[0]).toEqual(['Code', 'code2', 'Column3']);
  });

  test('the totals row is shown and hidden', async () => {
    const { a } = bench();
    const rows = await tableAfter(a, 'Lots', ({ workbook }) => {
      workbook.tables.getItem('Lots').showTotals = true;
      workbook.tables.getItem('Sums').showTotals = false;
    });
    expect(rows[3]).toEqual(['Total', '', '']);
    expect(await valuesOf(a, 'My sums', 'A4:C4')).toEqual([['', '', '']]);
  });
});
