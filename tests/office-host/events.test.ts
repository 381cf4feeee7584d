import { describe, expect, test } from 'vitest';
import { bench, type Client, settle } from './bench.ts';

interface Told {
  readonly on: string;
  readonly [field: string]: unknown;
}

/** Asks for the events of a client, and keeps what it is told. */
async function listen(client: Client): Promise<Told[]> {
  const told: Told[] = [];
  const keep =
    (on: string) =>
    async (args: object): Promise<void> => {
      told.push({ on, ...JSON.parse(JSON.stringify(args)) });
    };
  await client.Excel.run(async (context) => {
    const { workbook } = context;
    const lots = workbook.tables.getItem('Lots').load('id');
    const stock = workbook.worksheets.getItem('Stock').load('id');
    await context.sync();
    lots.onChanged.add(keep('table'));
    stock.onChanged.add(keep('sheet'));
    workbook.worksheets.onChanged.add(keep('all sheets'));
    workbook.worksheets.onAdded.add(keep('sheet added'));
    workbook.tables.onAdded.add(keep('table added'));
    workbook.worksheets.onSelectionChanged.add(keep('selection'));
    workbook.onSelectionChanged.add(async () => {
      told.push({ on: 'workbook selection' });
    });
    await context.sync();
  });
  return told;
}

const write = async ({ Excel }: Client, address: string, values: unknown[][]): Promise<void> =>
  Excel.run(async (context) => {
    context.workbook.worksheets.getItem('Stock').getRange(address).values = values;
    await context.sync();
  });

describe('events', () => {
  test("an add-in's own writing is told to it as its own, with the cell's old and new value", async () => {
    const { a } = bench();
    const told = await listen(a);
    await write(a, 'D4', [[13]]);
    await settle();
    const details = { valueBefore: 12, valueAfter: 13, valueTypeBefore: 'Double', valueTypeAfter: 'Double' };
    const common = { address: 'D4', changeType: 'RangeEdited', source: 'Local', details };
    expect(told.toSorted((one, other) => one.on.localeCompare(other.on))).toMatchObject([
      { on: 'all sheets', type: 'WorksheetChanged', triggerSource: 'ThisLocalAddin', ...common },
      { on: 'sheet', type: 'WorksheetChanged', triggerSource: 'ThisLocalAddin', ...common },
      { on: 'table', type: 'TableChanged', ...common },
    ]);
    expect(told.find(({ on }) => on === 'table')).not.toHaveProperty('triggerSource');
  });

  test('a person typing is local, and not of the add-in; for others it is remote', async () => {
    const { host, a, connect } = bench();
    const b = connect('b');
    const told = [await listen(a), await listen(b)];
    host.person('a').type('Stock!D4', '14');
    await settle();
    const of = (at: number): unknown[] =>
      (told[at] ?? [])
        .filter(({ on }) => on === 'sheet')
        .map(({ source, triggerSource }) => [source, triggerSource]);
    expect([of(0), of(1)]).toEqual([[['Local', 'Unknown']], [['Remote', 'Unknown']]]);
  });

  test('growing, putting rows in and taking them out: what the table is told', async () => {
    const { a } = bench();
    const told = await listen(a);
    await write(a, 'B6:D6', [['L-3', 'Paste', 1]]);
    await a.Excel.run(async (context) => {
      const { rows } = context.workbook.tables.getItem('Lots');
      rows.add(0, [['L-0', 'x', 1]]);
      rows.getItemAt(1).delete();
      context.workbook.worksheets.getItem('Stock').getRange('1:1').insert('Down');
      await context.sync();
    });
    await settle();
    expect(
      told.filter(({ on }) => on === 'table').map(({ changeType, address }) => [changeType, address]),
    ).toEqual([
      ['RangeEdited', 'B6:D6'],
      ['RowInserted', 'B4:D4'],
      ['RowDeleted', 'B5:D5'],
    ]);
    expect(told.at(-1)).toMatchObject({
      changeType: 'RowInserted',
      address: '1:1',
      changeDirectionState: { insertShiftDirection: 'Down' },
    });
  });

  test('the range of an event can be read later, where its cells are by then', async () => {
    const { host, a } = bench();
    let args: Excel.WorksheetChangedEventArgs | undefined;
    await a.Excel.run(async (context) => {
      const { workbook } = context;
      workbook.worksheets.onChanged.add(async (event) => {
        args = event;
      });
      await context.sync();
    });
    host.person('a').type('Stock!D5', '4');
    await settle();
    host.person('a').insertRows('Stock!1:2');
    await a.Excel.run(async (context) => {
      const range = args?.getRange(context).load('address,values');
      await context.sync();
      expect([range?.address, range?.values]).toEqual(['Stock!D7', [[4]]]);
    });
  });

  test('new sheets and tables', async () => {
    const { a, connect } = bench();
    const told = await listen(connect('b'));
    await a.Excel.run(async (context) => {
      const { workbook } = context;
      const sheet = workbook.worksheets.add('More');
      sheet.getRange('A1').values = [['Head']];
      sheet.tables.add('A1:A2', true);
      await context.sync();
    });
    await settle();
    expect(told.map(({ on, source }) => [on, source])).toEqual([
      ['sheet added', 'Remote'],
      ['all sheets', 'Remote'],
      ['table added', 'Remote'],
    ]);
  });

  test("selecting is told to the person's own add-in only", async () => {
    const { host, a, connect } = bench();
    const told = [await listen(a), await listen(connect('b'))];
    host.person('a').select("'My sums'!A2:B3");
    await settle();
    expect(told[0]).toMatchObject([{ on: 'workbook selection' }, { on: 'selection', address: 'A2:B3' }]);
    expect(told[1]).toEqual([]);
    const seen = await a.Excel.run(async (context) => {
      const range = context.workbook.getSelectedRange().load('address');
      const active = context.workbook.worksheets.getActiveWorksheet().load('name');
      await context.sync();
      return [range.address, active.name];
    });
    expect(seen).toEqual(["'My sums'!A2:B3", 'My sums']);
  });

  test('an add-in can select and go to a sheet', async () => {
    const { a } = bench();
    const told = await listen(a);
    await a.Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Blank').activate();
      context.workbook.worksheets.getItem('Stock').getRange('B4').select();
      const cell = context.workbook.getActiveCell().load('address');
      await context.sync();
      expect(cell.address).toBe('Stock!B4');
    });
    await settle();
    expect(told).toMatchObject([{ on: 'workbook selection' }, { on: 'selection', address: 'B4' }]);
  });

  test('nothing is told any more once the handler is removed, or the client has gone', async () => {
    const { host, a, connect } = bench();
    const b = connect('b');
    const told = await listen(b);
    let calls = 0;
    const handler = await a.Excel.run(async (context) => {
      const { workbook } = context;
      const added = workbook.tables.getItem('Lots').onChanged.add(async () => {
        calls += 1;
      });
      await context.sync();
      return added;
    });
    host.person('a').type('Stock!D4', '1');
    await settle();
    expect(calls).toBe(1);
    await a.Excel.run(handler.context as Excel.RequestContext, async (context) => {
      handler.remove();
      await context.sync();
    });
    const before = told.length;
    b.disconnect();
    host.person('a').type('Stock!D4', '2');
    await settle();
    expect([calls, told.length]).toEqual([1, before]);
  });
});
