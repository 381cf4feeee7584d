import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { goodUntilOn, goodUntilReason, isExpiredOn, lifeLimitsOn } from '../../src/core/life.ts';
import { runs, SEED } from './helpers/random-studio.ts';
import { lot, material, movement, type PlainLot, place, recipe } from './helpers/stock-records.ts';
import { account, ledgerOf, on } from './helpers/studio-of.ts';

const PLACES = [
  place('Bench'),
  place('Fridge', true),
  place('Drawer', false, { dark: true }),
  place('Dark fridge', true, { dark: true }),
];

interface Case {
  readonly lot?: PlainLot;
  readonly sealed?: number;
  readonly opened?: number;
  readonly life?: Parameters<typeof recipe>[3];
  readonly used?: string;
}

/** A lot A of 10 g of paste, received on 1 March 2026. */
function lotA({ lot: more = {}, sealed, opened, life, used }: Case) {
  const lives = { lifeSealedDays: sealed ?? null, lifeOpenedDays: opened ?? null };
  const ledger = ledgerOf({
    materials: [material('Paste', 'g', lives)],
    lots: [lot('A', 'Paste', '2026-03-01', 10, life === undefined ? more : { recipe: 'R', ...more })],
    places: PLACES,
    recipes: life === undefined ? [] : [recipe('R', 'Paste', 10, life)],
    movements: used === undefined ? [] : [movement('M1', used, 'Use', 'A', 1)],
  });
  return account(ledger, 'A');
}

function limits(given: Case, asOf = '2026-03-31'): string[] {
  return lifeLimitsOn(lotA(given), on(asOf)).map(({ day, reason }) => `${isoDay(day)} ${reason}`);
}

describe('which limit it is', () => {
  test('all of them are told, the earliest first', () => {
    const all = {
      lot: { useBy: '2027-01-01', opened: '2026-03-10' },
      sealed: 730,
      opened: 90,
      life: { life: 5 },
    };
    expect(limits(all)).toEqual([
      '2026-03-06 made 1 Mar 2026, keeps 5 days',
      '2026-06-08 opened 10 Mar 2026, keeps 90 days',
      '2027-01-01 its Use by date',
      '2028-02-29 sealed, keeps 730 days from receipt',
    ]);
    const bought = { lot: { useBy: '2027-01-01' }, sealed: 1 };
    expect(limits(bought)[1]).toBe('2027-01-01 printed date');
    expect(limits(bought)[0]).toBe('2026-03-02 sealed, keeps 1 day from receipt');
  });

  test('one that is open by its first use says so too', () => {
    expect(limits({ opened: 7, used: '2026-03-05' })).toEqual(['2026-03-12 opened 5 Mar 2026, keeps 7 days']);
    expect(limits({ opened: 7, used: '2026-03-05' }, '2026-03-04')).toEqual([]);
  });

  test('of a batch that is limited by its parts, Use by is the earliest of these', () => {
    const made = { lot: { useBy: '2026-03-03' }, life: { life: 9, limitedByParts: true } };
    expect(limits(made)[0]).toBe('2026-03-03 the earliest of its parts');
    expect(goodUntilReason(lotA(made), on('2026-03-01'))).toBe('the earliest of its parts');
  });

  test('there is none where it keeps, or where what bears on it can’t be read', () => {
    expect(goodUntilReason(lotA({}), on('2026-03-01'))).toBe(null);
    expect(limits({ sealed: 9, lot: { unreadable: ['Retested'] } })).toEqual([]);
  });
});

describe('the life of a batch where it stands', () => {
  const all = { life: 3, lifeCold: 10, lifeDark: 30 };
  test.each<[string, string, Case['life'], string[]]>([
    ['at room', 'Bench', all, ['2026-03-04 made 1 Mar 2026, keeps 3 days']],
    ['in the cold', 'Fridge', all, ['2026-03-11 made 1 Mar 2026, keeps 10 days (cold)']],
    ['in the dark', 'Drawer', all, ['2026-03-31 made 1 Mar 2026, keeps 30 days (dark)']],
    [
      'cold and dark has the longer',
      'Dark fridge',
      all,
      ['2026-03-31 made 1 Mar 2026, keeps 30 days (dark)'],
    ],
    [
      'cold and dark has the longer, whichever that is',
      'Dark fridge',
      { ...all, lifeDark: 4 },
      ['2026-03-11 made 1 Mar 2026, keeps 10 days (cold)'],
    ],
    [
      'cold and dark where only the dark is given',
      'Dark fridge',
      { life: 3, lifeDark: 30 },
      ['2026-03-31 made 1 Mar 2026, keeps 30 days (dark)'],
    ],
    [
      'in the dark without a life for it',
      'Drawer',
      { life: 3 },
      ['2026-03-04 made 1 Mar 2026, keeps 3 days'],
    ],
  ])('%s', (_name, where, life, expected) => {
    expect(limits({ lot: { place: where }, life: life ?? {} })).toEqual(expected);
  });
});

