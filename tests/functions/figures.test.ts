import { describe, expect, test } from 'vitest';
import { evaluateCall, type FunctionName } from '../../src/functions/evaluate-call.ts';
import { date, type Literal } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { studioBooks } from './books.ts';

/** What a call comes to in the small studio: its figure, or the kind of problem. */
function call(name: FunctionName, args: readonly unknown[], books = studioBooks()): unknown {
  const result = evaluateCall(name, args, books);
  return 'value' in result ? result.value : result.error;
}

function message(name: FunctionName, args: readonly unknown[], books = studioBooks()): string {
  const result = evaluateCall(name, args, books);
  return 'value' in result ? `no problem: ${result.value}` : result.message;
}

/** A use of a lot on a day. */
function use(lot: string, quantity: number, unit: string, day: string) {
  return { Movement: `M-${lot}`, Date: date(day), Kind: 'Use', Lot: lot, Quantity: quantity, Unit: unit };
}

/** The rows of a table of the small studio, one cell of some rows replaced. */
function withCells(table: keyof typeof STUDIO, rows: Record<number, Record<string, unknown>>): Literal {
  return {
    [table]: STUDIO[table].map((row: object, place: number) => ({ ...row, ...rows[place] })),
  } as unknown as Literal;
}

describe('LEFT and USABLE', () => {
  test.each([
    ['all lots together', ['Repair tissue 5'], 12],
    ['whatever the letters and the space', [' repair TISSUE 5 '], 12],
    ['a lot of 1 kg, kept in g', ['Wheat starch'], 1000],
    ['in the unit that is named', ['Wheat starch', 'kg'], 1],
    ['12 sheets of 60 × 90 cm', ['Repair tissue 5', 'cm2'], 64_800],
    ['5 sheets of 10 uses', ['Silicone release paper', 'uses'], 50],
    ['no unit, as a spreadsheet leaves it out', ['Repair tissue 5', null], 12],
    ['an empty cell for the unit', ['Repair tissue 5', ''], 12],
  ])('%s', (_, args, value) => {
    expect([call('LEFT', args), call('USABLE', args)]).toEqual([value, value]);
  });

  test('sheets of other sizes count by their own', () => {
    const books = studioBooks(
      withCells('Tissue', { 1: { 'Sheet width cm': 30, 'Sheet height cm': 45, State: 'Set aside' } }),
    );
    // 2 sheets of 60 × 90 cm, and 10 of 30 × 45 cm that are set aside.
    expect(call('LEFT', ['Repair tissue 5', 'cm2'], books)).toBe(2 * 5400 + 10 * 1350);
    expect(call('USABLE', ['Repair tissue 5', 'cm2'], books)).toBe(2 * 5400);
    expect(call('LEFT', ['Repair tissue 5'], books)).toBe(12);
  });

  test('what has gone off is left, and is not usable', () => {
    const books = studioBooks({}, '2026-04-07');
    expect(call('LEFT', ['Wheat starch paste'], books)).toBe(200);
    expect(call('USABLE', ['Wheat starch paste'], books)).toBe(0);
  });

  test('more used than recorded stands below nothing', () => {
    const books = studioBooks({ Movements: [use('W-1', 1200, 'g', '2026-04-01')] });
    expect(call('LEFT', ['Wheat starch'], books)).toBe(-200);
  });

  test('a lot whose unit leads nowhere is said, as the total would miss it', () => {
    const books = studioBooks(withCells('Tissue', { 1: { Unit: 'g' } }));
    expect(call('LEFT', ['Repair tissue 5'], books)).toBe('no conversion');
    expect(message('LEFT', ['Repair tissue 5'], books)).toContain('lot T-2');
    const discarded = studioBooks(withCells('Tissue', { 1: { Unit: 'g', State: 'Discarded' } }));
    expect(call('LEFT', ['Repair tissue 5'], discarded)).toBe(2);
  });
});

describe('GOODUNTIL', () => {
  // 1 January 2026 is 46023 in the 1900 system and 1462 less in the 1904 system.
  test('made on 1 April to keep 5 days: 6 April, as a serial', () => {
    expect(call('GOODUNTIL', ['P-1'])).toBe(46_023 + 95);
    expect(call('GOODUNTIL', ['P-1'], studioBooks({}, '2026-04-03', 1904))).toBe(46_023 + 95 - 1462);
  });

  test('the date printed on it', () => {
    expect(call('GOODUNTIL', ['t-1'])).toBe(46_023 + 364);
  });

  test('a lot that keeps has no such day', () => {
    expect(call('GOODUNTIL', ['T-2'])).toBe('keeps');
  });

  test('an unreadable date is no date', () => {
    const books = studioBooks(withCells('Tissue', { 0: { 'Use by': 'next year' } }));
    expect(call('GOODUNTIL', ['T-1'], books)).toBe('not known');
  });

  test('a material has no day of its own', () => {
    expect(call('GOODUNTIL', ['Repair tissue 5'])).toBe('unknown name');
    expect(message('GOODUNTIL', ['Repair tissue 5'])).toContain('name a lot');
  });
});

