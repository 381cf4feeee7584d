import { missingParts } from '../core/batch.ts';
import { spokenDay } from '../core/day.ts';
import { ZERO } from '../core/exact-number.ts';
import type { Material } from '../core/studio.ts';
import { counted, spokenNumber, spokenQuantity, unitFor } from '../core/wording.ts';
import type { BatchPlan, BatchToMake } from './batch-to-make.ts';

/** What a person should know about a batch besides its figures. */
export function batchRemarks(
  plan: Omit<BatchPlan, 'remarks'>,
  product: Material,
  request: BatchToMake,
): string[] {
  return [
    ...aboutTheRecipe(plan, product),
    ...plan.parts.flatMap((part) => aboutConversion(part)),
    ...missingParts(plan.parts).flatMap((part) => makeFirstRemark(part) ?? []),
    ...aboutCost(plan),
    ...(plan.goodUntil !== null && plan.goodUntil < plan.date
      ? [`It is past its day already, ${spokenDay(plan.goodUntil)}: ${plan.goodUntilBecause}.`]
      : []),
    ...(request.pour !== null && plan.readyAfterHours !== null && plan.readyAfterHours.compare(ZERO) > 0
      ? [
          `By its recipe it is ready only ${counted(Number(spokenNumber(plan.readyAfterHours)), 'hour')} after it was made, and is poured out at once.`,
        ]
      : []),
  ];
}

/** That an ingredient that falls short is made here; null where it isn't. */
export function makeFirstRemark({
  material,
  makeFirst,
}: Pick<BatchPlan['parts'][number], 'material' | 'makeFirst'>): string | null {
  return makeFirst === null
    ? null
    : `${material.name} is made here, by the recipe ${makeFirst.name}: make it first.`;
}

function aboutTheRecipe({ recipe, amount, unit }: Omit<BatchPlan, 'remarks'>, product: Material): string[] {
  const { smallestBatch, unit: recipeUnit } = recipe.record;
  const factor = product.converter.factor(unit, recipeUnit);
  const isSmall = smallestBatch !== null && factor !== null && amount.mul(factor).compare(smallestBatch) < 0;
  return [
    ...(recipe.parts.length === 0
      ? [
          `No row of RecipeParts that can be worked out belongs to ${recipe.name}: nothing is taken from stock for it.`,
        ]
      : []),
    ...(isSmall
      ? [`The recipe says that less than ${spokenQuantity(smallestBatch, recipeUnit)} can't be made well.`]
      : []),
  ];
}

function aboutConversion({ material, unit, missing }: BatchPlan['parts'][number]): string[] {
  const leads = material.converter.factor(unit, material.unit) !== null;
  return missing.compare(ZERO) <= 0 || leads
    ? []
    : [
        `Nothing says how many ${unitFor('2', material.unit)} one ${unit.name} of ${material.name} is: give the density, ` +
          `or the fact that links them, in Materials.`,
      ];
}

function aboutCost({ parts, cost }: Omit<BatchPlan, 'remarks'>): string[] {
  const unknown = parts.flatMap(({ takes }) => takes.filter((take) => take.cost === null));
  const lots = [...new Set(unknown.map(({ lot }) => lot.name))];
  if (lots.length > 0) {
    return [`Its cost can't be told, as ${lots.join(', ')} ${lots.length === 1 ? 'has' : 'have'} no Cost.`];
  }
  if (missingParts(parts).length === 0) return [];
  return [
    cost === null
      ? 'Its cost can’t be told, as nothing was taken from stock for it.'
      : 'Its cost is that of what was taken from stock, without what is missing.',
  ];
}
