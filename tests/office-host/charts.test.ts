import { describe, expect, test } from 'vitest';
import { bench, type Client, STUDIO } from './bench.ts';

type Work<T> = (sheet: Excel.Worksheet, context: Excel.RequestContext) => T;

const on = async <T>({ Excel }: Client, work: Work<T>, name = 'Stock'): Promise<T> =>
  Excel.run(async (context) => {
    const result = work(context.workbook.worksheets.getItem(name), context);
    await context.sync();
    return result;
  });

/** A chart of the quantities of the lots, with their names along it. */
const draw: Work<Excel.Chart> = (sheet) => {
  const chart = sheet.charts.add('Line', sheet.getRange('D3:D5'), 'Columns');
  chart.series.getItemAt(0).setXAxisValues(sheet.getRange('B4:B5'));
  return chart;
};

const areas = ({ host }: ReturnType<typeof bench>) =>
  host.workbook.sheets.flatMap(({ charts }) =>
    charts.flatMap(({ series }) =>
      series.map(({ values, categories }) => [values?.area ?? null, categories?.area ?? null]),
    ),
  );

describe('charts', () => {
  test('a column with its header makes a series; others are added by name, and are given values', async () => {
    const studio = bench();
    const { a } = studio;
    await on(a, (sheet) => {
      const chart = draw(sheet, undefined as never);
      chart.name = 'Mine';
      chart.title.text = 'How much';
      chart.setPosition('F2', 'H9');
      chart.series.add('Again').setValues(sheet.getRange('D4:D5'));
    });
    const seen = await a.Excel.run(async (context) => {
      const { charts } = context.workbook.worksheets.getItem('Stock');
      const chart = charts.getItem('Mine').load('name,chartType,title/text');
      const series = chart.series.load('items/name');
      const none = charts.getItemOrNullObject('Other');
      const count = charts.getCount();
      await context.sync();
      return [
        chart.name,
        chart.chartType,
        chart.title.text,
        series.items.map(({ name }) => name),
        none.isNullObject,
        count.value,
      ];
    });
    expect(seen).toEqual(['Mine', 'Line', 'How much', ['Quantity', 'Again'], true, 1]);
    expect(studio.host.workbook.sheets[0]?.charts[0]?.place).toEqual({
      row: 1,
      column: 5,
      rows: 8,
      columns: 3,
    });
    expect(areas(studio)).toEqual([
      [
        { row: 3, column: 3, rows: 2, columns: 1 },
        { row: 3, column: 1, rows: 2, columns: 1 },
      ],
      [{ row: 3, column: 3, rows: 2, columns: 1 }, null],
    ]);
  });

  test('follow their cells, and back again', async () => {
    const studio = bench();
    const { a, host } = studio;
    await on(a, draw);
    await on(a, (sheet) => sheet.getRange('2:2').insert('Down'));
    expect(areas(studio)).toEqual([
      [
        { row: 4, column: 3, rows: 2, columns: 1 },
        { row: 4, column: 1, rows: 2, columns: 1 },
      ],
    ]);
    await on(a, (sheet) => sheet.getRange('5:5').delete('Up'));
    expect(areas(studio)[0]?.[0]).toMatchObject({ row: 4, rows: 1 });
    expect(host.person('a').undo()).toBe(true);
    expect(areas(studio)[0]?.[0]).toMatchObject({ row: 4, rows: 2 });
  });

  test('of cells of a tab that goes have nothing to draw', async () => {
    const other = bench();
    await on(other.a, (sheet, { workbook }) => {
      const chart = workbook.worksheets
        .getItem('Blank')
        .charts.add('Line', sheet.getRange('D3:D5'), 'Columns');
      chart.title.text = 'Elsewhere';
    });
    await on(other.a, (sheet) => sheet.delete());
    expect(areas(other)).toEqual([[null, null]]);
  });

  test('come and go as one step back, and are deleted', async () => {
    const studio = bench();
    const { a, host } = studio;
    await on(a, draw);
    await on(a, (sheet) => sheet.charts.getItemAt(0).delete());
    expect(areas(studio)).toEqual([]);
    host.person('a').undo();
    expect(areas(studio)).toHaveLength(1);
    host.person('a').undo();
    expect(areas(studio)).toEqual([]);
  });

  test.each<[string, string, Work<unknown>]>([
    ['another type', 'Pie', (sheet) => sheet.charts.add('Pie', sheet.getRange('D3:D5'), 'Columns')],
    ['by rows', 'columns', (sheet) => sheet.charts.add('Line', sheet.getRange('D3:D5'), 'Rows')],
    [
      'several columns, of which the program would guess what they are',
      'one column',
      (sheet) => sheet.charts.add('Line', sheet.getRange('B3:D5'), 'Columns'),
    ],
    ['no header', 'one column', (sheet) => sheet.charts.add('Line', sheet.getRange('D4:D5'), 'Columns')],
    ['no end', 'without an end', (sheet, context) => draw(sheet, context).setPosition('F2')],
    ['a series at a place', 'at an index', (sheet, context) => draw(sheet, context).series.add('x', 0)],
    [
      'a title that it was not given',
      'ChartTitle.text',
      (sheet, context) => draw(sheet, context).title.load('text'),
    ],
    ['its legend', 'Chart.Legend', (sheet, context) => draw(sheet, context).legend.load('position')],
    ['its size', 'Chart.Height', (sheet, context) => draw(sheet, context).load('height')],
    ['its axes', 'Chart.Axes', (sheet, context) => draw(sheet, context).axes.valueAxis.load('minimum')],
  ])('what this host does not know of them is refused: %s', async (_, message, use) => {
    const { a } = bench();
    await expect(on(a, use)).rejects.toMatchObject({
      code: 'NotImplemented',
      message: expect.stringContaining(message) as string,
    });
  });

  test.each<[string, Work<unknown>]>([
    [
      'a style that there is not',
      (sheet, context) => {
        draw(sheet, context).series.getItemAt(0).format.line.lineStyle = 'Wavy' as 'Dash';
      },
    ],
    [
      'a colour that is none',
      (sheet, context) => {
        draw(sheet, context).series.getItemAt(0).format.line.color = 'greenish';
      },
    ],
    [
      'a weight below nothing',
      (sheet, context) => {
        draw(sheet, context).series.getItemAt(0).format.line.weight = -1;
      },
    ],
    ['an end before its start', (sheet, context) => draw(sheet, context).setPosition('F9', 'E2')],
    ['a place on another tab', (sheet, context) => draw(sheet, context).setPosition('Blank!A1', 'Blank!B2')],
  ])('what cannot be is an argument that is wrong: %s', async (_, use) => {
    const { a } = bench();
    await expect(on(a, use)).rejects.toMatchObject({ code: 'InvalidArgument' });
  });

  test('an older program has no series by cells, and a protected tab takes no chart', async () => {
    const older = bench({ requirementSets: { ExcelApi: '1.6' } });
    await expect(on(older.a, draw)).rejects.toMatchObject({ code: 'ApiNotFound' });
    const [stock, ...others] = STUDIO.sheets;
    if (stock === undefined) throw new Error('no sheet');
    const studio = bench({}, { sheets: [{ ...stock, isProtected: true }, ...others] });
    await expect(on(studio.a, draw)).rejects.toMatchObject({ code: 'AccessDenied' });
    expect(areas(studio)).toEqual([]);
  });
});
