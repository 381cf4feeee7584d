import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import type { CellLiteral, WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import {
  append,
  number,
  opened,
  plain,
  readSnapshot,
  set,
  tableNamed,
  text,
  valuesOf,
  writeAll,
} from './office-bench.ts';

const LOOKS_LIKE_ELSE = [
  '3-4',
  'MAR1',
  '1E5',
  'TRUE',
  '007',
  '=x',
  '+1',
  '-',
  "'x",
  '12:30',
  '50%',
  '$5',
  '#N/A',
  '2026-01-01',
];

function table(
  rows: readonly (readonly CellLiteral[])[],
  more: Partial<WorkbookDescription> = {},
): WorkbookDescription {
  const columns = ['Lot', 'Quantity', { name: 'Received', numberFormat: 'yyyy-mm-dd' }];
  return { sheets: [{ name: 'Stock', tables: [{ name: 'Lots', at: 'B3', columns, rows }] }], ...more };
}

describe('reading', () => {
  it('tells apart blanks, errors, booleans, numbers and texts, and where formulas stand', async () => {
    const { live } = opened(
      table([
        [null, true, 46_000],
        ['#N/A', { formula: '=1/0', value: '#DIV/0!' }, { value: 0.5, numberFormat: '0%' }],
        [
          { value: '#N/A', numberFormat: '@' },
          { formula: '=""', value: '' },
          { value: '=1+1', numberFormat: '@' },
        ],
      ]),
    );
    const [lot, quantity, received] = tableNamed(await readSnapshot(live), 'Lots').columns;
    expect(lot?.values).toEqual([null, { shown: '#N/A' }, '#N/A']);
    expect(quantity?.values).toEqual([true, { shown: '#DIV/0!' }, '']);
    expect(received?.values).toEqual([46_000, 0.5, '=1+1']);
    expect([0, 1, 2].map((row) => [quantity?.hasFormula(row), received?.hasFormula(row)])).toEqual([
      [false, false],
      [true, false],
      [true, false],
    ]);
    expect([0, 1].map((row) => received?.look(row))).toEqual(['date', 'percent']);
    expect(quantity?.calculated).toBe(true);
    expect(lot?.calculated).toBe(false);
  });

  it('sees hidden tabs, where tables stand, and what was typed below them', async () => {
    const { live } = opened({
      sheets: [
        { name: 'Shown', cells: { A1: [['x']] } },
        {
          name: 'My stock',
          visibility: 'VeryHidden',
          tables: [
            { name: 'Lots', at: 'C5', columns: ['Lot', 'Quantity'], rows: [['L-1', 1]] },
            { name: 'Sums', at: 'F1', columns: ['A'], rows: [[1]], totals: ['All'] },
          ],
          cells: { D7: [['below']] },
        },
      ],
    });
    const { tables } = await readSnapshot(live);
    expect(tables.map(({ name, tab, firstRow, firstColumn }) => [name, tab, firstRow, firstColumn])).toEqual([
      ['Lots', 'My stock', 6, 3],
      ['Sums', 'My stock', 2, 6],
    ]);
    expect(tables.map(({ below }) => below)).toEqual([[null, 'below'], undefined]);
  });

  it.each([1900, 1904] as const)('tells by itself that a workbook counts from %i', async (dateSystem) => {
    const { live } = opened({ ...table([['L-1', 1, 0]]), dateSystem });
    expect((await readSnapshot(live)).dateSystem).toBe(dateSystem);
  });

  it('detects an answer that came without its cells, and reads in smaller blocks', async () => {
    const rows = Array.from({ length: 100 }, (_, row) => [`L-${row}`, row]);
    const add = opened(table(rows));
    const deliver = add.bridge.onMessageFromHost;
    let withheld = 0;
    add.bridge.onMessageFromHost = (message) => {
      // As the program does with what is too large: the property is there, and null.
      const changed = message.replace(/"Values":\[\[.*?\]\](?=[,}])/g, (values) => {
        if ((values.match(/L-/g) ?? []).length <= 30) return values;
        withheld += 1;
        return '"Values":null';
      });
      deliver?.(changed);
    };
    expect(valuesOf(await readSnapshot(add.live), 'Lots', 'Lot')).toEqual(rows.map(([lot]) => lot));
    expect(withheld).toBeGreaterThan(1);
  });
});

