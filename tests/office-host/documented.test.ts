import { expect, test } from 'vitest';
import { createMemoryWorkbook, createOfficeHost } from '../../src/office-host/office-host.ts';
import { bench, bodyOf, type Client, STUDIO, settle, valuesOf } from './bench.ts';

/** What Microsoft's pages say, by their titles, and whether the host does so for the real library. */
interface Documented {
  readonly page: string;
  readonly says: string;
  readonly check: () => Promise<void>;
}

const run = async (client: Client, work: (context: Excel.RequestContext) => unknown): Promise<void> =>
  client.Excel.run(async (context) => {
    work(context);
    await context.sync();
  });

const DOCUMENTED: readonly Documented[] = [
  {
    page: 'Excel.TableColumnCollection class',
    says: 'without an index the column comes at the end, under the name given',
    check: async () => {
      const { a } = bench();
      await run(a, ({ workbook }) => {
        workbook.tables.getItem('Sums').columns.add(undefined, undefined, 'Note');
      });
      const { columns, body, totals } = await a.Excel.run(async (context) => {
        const table = context.workbook.tables.getItem('Sums');
        const found = table.columns.load('items/name');
        const bodyRange = table.getDataBodyRange().load('values');
        const totalsRange = table.getTotalRowRange().load('values');
        await context.sync();
        return {
          columns: found.items.map(({ name }) => name),
          body: bodyRange.values.map((row) => row.at(-1)),
          totals: totalsRange.values[0]?.at(-1),
        };
      });
      expect({ columns, body, totals }).toEqual({
        columns: ['Item', 'Price', 'Twice', 'Note'],
        body: ['', ''],
        totals: '',
      });
    },
  },
  {
    page: 'Excel.TableColumn class',
    says: 'a column is deleted from its table',
    check: async () => {
      const { a } = bench();
      await run(a, ({ workbook }) => {
        workbook.tables.getItem('Lots').columns.getItem('Quantity').delete();
      });
      expect(await bodyOf(a, 'Lots')).toEqual([
        ['L-1', 'Tissue'],
        ['L-2', 'Starch'],
      ]);
    },
  },
  {
    page: 'Coauthoring in Excel add-ins',
    says: 'what is written to the range just below the table makes it expand',
    check: async () => {
      const { a } = bench();
      await run(a, ({ workbook }) => {
        const body = workbook.tables.getItem('Lots').getDataBodyRange();
        body.getRowsBelow(1).values = [['L-3', 'Paste', 1]];
      });
      expect(await bodyOf(a, 'Lots')).toHaveLength(3);
    },
  },
  {
    page: 'Coauthoring in Excel add-ins',
    says: 'changes of others come with the source Remote, own ones with Local',
    check: async () => {
      const { a, connect } = bench();
      const sources: string[] = [];
      const b = connect('b');
      for (const client of [a, b]) {
        await run(client, ({ workbook }) => {
          workbook.tables.onChanged.add(async ({ source }) => {
            sources.push(`${client.id}: ${source}`);
          });
        });
      }
      await run(b, ({ workbook }) => {
        workbook.tables.getItem('Lots').getDataBodyRange().getCell(0, 2).values = [[1]];
      });
      await settle();
      expect(sources.toSorted()).toEqual(['a: Remote', 'b: Local']);
    },
  },
  {
    page: 'Resource limits and performance optimization for Office Add-ins',
    says: 'a request or an answer has at most 5 MB',
    check: async () => {
      const { a } = bench();
      const values = Array.from({ length: 200 }, () => ['x'.repeat(30_000)]);
      const written = run(a, ({ workbook }) => {
        workbook.worksheets.getItem('Blank').getRange('A1:A200').values = values;
      });
      await expect(written).rejects.toMatchObject({ code: 'RequestPayloadSizeLimitExceeded' });
    },
  },
  {
    page: 'Performance optimization using the Excel JavaScript API',
    says: 'calculation can be suspended until the next sync, and writes in blocks are one request',
    check: async () => {
      const { a } = bench();
      await run(a, ({ workbook }) => {
        workbook.application.suspendApiCalculationUntilNextSync();
        workbook.worksheets.getItem('Blank').getRange('A1:B2').values = [
          [1, 2],
          [3, 4],
        ];
      });
      expect(a.statistics.requests).toBe(1);
    },
  },
  {
    page: 'Work with Events using the Excel JavaScript API',
    says: 'a handler is registered once the batch is synced, and removed in its own context',
    check: async () => {
      const { host, a } = bench();
      let calls = 0;
      const handler = await a.Excel.run(async (context) => {
        const added = context.workbook.worksheets.onChanged.add(async () => {
          calls += 1;
        });
        await context.sync();
        return added;
      });
      host.person('a').type('Blank!A1', 'x');
      await settle();
      await a.Excel.run(handler.context as Excel.RequestContext, async (context) => {
        handler.remove();
        await context.sync();
      });
      host.person('a').type('Blank!A1', 'y');
      await settle();
      expect(calls).toBe(1);
    },
  },
  {
    page: 'Delay execution while cell is being edited',
    says: 'Excel.run fails in cell edit mode, and waits with delayForCellEdit',
    check: async () => {
      const { host, a } = bench();
      host.person('a').startEditing();
      await expect(bodyOf(a, 'Lots')).rejects.toMatchObject({ code: 'InvalidOperationInCellEditMode' });
      const waiting = a.Excel.run({ delayForCellEdit: true }, async (context) => {
        await context.sync();
      });
      host.person('a').stopEditing();
      await waiting;
    },
  },
  {
    page: 'Work with dates using the Excel JavaScript API',
    says: 'a date is a serial number without a zone, shown by its number format',
    check: async () => {
      const { a } = bench();
      await run(a, ({ workbook }) => {
        const cell = workbook.worksheets.getItem('Blank').getRange('A1');
        cell.values = [[46_082]];
        cell.numberFormat = [['yyyy-mm-dd']];
      });
      const shown = await a.Excel.run(async (context) => {
        const cell = context.workbook.worksheets.getItem('Blank').getRange('A1').load('values,text');
        await context.sync();
        return [cell.values, cell.text];
      });
      expect(shown).toEqual([[[46_082]], [['2026-03-01']]]);
    },
  },
  {
    page: 'Excel.Range class: values',
    says: 'a string that starts with =, + or - is taken for a formula',
    check: async () => {
      const { a } = bench();
      await run(a, ({ workbook }) => {
        const range = workbook.worksheets.getItem('Blank').getRange('A1:C1');
        range.values = [['=B1', '+A1', '-A1']];
      });
      const formulas = await a.Excel.run(async (context) => {
        const range = context.workbook.worksheets.getItem('Blank').getRange('A1:C1').load('formulas');
        await context.sync();
        return range.formulas;
      });
      expect(formulas).toEqual([['=B1', '=+A1', '=-A1']]);
    },
  },
  {
    page: 'Set and get range values, text, or formulas using the Excel JavaScript API',
    says: 'null in an array leaves a cell as it is; an empty string clears it',
    check: async () => {
      const { a } = bench();
      await run(a, ({ workbook }) => {
        workbook.worksheets.getItem('Stock').getRange('B4:C4').values = [[null, '']];
      });
      expect(await valuesOf(a, 'Stock', 'B4:C4')).toEqual([['L-1', '']]);
    },
  },
  {
    page: 'Read or write to an unbounded range using the Excel JavaScript API',
    says: 'cell-level properties of whole columns are null, others valid; setting them is refused',
    check: async () => {
      const { a } = bench();
      const seen = await a.Excel.run(async (context) => {
        const range = context.workbook.worksheets
          .getItem('Stock')
          .getRange('B:B')
          .load('values,address,cellCount');
        await context.sync();
        return [range.values, range.address, range.cellCount];
      });
      expect(seen).toEqual([null, 'Stock!B:B', 1_048_576]);
      const written = run(a, ({ workbook }) => {
        workbook.worksheets.getItem('Stock').getRange('B:B').values = 'x' as never;
      });
      await expect(written).rejects.toMatchObject({ code: 'InvalidArgument' });
    },
  },
  {
    page: '*OrNullObject methods and properties',
    says: 'what is not there is a null object, also what is got from it; getItem throws ItemNotFound',
    check: async () => {
      const { a } = bench();
      await a.Excel.run(async (context) => {
        const table = context.workbook.tables.getItemOrNullObject('Nothing');
        const range = table.getDataBodyRange().load('values');
        await context.sync();
        expect([table.isNullObject, range.isNullObject]).toEqual([true, true]);
      });
      const found = run(a, ({ workbook }) => workbook.tables.getItem('Nothing').load('name'));
      await expect(found).rejects.toMatchObject({ code: 'ItemNotFound' });
    },
  },
  {
    page: 'Add data validation to Excel ranges',
    says: 'it stops what is typed, and not what an add-in writes',
    check: async () => {
      const { host, a } = bench();
      await run(a, ({ workbook }) => {
        const { dataValidation } = workbook.worksheets.getItem('Stock').getRange('D4:D5');
        dataValidation.rule = { decimal: { formula1: 0, operator: 'GreaterThan' } };
        dataValidation.errorAlert = {
          message: 'more than 0',
          showAlert: true,
          style: 'Stop',
          title: 'Quantity',
        };
      });
      expect(host.person('a').type('Stock!D4', '-1')).toMatchObject({
        kind: 'against',
        alert: { message: 'more than 0' },
      });
      expect(host.person('a').type('Stock!D5', '8')).toEqual({ kind: 'fine' });
      await run(a, ({ workbook }) => {
        workbook.worksheets.getItem('Stock').getRange('D5').values = [[-2]];
      });
      expect(await valuesOf(a, 'Stock', 'D4:D5')).toEqual([[12], [-2]]);
    },
  },
  {
    page: 'Excel.WorksheetFreezePanes, Excel.Table.resize and others: API set',
    says: 'a member newer than the program offers is not found',
    check: async () => {
      const { a } = bench({ requirementSets: { ExcelApi: '1.6' } });
      const frozen = run(a, ({ workbook }) => {
        workbook.worksheets.getItem('Stock').freezePanes.freezeRows(1);
      });
      await expect(frozen).rejects.toMatchObject({ code: 'ApiNotFound' });
    },
  },
  {
    page: 'Troubleshoot error handling: ErrorCode InvalidReference',
    says: 'a range whose cells were deleted can no longer be used',
    check: async () => {
      const { a } = bench();
      await a.Excel.run(async (context) => {
        const range = context.workbook.worksheets.getItem('Stock').getRange('B4:D4').load('address');
        await context.sync();
        range.delete('Up');
        range.load('values');
        await expect(context.sync()).rejects.toMatchObject({ code: 'InvalidReference' });
      });
    },
  },
];

test.each(DOCUMENTED)('$page: $says', async ({ check }) => {
  await check();
});

test('a description that is no workbook is refused', () => {
  const [stock] = STUDIO.sheets;
  expect(() => createOfficeHost(createMemoryWorkbook({ sheets: [] }))).toThrow('visible sheet');
  const tables = [
    { name: 'One', at: 'A1', columns: ['a', 'b'] },
    { name: 'Two', at: 'B2', columns: ['c'] },
  ];
  expect(() => createMemoryWorkbook({ sheets: [{ name: 'x', tables }] })).toThrow('Two');
  expect(() => createMemoryWorkbook({ sheets: stock ? [stock, stock] : [] })).toThrow('Stock');
});
