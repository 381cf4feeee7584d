import { OfficeMockObject } from 'office-addin-mock';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { cellBefore, formatToWrite, holdsWritten } from '../../src/office/cell-content.ts';
import { cellValue, isFormula } from '../../src/office/cell-values.ts';
import { firstCell } from '../../src/office/first-cell.ts';
import { goToCell } from '../../src/office/go-to.ts';
import { plainMessage } from '../../src/office/messages.ts';
import { roundTrips } from '../../src/office/round-trips.ts';
import { blocksOf, halves, sizeOf } from '../../src/office/table-blocks.ts';
import { isCalculated } from '../../src/office/table-data.ts';
import { oneAfterAnother } from '../../src/office/with-workbook.ts';
import { columnReference, freeTabName, listName } from '../../src/workbook/blueprint-names.ts';

describe('addresses', () => {
  it.each([
    ['B3', 3, 2],
    ['$AA$10:AC20', 10, 27],
    ['C:D', 1, 3],
    ['4:7', 4, 1],
    ['B3,D9', 3, 2],
    ["'My tab'!XFD1048576", 1_048_576, 16_384],
  ])('%s begins in row %i, column %i', (address, row, column) => {
    expect(firstCell(address)).toEqual({ row, column });
  });

  it('are told from other words', () => {
    expect([firstCell(''), firstCell('Total!'), firstCell('B3x')]).toEqual([null, null, null]);
  });
});

describe('names', () => {
  it('of tabs get a number behind them, within 31 characters', () => {
    expect(freeTabName('Paste', ['Stock'])).toBe('Paste');
    expect(freeTabName('Paste', ['paste', 'Paste 2'])).toBe('Paste 3');
    const long = 'x'.repeat(31);
    expect(freeTabName(long, [long])).toBe(`${'x'.repeat(29)} 2`);
  });

  it('of columns stand in formulas and as names of lists', () => {
    expect(columnReference('Lots', "Sheet [cm] 'new'#1")).toBe("Lots[Sheet '[cm'] ''new'''#1]");
    expect(listName('Lots', 'Sheet width cm')).toBe('list_Lots_Sheet_width_cm');
  });
});