describe('writing', () => {
  it.each(['dropped', 'kept'] as const)(
    'keeps texts as they are, whatever they look like (an apostrophe in a text cell is %s)',
    async (apostropheInTextCell) => {
      const { live } = opened(table([['L-1', 1]]), { apostropheInTextCell });
      await writeAll(live, [append('Lots', ...LOOKS_LIKE_ELSE.map((each) => ({ Lot: text(each) })))]);
      const changes = LOOKS_LIKE_ELSE.map((each, row) => set('Lots', row, 'Quantity', text(each)));
      const written = await writeAll(live, changes);
      expect(valuesOf(written, 'Lots', 'Lot').slice(1)).toEqual(LOOKS_LIKE_ELSE);
      expect(valuesOf(await readSnapshot(live), 'Lots', 'Quantity').slice(0, -1)).toEqual(LOOKS_LIKE_ELSE);
    },
  );

  it('writes numbers as numbers and days as days into cells that held text', async () => {
    const { live } = opened(
      table([['L-1', { value: '5', numberFormat: '@' }, { value: 'soon', numberFormat: '@' }]]),
    );
    const written = await writeAll(live, [
      set('Lots', 0, 'Quantity', number(5)),
      set('Lots', 0, 'Received', { kind: 'day', day: 20_000 as Day }),
    ]);
    expect(valuesOf(written, 'Lots', 'Quantity')).toEqual([5]);
    expect(tableNamed(written, 'Lots').columns[2]?.look(0)).toBe('date');
    expect(plain(await readSnapshot(live))).toEqual(plain(written));
  });

  it('leaves formulas of hers alone, in cells that are set and in calculated columns', async () => {
    const { live } = opened({
      sheets: [
        {
          name: 'Stock',
          tables: [
            {
              name: 'Lots',
              at: 'A1',
              columns: ['Lot', 'Quantity', { name: 'Twice', formula: '=[@Quantity]*2' }],
              rows: [
                ['L-1', 1],
                ['L-2', { formula: '=1+1', value: 2 }],
              ],
            },
          ],
        },
      ],
    });
    const written = await writeAll(live, [
      set('Lots', 1, 'Quantity', number(9)),
      set('Lots', 0, 'Twice', number(9)),
      append('Lots', { Lot: text('L-3'), Quantity: number(3), Twice: number(9) }),
    ]);
    const [, quantity, twice] = tableNamed(written, 'Lots').columns;
    expect(quantity?.values).toEqual([1, 2, 3]);
    expect([0, 1, 2].map((row) => twice?.hasFormula(row))).toEqual([true, true, true]);
    expect(plain(await readSnapshot(live))).toEqual(plain(written));
  });

  it('puts rows in where something stands below, and only cells where another table stands beside', async () => {
    const { live, host } = opened({
      sheets: [
        {
          name: 'Stock',
          tables: [
            { name: 'Lots', at: 'A1', columns: ['Lot', 'Quantity'], rows: [['L-1', 1]] },
            { name: 'Beside', at: 'D1', columns: ['X'], rows: [['x1'], ['x2'], ['x3'], ['x4']] },
          ],
          cells: { A4: [['a remark']] },
        },
        {
          name: 'Alone',
          tables: [{ name: 'More', at: 'A1', columns: ['Lot'], rows: [['M-1']], totals: ['All'] }],
          cells: { C2: [['in its row']], C3: [['beside the totals']] },
        },
      ],
    });
    const three = (name: string) => ['1', '2', '3'].map((each) => ({ Lot: text(`${name}${each}`) }));
    const written = await writeAll(live, [append('Lots', ...three('n')), append('More', ...three('m'))]);
    expect(valuesOf(written, 'Lots', 'Lot')).toEqual(['L-1', 'n1', 'n2', 'n3']);
    expect(valuesOf(written, 'More', 'Lot')).toEqual(['M-1', 'm1', 'm2', 'm3']);
    expect(plain(await readSnapshot(live))).toEqual(plain(written));
    expect(valuesOf(written, 'Beside', 'X')).toEqual(['x1', 'x2', 'x3', 'x4']);
    const cell = (sheet: number, row: number, column: number): unknown =>
      host.workbook.sheets[sheet]?.rows[row]?.[column]?.value;
    expect(cell(0, 6, 0)).toBe('a remark');
    expect([cell(1, 1, 2), cell(1, 5, 2), cell(1, 5, 0)]).toEqual(['in its row', 'beside the totals', 'All']);
  });

  it('sets right what the program corrected, and a table that did not grow', async () => {
    const { host, live } = opened(table([['L-1', 1]]));
    const basis = await readSnapshot(live);
    let grown = false;
    host.setFailure(({ does, name }) => {
      // Right after the values went in: somebody's program takes the table back, and corrects a text.
      if (grown || does !== 'instantiate' || name !== '') return undefined;
      const lots = host.workbook.tables[0];
      if (lots === undefined || lots.bodyRows < 3) return undefined;
      grown = true;
      lots.bodyRows = 1;
      const row = [...(host.workbook.sheets[0]?.rows[4] ?? [])];
      row[1] = { value: 'corrected', numberFormat: '@' };
      if (host.workbook.sheets[0]) host.workbook.sheets[0].rows[4] = row;
      return undefined;
    });
    const outcome = await live.write([append('Lots', { Lot: text('teh') }, { Lot: text('L-3') })], basis);
    host.setFailure(undefined);
    expect(grown).toBe(true);
    expect(outcome.kind).toBe('written');
    const now = await readSnapshot(live);
    expect(valuesOf(now, 'Lots', 'Lot')).toEqual(['L-1', 'teh', 'L-3']);
    if (outcome.kind === 'written') expect(plain(outcome.snapshot)).toEqual(plain(now));
  });

  it('says in plain words what is in the way, and writes nothing', async () => {
    const changes = [append('Lots', { Lot: text('L-2') })];
    const readOnly = opened({ ...table([['L-1', 1]]), readOnly: true });
    expect(await readOnly.live.write(changes, await readSnapshot(readOnly.live))).toMatchObject({
      kind: 'failed',
      message: expect.stringContaining('open read-only'),
    });
    const description = table([['L-1', 1]]);
    const [sheet] = description.sheets;
    if (sheet === undefined) throw new Error('no sheet');
    const locked = opened({ sheets: [{ ...sheet, isProtected: true }] });
    expect(await locked.live.write(changes, await readSnapshot(locked.live))).toMatchObject({
      kind: 'failed',
      message: expect.stringMatching(/tab Stock is protected.*lift its protection/),
    });
    const { live } = opened(description);
    const long = [append('Lots', { Lot: text('x'.repeat(32_768)) })];
    expect(await live.write(long, await readSnapshot(live))).toMatchObject({
      kind: 'failed',
      message: expect.stringMatching(/32768 characters; a cell holds at most 32767/),
    });
    expect(valuesOf(await readSnapshot(live), 'Lots', 'Lot')).toEqual(['L-1']);
  });

  it('waits while a cell is being edited', async () => {
    const { live, host } = opened(table([['L-1', 1]]));
    const basis = await readSnapshot(live);
    host.person('a').startEditing();
    let done = false;
    const writing = live.write([append('Lots', { Lot: text('L-2') })], basis).finally(() => {
      done = true;
    });
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(done).toBe(false);
    host.person('a').stopEditing();
    expect((await writing).kind).toBe('written');
  });

  it("says that a cell is being edited where the program can't wait", async () => {
    const { live, host } = opened(table([['L-1', 1]]), { requirementSets: { ExcelApi: '1.14' } });
    const basis = await readSnapshot(live);
    host.person('a').startEditing();
    const message = expect.stringMatching(/A cell is being edited: finish with Enter/);
    expect(await live.write([append('Lots', { Lot: text('L-2') })], basis)).toMatchObject({
      kind: 'failed',
      message,
    });
    expect(await live.read()).toMatchObject({ kind: 'failed', message });
    host.person('a').stopEditing();
    expect(valuesOf(await readSnapshot(live), 'Lots', 'Lot')).toEqual(['L-1']);
  });

  it('writes nothing where nothing is asked', async () => {
    const { live, statistics } = opened(table([['L-1', 1]]));
    const basis = await readSnapshot(live);
    const before = statistics.requests;
    expect(await live.write([], basis)).toEqual({ kind: 'written', snapshot: basis });
    expect(statistics.requests).toBe(before);
  });
});