describe('COST', () => {
  test.each([
    // T-1 is dated, so it comes first: 2 sheets for 9.00; then T-2, 4.00 a sheet.
    ['two lots', ['Repair tissue 5', 3], 13],
    ['all there is, and a sheet at 45.00 for ten', ['Repair tissue 5', 13], 53.5],
    ['another unit: 500 g of 1 kg for 12.00', ['Wheat starch', 0.5, 'kg'], 6],
    ['a use of 5 sheets for 20.00, 10 uses each', ['Silicone release paper', 1, 'use'], 0.4],
    ['a share of a coin, halves away from zero: 0.125', ['Wheat starch paste', 10], 0.13],
    // 200 g for 2.50, then 100 g made of 20 g of starch at 14.00 a kg.
    ['made again', ['Wheat starch paste', 300], 2.78],
    ['not counted and on no offer', ['Deionised water', 100], 0],
    ['nothing', ['Repair tissue 5', 0], 0],
  ])('%s', (_, args, value) => {
    expect(call('COST', args)).toBe(value);
  });

  test('where the settings cost by replacement, so does the cell', () => {
    const Settings = [...STUDIO.Settings, { Setting: 'cost basis', Value: 'replacement' }];
    expect(call('COST', ['Repair tissue 5', 3], studioBooks({ Settings }))).toBe(13.5);
  });

  test('a yen has no decimals', () => {
    const Settings = [{ Setting: 'currency', Value: 'JPY' }];
    expect(call('COST', ['Wheat starch paste', 50], studioBooks({ Settings }))).toBe(1);
  });

  test('more than the lots hold, on no offer', () => {
    expect(call('COST', ['Silicone release paper', 6])).toBe('no cost');
  });

  test('a lot without a cost, on no offer', () => {
    const books = studioBooks(withCells('ReleasePaper', { 0: { Cost: null } }));
    expect(call('COST', ['Silicone release paper', 1], books)).toBe('no cost');
  });

  test.each([[-1], [Number.NaN], [Number.POSITIVE_INFINITY], ['three'], [null], [undefined], [true]])(
    '%s is no quantity',
    (quantity) => {
      expect(call('COST', ['Repair tissue 5', quantity])).toBe('bad quantity');
    },
  );

  test('a unit that leads nowhere', () => {
    expect(call('COST', ['Wheat starch', 1, 'sheet'])).toBe('no conversion');
  });
});

describe('COVER', () => {
  // 9 sheets in the shortest window of 90 days are 0.1 a day; 3 are left.
  test('what is usable ÷ the mean daily use', () => {
    const books = studioBooks({ Movements: [use('T-2', 9, 'sheet', '2026-04-02')] });
    expect(call('COVER', ['Repair tissue 5'], books)).toBeCloseTo(30, 10);
  });

  test('nothing usable lasts no day', () => {
    const Movements = [use('T-1', 2, 'sheet', '2026-04-01'), use('T-2', 10, 'sheet', '2026-04-02')];
    expect(call('COVER', ['Repair tissue 5'], studioBooks({ Movements }))).toBe(0);
  });

  test('without any use there are no days, and no division by zero', () => {
    expect(call('COVER', ['Repair tissue 5'])).toBe('no use');
    expect(message('COVER', ['Repair tissue 5'])).toContain('since 4 Jan 2026');
  });
});

describe('ORDERAT', () => {
  // Mean 0.1 sheet a day × (10 days of lead time + 7 review days, as usual); no service level.
  test('the use of the lead time and the review days', () => {
    const books = studioBooks({ Movements: [use('T-2', 9, 'sheet', '2026-04-02')] });
    expect(call('ORDERAT', ['Repair tissue 5'], books)).toBe(1.7);
    expect(call('ORDERAT', ['Repair tissue 5', 'cm2'], books)).toBe(9180);
  });

  test('or what is kept at least', () => {
    const books = studioBooks(withCells('Materials', { 0: { 'Keep at least': 4 } }));
    expect(call('ORDERAT', ['Repair tissue 5'], books)).toBe(4);
  });
});

describe('what every function refuses', () => {
  const OF_MATERIAL = [
    ['LEFT', []],
    ['USABLE', []],
    ['COST', [1]],
    ['COVER', []],
    ['ORDERAT', []],
  ] as const;

  test.each(OF_MATERIAL)('%s: a name that is nobody’s, with the one that may be meant', (name, more) => {
    expect(call(name, ['Repair tisue 5', ...more])).toBe('unknown name');
    expect(message(name, ['Repair tisue 5', ...more])).toBe(
      'There is no material called Repair tisue 5 in Materials. Did you mean Repair tissue 5?',
    );
  });

  test.each([...OF_MATERIAL, ['GOODUNTIL', []] as const])('%s: no name', (name, more) => {
    expect(call(name, ['', ...more])).toBe('unknown name');
    expect(call(name, [null, ...more])).toBe('unknown name');
  });

  test.each([
    ['LEFT', []],
    ['USABLE', []],
    ['COST', [1]],
    ['ORDERAT', []],
  ] as const)('%s: a unit that is none, and one that leads nowhere', (name, more) => {
    expect(call(name, ['Wheat starch', ...more, 'jar'])).toBe('unknown unit');
    expect(call(name, ['Wheat starch', ...more, 'sheet'])).toBe('no conversion');
    expect(message(name, ['Wheat starch', ...more, 'sheet'])).toContain('Wheat starch');
  });

  test.each(['LEFT', 'USABLE', 'COVER', 'ORDERAT'] as const)('%s: a material that is not counted', (name) => {
    expect(call(name, ['Deionised water'])).toBe('not counted');
  });
});
