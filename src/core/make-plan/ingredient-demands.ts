import { roundPlanned } from '../forecast/round-planned.ts';
import { groupBy } from '../group-by.ts';
import { keyOf } from '../identifier.ts';
import type { KnownDemand, RecipeProblem } from '../planning/plan-problem.ts';
import type { MakePlan } from './make-plan.ts';

/** What a planned batch takes of one of its parts. */
export interface IngredientDemand extends KnownDemand {
  /** The part. */
  readonly material: string;
}

/**
 * What the batches of a plan take of each part of their recipe on the days on which they are made, by day. The job is
 * the first that the batch serves; what takes it is the recipe.
 */
export function ingredientDemands(
  { batches }: Pick<MakePlan, 'batches'>,
  { recipe, parts }: Pick<RecipeProblem, 'recipe' | 'parts'>,
): IngredientDemand[] {
  const byMaterial = [...groupBy(parts, ({ material }) => keyOf(material)).values()];
  return batches.flatMap(({ makeOn, quantity, servings }) =>
    byMaterial.map((same) => ({
      material: same[0]?.material ?? '',
      day: makeOn,
      quantity: roundPlanned(quantity * same.reduce((sum, { perUnit }) => sum + perUnit, 0)),
      kind: 'planned' as const,
      job: servings[0]?.job ?? '',
      what: recipe,
    })),
  );
}