describe('cells', () => {
  it('hold a formula where what they say begins with = and is not what they show', () => {
    expect([isFormula('=A1', 5), isFormula('=1', '=1'), isFormula('x', 'x'), isFormula(5, 5)]).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  it('give null for blank, but what a formula gives as blank is text', () => {
    expect([cellValue('', false, 'General'), cellValue('', true, 'General')]).toEqual([null, '']);
    expect([cellValue('#N/A', false, 'General'), cellValue('#N/A', false, '@')]).toEqual([
      { shown: '#N/A' },
      '#N/A',
    ]);
    expect(cellValue({ type: 'Entity' }, false, 'General')).toEqual({ shown: '{"type":"Entity"}' });
  });

  it('get a number format only where they need another one', () => {
    const day = { kind: 'day', day: 1 as Day } as const;
    expect(formatToWrite({ kind: 'text', text: 'x' }, 'General')).toBe('@');
    expect(formatToWrite({ kind: 'text', text: 'x' }, '@')).toBeNull();
    expect(formatToWrite({ kind: 'text', text: '' }, 'General')).toBeNull();
    expect(formatToWrite({ kind: 'number', number: 1 }, '@')).toBe('General');
    expect(formatToWrite({ kind: 'number', number: 1 }, '0.00')).toBeNull();
    expect(formatToWrite(day, 'General')).toBe('yyyy-mm-dd');
    expect(formatToWrite(day, 'dd.mm.yyyy')).toBeNull();
    expect(formatToWrite({ kind: 'blank' }, '@')).toBeNull();
  });

  it('hold what was written, up to line ends and the last digits', () => {
    expect(holdsWritten(0.1 + 0.2, 0.3)).toBe(true);
    expect(holdsWritten(0.300_001, 0.3)).toBe(false);
    expect(holdsWritten('a\r\nb', 'a\nb')).toBe(true);
    expect(holdsWritten(7, '007')).toBe(false);
    expect(holdsWritten('', '')).toBe(true);
  });

  it('are put back as they stood: text as text under whatever format', () => {
    expect(cellBefore('007', '007', 'General')).toEqual({
      writeAs: '@',
      formula: '007',
      numberFormat: 'General',
    });
    expect(cellBefore('=1+1', 2, '0.0')).toEqual({ writeAs: '0.0', formula: '=1+1', numberFormat: '0.0' });
    expect(cellBefore(5, 5, 'General')).toEqual({ writeAs: 'General', formula: 5, numberFormat: 'General' });
    expect(cellBefore('', '', '@')).toEqual({ writeAs: '@', formula: '', numberFormat: '@' });
  });
});

describe('calculated columns', () => {
  it('are those whose last row, and most others, hold a formula', () => {
    expect(isCalculated([true])).toBe(true);
    expect(isCalculated([true, false, true])).toBe(true);
    expect(isCalculated([true, true, false])).toBe(false);
    expect(isCalculated([false, false, true])).toBe(false);
    expect(isCalculated([])).toBe(false);
  });
});

describe('blocks', () => {
  const table = { id: '1', name: 'T', tab: 'T', hasTotals: false };

  it('cover every row once, within the limit, the last one open', () => {
    const blocks = blocksOf(table, { rows: 1050, bytesPerRow: 100 }, 20_000);
    expect(blocks.map(({ from, count, toEnd }) => [from, count, toEnd])).toEqual([
      [0, 200, false],
      [200, 200, false],
      [400, 200, false],
      [600, 200, false],
      [800, 200, false],
      [1000, 50, true],
    ]);
    expect(blocksOf(table, sizeOf(0, 3)).map(({ count }) => count)).toEqual([1]);
  });

  it('are halved down to single rows', () => {
    const [block] = blocksOf(table, { rows: 3, bytesPerRow: 10 });
    if (block === undefined) throw new Error('no block');
    expect(halves(block)?.map(({ from, count, toEnd }) => [from, count, toEnd])).toEqual([
      [0, 2, false],
      [2, 1, true],
    ]);
    expect(halves({ ...block, count: 1 })).toBeNull();
  });

  it('go into as few round trips as fit, in their order', () => {
    const pieces = [3, 3, 5, 9, 1].map((bytes) => ({ bytes }));
    expect(roundTrips(pieces, 6).map((trip) => trip.map(({ bytes }) => bytes))).toEqual([
      [3, 3],
      [5],
      [9],
      [1],
    ]);
  });
});

describe('messages', () => {
  it.each([
    ['InvalidOperationInCellEditMode', /finish with Enter/],
    ['AccessDenied', /read-only, or a tab of it is protected/],
    ['InsertDeleteConflict', /move one of the two to a tab of its own/],
    ['ApiNotFound', /update it/],
  ])('say of %s what to do', (code, message) => {
    expect(plainMessage({ code }, 'Writing')).toMatch(message);
  });

  it('pass on what the program says of anything else', () => {
    expect(plainMessage(new Error('Odd thing.'), 'Writing to it')).toBe(
      'Writing to it did not work. The spreadsheet program says: Odd thing.',
    );
    expect(plainMessage('?', 'Writing to it')).toBe('Writing to it did not work.');
  });
});

describe('one after another', () => {
  it('keeps the order, and goes on after a failure that its asker hears of', async () => {
    const inTurn = oneAfterAnother();
    const seen: number[] = [];
    const slow = inTurn(async () => {
      await new Promise((resolve) => setTimeout(resolve, 5));
      seen.push(1);
    });
    const failing = inTurn(() => Promise.reject(new Error('no')));
    const last = inTurn(() => Promise.resolve(seen.push(2)));
    await expect(failing).rejects.toThrow('no');
    await Promise.all([slow, last]);
    expect(seen).toEqual([1, 2]);
  });
});

describe('what is asked of the program', () => {
  /** A mock holds what is asked of it; it is no proof that the program does it. */
  it('to go to a cell: its tab is shown, and the cell chosen', async () => {
    const asked: string[] = [];
    const mock = new OfficeMockObject({
      context: {
        workbook: {
          worksheets: {
            getItemOrNullObject: (name: string) => ({
              load: () => ({
                isNullObject: false,
                visibility: 'Visible',
                activate: () => asked.push(`show ${name}`),
                getRangeByIndexes: (...place: number[]) => ({
                  select: () => asked.push(`choose ${place.join(' ')}`),
                }),
              }),
            }),
          },
        },
      },
    }) as unknown as { context: Excel.RequestContext };
    const outcome = await goToCell((work) => work(mock.context), { tab: 'Stock', row: 3, column: 2 });
    expect(outcome).toEqual({ kind: 'there' });
    expect(asked).toEqual(['show Stock', 'choose 2 1 1 1']);
  });
});
