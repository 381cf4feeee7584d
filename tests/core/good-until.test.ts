import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { goodUntilOn, isUsableOn, openedOn } from '../../src/core/life.ts';
import type { MaterialRecord, Records } from '../../src/core/records.ts';
import { lot, material, movement, type PlainLot, place, recipe } from './helpers/stock-records.ts';
import { account, ledgerOf, on } from './helpers/studio-of.ts';

interface Case {
  readonly lot?: PlainLot;
  readonly material?: Partial<Pick<MaterialRecord, 'lifeSealedDays' | 'lifeOpenedDays'>> & {
    readonly unreadable?: readonly string[];
  };
  readonly movements?: Records['movements'];
  readonly recipes?: Records['recipes'];
}

/** A lot A of 10 g of paste, received on 1 March 2026. */
function lotA(given: Case) {
  return account(
    ledgerOf({
      materials: [material('Paste', 'g', given.material)],
      lots: [lot('A', 'Paste', '2026-03-01', 10, given.lot)],
      places: [place('Fridge', true), place('Shelf', false), place('Bench')],
      recipes: given.recipes ?? [recipe('R', 'Paste', 10, { life: 3, lifeCold: 10 })],
      movements: given.movements ?? [],
    }),
    'A',
  );
}

function goodUntil(given: Case, asOf = '2026-03-31'): string | null {
  const day = goodUntilOn(lotA(given), on(asOf));
  return day === null ? null : isoDay(day);
}

const used = (date: string, name = 'M1') => movement(name, date, 'Use', 'A', 1);

describe('the last day a lot may be used', () => {
  test.each<[string, Case, string | null]>([
    ['keeps where nothing ends it', {}, null],
    ['is its Use by', { lot: { useBy: '2026-04-30' } }, '2026-04-30'],
    ['is Received and the life sealed', { material: { lifeSealedDays: 20 } }, '2026-03-21'],
    [
      'is Opened and the life opened',
      { lot: { opened: '2026-03-05' }, material: { lifeOpenedDays: 7 } },
      '2026-03-12',
    ],
    ['has no life opened while it is sealed', { material: { lifeOpenedDays: 7 } }, null],
    ['is Received and the life of its recipe', { lot: { recipe: 'R' } }, '2026-03-04'],
    ['is the life cold where its place is cold', { lot: { recipe: 'R', place: 'Fridge' } }, '2026-03-11'],
    ['is the life warm at a place that is not cold', { lot: { recipe: 'R', place: 'Shelf' } }, '2026-03-04'],
    ['takes a place that does not say for not cold', { lot: { recipe: 'R', place: 'Bench' } }, '2026-03-04'],
    ['takes an unknown place for not cold', { lot: { recipe: 'R', place: 'Attic' } }, '2026-03-04'],
    [
      'is the life of the recipe where no life cold is given',
      { lot: { recipe: 'R', place: 'Fridge' }, recipes: [recipe('R', 'Paste', 10, { life: 3 })] },
      '2026-03-04',
    ],
    [
      'is the life cold even where only that is given',
      { lot: { recipe: 'R', place: 'Fridge' }, recipes: [recipe('R', 'Paste', 10, { lifeCold: 5 })] },
      '2026-03-06',
    ],
    [
      'has no life of its recipe where only one cold is given and its place is warm',
      { lot: { recipe: 'R' }, recipes: [recipe('R', 'Paste', 10, { lifeCold: 5 })] },
      null,
    ],
    [
      'obeys the lives of its material too',
      { lot: { recipe: 'R' }, material: { lifeSealedDays: 1 } },
      '2026-03-02',
    ],
    [
      'is the earliest of all',
      {
        lot: { recipe: 'R', useBy: '2026-03-03', opened: '2026-03-01' },
        material: { lifeSealedDays: 4, lifeOpenedDays: 5 },
      },
      '2026-03-03',
    ],
    ['is the day itself for a life of 0', { material: { lifeSealedDays: 0 } }, '2026-03-01'],
    [
      'counts calendar days over the end of February',
      { lot: { opened: '2026-02-27' }, material: { lifeOpenedDays: 3 } },
      '2026-03-02',
    ],
  ])('%s', (_name, given, expected) => {
    expect(goodUntil(given)).toBe(expected);
  });

  test('a lot may be used on its last day and has expired on the next', () => {
    const own = lotA({ material: { lifeSealedDays: 0 } });
    expect(isUsableOn(own, on('2026-03-01'))).toBe(true);
    expect(isUsableOn(own, on('2026-03-02'))).toBe(false);
  });

  test.each([
    ['a Use by that can not be read', { lot: { unreadable: ['Use by'] } }],
    ['an Opened that can not be read', { lot: { unreadable: ['Opened'] } }],
    ['a State that can not be read', { lot: { unreadable: ['State'] } }],
    ['a recipe that no row bears', { lot: { recipe: 'Unheard of' } }],
    ['a life of the material that can not be read', { material: { unreadable: ['Life sealed days'] } }],
    [
      'a life of the recipe that can not be read',
      { lot: { recipe: 'R' }, recipes: [recipe('R', 'Paste', 10, { unreadable: ['Life days'] })] },
    ],
  ] satisfies [string, Case][])('%s leaves it open, and the lot unusable', (_name, given) => {
    expect(goodUntil({ material: { lifeSealedDays: 9 }, ...given })).toBe(null);
    expect(isUsableOn(lotA(given), on('2026-03-01'))).toBe(false);
  });

  test('a cell that has no bearing on it may be unreadable', () => {
    expect(isUsableOn(lotA({ lot: { unreadable: ['Cost'] } }), on('2026-03-01'))).toBe(true);
  });
});

describe('the day a lot was opened', () => {
  const opened = (given: Case, asOf: string): string | null => {
    const day = openedOn(lotA(given), on(asOf));
    return day === null ? null : isoDay(day);
  };

  test('is the first Use or Make where Opened is blank', () => {
    const movements = [
      movement('M1', '2026-03-02', 'Waste', 'A', 1),
      movement('M2', '2026-03-03', 'Put back', 'A', 1),
      movement('M3', '2026-03-06', 'Make', 'A', 1),
      used('2026-03-08', 'M4'),
    ];
    expect(opened({ movements }, '2026-03-31')).toBe('2026-03-06');
    expect(opened({ movements }, '2026-03-05')).toBe(null);
  });

  test('is what Opened says, also against the movements', () => {
    expect(opened({ lot: { opened: '2026-03-09' }, movements: [used('2026-03-05')] }, '2026-03-31')).toBe(
      '2026-03-09',
    );
  });

  test('is not known before Opened is reached', () => {
    expect(opened({ lot: { opened: '2026-03-09' } }, '2026-03-08')).toBe(null);
  });

  test('goes with a use that is reversed, from the day of the reversal', () => {
    const movements = [
      used('2026-03-02'),
      movement('M2', '2026-03-10', 'Use', 'A', -1, { reverses: 'M1' }),
      used('2026-03-20', 'M3'),
    ];
    expect(opened({ movements }, '2026-03-09')).toBe('2026-03-02');
    expect(opened({ movements }, '2026-03-10')).toBe(null);
    expect(opened({ movements }, '2026-03-31')).toBe('2026-03-20');
  });

  test('is the day it was received where a use is dated before', () => {
    expect(opened({ movements: [used('2026-02-20')] }, '2026-03-31')).toBe('2026-03-01');
  });

  test('sets the life opened running', () => {
    expect(goodUntil({ material: { lifeOpenedDays: 0 }, movements: [used('2026-03-08')] })).toBe(
      '2026-03-08',
    );
  });
});
