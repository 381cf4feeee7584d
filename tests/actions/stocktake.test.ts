import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import type { LotCounted } from '../../src/actions/lots-found.ts';
import { postCount } from '../../src/actions/post-count.ts';
import { countLots, countNow, postStocktake } from '../../src/actions/stocktake.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { decimal, quantityNumber } from '../../src/core/exact-number.ts';
import { openStocktake, stocktakeList } from '../../src/core/stocktake.ts';
import { differencesOf } from '../../src/core/stocktake-differences.ts';
import { findUnit } from '../../src/core/unit.ts';
import { Bench, randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal } from '../helpers/literal.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const today = dayOf(TODAY);
const NOW: Literal = {
  ...STUDIO,
  Places: [
    { Place: 'Fridge', Cold: 'yes', 'Walking order': 2 },
    { Place: 'Drawer', 'Walking order': 1 },
    { Place: 'Attic' },
  ],
  Paste: [
    { ...STUDIO.Paste[0], Place: 'Fridge', 'Tare g': 80 },
    { ...STUDIO.Paste[1], Place: 'Attic' },
  ],
  Tissue: [{ ...STUDIO.Tissue[0], Place: 'Drawer' }, STUDIO.Tissue[1]],
  Counts: [],
};

function found(lot: string, quantity: string | null, more: Partial<LotCounted> = {}): LotCounted {
  return {
    lot,
    quantity: quantity === null ? null : decimal(quantity),
    unit: null,
    gross: null,
    note: null,
    ...more,
  };
}

function counting(
  bench: Bench,
  counted: readonly LotCounted[],
  day = today,
  stocktake: string | null = null,
) {
  return bench.do((snapshot, random) =>
    countLots(snapshot, { stocktake, counted, date: day, by: 'AK' }, today, random),
  );
}

function posting(bench: Bench, stocktake: string | null = null) {
  return bench.do((snapshot, random) => postStocktake(snapshot, { stocktake, by: 'AK' }, today, random));
}

function refusal(counted: readonly LotCounted[], literal: Literal = NOW): string {
  const request = { stocktake: null, counted, date: today, by: null };
  const answer = countLots(new Bench(literal).workbook.snapshot(), request, today, randomFrom(1));
  return answer.ok ? 'not refused' : answer.message;
}

function ledgerOf(bench: Bench) {
  return booksOf(bench.workbook.snapshot()).ledger;
}

function lefts(bench: Bench): Record<string, unknown> {
  const rows = ['Tissue', 'Paste', 'ReleasePaper'].flatMap((name) => bench.rows(name));
  return Object.fromEntries(rows.map((row) => [row['Lot'], row['Left']]));
}

describe('the list', () => {
  test('goes by walking order, then by place; what has no place comes last', () => {
    const { places } = stocktakeList(ledgerOf(new Bench(NOW)), today, null);
    expect(places.map(({ place, lots }) => [place, lots.map(({ lot }) => lot.name)])).toEqual([
      ['Drawer', ['T-1']],
      ['Fridge', ['P-1']],
      ['Attic', ['W-1']],
      [null, ['T-2', 'R-1']],
    ]);
  });

  test('of one place has its lots alone; empty, discarded and later lots and what is not counted are left out', () => {
    const bench = new Bench({
      ...NOW,
      Buffers: [
        {
          Lot: 'D-1',
          Material: 'Deionised water',
          Received: date('2026-04-01'),
          Quantity: 5,
          Unit: 'l',
          Place: 'Drawer',
        },
      ],
      Sundries: [
        { ...STUDIO.Paste[1], Lot: 'X-1', Place: 'Drawer', State: 'Discarded' },
        { ...STUDIO.Paste[1], Lot: 'X-2', Place: 'Drawer', Received: date('2026-04-04') },
        { ...STUDIO.Paste[1], Lot: 'X-3', Place: 'drawer ', State: 'Set aside' },
        { ...STUDIO.Paste[1], Lot: 'X-4', Place: 'Drawer' },
      ],
      Movements: [
        { Movement: 'M-1', Date: date('2026-04-02'), Kind: 'Waste', Lot: 'X-4', Quantity: 1, Unit: 'kg' },
      ],
    });
    const { places } = stocktakeList(ledgerOf(bench), today, 'DRAWER');
    expect(places.flatMap(({ lots }) => lots.map(({ lot }) => lot.name))).toEqual(['T-1', 'X-3']);
  });
});

