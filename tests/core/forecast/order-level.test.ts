import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forecastOf } from '../../../src/core/forecast/choose-forecast.ts';
import { leadTimeNeeds } from '../../../src/core/forecast/lead-time-needs.ts';
import {
  type OrderLevel,
  type OrderLevelProblem,
  orderLevelOf,
} from '../../../src/core/forecast/order-level.ts';
import { chanceAt } from '../../../src/core/forecast/service-levels.ts';
import { seededRandom } from '../../../src/core/seeded-random.ts';
import { factors, someUse } from './uses.ts';

type Given = Omit<OrderLevelProblem, 'forecast' | 'unit'>;

const PLAIN: Given = {
  daily: [],
  planned: [],
  undrawn: 0,
  leadDays: 14,
  leadSpreadDays: 0,
  reviewDays: 7,
  servicePercent: 95,
  serviceMeans: 'chance of no shortage',
  orderQuantity: 100,
  keepAtLeast: 0,
  plainLevel: 0,
  seed: 1,
};

function levelOf(given: Partial<Given>): OrderLevel {
  const problem = { ...PLAIN, ...given };
  return orderLevelOf({ ...problem, forecast: forecastOf(problem.daily, 'sheet'), unit: 'sheet' });
}

/** The chance of each need within some days, where each day's use is independent: by adding up day by day. */
function exactChances(dayChances: readonly number[], days: number): number[] {
  let chances = [1];
  for (let day = 0; day < days; day += 1) {
    const next = Array.from({ length: chances.length + dayChances.length - 1 }, () => 0);
    for (const [before, chance] of chances.entries()) {
      for (const [used, own] of dayChances.entries())
        next[before + used] = (next[before + used] ?? 0) + chance * own;
    }
    chances = next;
  }
  return chances;
}

const amount = fc.double({ min: 0, max: 200, noNaN: true });
const someProblem: fc.Arbitrary<Given> = fc.record({
  daily: someUse({ min: 1, max: 120 }),
  planned: fc.array(fc.oneof(fc.constant(0), amount), { maxLength: 50 }),
  undrawn: fc.oneof(fc.constant(0), amount),
  leadDays: fc.integer({ min: 0, max: 40 }),
  leadSpreadDays: fc.integer({ min: 0, max: 10 }),
  reviewDays: fc.integer({ min: 0, max: 14 }),
  servicePercent: fc.oneof(fc.constant(null), fc.double({ min: 1, max: 99.9, noNaN: true })),
  serviceMeans: fc.constantFrom('chance of no shortage', 'share served'),
  orderQuantity: fc.double({ min: 1, max: 500, noNaN: true }),
  keepAtLeast: fc.oneof(fc.constant(0), amount),
  plainLevel: amount,
  seed: fc.nat(),
});
// Each run draws some thousand samples.
const RUNS = { numRuns: 60 };

