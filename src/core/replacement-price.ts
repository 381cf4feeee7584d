import { type Exact, sum, ZERO } from './exact-number.ts';
import type { Material, Recipe } from './studio.ts';
import { cheapestPack } from './unit-price.ts';
import { spokenNumber, spokenQuantity } from './wording.ts';

/** What a material would cost to get again. */
export interface ReplacementPrice {
  /** Of one stock unit, in the currency's main unit. */
  readonly pricePerUnit: Exact;
  /** Where the price comes from, for a person. */
  readonly how: string;
}

/**
 * What one stock unit of a material costs to get again: made here, its recipe's parts ÷ yield; else the cheapest
 * pack, not rounded up to whole packs. What isn't counted and has no offer costs nothing.
 * @param quantity how much is needed, in the stock unit: it decides which offers apply
 * @returns null where neither a recipe nor an offer gives a figure
 */
export function replacementPrice(material: Material, quantity: Exact): ReplacementPrice | null {
  return priceOf(material, quantity, new Set());
}

function priceOf(
  material: Material,
  quantity: Exact,
  beingMade: ReadonlySet<Recipe>,
): ReplacementPrice | null {
  const { recipe } = material;
  const made =
    recipe === null || beingMade.has(recipe)
      ? null
      : priceOfMade(material, recipe, quantity, new Set([...beingMade, recipe]));
  if (made !== null) return made;
  const pack = cheapestPack(material, material.offers, quantity);
  if (pack !== null) {
    const { offer } = pack;
    const how = `${offer.supplier}: ${spokenNumber(offer.packPrice)} for ${spokenQuantity(offer.packQuantity, offer.unit)}`;
    return { pricePerUnit: pack.pricePerUnit, how };
  }
  return material.counted ? null : { pricePerUnit: ZERO, how: 'not counted and no offer, so no charge' };
}

function priceOfMade(
  material: Material,
  recipe: Recipe,
  quantity: Exact,
  beingMade: ReadonlySet<Recipe>,
): ReplacementPrice | null {
  const toStockUnit = material.converter.factor(recipe.record.unit, material.unit);
  if (toStockUnit === null || recipe.parts.length === 0 || quantity.compare(0) <= 0) return null;
  const batches = quantity.div(recipe.record.yield.mul(toStockUnit));
  const costs: Exact[] = [];
  for (const part of recipe.parts) {
    const factor = part.material.converter.factor(part.record.unit, part.material.unit);
    const needed = factor === null ? null : part.record.quantity.mul(factor).mul(batches);
    const price = needed === null ? freeOf(part.material) : priceOf(part.material, needed, beingMade);
    if (price === null) return null;
    costs.push(price.pricePerUnit.mul(needed ?? ZERO));
  }
  return { pricePerUnit: sum(costs).div(quantity), how: `made here by ${recipe.name}, its parts ÷ yield` };
}

/** The price of a part whose unit leads nowhere: none, unless it isn't counted and nobody sells it. */
function freeOf(material: Material): ReplacementPrice | null {
  return material.counted || material.offers.length > 0 ? null : { pricePerUnit: ZERO, how: '' };
}
