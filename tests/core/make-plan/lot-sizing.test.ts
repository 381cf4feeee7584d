import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Day } from '../../../src/core/day.ts';
import { type LotSizes, type LotSizingProblem, sizeLots } from '../../../src/core/make-plan/lot-sizing.ts';
import { type PlainFigures, type PlainProblem, plainSearch } from './helpers/plain-search.ts';

const FIRST = 20_000 as Day;

/** The problem with its units and days made finer or coarser; what a unit costs goes with it. */
function problemOf(plain: PlainProblem, unit = 1, sameSetUp = false): LotSizingProblem {
  const quantities = (value: number) => value * unit;
  const dearest = Math.max(...plain.setUps);
  return {
    firstDay: FIRST,
    needs: plain.needs.map((need, day) => ({ day: (FIRST + day) as Day, quantity: quantities(need) })),
    setUpCost: sameSetUp ? dearest : (day) => plain.setUps[day - FIRST] ?? Number.NaN,
    wasteCost: plain.waste / unit,
    holdingCost: plain.holding / unit,
    readyDays: plain.ready,
    lifeDays: plain.life,
    smallestBatch: quantities(plain.smallest),
    largestBatch: plain.largest === null ? null : quantities(plain.largest),
  };
}

/** The figures of sized lots, worked out from nothing but their days, quantities and points. */
function figuresOf(sizes: LotSizes, plain: PlainProblem, unit = 1): PlainFigures {
  const days = plain.needs.flatMap((need, day) => Array.from({ length: need }, () => day));
  let [cost, waste, age] = [0, 0, 0];
  for (const { makeOn, quantity, from, upTo } of sizes.batches) {
    const made = makeOn - FIRST;
    const used = days.slice(Math.round(from / unit), Math.round(upTo / unit));
    const ages = used.reduce((sum, day) => sum + day - made, 0);
    const wasted = Math.round((quantity - (upTo - from)) / unit);
    cost += (plain.setUps[made] ?? Number.NaN) + wasted * plain.waste;
    cost += plain.holding * (ages - plain.ready * used.length);
    waste += wasted;
    age += ages;
  }
  return { cost, batches: sizes.batches.length, waste, age };
}

/** Everything is served once, in the order of the days, by batches that are ready, fresh and of the right size. */
function expectKept({ batches }: LotSizes, plain: PlainProblem, unit: number): void {
  const days = plain.needs.flatMap((need, day) => Array.from({ length: need }, () => day));
  expect(batches.map(({ from }) => from)).toEqual([0, ...batches.map(({ upTo }) => upTo)].slice(0, -1));
  expect(Math.round((batches.at(-1)?.upTo ?? 0) / unit)).toBe(days.length);
  const made = batches.map(({ makeOn }) => makeOn - FIRST);
  expect(made).toEqual(made.toSorted((a, b) => a - b));
  for (const [index, { quantity, from, upTo }] of batches.entries()) {
    const madeOn = made[index] ?? Number.NaN;
    const used = days.slice(Math.round(from / unit), Math.round(upTo / unit));
    expect(madeOn).toBeGreaterThanOrEqual(0);
    expect(used.at(0)).toBeGreaterThanOrEqual(madeOn + plain.ready);
    expect(used.at(-1)).toBeLessThanOrEqual(madeOn + (plain.life ?? Number.POSITIVE_INFINITY));
    const units = Math.round(quantity / unit);
    expect(units).toBe(Math.max(plain.smallest, used.length));
    expect(units).toBeLessThanOrEqual(plain.largest ?? Number.POSITIVE_INFINITY);
  }
}

const limits = {
  waste: fc.integer({ min: 0, max: 6 }),
  ready: fc.constantFrom(0, 0, 0, 1, 2),
  life: fc.option(fc.integer({ min: 0, max: 4 }), { freq: 5 }),
  smallest: fc.constantFrom(0, 2, 3, 4, 5, 6),
};
const fewDays = 6;
const needs = fc.array(fc.constantFrom(0, 0, 1, 1, 2, 3, 4), { minLength: 1, maxLength: fewDays });
const alike = fc.integer({ min: 0, max: 12 }).map((cost) => Array.from({ length: fewDays }, () => cost));
const different = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: fewDays, maxLength: fewDays });

/** Needs no more than can be searched, none before the first batch is ready. */
function searchable(plain: PlainProblem, most: number): PlainProblem {
  let left = most;
  const cut = plain.needs.map((need, day) => {
    const kept = day < plain.ready ? 0 : Math.min(need, left);
    left -= kept;
    return kept;
  });
  return { ...plain, needs: cut };
}

function expectBest(plain: PlainProblem, sameSetUp: boolean, unit: number): void {
  const sizes = sizeLots(problemOf(plain, unit, sameSetUp));
  const best = plainSearch(plain);
  expect(sizes === null).toBe(best === null);
  if (sizes === null) return;
  expectKept(sizes, plain, unit);
  expect(figuresOf(sizes, plain, unit)).toEqual(best);
  expect(sizes.cost).toBeCloseTo(best?.cost ?? Number.NaN, 6);
}

