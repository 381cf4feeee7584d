import { describe, expect, test } from 'vitest';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import type { Change, NewColumn } from '../../src/workbook/port.ts';
import { append, opened, readSnapshot, set, tableNamed, text, valuesOf, writeAll } from './office-bench.ts';

const BENCH: WorkbookDescription = {
  sheets: [
    {
      name: 'Stock',
      cells: { F9: [['far below']] },
      tables: [
        {
          name: 'Lots',
          at: 'B2',
          columns: ['Lot', 'Left'],
          rows: [
            ['L1', 1],
            ['L2', 2],
          ],
          totals: ['Total', 3],
        },
      ],
    },
    { name: 'Log', tables: [{ name: 'Log', at: 'A1', columns: ['Entry'], rows: [['E1']] }] },
  ],
};

const add = (table: string, header: string, format: NewColumn['format'] = 'text'): Change => ({
  kind: 'add column',
  table,
  column: { header, width: 14, format },
});

const headersIn = async (live: ReturnType<typeof opened>['live'], table: string) =>
  tableNamed(await readSnapshot(live), table).columns.map(({ header }) => header);

describe('adding columns', () => {
  test('puts them behind the last one, as wide and with the number format asked for, in few round trips', async () => {
    const { live, excel, statistics } = opened(BENCH);
    const basis = await readSnapshot(live);
    const before = statistics.requests;
    const outcome = await live.write(
      [add('Lots', 'Note'), add('Lots', 'Opened', 'day'), add('Log', 'By')],
      basis,
    );
    expect(outcome.kind).toBe('written');
    expect(statistics.requests - before).toBeLessThan(10);
    expect(await headersIn(live, 'Lots')).toEqual(['Lot', 'Left', 'Note', 'Opened']);
    expect(await headersIn(live, 'Log')).toEqual(['Entry', 'By']);
    const { formats, width } = await excel.run(async (context) => {
      const body = context.workbook.tables.getItem('Lots').getDataBodyRange().load('numberFormat');
      const column = context.workbook.tables.getItem('Lots').columns.getItem('Note').getRange();
      column.format.load('columnWidth');
      await context.sync();
      return { formats: body.numberFormat, width: column.format.columnWidth };
    });
    expect(formats.map((row) => row.slice(2))).toEqual([
      ['@', 'yyyy-mm-dd'],
      ['@', 'yyyy-mm-dd'],
    ]);
    expect(width).toBe((14 * 7 + 5) * 0.75);
  });

  test('is refused where something stands right of the table, and where another table does; nothing is added', async () => {
    const beside: WorkbookDescription = {
      sheets: [
        { ...BENCH.sheets[0], name: 'Stock', cells: { E3: [['mine']] } },
        {
          name: 'Log',
          tables: [
            { name: 'Log', at: 'A1', columns: ['Entry'], rows: [['E1']] },
            { name: 'Other', at: 'B2', columns: ['X'], rows: [['']] },
          ],
        },
      ],
    };
    const { live } = opened(beside);
    const basis = await readSnapshot(live);
    const first = await live.write([add('Lots', 'Note'), add('Lots', 'Opened')], basis);
    expect(first).toMatchObject({
      kind: 'failed',
      message: expect.stringContaining('something stands (Stock!E3)'),
    });
    const second = await live.write([add('Lots', 'Note'), add('Log', 'By')], basis);
    expect(second).toMatchObject({
      kind: 'failed',
      message: expect.stringContaining('the table Other stands'),
    });
    expect(await headersIn(live, 'Lots')).toEqual(['Lot', 'Left']);
    // One column alone has room beside what stands further right.
    expect((await live.write([add('Lots', 'Note')], basis)).kind).toBe('written');
  });

  test('is stale where the table has moved or has other columns by now', async () => {
    const { live, open } = opened(BENCH);
    const basis = await readSnapshot(live);
    await writeAll(open('b').live, [add('Lots', 'Note')]);
    expect((await live.write([add('Lots', 'Note')], basis)).kind).toBe('stale');
    expect(await headersIn(live, 'Lots')).toEqual(['Lot', 'Left', 'Note']);
  });

  test('goes again where the rows that come with it are stale', async () => {
    const { live, open } = opened(BENCH);
    const basis = await readSnapshot(live);
    await writeAll(open('b').live, [set('Lots', 0, 'Lot', text('X'))]);
    const outcome = await live.write(
      [add('Lots', 'Note'), add('Log', 'By'), set('Lots', 0, 'Lot', text('Y'))],
      basis,
    );
    expect(outcome.kind).toBe('stale');
    expect(await headersIn(live, 'Lots')).toEqual(['Lot', 'Left']);
    expect(await headersIn(live, 'Log')).toEqual(['Entry']);
    expect(valuesOf(await readSnapshot(live), 'Lots', 'Lot')).toEqual(['X', 'L2']);
  });

  test('goes again where a column, or a row that comes with them, is refused', async () => {
    for (const [name, nth] of [
      ['NumberFormat', 2],
      ['Values', 0],
    ] as const) {
      let seen = 0;
      const { live } = opened(BENCH, {
        failAction: (action) => {
          if (action.name !== name || !action.edits) return;
          seen += 1;
          return seen === nth + 1 ? { code: 'GeneralException' } : undefined;
        },
      });
      const basis = await readSnapshot(live);
      const changes = [
        add('Lots', 'Note'),
        add('Lots', 'Opened'),
        add('Log', 'By'),
        append('Log', { Entry: text('E2') }),
      ];
      const outcome = await live.write(changes, basis);
      expect([name, outcome.kind]).toEqual([name, 'failed']);
      expect(await headersIn(live, 'Lots')).toEqual(['Lot', 'Left']);
      expect(await headersIn(live, 'Log')).toEqual(['Entry']);
      expect(valuesOf(await readSnapshot(live), 'Log', 'Entry')).toEqual(['E1']);
    }
  });
});