describe('properties', () => {
  test('the level is never below Keep at least nor below what is planned, and says what it is made of', () => {
    fc.assert(
      fc.property(someProblem, (problem) => {
        const level = levelOf(problem);
        const until = problem.leadDays + problem.reviewDays;
        const planned =
          problem.undrawn +
          problem.planned.slice(0, until + 1).reduce((total, quantity) => total + quantity, 0);
        expect(level.planned).toBeCloseTo(planned, 5);
        expect(level.level).toBeGreaterThanOrEqual(level.keepAtLeast - 1e-6);
        expect(level.level).toBeGreaterThanOrEqual(level.planned - 1e-6);
        expect(level.forUnplanned).toBeGreaterThanOrEqual(0);
        expect(level.level).toBeCloseTo(Math.max(level.planned + level.forUnplanned, level.keepAtLeast), 5);
        expect(structuredClone(level)).toEqual(level);
      }),
      RUNS,
    );
  });

  test('the same seed gives the same level', () => {
    fc.assert(
      fc.property(someProblem, (problem) => {
        expect(levelOf(problem)).toEqual(levelOf(structuredClone(problem)));
      }),
      RUNS,
    );
  });

  test('times as much of everything is times as much of a level', () => {
    fc.assert(
      fc.property(someProblem, factors, (problem, factor) => {
        const times = (values: readonly number[]): number[] => values.map((value) => factor * value);
        const one = levelOf(problem);
        const many = levelOf({
          ...problem,
          daily: times(problem.daily),
          planned: times(problem.planned),
          undrawn: factor * problem.undrawn,
          orderQuantity: factor * problem.orderQuantity,
          keepAtLeast: factor * problem.keepAtLeast,
          plainLevel: factor * problem.plainLevel,
        });
        const near = 1e-6 * (1 + factor) + 1e-6 * many.level;
        expect(Math.abs(many.level - factor * one.level)).toBeLessThanOrEqual(near);
        expect(Math.abs(many.forUnplanned - factor * one.forUnplanned)).toBeLessThanOrEqual(near);
        expect(many.plainChance).toBeCloseTo(one.plainChance, 6);
        expect(many.plainServed ?? 0).toBeCloseTo(one.plainServed ?? 0, 6);
      }),
      RUNS,
    );
  });

  test('a higher service level, a longer lead time and more planned never need less', () => {
    fc.assert(
      fc.property(
        someProblem,
        fc.double({ min: 1, max: 99.9, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        fc.nat({ max: 40 }),
        (problem, otherPercent, moreDays, plannedDay) => {
          const { level } = levelOf(problem);
          if (problem.servicePercent !== null && otherPercent > problem.servicePercent) {
            expect(levelOf({ ...problem, servicePercent: otherPercent }).level).toBeGreaterThanOrEqual(level);
          }
          const longer = levelOf({ ...problem, leadDays: problem.leadDays + moreDays });
          expect(longer.level).toBeGreaterThanOrEqual(level - 1e-6);
          const planned = Array.from(
            { length: Math.max(problem.planned.length, plannedDay + 1) },
            (_, day) => (problem.planned[day] ?? 0) + (day === plannedDay ? 50 : 0),
          );
          expect(levelOf({ ...problem, planned }).level).toBeGreaterThanOrEqual(level - 1e-6);
        },
      ),
      RUNS,
    );
  });

  test('each day more of lead time needs as much or more, also where another week begins', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        // So seldom used that chance alone would often give less for a day more.
        const daily = Array.from({ length: 364 }, (_, day) => (day % 40 === 0 ? 1 + (day % 17) : 0));
        const levels = [6, 7, 8, 9, 13, 14, 15, 16, 34, 35, 36].map(
          (leadDays) => levelOf({ daily, leadDays, reviewDays: 0, servicePercent: null, seed }).level,
        );
        expect(levels).toEqual(levels.toSorted((a, b) => a - b));
      }),
      RUNS,
    );
  });

  test('planning what is used anyway needs nothing more; planning less leaves the rest', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.integer({ min: 0, max: 8 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom('chance of no shortage' as const, 'share served' as const),
        (perDay, weeks, share, serviceMeans) => {
          const days = 7 * weeks;
          const level = levelOf({
            daily: Array.from({ length: 84 }, () => perDay),
            // Nothing for today, then a share of what is used on each day.
            planned: [0, ...Array.from({ length: 80 }, () => share * perDay)],
            leadDays: days,
            reviewDays: 0,
            servicePercent: 99,
            serviceMeans,
            orderQuantity: 1e-9,
          });
          expect(Math.abs(level.planned - share * perDay * days)).toBeLessThan(1e-5);
          expect(Math.abs(level.forUnplanned - (1 - share) * perDay * days)).toBeLessThan(1e-5);
        },
      ),
      RUNS,
    );
  });
});

