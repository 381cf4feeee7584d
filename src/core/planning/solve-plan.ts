import type { BuyNeed } from '../buying/basket-problem.ts';
import { DAYS_PER_WEEK, type Day } from '../day.ts';
import { forecastOf } from '../forecast/choose-forecast.ts';
import { orderLevelOf } from '../forecast/order-level.ts';
import { groupBy } from '../group-by.ts';
import { ingredientDemands } from '../make-plan/ingredient-demands.ts';
import { type MakePlan, makePlanOf } from '../make-plan/make-plan.ts';
import { netOfLots } from '../make-plan/net-of-lots.ts';
import { jobAnswersOf } from '../projection/job-readiness.ts';
import { type MissedDemand, projectionOf } from '../projection/projection.ts';
import { besideNeedOf, buyNeedOf } from './buy-need.ts';
import type { MaterialPlan, PlanAnswer } from './plan-answer.ts';
import type { KnownDemand, MaterialProblem, PlanProblem, RecipeProblem } from './plan-problem.ts';
import { productsFirst } from './products-first.ts';
import { seedOf } from './seed.ts';
import { yearAheadOf } from './year-ahead.ts';

/**
 * Works out what will run out, what to make and what to buy. What is made here is planned first, from the products
 * down to their ingredients, so that what their batches take is known when the ingredients' turn comes. What is made
 * here is made for what is planned: no use of it is forecast beyond that.
 * @param step is told how many of the materials are done
 */
export function solvePlan(
  problem: PlanProblem,
  step: (done: number, all: number) => void = () => undefined,
): PlanAnswer {
  const made = planMaking(problem);
  const needs: BuyNeed[] = [];
  const besides: BuyNeed[] = [];
  const materials = problem.materials.map((material, place): MaterialPlan => {
    const demands = made.demands.get(material.material) ?? [];
    const make = made.plans.get(material.material) ?? null;
    const plan = planMaterial(problem, material, demands, make);
    const need = material.recipe === null ? buyNeedOf(problem, material, plan) : null;
    const beside = need === null ? besideNeedOf(problem, material, plan) : null;
    if (need !== null) needs.push(need);
    if (beside !== null) besides.push(beside);
    step(place + 1, problem.materials.length);
    return plan;
  });
  return {
    today: problem.today,
    until: problem.until,
    materials,
    jobs: jobAnswersOf(
      problem,
      new Map(
        materials.map(({ material, projection }) => [
          material,
          { missed: made.missing.get(material) ?? projection.missed },
        ]),
      ),
    ),
    needs,
    besides,
    year: yearAheadOf(problem, new Map(materials.map((each) => [each.material, each.forecast.perWeek]))),
  };
}

interface Making {
  readonly plans: ReadonlyMap<string, MakePlan>;
  /** What the lots of what is made here don't cover: it must be made, and by when is for the jobs to know. */
  readonly missing: ReadonlyMap<string, readonly MissedDemand[]>;
  /** What is known to be needed of each material, ingredients of planned batches with it. */
  readonly demands: ReadonlyMap<string, readonly KnownDemand[]>;
}

function planMaking(problem: PlanProblem): Making {
  const plans = new Map<string, MakePlan>();
  const lacking = new Map<string, readonly MissedDemand[]>();
  const demands = new Map<string, readonly KnownDemand[]>(
    problem.materials.map((each) => [each.material, each.demands]),
  );
  const byName = new Map(problem.materials.map((each) => [each.material, each]));
  for (const material of productsFirst(problem.materials)) {
    const { recipe } = material;
    if (recipe === null) continue;
    const known = (demands.get(material.material) ?? []).filter(({ day }) => day <= problem.until);
    // What the log has not drawn was there when it was used: nothing is made for it any more.
    const missing = netOfLots(material.lots, known).filter(({ kind }) => kind === 'planned');
    lacking.set(material.material, missing);
    if (missing.length === 0) continue;
    const plan = makePlanOf({
      material: material.material,
      recipe: { ...recipe, lifeDays: lifeWithParts(recipe, byName) },
      lifeOpenedDays: material.lifeOpenedDays,
      demands: missing,
      today: problem.today,
      minuteCost: problem.minuteCost,
      unitCost: material.unitCost,
    });
    plans.set(material.material, plan);
    for (const [part, own] of groupBy(ingredientDemands(plan, recipe), (demand) => demand.material)) {
      demands.set(part, [...(demands.get(part) ?? []), ...own].toSorted(byKindAndDay));
    }
  }
  return { plans, missing: lacking, demands };
}

