import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Day } from '../../../src/core/day.ts';
import { ingredientDemands } from '../../../src/core/make-plan/ingredient-demands.ts';
import type { MakeCost } from '../../../src/core/make-plan/make-cost.ts';
import { type MakePlan, type MakePlanInput, makePlanOf } from '../../../src/core/make-plan/make-plan.ts';
import { netOfLots } from '../../../src/core/make-plan/net-of-lots.ts';
import { readyDaysOf } from '../../../src/core/make-plan/ready-days.ts';
import type { KnownDemand, RecipeProblem } from '../../../src/core/planning/plan-problem.ts';

const TODAY = 20_000 as Day;
const day = (after: number) => (TODAY + after) as Day;
/** Of quantities that are rounded to millionths, each. */
const CLOSE = 6;

const paste: RecipeProblem = {
  recipe: 'Wheat paste',
  lifeDays: 3,
  limitedByParts: false,
  smallestBatch: 10,
  minutes: 30,
  readyDays: 0,
  parts: [
    { material: 'wheat starch', perUnit: 0.12 },
    { material: 'deionised water', perUnit: 0.9 },
  ],
};

function demand(after: number, quantity: number, job = `J-${after}`): KnownDemand {
  return { day: day(after), quantity, kind: 'planned', job, what: 'Lining' };
}

const input: MakePlanInput = {
  material: 'wheat paste',
  recipe: paste,
  lifeOpenedDays: null,
  demands: [],
  today: TODAY,
  minuteCost: null,
  unitCost: null,
};

const someDays = fc.integer({ min: 0, max: 40 });
const price = fc.option(fc.double({ min: 0.01, max: 500, noNaN: true }));
const someInputs: fc.Arbitrary<MakePlanInput> = fc
  .record({
    demands: fc.array(
      fc.record({
        day: someDays.map(day),
        quantity: fc.oneof(fc.integer({ min: 1, max: 40 }), fc.double({ min: 0.001, max: 40, noNaN: true })),
        kind: fc.constantFrom('planned' as const, 'planned' as const, 'not drawn' as const),
        job: fc.constantFrom('A', 'B', 'C', 'D'),
        what: fc.constantFrom('Lining', 'Mending'),
      }),
      { maxLength: 25 },
    ),
    lifeDays: fc.option(fc.integer({ min: 0, max: 12 }), { freq: 6 }),
    lifeOpenedDays: fc.option(fc.integer({ min: 0, max: 6 }), { freq: 2 }),
    smallestBatch: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 80 })),
    minutes: fc.integer({ min: 0, max: 90 }),
    readyDays: fc.constantFrom(0, 0, 0, 1, 2, 3),
    minuteCost: price,
    unitCost: price,
  })
  .map(({ lifeDays, smallestBatch, minutes, readyDays, ...more }) => ({
    ...input,
    ...more,
    recipe: { ...paste, lifeDays, smallestBatch, minutes, readyDays },
  }));

function hold(check: (given: MakePlanInput, plan: MakePlan) => void): void {
  fc.assert(
    fc.property(someInputs, (given) => check(given, makePlanOf(given))),
    { numRuns: 1000 },
  );
}

function sum(values: readonly { readonly quantity: number }[]): number {
  return values.reduce((total, { quantity }) => total + quantity, 0);
}

/** What is needed for a job's treatment on a day, all such needs together. */
function totals(
  parts: readonly {
    readonly day: Day;
    readonly job: string;
    readonly what: string;
    readonly quantity: number;
  }[],
): Map<string, number> {
  const found = new Map<string, number>();
  for (const part of parts) {
    const key = `${part.day} ${part.job} ${part.what}`;
    found.set(key, (found.get(key) ?? 0) + part.quantity);
  }
  return found;
}

const goesOffFirst = ({ recipe }: MakePlanInput) =>
  recipe.lifeDays !== null && recipe.lifeDays < recipe.readyDays;

