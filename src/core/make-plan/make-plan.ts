import type { Day } from '../day.ts';
import { addDays } from '../day.ts';
import type { KnownDemand, RecipeProblem } from '../planning/plan-problem.ts';
import { type DatedNeed, datedNeeds } from './dated-needs.ts';
import { sizeLots } from './lot-sizing.ts';
import { type MakeCost, makeCostOf } from './make-cost.ts';
import { inMillionths, ofMillionths } from './millionths.ts';
import { forEachJobOf, type OtherWay, weeklyOf } from './other-ways.ts';
import { type Serving, servingOf, servingsBetween } from './servings.ts';

export type { MakeCost } from './make-cost.ts';
export type { OtherWay } from './other-ways.ts';
export type { Serving } from './servings.ts';

/** When to make how much of a material that is made here, and what other ways would cost. */
export interface MakePlan {
  readonly material: string;
  readonly recipe: string;
  /** In the order of their days. */
  readonly batches: readonly PlannedBatch[];
  readonly cost: MakeCost;
  /** Beside it: a batch for each job's day, of what that needs. */
  readonly forEachJob: OtherWay;
  /** Beside it: one batch a week, of what the week needs. */
  readonly weekly: OtherWay;
  /** What can't be ready on its day any more. A batch of today serves it on the day on which that is ready. */
  readonly late: readonly LateServing[];
  /** Everything, where a batch goes off before it is ready; otherwise nothing. */
  readonly unserved: readonly Serving[];
}

export interface PlannedBatch {
  /** The day on which it is made. */
  readonly makeOn: Day;
  readonly readyOn: Day;
  /** The last day on which it may be used; null where it keeps. */
  readonly goodUntil: Day | null;
  /** In the material's stock unit. */
  readonly quantity: number;
  /** The earliest first. What is late is served on the day on which the batch is ready. */
  readonly servings: readonly Serving[];
  /** What of it nobody needs. */
  readonly waste: number;
}

/** A need for which nothing can be ready in time. */
export interface LateServing extends Serving {
  /** The day on which it could be ready at the earliest. */
  readonly readyOn: Day;
}

export interface MakePlanInput {
  readonly material: string;
  readonly recipe: RecipeProblem;
  /** How long it keeps once it is first drawn; null where that doesn't matter. */
  readonly lifeOpenedDays: number | null;
  /** What is needed beyond what is there: see netOfLots. */
  readonly demands: readonly KnownDemand[];
  readonly today: Day;
  /** What a minute at the bench costs, in coins; null where bench time isn't charged. */
  readonly minuteCost: number | null;
  /** What the ingredients of one stock unit cost, in coins; null where nothing gives a figure. */
  readonly unitCost: number | null;
}

/**
 * The batches that serve every need with material that is ready and still good on its day, at least cost of bench time
 * and of what is thrown away. Where the two can't be set against each other, as one of them has no price, least waste
 * comes first. Among equals the fewest batches, then the freshest material. What can't be ready on its day is made
 * today.
 */
export function makePlanOf(input: MakePlanInput): MakePlan {
  const { recipe, today } = input;
  const { readyDays, smallestBatch } = recipe;
  const readyOn = addDays(today, readyDays);
  const needs = datedNeeds(input.demands, readyOn);
  const lifeDays = lifeFromMaking(input);
  const sizes = sizeLots({
    ...costsFor(input),
    firstDay: today,
    needs,
    holdingCost: 0,
    readyDays,
    lifeDays,
    smallestBatch,
    largestBatch: null,
  });
  const named = { material: input.material, recipe: recipe.recipe };
  if (sizes === null) return { ...named, ...nothingServed(needs, input) };
  return {
    ...named,
    batches: sizes.batches.map(({ makeOn, quantity, from, upTo }) => {
      const servings = servingsBetween(needs, from, upTo);
      return {
        makeOn,
        readyOn: addDays(makeOn, readyDays),
        goodUntil: lastDayOf(input, makeOn, servings[0]?.day ?? makeOn),
        quantity,
        servings,
        waste: ofMillionths(inMillionths(quantity) - (inMillionths(upTo) - inMillionths(from))),
      };
    }),
    cost: makeCostOf(
      sizes.batches.map(({ from, upTo }) => upTo - from),
      recipe,
      input,
    ),
    forEachJob: forEachJobOf(needs, recipe, input),
    weekly: weeklyOf(needs, today, recipe, input, (makeOn, firstUse) => lastDayOf(input, makeOn, firstUse)),
    late: needs
      .filter(({ demand }) => demand.day < readyOn)
      .map((need) => ({ ...servingOf(need, need.demand.day), readyOn })),
    unserved: [],
  };
}

/** What a batch and a unit of waste cost, in coins; only the waste counts where one of them has no price. */
function costsFor({ recipe, minuteCost, unitCost }: MakePlanInput): {
  readonly setUpCost: number;
  readonly wasteCost: number;
} {
  const isPriced = minuteCost !== null && unitCost !== null;
  return { setUpCost: isPriced ? recipe.minutes * minuteCost : 0, wasteCost: unitCost ?? 1 };
}

/**
 * How many days after it is made a batch may be used, if it is first drawn on the day on which it is ready. As all days
 * cost the same, a batch is never made earlier than that, so that its life once opened counts from that day.
 */
function lifeFromMaking({ recipe, lifeOpenedDays }: MakePlanInput): number | null {
  const opened = lifeOpenedDays === null ? Number.POSITIVE_INFINITY : recipe.readyDays + lifeOpenedDays;
  const life = Math.min(recipe.lifeDays ?? Number.POSITIVE_INFINITY, opened);
  return life === Number.POSITIVE_INFINITY ? null : life;
}

function lastDayOf({ recipe, lifeOpenedDays }: MakePlanInput, makeOn: Day, firstUse: Day): Day | null {
  const limits = [
    ...(recipe.lifeDays === null ? [] : [addDays(makeOn, recipe.lifeDays)]),
    ...(lifeOpenedDays === null ? [] : [addDays(firstUse, lifeOpenedDays)]),
  ];
  return limits.toSorted((a, b) => a - b)[0] ?? null;
}

function nothingServed(
  needs: readonly DatedNeed[],
  input: MakePlanInput,
): Omit<MakePlan, 'material' | 'recipe'> {
  const cost = makeCostOf([], input.recipe, input);
  const otherWay = { cost, unserved: [...new Set(needs.map(({ day }) => day))] };
  return {
    batches: [],
    cost,
    forEachJob: otherWay,
    weekly: otherWay,
    late: [],
    unserved: needs.map((need) => servingOf(need, need.demand.day)),
  };
}