/** What the log has not drawn first, then by day. */
function byKindAndDay(a: KnownDemand, b: KnownDemand): number {
  return Number(a.kind === 'planned') - Number(b.kind === 'planned') || a.day - b.day;
}

/**
 * How long what is made keeps, where it keeps no longer than its parts made here. These are taken as made on the same
 * day: when it is really made, the lots that go in decide.
 */
function lifeWithParts(
  recipe: RecipeProblem,
  materials: ReadonlyMap<string, MaterialProblem>,
): number | null {
  if (!recipe.limitedByParts) return recipe.lifeDays;
  const lives = [
    recipe.lifeDays,
    ...recipe.parts.map(({ material }) => materials.get(material)?.recipe?.lifeDays ?? null),
  ].filter((life) => life !== null);
  return lives.length === 0 ? null : Math.min(...lives);
}

function planMaterial(
  problem: PlanProblem,
  material: MaterialProblem,
  demands: readonly KnownDemand[],
  make: MakePlan | null,
): MaterialPlan {
  const { today, until } = problem;
  const forecast = forecastOf(material.daily, material.unit);
  const leadDays = material.recipe === null ? material.leadDays : material.recipe.readyDays;
  const level = orderLevelOf({
    daily: material.daily,
    planned: plannedByDay(demands, today),
    undrawn: sumOf(demands.filter(({ kind }) => kind === 'not drawn')),
    leadDays,
    leadSpreadDays: material.leadSpreadDays,
    reviewDays: problem.reviewDays,
    servicePercent: material.servicePercent,
    serviceMeans: problem.serviceMeans,
    orderQuantity: usualOrder(problem, material, forecast.perWeek),
    keepAtLeast: material.keepAtLeast,
    plainLevel: material.plain.level,
    forecast,
    unit: material.unit,
    seed: seedOf(material.material),
  });
  const projection = projectionOf({
    today,
    until,
    lots: material.lots,
    arrivals: material.arrivals,
    batches: (make?.batches ?? []).map(({ readyOn, goodUntil, quantity }) => ({
      readyOn,
      goodUntil,
      quantity,
      unitWorth: material.unitCost,
    })),
    demands,
    forecastPerWeek: material.recipe === null ? forecast.perWeek : 0,
    lifeSealedDays: material.lifeSealedDays,
    lifeOpenedDays: material.lifeOpenedDays,
    unitCost: material.unitCost,
  });
  return {
    material: material.material,
    unit: material.unit,
    usable: material.plain.usable,
    onOrder: material.plain.onOrder,
    forecast,
    level,
    projection,
    make,
  };
}

/** What is ordered at a time: what the cover days take, and no less than the smallest pack. */
function usualOrder({ coverDays }: PlanProblem, { offers }: MaterialProblem, perWeek: number): number {
  const packs = offers.map(({ packQuantity }) => packQuantity);
  return Math.max((perWeek * coverDays) / DAYS_PER_WEEK, packs.length === 0 ? 0 : Math.min(...packs));
}

/** What is planned on each day from today on. */
function plannedByDay(demands: readonly KnownDemand[], today: Day): number[] {
  const planned = demands.filter(({ kind }) => kind === 'planned');
  const last = Math.max(...planned.map(({ day }) => day - today), -1);
  const daily = Array.from({ length: last + 1 }, () => 0);
  for (const { day, quantity } of planned) daily[day - today] = (daily[day - today] ?? 0) + quantity;
  return daily;
}

function sumOf(demands: readonly KnownDemand[]): number {
  return demands.reduce((total, { quantity }) => total + quantity, 0);
}