describe('properties', () => {
  test('every need is served on its day, or as soon as something is ready; or nothing ever could be', () => {
    hold((given, plan) => {
      const readyOn = day(given.recipe.readyDays);
      const due = given.demands.map((need) => ({ ...need, day: Math.max(need.day, readyOn) as Day }));
      const servings = plan.batches.flatMap((batch) => batch.servings);
      if (goesOffFirst(given)) {
        expect(servings).toEqual([]);
        expect(sum(plan.unserved)).toBeCloseTo(sum(due), CLOSE - 2);
        expect(plan.weekly.unserved).toEqual(plan.forEachJob.unserved);
        expect(new Set(plan.weekly.unserved)).toEqual(new Set(due.map((need) => need.day)));
        return;
      }
      const served = totals(servings);
      const needed = totals(due);
      expect([...served.keys()].toSorted()).toEqual([...needed.keys()].toSorted());
      for (const [key, quantity] of needed) expect(served.get(key)).toBeCloseTo(quantity, CLOSE - 2);
      const late = given.demands.filter((need) => need.day < readyOn);
      expect(totals(plan.late).size).toBe(totals(late).size);
      expect(sum(plan.late)).toBeCloseTo(sum(late), CLOSE - 2);
      expect(plan.late.every((serving) => serving.readyOn === readyOn)).toBe(true);
      expect(plan.unserved).toEqual([]);
    });
  });

  test('nothing is made before today, or served before it is ready, too old, or opened too long ago', () => {
    hold((given, { batches }) => {
      const { readyDays, lifeDays } = given.recipe;
      for (const { makeOn, readyOn, goodUntil, servings } of batches) {
        expect(makeOn).toBeGreaterThanOrEqual(TODAY);
        expect(readyOn).toBe(makeOn + readyDays);
        const opened = servings[0]?.day ?? Number.NaN;
        for (const serving of servings) {
          expect(serving.day).toBeGreaterThanOrEqual(readyOn);
          expect(serving.day).toBeLessThanOrEqual(goodUntil ?? Number.POSITIVE_INFINITY);
          if (lifeDays !== null) expect(serving.day - makeOn).toBeLessThanOrEqual(lifeDays);
          if (given.lifeOpenedDays !== null) {
            expect(serving.day - opened).toBeLessThanOrEqual(given.lifeOpenedDays);
          }
        }
        expect(goodUntil === null).toBe(lifeDays === null && given.lifeOpenedDays === null);
      }
      const made = batches.map((batch) => batch.makeOn);
      expect(made).toEqual(made.toSorted((a, b) => a - b));
    });
  });

  test('a batch is at least the smallest, and larger only where it is needed; what nobody needs is waste', () => {
    hold(({ recipe: { smallestBatch, minutes } }, { batches, cost }) => {
      let waste = 0;
      for (const batch of batches) {
        expect(batch.servings.length).toBeGreaterThan(0);
        expect(batch.quantity).toBeGreaterThanOrEqual(smallestBatch);
        expect(batch.waste).toBeCloseTo(batch.quantity - sum(batch.servings), CLOSE);
        if (batch.quantity > smallestBatch) expect(batch.waste).toBe(0);
        waste += batch.waste;
      }
      expect(cost.batches).toBe(batches.length);
      expect(cost.minutes).toBe(batches.length * minutes);
      expect(cost.waste).toBeCloseTo(waste, CLOSE);
    });
  });

  test('cost is what its minutes and its waste cost', () => {
    hold((given, plan) => {
      for (const cost of [plan.cost, plan.forEachJob.cost, plan.weekly.cost]) {
        if (given.minuteCost === null) expect(cost.effort).toBeNull();
        else expect(cost.effort).toBeCloseTo(cost.minutes * given.minuteCost, CLOSE - 1);
        if (given.unitCost === null) expect(cost.wasteCost).toBeNull();
        else expect(cost.wasteCost).toBeCloseTo(cost.waste * given.unitCost, CLOSE - 1);
      }
    });
  });

  test('no other way that serves everything is better', () => {
    hold((given, { cost, forEachJob, weekly }) => {
      for (const other of [forEachJob, weekly].filter(({ unserved }) => unserved.length === 0)) {
        expect(worse(cost, other.cost, given)).toBe(false);
      }
    });
  });

  test('with the plan’s batches as lots, drawn in draw order, nothing is short', () => {
    hold((given, { batches, unserved }) => {
      if (unserved.length > 0) return;
      const lots = batches.map(({ readyOn, quantity, makeOn }, index) => ({
        lot: `B-${index}`,
        quantity,
        from: readyOn,
        goodUntil: given.recipe.lifeDays === null ? null : ((makeOn + given.recipe.lifeDays) as Day),
        lifeOpenedDays: given.lifeOpenedDays,
        unitWorth: null,
      }));
      const readyOn = day(given.recipe.readyDays);
      const due = given.demands.map((need) => ({ ...need, day: Math.max(need.day, readyOn) as Day }));
      expect(sum(netOfLots(lots, due))).toBeCloseTo(0, CLOSE - 2);
    });
  });

  test('prices scaled together scale the cost and leave the batches', () => {
    fc.assert(
      fc.property(someInputs, fc.integer({ min: 2, max: 50 }), (given, times) => {
        const scaled = (value: number | null) => (value === null ? null : value * times);
        const plan = makePlanOf(given);
        const dearer = makePlanOf({
          ...given,
          minuteCost: scaled(given.minuteCost),
          unitCost: scaled(given.unitCost),
        });
        expect(dearer.batches).toEqual(plan.batches);
        for (const figure of ['effort', 'wasteCost'] as const) {
          const before = scaled(plan.cost[figure]);
          if (before === null) expect(dearer.cost[figure]).toBeNull();
          else expect(dearer.cost[figure]).toBeCloseTo(before, 3);
        }
      }),
    );
  });

  test('it can be handed to another thread and back', () => {
    hold((given, plan) => {
      expect(makePlanOf(structuredClone(given))).toEqual(plan);
      expect(structuredClone(plan)).toEqual(plan);
    });
  });

  test('the batches take of each part what the recipe says, on the day they are made', () => {
    hold((given, plan) => {
      const takes = ingredientDemands(plan, given.recipe);
      expect(takes.length).toBe(plan.batches.length * paste.parts.length);
      for (const part of paste.parts) {
        const ofPart = takes.filter(({ material }) => material === part.material);
        expect(ofPart.map((take) => take.day)).toEqual(plan.batches.map((batch) => batch.makeOn));
        expect(ofPart.map((take) => take.job)).toEqual(plan.batches.map((batch) => batch.servings[0]?.job));
        expect(sum(ofPart)).toBeCloseTo(sum(plan.batches) * part.perUnit, CLOSE - 2);
      }
    });
  });
});