describe('needs within a lead time, against exact chances', () => {
  const HISTORY_DAYS = 20_000;
  /** A standard error of a chance among 2000 samples is at most 0.0112: four of these. */
  const SAMPLING_ERROR = 0.045;

  test.each([
    ['a coin', [0.5, 0.5], 21],
    ['now and then one or five', [0.9, 0.06, 0, 0, 0, 0.04], 17],
    ['now and then, within a day', [0.9, 0.06, 0, 0, 0, 0.04], 1],
    ['Poisson with a mean of 0.4', [0.6703, 0.2681, 0.0536, 0.0072, 0.0008], 30],
  ])('%s: %o on each of %d days', (_name, dayChances, days) => {
    const random = seededRandom(11);
    const daily = Array.from({ length: HISTORY_DAYS }, () => {
      let rest = random();
      const used = dayChances.findIndex((chance) => {
        rest -= chance;
        return rest < 0;
      });
      return Math.max(used, 0);
    });
    const seen = dayChances.map((_, used) => daily.filter((each) => each === used).length / HISTORY_DAYS);
    const exactly = exactChances(seen, days);
    const needs = leadTimeNeeds({
      daily,
      planned: [],
      leadDays: days,
      leadSpreadDays: 0,
      reviewDays: 0,
      seed: 3,
    });
    let chance = 0;
    let largest = 0;
    for (const [need, own] of exactly.entries()) {
      chance += own;
      largest = Math.max(largest, Math.abs(chanceAt(needs, need) - chance));
    }
    expect(largest).toBeLessThan(SAMPLING_ERROR);
  });

  test('of use only on Mondays every whole week needs the same', () => {
    const daily = Array.from({ length: 84 }, (_, day) => (day % 7 === 2 ? 6 : 0));
    const needs = leadTimeNeeds({
      daily,
      planned: [],
      leadDays: 28,
      leadSpreadDays: 0,
      reviewDays: 7,
      seed: 5,
    });
    expect(new Set(needs)).toEqual(new Set([30]));
  });

  test('the mean need is the mean use times the days, for every day of the history counts alike', () => {
    // All was used on the last day: a bootstrap that favours the middle would see less of it.
    const daily = Array.from({ length: 70 }, (_, day) => (day === 69 ? 70 : 0));
    const { level } = levelOf({ daily, leadDays: 21, reviewDays: 7, servicePercent: null });
    // Of 2000 needs, each the sum of 4 weeks with 70 in one of 10: the standard error is 0.94.
    expect(Math.abs(level - 28)).toBeLessThan(4);
  });

  test('the lead time is normal, in whole days, and none below 0', () => {
    // One a day: the need is the number of days.
    const days = leadTimeNeeds({
      daily: [1],
      planned: [],
      leadDays: 20,
      leadSpreadDays: 5,
      reviewDays: 3,
      seed: 9,
    });
    expect(days.every((each) => Number.isInteger(Math.round(each * 1e6) / 1e6))).toBe(true);
    // Φ(1) and Φ(−1), half a day further, as days are whole: from memory.
    expect(Math.abs(chanceAt(days, 28) - 0.8643)).toBeLessThan(SAMPLING_ERROR);
    expect(Math.abs(chanceAt(days, 17) - 0.1357)).toBeLessThan(SAMPLING_ERROR);
    const short = leadTimeNeeds({
      daily: [1],
      planned: [],
      leadDays: 0,
      leadSpreadDays: 5,
      reviewDays: 3,
      seed: 9,
    });
    expect(short[0]).toBe(3);
    expect(Math.abs(chanceAt(short, 3) - 0.54)).toBeLessThan(SAMPLING_ERROR);
  });

  test('in each week the larger counts of what is drawn and what is planned', () => {
    const source = { daily: [1], leadDays: 14, leadSpreadDays: 0, reviewDays: 0, seed: 2 };
    // 10 in the first week, today with it, and 2 in the second, where 7 are used; what comes later doesn't count.
    const planned = [4, 0, 6, 0, 0, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0, 50];
    expect(new Set(leadTimeNeeds({ ...source, planned }))).toEqual(new Set([17]));
    expect(new Set(leadTimeNeeds({ ...source, planned, leadDays: 15 }))).toEqual(new Set([67]));
    expect(new Set(leadTimeNeeds({ ...source, planned, leadDays: 0 }))).toEqual(new Set([4]));
  });
});