describe('against trying everything', () => {
  test('the product’s own case: all days alike, nothing for holding', () => {
    fc.assert(
      fc.property(
        fc.record({
          ...limits,
          needs,
          setUps: alike,
          holding: fc.constant(0),
          largest: fc.constant(null),
        }),
        fc.constantFrom(1, 0.25, 1 / 3, 12.5),
        (plain, unit) => expectBest(searchable(plain, 9), true, unit === 1 / 3 ? 0.333333 : unit),
      ),
      { numRuns: 4000 },
    );
  });

  test('set-ups that differ by day, and holding', () => {
    fc.assert(
      fc.property(
        fc.record({
          ...limits,
          needs,
          setUps: different,
          holding: fc.integer({ min: 0, max: 2 }),
          largest: fc.constant(null),
        }),
        (plain) => expectBest(searchable(plain, 8), false, 1),
      ),
      { numRuns: 3000 },
    );
  });

  test('a largest batch, too', () => {
    fc.assert(
      fc.property(
        fc.record({
          ...limits,
          needs,
          setUps: fc.oneof(alike, different),
          holding: fc.integer({ min: 0, max: 2 }),
          largest: fc.integer({ min: 1, max: 6 }),
        }),
        (plain) => {
          const cut = searchable(plain, 8);
          if (cut.largest === null || cut.largest >= cut.smallest) expectBest(cut, false, 1);
          else expect(sizeLots(problemOf(cut)) === null).toBe(cut.needs.some((need) => need > 0));
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('many batches of the smallest size one after the other, which end within days', () => {
    const many = 8;
    fc.assert(
      fc.property(
        fc.record({
          waste: fc.integer({ min: 1, max: 6 }),
          ready: fc.constant(0),
          life: fc.integer({ min: 1, max: 2 }),
          smallest: fc.integer({ min: 3, max: 7 }),
          needs: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 5, maxLength: many }),
          setUps: fc.oneof(
            fc.integer({ min: 0, max: 12 }).map((cost) => Array.from({ length: many }, () => cost)),
            fc.array(fc.constantFrom(0, 1, 2, 20), { minLength: many, maxLength: many }),
          ),
          holding: fc.constantFrom(0, 0, 1, 2),
          largest: fc.constant(null),
        }),
        (plain) =>
          expectBest(searchable(plain, 24), plain.holding === 0 && new Set(plain.setUps).size === 1, 1),
      ),
      { numRuns: 1500 },
    );
  });

  test('a lattice three times as fine finds nothing cheaper', () => {
    fc.assert(
      fc.property(
        fc.record({
          waste: fc.integer({ min: 1, max: 6 }),
          ready: fc.constant(0),
          life: fc.integer({ min: 0, max: 2 }),
          smallest: fc.integer({ min: 1, max: 3 }),
          needs: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 1, maxLength: 4 }),
          setUps: different,
          holding: fc.integer({ min: 0, max: 1 }),
          largest: fc.option(fc.constant(3)),
        }),
        (plain) => {
          const coarse = searchable(plain, 4);
          const fine: PlainProblem = {
            ...coarse,
            needs: coarse.needs.map((need) => 3 * need),
            smallest: 3 * coarse.smallest,
            largest: coarse.largest === null ? null : 3 * coarse.largest,
            setUps: coarse.setUps.map((cost) => 3 * cost),
          };
          expect(sizeLots(problemOf(coarse))?.cost).toBeCloseTo(
            (plainSearch(fine)?.cost ?? Number.NaN) / 3,
            6,
          );
        },
      ),
      { numRuns: 400 },
    );
  });
});

describe('examples', () => {
  const plain: PlainProblem = {
    needs: [4, 12, 4],
    setUps: [3, 3, 3],
    waste: 1,
    holding: 0,
    ready: 0,
    life: 1,
    smallest: 10,
    largest: null,
  };

  test('a batch may serve a part of a need and the next one the rest, so that nothing is wasted', () => {
    expect(sizeLots(problemOf(plain))).toEqual({
      cost: 6,
      batches: [
        { makeOn: FIRST, quantity: 10, from: 0, upTo: 10 },
        { makeOn: FIRST + 1, quantity: 10, from: 10, upTo: 20 },
      ],
    });
  });

  test('an earlier day may be cheaper; the latest among equals', () => {
    const once = { ...plain, needs: [0, 0, 12], life: null };
    const makeOn = (setUps: readonly number[], holding: number) =>
      sizeLots(problemOf({ ...once, setUps, holding }))?.batches.map((batch) => batch.makeOn - FIRST);
    expect(makeOn([3, 9, 9], 0)).toEqual([0]);
    expect(makeOn([3, 3, 9], 0)).toEqual([1]);
    expect(makeOn([3, 9, 27], 1)).toEqual([1]);
    expect(makeOn([9, 9, 9], 0)).toEqual([2]);
  });

  test('what can’t be served has no plan', () => {
    expect(sizeLots({ ...problemOf(plain), readyDays: 1 })).toBeNull();
    expect(sizeLots({ ...problemOf({ ...plain, needs: [0, 0, 0, 5] }), readyDays: 2 })).toBeNull();
    expect(sizeLots({ ...problemOf(plain), largestBatch: 9 })).toBeNull();
    expect(sizeLots({ ...problemOf(plain), needs: [] })).toEqual({ cost: 0, batches: [] });
  });
});