describe('counting', () => {
  test('is kept in Counts with what the ledger has then, and changes no figure', () => {
    const bench = new Bench({
      ...NOW,
      Movements: [
        {
          Movement: 'M-1',
          Date: date('2026-04-03'),
          Kind: 'Use',
          Lot: 'P-1',
          Quantity: 20,
          Unit: 'g',
          Job: '26-014',
        },
      ],
    });
    const before = bench.rows('Paste');
    const counted = counting(bench, [found(' p-1 ', '0.17', { unit: findUnit('kg'), note: '=thin' })]);
    expect(counted.stocktake).toBe('2026-04-03 Fridge');
    expect(bench.rows('Counts')).toEqual([
      {
        Count: expect.stringMatching(/^G\w{8}$/),
        Stocktake: '2026-04-03 Fridge',
        Lot: 'P-1',
        'Counted on': expect.any(Number),
        Quantity: 0.17,
        Unit: 'kg',
        'Left then': 180,
        'Left the day before': 200,
        By: 'AK',
        Note: '=thin',
      },
    ]);
    expect(bench.rows('Paste')).toEqual(before);
    expect(counted.differences.map(({ difference }) => quantityNumber(difference))).toEqual([-10]);
  });

  test('by weight takes the empty jar off', () => {
    const bench = new Bench(NOW);
    counting(bench, [found('P-1', null, { gross: decimal('230.5') })]);
    expect(bench.rows('Counts')).toMatchObject([{ Quantity: 150.5, Unit: 'g', 'Gross g': 230.5 }]);
  });

  test('again replaces the row that waits, and goes on with the stocktake under way', () => {
    const bench = new Bench(NOW);
    counting(bench, [found('P-1', null, { gross: decimal('230.5') })], dayOf('2026-04-02'));
    counting(bench, [found('P-1', '150'), found('T-1', '1')]);
    expect(bench.rows('Counts')).toMatchObject([
      { Stocktake: '2026-04-02 Fridge', Lot: 'P-1', Quantity: 150 },
      { Stocktake: '2026-04-02 Fridge', Lot: 'T-1', Quantity: 1 },
    ]);
    expect(bench.rows('Counts')[0]).not.toHaveProperty('Gross g');
    const list = stocktakeList(ledgerOf(bench), today, null);
    expect(list.stocktake).toBe('2026-04-02 Fridge');
    expect(
      list.places.flatMap(({ lots }) => lots.map(({ lot, counted }) => [lot.name, counted !== null])),
    ).toEqual([
      ['T-1', true],
      ['P-1', true],
      ['W-1', false],
      ['T-2', false],
      ['R-1', false],
    ]);
  });

  test('is refused with what would be right', () => {
    expect(refusal([found('P-2', '1')])).toMatch(
      /^There is no lot called P-2 in the stock tables\. Did you mean T-2 or P-1\?$/,
    );
    expect(refusal([found('P-1', '1'), found('p-1', '2')])).toBe(
      'Lot P-1 is given twice: give what is left of it once.',
    );
    expect(refusal([found('W-1', null, { gross: decimal('500') })])).toMatch(
      /^Tare g of lot W-1 \(row 3 of Paste\) is blank/,
    );
    expect(refusal([found('P-1', null, { gross: decimal('79') })])).toMatch(
      /^Lot P-1 weighs 79 g with its jar/,
    );
    expect(refusal([found('P-1', '1', { unit: findUnit('ml') })])).toMatch(
      /^Unit holds ml, and nothing says how many g/,
    );
    expect(refusal([found('P-1', '1', { gross: decimal('100') })])).toMatch(/both counted and weighed/);
    expect(refusal([found('P-1', null)])).toMatch(/is not given/);
    expect(
      refusal([found('P-1', '1')], { ...NOW, Paste: [STUDIO.Paste[0], { ...STUDIO.Paste[1], Lot: 'p-1' }] }),
    ).toMatch(/^Lot P-1 stands in two rows/);
    expect(refusal([found('P-1', '1')], STUDIO)).toMatch(/^This workbook has no table Counts/);
  });
});

