import { describe, expect, test } from 'vitest';
import { isoDay } from '../../src/core/day.ts';
import { goodUntilOn, goodUntilReason } from '../../src/core/life.ts';
import { lot, material, type PlainLot, place, recipe } from './helpers/stock-records.ts';
import { account, ledgerOf, on } from './helpers/studio-of.ts';

/**
 * How long things keep by what others print, against the last day that the program gives. The calendar here is
 * JavaScript's own, in universal time. How each source was read stands beside it; of web pages “read” means the
 * opening part with the figures.
 */

/** The day so many weeks or calendar months after another, by JavaScript's calendar. */
function later(day: string, { weeks = 0, months = 0 }: { weeks?: number; months?: number }): string {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  return new Date(Date.UTC(year, month - 1 + months, date + 7 * weeks)).toISOString().slice(0, 10);
}

function kept(more: {
  readonly life?: Parameters<typeof recipe>[3];
  readonly opened?: number;
  readonly lot?: PlainLot;
}) {
  const ledger = ledgerOf({
    materials: [material('kept', 'g', { lifeOpenedDays: more.opened ?? null })],
    lots: [
      lot('A', 'kept', '2026-03-02', 500, {
        ...(more.life === undefined ? {} : { recipe: 'R' }),
        ...more.lot,
      }),
    ],
    places: [place('Fridge', true), place('Room')],
    recipes: more.life === undefined ? [] : [recipe('R', 'kept', 500, more.life)],
  });
  const own = account(ledger, 'A');
  const goodUntil = goodUntilOn(own, on('2026-03-31'));
  return {
    until: goodUntil === null ? null : isoDay(goodUntil),
    because: goodUntilReason(own, on('2026-03-31')),
  };
}

const MADE = '2026-03-02';

describe('buffers made here', () => {
  // “Replace after 5–6 weeks”: potassium hydrogen phthalate 0.05 mol/kg, Vogel, 5th edition; read second-hand, in a
  // forum that quotes it.
  test.each([5, 6])(
    'phthalate that is replaced after %i weeks is good until that day of the week',
    (weeks) => {
      const { until, because } = kept({ life: { life: 7 * weeks } });
      expect(until).toBe(later(MADE, { weeks }));
      expect(because).toBe(`made 2 Mar 2026, keeps ${7 * weeks} days`);
    },
  );

  // Opened: 3–6 months for pH 4 and 7, about one month for pH 10: common practice, no source.
  test('an opened bottle of pH 10 is done before pH 4 of the same day', () => {
    const bottle = { opened: MADE };
    const ten = kept({ opened: 30, lot: bottle });
    const four = kept({ opened: 90, lot: bottle });
    expect(ten.until).toBe('2026-04-01');
    expect(ten.until?.localeCompare(later(MADE, { months: 1 }))).toBeLessThanOrEqual(0);
    expect(four.until?.localeCompare(later(MADE, { months: 3 }))).toBeLessThanOrEqual(0);
    expect(String(four.until) > String(ten.until)).toBe(true);
  });
});

describe('wheat starch paste', () => {
  const fridge = { place: 'Fridge' };

  // 20 days refrigerated “without losing tack”: Abbey Newsletter 19(5), 1995; read. 2 March and 20 days are counted
  // here on a paper calendar.
  test('keeps 20 days in the cold by one institution, and 1 day outside where the recipe says so', () => {
    const life = { life: 1, lifeCold: 20 };
    expect(kept({ life, lot: fridge })).toEqual({
      until: '2026-03-22',
      because: 'made 2 Mar 2026, keeps 20 days (cold)',
    });
    expect(kept({ life, lot: { place: 'Room' } }).until).toBe('2026-03-03');
  });

  // “About three days when refrigerated”: a university library's page; read.
  test('keeps about three days by another', () => {
    expect(kept({ life: { lifeCold: 3 }, lot: fridge }).until).toBe('2026-03-05');
  });

  // One to two weeks, in the refrigerator or not: a bookbinder's page; read.
  test.each([1, 2])('keeps %i weeks, cold or not, by a bookbinder', (weeks) => {
    const life = { life: 7 * weeks };
    expect(kept({ life, lot: fridge }).until).toBe(later(MADE, { weeks }));
    expect(kept({ life }).until).toBe(later(MADE, { weeks }));
  });
});

describe('hydrogen peroxide of 3 %', () => {
  // Sealed about 3 years, opened 1–6 months: two popular web pages; read.
  test.each([
    [30, 1],
    [180, 6],
  ])('opened, keeps %i days, which is no longer than %i calendar months', (days, months) => {
    const { until, because } = kept({
      opened: days,
      lot: { opened: MADE, useBy: later(MADE, { months: 36 }) },
    });
    expect(String(until) <= later(MADE, { months })).toBe(true);
    expect(because).toBe(`opened 2 Mar 2026, keeps ${days} days`);
  });
});