describe('a test of whether it is still good', () => {
  const tested = { retested: '2026-04-10', retestedUntil: '2026-06-30', retestedBy: 'R. L.' };

  test('replaces what limited it before, and says by whom', () => {
    const given = { lot: { ...tested, useBy: '2026-04-01', opened: '2026-03-05' }, sealed: 30, opened: 10 };
    expect(limits(given, '2026-04-10')).toEqual(['2026-06-30 retested 10 Apr 2026 by R. L.']);
    const { retestedBy: _, ...unsigned } = tested;
    expect(limits({ lot: unsigned }, '2026-04-10')).toEqual(['2026-06-30 retested 10 Apr 2026']);
  });

  test('is not reached before its day', () => {
    const given = { lot: { ...tested, useBy: '2026-04-01' } };
    expect(limits(given, '2026-04-09')).toEqual(['2026-04-01 printed date']);
    expect(isExpiredOn(lotA(given), on('2026-04-09'))).toBe(true);
    expect(isExpiredOn(lotA(given), on('2026-04-10'))).toBe(false);
    expect(isExpiredOn(lotA(given), on('2026-07-01'))).toBe(true);
  });

  test('leaves what begins afterwards: opening it later', () => {
    const opened = { lot: { ...tested, opened: '2026-04-11' }, opened: 14 };
    expect(limits(opened, '2026-04-30')[0]).toBe('2026-04-25 opened 11 Apr 2026, keeps 14 days');
    const same = { lot: { ...tested, opened: '2026-04-10' }, opened: 14 };
    expect(limits(same, '2026-04-30')[0]).toBe('2026-06-30 retested 10 Apr 2026 by R. L.');
  });

  test('may also shorten a life', () => {
    expect(limits({ lot: { ...tested, useBy: '2027-01-01' } }, '2026-04-10')).toEqual([
      '2026-06-30 retested 10 Apr 2026 by R. L.',
    ]);
  });

  test('with only one of its dates is ignored', () => {
    const useBy = '2026-04-01';
    expect(limits({ lot: { useBy, retested: '2026-03-20' } })).toEqual(['2026-04-01 printed date']);
    expect(limits({ lot: { useBy, retestedUntil: '2026-09-01' } })).toEqual(['2026-04-01 printed date']);
  });
});

describe(`the earliest limit wins, whatever there is (seed ${SEED})`, () => {
  const dayNumber = on('2026-03-01');
  const text = (offset: number): string => isoDay((dayNumber + offset) as typeof dayNumber);
  const maybe = (max: number) => fc.option(fc.integer({ min: 0, max }), { nil: undefined });
  const some = fc.record({
    useBy: maybe(90),
    sealed: maybe(90),
    openedLife: maybe(40),
    opened: maybe(60),
    used: maybe(60),
    isMade: fc.boolean(),
    life: maybe(40),
    lifeCold: maybe(40),
    lifeDark: maybe(40),
    where: fc.constantFrom('Bench', 'Fridge', 'Drawer', 'Dark fridge', undefined),
    retested: maybe(60),
    retestedUntil: maybe(120),
    asOf: fc.integer({ min: 0, max: 150 }),
  });

  test('as a plain computation by day numbers gives it', () => {
    let tests = 0;
    fc.assert(
      fc.property(some, (given) => {
        const { useBy, sealed, openedLife, opened, used, isMade, life, lifeCold, lifeDark, where } = given;
        const { retested, retestedUntil, asOf } = given;
        const own = lotA({
          lot: {
            ...(useBy === undefined ? {} : { useBy: text(useBy) }),
            ...(opened === undefined ? {} : { opened: text(opened) }),
            ...(where === undefined ? {} : { place: where }),
            ...(retested === undefined ? {} : { retested: text(retested) }),
            ...(retestedUntil === undefined ? {} : { retestedUntil: text(retestedUntil) }),
          },
          ...(sealed === undefined ? {} : { sealed }),
          ...(openedLife === undefined ? {} : { opened: openedLife }),
          ...(used === undefined ? {} : { used: text(used) }),
          ...(isMade
            ? {
                life: {
                  ...(life === undefined ? {} : { life }),
                  ...(lifeCold === undefined ? {} : { lifeCold }),
                  ...(lifeDark === undefined ? {} : { lifeDark }),
                },
              }
            : {}),
        });
        // Written apart, in days after 1 March: the day from which a limit runs, and the day on which it ends.
        const candidates: [number, number][] = [];
        if (useBy !== undefined) candidates.push([0, useBy]);
        if (sealed !== undefined) candidates.push([0, sealed]);
        const first = opened ?? used;
        if (first !== undefined && first <= asOf && openedLife !== undefined)
          candidates.push([first, first + openedLife]);
        if (isMade) {
          const isCold = where === 'Fridge' || where === 'Dark fridge';
          const isDark = where === 'Drawer' || where === 'Dark fridge';
          const special = [isCold ? lifeCold : undefined, isDark ? lifeDark : undefined].filter(
            (days) => days !== undefined,
          );
          const keeps = special.length > 0 ? Math.max(...special) : life;
          if (keeps !== undefined) candidates.push([0, keeps]);
        }
        const isTested = retested !== undefined && retestedUntil !== undefined && retested <= asOf;
        const standing = isTested ? candidates.filter(([since]) => since > retested) : candidates;
        if (isTested) {
          standing.push([retested, retestedUntil]);
          tests += 1;
        }
        const expected = standing.length === 0 ? null : Math.min(...standing.map(([, end]) => end));
        const day = on(text(asOf));
        const goodUntil = goodUntilOn(own, day);
        expect(goodUntil === null ? null : goodUntil - dayNumber).toBe(expected);
        expect(isExpiredOn(own, day)).toBe(expected !== null && expected < asOf);
        expect(goodUntilReason(own, day) === null).toBe(expected === null);
        expect(lifeLimitsOn(own, day)).toHaveLength(standing.length);
      }),
      runs(3000),
    );
    expect(tests).toBeGreaterThan(300);
  });
});
