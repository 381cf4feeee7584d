import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/core/day.ts';
import { makePlanOf } from '../../../src/core/make-plan/make-plan.ts';
import { netOfLots } from '../../../src/core/make-plan/net-of-lots.ts';
import type { MaterialPlan, PlanAnswer } from '../../../src/core/planning/plan-answer.ts';
import type { PlanProblem } from '../../../src/core/planning/plan-problem.ts';
import { solvePlan } from '../../../src/core/planning/solve-plan.ts';
import { chains, demand, lot, material, problem, recipe, TODAY } from './problems.ts';

function planOf({ materials }: PlanAnswer, name: string): MaterialPlan {
  const plan = materials.find((each) => each.material === name);
  if (plan === undefined) throw new Error(`no plan for ${name}`);
  return plan;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const madeOf = (plan: MaterialPlan): number =>
  sum((plan.make?.batches ?? []).map(({ quantity }) => quantity));
const drawnOf = ({ projection }: MaterialPlan): number => sum(projection.days.map(({ planned }) => planned));
const missedOf = ({ projection }: MaterialPlan): number =>
  sum(projection.missed.filter(({ kind }) => kind !== 'forecast').map(({ quantity }) => quantity));
const demandOf = ({ materials }: PlanProblem, name: string): number =>
  sum((materials.find((each) => each.material === name)?.demands ?? []).map(({ quantity }) => quantity));

describe('a plan of several materials', () => {
  test('what batches take of their parts is asked of the parts, through two recipes', () => {
    fc.assert(
      fc.property(chains, (random) => {
        const answer = solvePlan(random);
        const [product, preparation, powder] = ['product', 'preparation', 'powder'].map((name) =>
          planOf(answer, name),
        );
        if (product === undefined || preparation === undefined || powder === undefined) throw new Error();
        const ofPreparation = demandOf(random, 'preparation') + 0.5 * madeOf(product);
        const ofPowder = demandOf(random, 'powder') + 0.1 * madeOf(product) + 0.2 * madeOf(preparation);
        expect(drawnOf(preparation) + missedOf(preparation)).toBeCloseTo(ofPreparation, 3);
        expect(drawnOf(powder) + missedOf(powder)).toBeCloseTo(ofPowder, 3);
      }),
      { numRuns: 300 },
    );
  });

  test('a job misses only what can’t be ready in time, or goes off before it is ready', () => {
    fc.assert(
      fc.property(chains, (random) => {
        for (const { make, projection } of solvePlan(random).materials) {
          if (make === null) continue;
          const excused = sum([...make.late, ...make.unserved].map(({ quantity }) => quantity));
          const missed = sum(projection.missed.map(({ quantity }) => quantity));
          expect(missed).toBeLessThanOrEqual(excused + 1e-4);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('the same problem gives the same plan, whatever the order of the rows, and crosses to another thread whole', () => {
    fc.assert(
      fc.property(chains, (random) => {
        const answer = solvePlan(random);
        const turned = solvePlan({ ...random, materials: random.materials.toReversed() });
        const byName = (all: PlanAnswer) =>
          all.materials.toSorted((a, b) => a.material.localeCompare(b.material));
        expect(byName(turned)).toEqual(byName(answer));
        expect(structuredClone(answer)).toEqual(answer);
        expect(solvePlan(structuredClone(random))).toEqual(answer);
      }),
      { numRuns: 60 },
    );
  });

  test('a recipe that goes round in a circle is planned once, and each part is told', () => {
    const answer = solvePlan(
      problem([
        material('first', { demands: [demand(3, 10)], recipe: recipe([{ material: 'second', perUnit: 1 }]) }),
        material('second', { recipe: recipe([{ material: 'first', perUnit: 1 }]) }),
      ]),
    );
    expect(madeOf(planOf(answer, 'first'))).toBe(10);
    expect(madeOf(planOf(answer, 'second'))).toBe(10);
    expect(missedOf(planOf(answer, 'first'))).toBe(10);
  });

  test('what keeps no longer than its parts is planned with the shorter life', () => {
    const demands = [demand(2, 5), demand(6, 5)];
    const answer = solvePlan(
      problem([
        material('mixture', {
          demands,
          recipe: recipe([{ material: 'paste', perUnit: 1 }], { lifeDays: 10, limitedByParts: true }),
        }),
        material('paste', { recipe: recipe([{ material: 'starch', perUnit: 0.2 }], { lifeDays: 3 }) }),
        material('starch', { lots: [lot('S-1', 100)] }),
      ]),
    );
    expect(planOf(answer, 'mixture').make?.batches.map(({ makeOn }) => makeOn - TODAY)).toEqual([2, 6]);
  });

  test('what is made is the plan of the dynamic programme for what the lots don’t cover', () => {
    const made = material('paste', {
      demands: [demand(1, 20), demand(3, 20), demand(9, 5, { job: 'J2' })],
      lots: [lot('P-1', 15, { goodUntil: addDays(TODAY, 2) })],
      recipe: recipe([], { lifeDays: 4, smallestBatch: 10 }),
      unitCost: 2,
    });
    const { make } = planOf(solvePlan(problem([made])), 'paste');
    const { recipe: by } = made;
    if (by === null) throw new Error('it is made');
    expect(make).toEqual(
      makePlanOf({
        material: 'paste',
        recipe: by,
        lifeOpenedDays: null,
        demands: netOfLots(made.lots, made.demands),
        today: TODAY,
        minuteCost: 50,
        unitCost: 2,
      }),
    );
    expect(make?.batches.map(({ quantity }) => quantity)).toEqual([25, 10]);
  });

  test('it tells how far it is', () => {
    const steps: number[][] = [];
    solvePlan(problem([material('a'), material('b')]), (done, all) => steps.push([done, all]));
    expect(steps).toEqual([
      [1, 2],
      [2, 2],
    ]);
  });
});

describe('what to buy', () => {
  const offers = [
    { offer: 'Offers 2', supplier: 'S', packQuantity: 10, packWords: '10 g', packPrice: 100, fromPacks: 1 },
  ];
  const suppliers = [{ supplier: 'S', leadDays: 6, minimumOrder: 0, carriage: 0, carriageFreeOver: null }];
  const bought = (more: Parameters<typeof material>[1]) =>
    material('powder', { offers, supplier: 'S', leadDays: 6, ...more });
  const needsOf = (more: Parameters<typeof material>[1]) =>
    solvePlan(problem([bought(more)], { suppliers })).needs;

  test('once that is here, no job within the time that an order takes lacks anything', () => {
    fc.assert(
      fc.property(chains, (random) => {
        const sold = {
          ...random,
          suppliers,
          materials: random.materials.map((each) =>
            each.material === 'powder' ? { ...each, offers, supplier: 'S' } : each,
          ),
        };
        const answer = solvePlan(sold);
        const need = answer.needs.find((each) => each.material === 'powder');
        const horizon = addDays(TODAY, 13);
        const arrived = solvePlan({
          ...sold,
          materials: sold.materials.map((each) =>
            each.material === 'powder' && need !== undefined
              ? { ...each, lots: [...each.lots, lot('new', need.by.at(-1)?.quantity ?? 0)] }
              : each,
          ),
        });
        const lacking = planOf(arrived, 'powder').projection.missed.filter(
          ({ job, day }) => job !== null && day <= horizon,
        );
        expect(lacking).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  test('nothing is bought while there is enough, nor where it is made here', () => {
    const plain = { level: 0, suggestedOrder: 0, onOrder: 0, usable: 500 };
    expect(needsOf({ lots: [lot('P', 500)], plain, demands: [demand(3, 20)] })).toEqual([]);
    expect(needsOf({ recipe: recipe([]), demands: [demand(3, 20)] })).toEqual([]);
  });

  test('what a job lacks is needed by its day, cumulatively, and says for whom', () => {
    const [need] = needsOf({ demands: [demand(8, 20), demand(10, 5, { job: 'J2' })] });
    expect(need?.by).toEqual([
      { day: TODAY + 8, quantity: 20, job: 'J1' },
      { day: TODAY + 10, quantity: 25, job: 'J2' },
    ]);
    expect(need?.because).toBe('J1 lacks 20 g on 12 Oct 2024.');
  });

  test('what is on its way and comes as soon as anybody could deliver is not ordered twice', () => {
    const arrivals = [{ order: 'O', line: 'l', supplier: 'S', day: addDays(TODAY, 5), quantity: 100 }];
    const plain = { level: 0, suggestedOrder: 0, onOrder: 100, usable: 0 };
    expect(needsOf({ arrivals, plain, demands: [demand(2, 20)] })).toEqual([]);
    expect(
      needsOf({
        arrivals: arrivals.map((each) => ({ ...each, quantity: 10 })),
        plain: { ...plain, onOrder: 10 },
        demands: [demand(2, 20)],
      }),
    ).toHaveLength(1);
  });

  test('what she wants to keep is bought though no use of it is known, whatever its life', () => {
    const [need] = needsOf({ keepAtLeast: 200, lifeSealedDays: 1825 });
    expect(need?.most).toBeNull();
    expect(need?.by.at(-1)?.quantity).toBeCloseTo(200, 6);
  });

  test('what goes off before it is used does not count as there, and no more is bought than is used in time', () => {
    const daily = Array.from({ length: 140 }, (_, day) => (day % 7 === 0 ? 7 : 0));
    const plain = { level: 0, suggestedOrder: 0, onOrder: 0, usable: 60 };
    const going = {
      daily,
      plain,
      lots: [lot('P', 60, { goodUntil: addDays(TODAY, 3) })],
      servicePercent: 90,
    };
    const [need] = needsOf({ ...going, lifeSealedDays: 10 });
    expect(need?.most).toBeCloseTo(10, 6);
    expect(need?.mostBecause).toBe('it keeps 10 days');
    expect(need?.by.at(-1)?.quantity).toBeCloseTo(10, 6);
    expect(needsOf({ ...going, lots: [lot('P', 60)] })).toEqual([]);
  });
});