/** Whether a cost is worse than another: by money where both sorts are priced, else by waste and then by batches. */
function worse(cost: MakeCost, other: MakeCost, { minuteCost, unitCost }: MakePlanInput): boolean {
  if (minuteCost !== null && unitCost !== null) {
    const [mine, its] = [cost, other].map(({ effort, wasteCost }) => (effort ?? 0) + (wasteCost ?? 0));
    return (mine ?? 0) > (its ?? 0) * (1 + 1e-9) + 1e-5;
  }
  return cost.waste > other.waste || (cost.waste === other.waste && cost.batches > other.batches);
}

describe('examples', () => {
  const days = ({ batches }: MakePlan) => batches.map(({ makeOn, quantity }) => [makeOn - TODAY, quantity]);

  test('one batch for the days that it keeps, made as late as can be', () => {
    const demands = [demand(2, 8), demand(4, 7), demand(5, 5), demand(9, 12)];
    expect(makePlanOf({ ...input, demands })).toEqual({
      material: 'wheat paste',
      recipe: 'Wheat paste',
      batches: [
        {
          makeOn: day(2),
          readyOn: day(2),
          goodUntil: day(5),
          quantity: 20,
          servings: [
            { day: day(2), job: 'J-2', what: 'Lining', quantity: 8 },
            { day: day(4), job: 'J-4', what: 'Lining', quantity: 7 },
            { day: day(5), job: 'J-5', what: 'Lining', quantity: 5 },
          ],
          waste: 0,
        },
        {
          makeOn: day(9),
          readyOn: day(9),
          goodUntil: day(12),
          quantity: 12,
          servings: [{ day: day(9), job: 'J-9', what: 'Lining', quantity: 12 }],
          waste: 0,
        },
      ],
      cost: { batches: 2, minutes: 60, effort: null, waste: 0, wasteCost: null },
      forEachJob: {
        cost: { batches: 4, minutes: 120, effort: null, waste: 10, wasteCost: null },
        unserved: [],
      },
      // Made on day 0 it has gone off by day 4.
      weekly: {
        cost: { batches: 2, minutes: 60, effort: null, waste: 2, wasteCost: null },
        unserved: [day(4), day(5)],
      },
      late: [],
      unserved: [],
    });
  });

  test('a need of one job on one day is one batch, whatever its treatments', () => {
    const demands = [demand(1, 6, 'A'), { ...demand(1, 6, 'a'), what: 'Mending' }, demand(1, 6, 'B')];
    const { forEachJob } = makePlanOf({ ...input, demands });
    expect(forEachJob.cost).toMatchObject({ batches: 2, waste: 4 });
  });

  test('a fourth batch saves waste, unless bench time is dearer than what is thrown away', () => {
    const demands = [demand(1, 4), demand(2, 6), demand(3, 1), demand(4, 1), demand(5, 3), demand(6, 3)];
    const recipe = { ...paste, lifeDays: 1, smallestBatch: 3 };
    const less = makePlanOf({ ...input, demands, recipe, minuteCost: 1, unitCost: 100 });
    expect(days(less)).toEqual([
      [1, 4],
      [2, 7],
      [4, 4],
      [6, 3],
    ]);
    expect(less.cost).toEqual({ batches: 4, minutes: 120, effort: 120, waste: 0, wasteCost: 0 });
    const fewer = makePlanOf({ ...input, demands, recipe, minuteCost: 1, unitCost: 2 });
    expect(fewer.cost).toEqual({ batches: 3, minutes: 90, effort: 90, waste: 1, wasteCost: 2 });
    expect(makePlanOf({ ...input, demands, recipe, unitCost: 2 }).cost).toMatchObject({
      batches: 4,
      wasteCost: 0,
    });
    expect(makePlanOf({ ...input, demands, recipe, minuteCost: 1 }).cost).toMatchObject({
      batches: 4,
      effort: 120,
    });
  });

  test('what stands two days before it is ready is begun two days before; what is too late is begun today', () => {
    const recipe = { ...paste, readyDays: 2, lifeDays: 5 };
    const plan = makePlanOf({ ...input, recipe, demands: [demand(9, 12), demand(1, 12), demand(2, 3)] });
    expect(days(plan)).toEqual([
      [0, 15],
      [7, 12],
    ]);
    expect(plan.late).toEqual([{ ...serving(1, 12), readyOn: day(2) }]);
    expect(plan.batches[0]?.servings).toEqual([{ ...serving(1, 12), day: day(2) }, serving(2, 3)]);
  });

  test('a week’s batch that takes two days serves the seven days from then on', () => {
    const recipe = { ...paste, readyDays: 2, lifeDays: 8, smallestBatch: 0 };
    const demands = [demand(8, 1), demand(9, 1), demand(15, 1), demand(16, 1)];
    const { weekly } = makePlanOf({ ...input, recipe, demands });
    expect(weekly.unserved).toEqual([]);
    expect(weekly.cost.batches).toBe(3);
  });

  test('what keeps only a day once it is opened is made again', () => {
    const demands = [demand(0, 12), demand(1, 12), demand(2, 12)];
    expect(days(makePlanOf({ ...input, demands, lifeOpenedDays: 1 }))).toEqual([
      [0, 12],
      [1, 24],
    ]);
  });

  test('what goes off before it is ready is never made', () => {
    const plan = makePlanOf({
      ...input,
      recipe: { ...paste, lifeDays: 0, readyDays: 1 },
      demands: [demand(4, 5)],
    });
    expect(plan).toMatchObject({ batches: [], late: [], unserved: [serving(4, 5)] });
    expect(plan.weekly).toEqual({ cost: plan.cost, unserved: [day(4)] });
  });

  test('a part that a recipe names twice is taken once, together', () => {
    const parts = [...paste.parts, { material: 'Deionised water', perUnit: 0.1 }];
    const plan = makePlanOf({ ...input, demands: [demand(3, 20)] });
    expect(ingredientDemands(plan, { recipe: 'Wheat paste', parts })).toEqual([
      {
        material: 'wheat starch',
        day: day(3),
        quantity: 2.4,
        kind: 'planned',
        job: 'J-3',
        what: 'Wheat paste',
      },
      {
        material: 'deionised water',
        day: day(3),
        quantity: 20,
        kind: 'planned',
        job: 'J-3',
        what: 'Wheat paste',
      },
    ]);
  });

  test('ready within a working day of eight hours is ready on the day', () => {
    expect([0, 1, 8, 8.5, 24, 25, 48, 72].map(readyDaysOf)).toEqual([0, 0, 0, 1, 1, 2, 2, 3]);
  });

  function serving(after: number, quantity: number) {
    return { day: day(after), job: `J-${after}`, what: 'Lining', quantity };
  }
});