describe('posting a stocktake', () => {
  test('writes one Count for each difference, all in one posting, and marks every row', () => {
    const bench = new Bench(NOW);
    counting(bench, [found('P-1', '150'), found('T-1', '2'), found('T-2', '11')]);
    const posted = posting(bench);
    const common = {
      Kind: 'Count',
      'Lot is': 'confirmed',
      Posting: posted.posting,
      Note: 'stocktake 2026-04-03',
      By: 'AK',
    };
    expect(bench.rows('Movements')).toMatchObject([
      { ...common, Lot: 'P-1', Quantity: -50, Unit: 'g', Cost: 0.63 },
      { ...common, Lot: 'T-2', Quantity: 1, Unit: 'sheet', Cost: -4 },
    ]);
    expect(bench.rows('Counts').map((row) => row['Posting'])).toEqual([
      posted.posting,
      'no difference',
      posted.posting,
    ]);
    expect(lefts(bench)).toMatchObject({ 'P-1': 150, 'T-2': 11 });
    expect(openStocktake(ledgerOf(bench))).toBeNull();

    const again = posting(bench);
    expect({ posting: again.posting, changes: again.changes }).toEqual({ posting: null, changes: [] });
  });

  test('tells the worth of each difference beforehand, and none where the lot has no cost', () => {
    const { Cost: _, ...costless } = STUDIO.Tissue[1];
    const bench = new Bench({ ...NOW, Tissue: [STUDIO.Tissue[0], costless] });
    counting(bench, [found('P-1', '150'), found('T-2', '9')]);
    const { differences } = differencesOf(ledgerOf(bench), today, '2026-04-03');
    expect(differences.map(({ lot, cost }) => [lot.name, cost])).toEqual([
      ['P-1', 63n],
      ['T-2', null],
    ]);
    expect(bench.rows('Movements')).toEqual([]);
  });

  test('rows that cannot be posted wait, and it is said why', () => {
    const bench = new Bench({
      ...NOW,
      Counts: [
        {
          Count: 'G-1',
          Stocktake: 'S',
          Lot: 'P-1',
          'Counted on': date('2026-04-02'),
          Quantity: 1,
          Unit: 'ml',
        },
        {
          Count: 'G-2',
          Stocktake: 'S',
          Lot: 'T-1',
          'Counted on': date('2026-04-02'),
          Quantity: 1,
          Unit: 'sheet',
        },
        {
          Count: 'G-3',
          Stocktake: 's',
          Lot: 't-1',
          'Counted on': date('2026-04-02'),
          Quantity: 2,
          Unit: 'sheet',
        },
        {
          Count: 'G-4',
          Stocktake: 'S',
          Lot: 'T-2',
          'Counted on': date('2026-02-09'),
          Quantity: 1,
          Unit: 'sheet',
        },
        {
          Count: 'G-5',
          Stocktake: 'S',
          Lot: 'W-1',
          'Counted on': date('2026-04-02'),
          Quantity: 900,
          Unit: 'g',
        },
      ],
    });
    const posted = posting(bench);
    expect(posted.remarks.map((remark) => remark.slice(0, 40))).toEqual([
      'Not posted: Unit holds ml, and nothing s',
      'Not posted: Lot T-1 is counted in two ro',
      'Not posted: Lot t-1 is counted in two ro',
      'Not posted: Lot T-2 is received only on ',
    ]);
    expect(bench.rows('Movements')).toMatchObject([{ Lot: 'W-1', Quantity: -0.1, Unit: 'kg' }]);
    expect(bench.rows('Counts').map((row) => row['Posting'] ?? null)).toEqual([
      null,
      null,
      null,
      null,
      posted.posting,
    ]);
  });

  test('of a stocktake that is not there is refused, naming one like it', () => {
    const bench = new Bench(NOW);
    counting(bench, [found('P-1', '150')], today, 'Spring 2026');
    const answer = postStocktake(
      bench.workbook.snapshot(),
      { stocktake: 'Sprin 2026', by: null },
      today,
      randomFrom(1),
    );
    expect(answer).toMatchObject({
      ok: false,
      message: expect.stringContaining('Did you mean Spring 2026?'),
    });
  });

  test('can be taken back: the rows keep their posting, and the list says so', () => {
    const bench = new Bench(NOW);
    counting(bench, [found('P-1', '150'), found('T-1', '2')]);
    const posted = posting(bench);
    expect(stocktakeList(ledgerOf(bench), today, null).stocktakes).toMatchObject([
      { name: '2026-04-03', waiting: 0, posted: 2, takenBack: false },
    ]);
    bench.do((snapshot, random) => undoPosting(snapshot, posted.posting ?? '', today, random));
    expect(stocktakeList(ledgerOf(bench), today, null).stocktakes).toMatchObject([{ takenBack: true }]);
    expect(bench.rows('Counts')[0]).toMatchObject({ Posting: posted.posting });
    expect(lefts(bench)).toMatchObject({ 'P-1': 200 });
    // A new stocktake of that day gets a name of its own.
    expect(counting(bench, [found('P-1', '199'), found('T-1', '2')]).stocktake).toBe('2026-04-03 (2)');
  });
});

describe('the same from one overwritten Left, and without the table', () => {
  const movementOf = (bench: Bench) => {
    const [{ Movement: _m, Posting: _p, Note: _n, ...rest } = {}] = bench.rows('Movements');
    return rest;
  };

  test('gives the same movement and the same figures', () => {
    const counted = new Bench(NOW);
    counting(counted, [found('P-1', '150')]);
    posting(counted);

    const atOnce = new Bench(STUDIO);
    const request = { stocktake: null, counted: [found('P-1', '150')], date: today, by: 'AK' };
    atOnce.do((snapshot, random) => countNow(snapshot, request, today, random));

    const typed = new Bench({
      ...NOW,
      Paste: [{ ...STUDIO.Paste[0], Left: 150, 'Left as written': 200 }, STUDIO.Paste[1]],
    });
    const list = stocktakeList(ledgerOf(typed), today, null);
    expect(list.places.flatMap(({ lots }) => lots.map((each) => each.typed?.valueOf() ?? null))).toContain(
      150,
    );
    typed.do((snapshot, random) => postCount(snapshot, { table: 'Paste', row: 0 }, today, random, 'AK'));

    expect(movementOf(counted)).toMatchObject({ Kind: 'Count', Lot: 'P-1', Quantity: -50, Cost: 0.63 });
    expect(movementOf(typed)).toEqual(movementOf(counted));
    expect(movementOf(atOnce)).toEqual(movementOf(counted));
    for (const bench of [counted, atOnce, typed]) {
      expect(bench.rows('Paste')[0]).toMatchObject({ Left: 150, 'Left as written': 150, Worth: 1.87 });
    }
  });
});
