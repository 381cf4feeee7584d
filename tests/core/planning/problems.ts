import fc from 'fast-check';
import type { Day } from '../../../src/core/day.ts';
import type {
  KnownDemand,
  LotSupply,
  MaterialProblem,
  PlanProblem,
  RecipeProblem,
} from '../../../src/core/planning/plan-problem.ts';

export const TODAY = 20_000 as Day;

/** A material of which nothing is known, used or kept, unless the test says otherwise. */
export function material(name: string, more: Partial<MaterialProblem> = {}): MaterialProblem {
  return {
    material: name,
    unit: 'g',
    inPieces: false,
    daily: Array.from({ length: 90 }, () => 0),
    lots: [],
    arrivals: [],
    demands: [],
    lifeSealedDays: null,
    lifeOpenedDays: null,
    keepAtLeast: 0,
    keepAtMost: null,
    servicePercent: null,
    supplier: null,
    leadDays: 0,
    leadSpreadDays: 0,
    recipe: null,
    offers: [],
    unitCost: null,
    plain: { level: 0, suggestedOrder: 0, onOrder: 0, usable: 0 },
    ...more,
  };
}

export function recipe(parts: RecipeProblem['parts'], more: Partial<RecipeProblem> = {}): RecipeProblem {
  return {
    recipe: 'by hand',
    lifeDays: null,
    limitedByParts: false,
    smallestBatch: 0,
    minutes: 30,
    readyDays: 0,
    parts,
    ...more,
  };
}

export function problem(materials: readonly MaterialProblem[], more: Partial<PlanProblem> = {}): PlanProblem {
  return {
    today: TODAY,
    until: (TODAY + 60) as Day,
    reviewDays: 7,
    coverDays: 30,
    minuteCost: 50,
    serviceMeans: 'chance of no shortage',
    holdingPercent: 20,
    materials,
    suppliers: [],
    jobs: [],
    ...more,
  };
}

export function demand(after: number, quantity: number, more: Partial<KnownDemand> = {}): KnownDemand {
  return { day: (TODAY + after) as Day, quantity, kind: 'planned', job: 'J1', what: 'mending', ...more };
}

export function lot(name: string, quantity: number, more: Partial<LotSupply> = {}): LotSupply {
  return { lot: name, quantity, from: TODAY, goodUntil: null, lifeOpenedDays: null, unitWorth: 10, ...more };
}

const quantities = fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10);
const demands = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 55 }), quantities), { maxLength: 8 })
  .map((all) => all.toSorted((a, b) => a[0] - b[0]).map(([after, quantity]) => demand(after, quantity)));
const lives = fc.option(fc.integer({ min: 0, max: 20 }), { nil: null });
const lots = (prefix: string) =>
  fc
    .array(fc.tuple(quantities, fc.option(fc.integer({ min: 0, max: 70 }), { nil: null })), { maxLength: 3 })
    .map((all) =>
      all
        .toSorted((a, b) => (a[1] ?? 1e9) - (b[1] ?? 1e9))
        .map(([quantity, keeps], place) =>
          lot(`${prefix}${place}`, quantity, { goodUntil: keeps === null ? null : ((TODAY + keeps) as Day) }),
        ),
    );

/** A product made of a preparation and a powder, the preparation made of the powder too. */
export const chains: fc.Arbitrary<PlanProblem> = fc
  .record({
    product: demands,
    preparation: demands,
    powder: demands,
    lots: fc.tuple(lots('A'), lots('B'), lots('C')),
    lives: fc.tuple(lives, lives),
    least: fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 })),
    ready: fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 })),
    used: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 90, maxLength: 120 }),
    level: fc.option(fc.integer({ min: 50, max: 99 }), { nil: null }),
  })
  .map((some) => {
    const usableOf = (all: readonly LotSupply[]): number => all.reduce((sum, each) => sum + each.quantity, 0);
    const [ofProduct, ofPreparation, ofPowder] = some.lots;
    return problem([
      material('product', {
        demands: some.product,
        lots: ofProduct,
        recipe: recipe(
          [
            { material: 'preparation', perUnit: 0.5 },
            { material: 'powder', perUnit: 0.1 },
          ],
          { lifeDays: some.lives[0], smallestBatch: some.least[0], readyDays: some.ready[0] },
        ),
        unitCost: 3,
      }),
      material('powder', {
        demands: some.powder,
        lots: ofPowder,
        daily: some.used,
        servicePercent: some.level,
        leadDays: 6,
        leadSpreadDays: 1,
        plain: { level: 0, suggestedOrder: 0, onOrder: 0, usable: usableOf(ofPowder) },
        unitCost: 2,
      }),
      material('preparation', {
        demands: some.preparation,
        lots: ofPreparation,
        recipe: recipe([{ material: 'powder', perUnit: 0.2 }], {
          lifeDays: some.lives[1],
          smallestBatch: some.least[1],
          readyDays: some.ready[1],
        }),
        unitCost: 4,
      }),
    ]);
  });