describe('examples', () => {
  test('what the log has not drawn comes on top of what will be used', () => {
    const daily = Array.from({ length: 84 }, () => 1);
    const one = levelOf({ daily });
    const more = levelOf({ daily, undrawn: 5 });
    expect([one.level, one.planned]).toEqual([21, 0]);
    expect([more.level, more.planned, more.forUnplanned]).toEqual([26, 5, 21]);
    expect(levelOf({ daily, undrawn: 5, plainLevel: 26 }).plainChance).toBe(1);
    expect(levelOf({ daily, undrawn: 5, plainLevel: 25 }).plainChance).toBe(0);
  });

  test('what has died away is not kept as if it were used', () => {
    const busy = Array.from({ length: 140 }, (_, day) => (day % 7 === 0 ? 50 : 0));
    const dead = [...busy, ...Array.from({ length: 210 }, () => 0)];
    const forecast = forecastOf(dead, 'sheet');
    expect(forecast.demandClass).toBe('died away');
    const { level, sentence } = levelOf({ daily: dead });
    expect(level).toBeLessThan(10);
    expect(sentence).toContain('As use has died away');
    expect(levelOf({ daily: busy }).level).toBe(150);
  });

  test('days on which something came back need nothing less than nothing', () => {
    const daily = Array.from({ length: 84 }, (_, day) => (day % 2 ? -3 : 3));
    expect(levelOf({ daily })).toMatchObject({ level: 0, forUnplanned: 0, planned: 0 });
  });

  test('with lumpy use the plain formula keeps less often what it promises', () => {
    // 60 on three days of a year: in 21 days one such day lies in about a sixth of all deliveries.
    const daily = Array.from({ length: 364 }, (_, day) => (day % 120 === 100 ? 60 : 0));
    const { level, plainChance } = levelOf({ daily, plainLevel: 33 });
    expect(level).toBe(60);
    expect(Math.abs(plainChance - (1 - 7 * (3 / 364)) ** 3)).toBeLessThan(0.045);
  });

  test('the plain level serves 96 % where its chance of no shortage is 68 %', () => {
    // Chopra & Meindl, Supply Chain Management, exercise 11-4, worksheet read, taken as days: 250 ± 150, 2 of them,
    // ordered at 600 by 1000; 0.95614 recomputed.
    const daily = Array.from({ length: 100 }, (_, day) => (day % 2 ? 400 : 100));
    const { plainServed } = levelOf({
      daily,
      leadDays: 2,
      reviewDays: 0,
      plainLevel: 600,
      orderQuantity: 1000,
    });
    expect(plainServed).toBeCloseTo(0.956_14, 5);
    expect(levelOf({ daily, orderQuantity: 0 }).plainServed).toBeNull();
  });

  test('no history, no lead time', () => {
    expect(levelOf({ daily: [] })).toMatchObject({ level: 0, forUnplanned: 0, planned: 0 });
    expect(levelOf({ daily: [1], leadDays: 0, reviewDays: 0 })).toMatchObject({ level: 0, forUnplanned: 0 });
    expect(levelOf({ daily: [], keepAtLeast: 4, planned: [2, 3] })).toMatchObject({ level: 5, planned: 5 });
  });

  const ONE_A_DAY = Array.from({ length: 84 }, () => 1);

  test.each<[Partial<Given>, string]>([
    [
      { daily: ONE_A_DAY, planned: [0, 0, 3], plainLevel: 20 },
      '21 sheets: 3 sheets planned within 21 days and 18 sheets for what else may be used, so that in 95 of 100 ' +
        'deliveries nothing runs out before it arrives. The plain formula says 20 sheets, which is enough in 0 of 100.',
    ],
    [
      { daily: ONE_A_DAY, serviceMeans: 'share served', orderQuantity: 20, plainLevel: 20 },
      '20 sheets: for what may be used within 21 days, so that 95 % of what is needed is there. ' +
        'The plain formula says 20 sheets, with which by its own reckoning 95 % is there.',
    ],
    [
      { daily: ONE_A_DAY, servicePercent: null, keepAtLeast: 30, plainLevel: 30 },
      '30 sheets, as Keep at least says; 21 sheets would do: for what may be used within 21 days, as much as is ' +
        'needed on average, as no service level is asked for. The plain formula says 30 sheets, which is enough in ' +
        '100 of 100.',
    ],
    [
      { planned: [0, 1234], servicePercent: 97.5 },
      '1234 sheets: for what is planned within 21 days, so that in 97.5 of 100 deliveries nothing runs out before ' +
        'it arrives.',
    ],
    [{}, 'Nothing will probably be used within 21 days: nothing needs to be kept.'],
    [
      { keepAtLeast: 1, plainLevel: 1 },
      '1 sheet, as Keep at least says; nothing will probably be used within 21 days. ' +
        'The plain formula says 1 sheet, which is enough in 100 of 100.',
    ],
  ])('the sentence of %o', (given, sentence) => {
    expect(levelOf(given).sentence).toBe(sentence);
  });
});
