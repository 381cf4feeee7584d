import { describe, expect, test } from 'vitest';
import { bench, bodyOf, type Client, settle, valuesOf } from './bench.ts';

const append = async ({ Excel }: Client, lot: string): Promise<void> =>
  Excel.run(async (context) => {
    const body = context.workbook.tables.getItem('Lots').getDataBodyRange();
    body.getRowsBelow(1).values = [[lot, 'x', 1]];
    await context.sync();
  });

describe('several clients of one workbook', () => {
  test('each sees what the other wrote', async () => {
    const { a, connect } = bench();
    const b = connect('b');
    await append(a, 'A');
    await append(b, 'B');
    const seen = [await bodyOf(a, 'Lots'), await bodyOf(b, 'Lots')];
    expect(seen[0]).toEqual(seen[1]);
    expect(seen[0]?.map(([lot]) => lot)).toEqual(['L-1', 'L-2', 'A', 'B']);
  });

  test.each([
    [
      ['a', 'a', 'b', 'b'],
      ['L-1', 'L-2', 'A', 'B'],
    ],
    [
      ['b', 'b', 'a', 'a'],
      ['L-1', 'L-2', 'B', 'A'],
    ],
    // Both read before either writes: the second one's place is taken by then.
    [
      ['a', 'b', 'a', 'b'],
      ['L-1', 'L-2', 'B'],
    ],
    [
      ['a', 'b', 'b', 'a'],
      ['L-1', 'L-2', 'A'],
    ],
  ])('steps in the order %j', async (order, lots) => {
    const { host, a, connect } = bench();
    const b = connect('b');
    /** Reads where the table ends, and in a second round trip writes there: a race that two clients can lose. */
    const inTwo = async ({ Excel }: Client, lot: string): Promise<void> =>
      Excel.run(async (context) => {
        const body = context.workbook.tables.getItem('Lots').getDataBodyRange().load('rowIndex,rowCount');
        await context.sync();
        const sheet = context.workbook.worksheets.getItem('Stock');
        sheet.getRangeByIndexes(body.rowIndex + body.rowCount, 1, 1, 3).values = [[lot, 'x', 1]];
        await context.sync();
      });
    host.deliveries.hold(['request']);
    const both = [inTwo(a, 'A'), inTwo(b, 'B')];
    for (const client of order) {
      await settle();
      expect(host.deliveries.releaseOf(client, 'request')).toBe(true);
    }
    await settle();
    host.deliveries.flow();
    await Promise.all(both);
    expect((await bodyOf(a, 'Lots')).map(([lot]) => lot)).toEqual(lots);
  });

  test('events can be held back and come late, in any order', async () => {
    const { host, a } = bench();
    const told: string[] = [];
    await a.Excel.run(async (context) => {
      const { workbook } = context;
      workbook.worksheets.onChanged.add(async ({ address }) => {
        told.push(address);
      });
      await context.sync();
    });
    host.deliveries.hold(['event']);
    host.person('a').type('Stock!D4', '1');
    host.person('a').type('Stock!D5', '2');
    await settle();
    expect(told).toEqual([]);
    const [first, second] = host.deliveries.pending;
    expect([first?.kind, second?.client]).toEqual(['event', 'a']);
    host.deliveries.release(second?.id);
    host.deliveries.release();
    await settle();
    expect(told).toEqual(['D5', 'D4']);
    expect(() => {
      host.deliveries.release();
    }).toThrow('held back');
  });

  test("an answer held back: the work is done, the client doesn't know it yet", async () => {
    const { host, a } = bench();
    host.deliveries.hold(['response']);
    let known = false;
    const writing = append(a, 'A').then(() => {
      known = true;
    });
    await settle();
    expect(known).toBe(false);
    expect(host.workbook.tables[0]?.bodyRows).toBe(3);
    host.deliveries.flow();
    await writing;
    expect(known).toBe(true);
  });
});

describe("a person's own undo", () => {
  test('takes back typing, then what the add-in wrote in one go', async () => {
    const { host, a } = bench();
    await append(a, 'A');
    host.person('a').type('Stock!D4', '99');
    const told: unknown[] = [];
    await a.Excel.run(async (context) => {
      const { workbook } = context;
      workbook.worksheets.onChanged.add(async ({ source, triggerSource, address }) => {
        told.push([source, triggerSource, address]);
      });
      await context.sync();
    });
    expect(host.person('a').undo()).toBe(true);
    expect(await valuesOf(a, 'Stock', 'D4')).toEqual([[12]]);
    expect(host.person('a').undo()).toBe(true);
    expect(await bodyOf(a, 'Lots')).toHaveLength(2);
    expect(await valuesOf(a, 'Stock', 'B6:D6')).toEqual([['', '', '']]);
    expect(host.person('a').undo()).toBe(false);
    await settle();
    expect(told).toEqual([
      ['Local', 'Unknown', 'D4'],
      ['Local', 'Unknown', 'B6:D6'],
    ]);
  });

  test("leaves others' cells as they are", async () => {
    const { host, a, connect } = bench();
    connect('b');
    host.person('a').type('Stock!D4', '50');
    host.person('b').type('Stock!D5', '60');
    host.person('a').paste('Stock!C4', [['x'], ['y']]);
    host.person('b').type('Stock!C5', 'z');
    host.person('a').undo();
    host.person('a').undo();
    expect(await valuesOf(a, 'Stock', 'C4:D5')).toEqual([
      ['Tissue', 12],
      ['z', 60],
    ]);
  });

  test('across rows that others put in since: refused, not guessed', () => {
    const { host, connect } = bench();
    connect('b');
    host.person('a').type('Stock!D4', '50');
    host.person('b').insertRows('Stock!1:1');
    expect(() => host.person('a').undo()).toThrow('not modelled');
  });

  test('rows that were taken out come back', async () => {
    const { host, a } = bench();
    host.person('a').deleteTableRows('Lots', 0);
    host.person('a').clear('Stock!B4:D4');
    expect(await bodyOf(a, 'Lots')).toEqual([['', '', '']]);
    host.person('a').undo();
    host.person('a').undo();
    expect((await bodyOf(a, 'Lots')).map(([lot]) => lot)).toEqual(['L-1', 'L-2']);
  });
});

describe('a person', () => {
  test('renames a table and a sheet; what is found by id is still found', async () => {
    const { host, a } = bench();
    await a.Excel.run(async (context) => {
      const table = context.workbook.tables.getItem('Lots').load('name');
      await context.sync();
      host.person('a').renameTable('Lots', 'Stocks');
      host.person('a').renameSheet('Stock', 'Shelf');
      table.load('name,worksheet/name');
      await context.sync();
      expect([table.name, table.worksheet.name]).toEqual(['Stocks', 'Shelf']);
    });
  });

  test('deletes sheet rows, and goes to another sheet', async () => {
    const { host, a } = bench();
    host.person('a').activate('Blank');
    host.person('a').deleteRows('Stock!4:4');
    host.person('a').type('B2', 'here');
    expect(await bodyOf(a, 'Lots')).toEqual([['L-2', 'Starch', 3]]);
    expect(await valuesOf(a, 'Blank', 'B2')).toEqual([['here']]);
  });
});
