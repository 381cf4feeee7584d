import { keyOf } from '../identifier.ts';
import type { OfferProblem } from '../planning/plan-problem.ts';
import type { BasketProblem, BuyNeed } from './basket-problem.ts';

/**
 * What is to be bought: what is needed, and of what could be bought besides that of which some packs are set by hand.
 * @param besides what nothing asks for; see PlanAnswer
 */
export function withWishes(
  needs: readonly BuyNeed[],
  besides: readonly BuyNeed[],
  byHand: BasketProblem['byHand'],
): BuyNeed[] {
  const set = new Set(byHand.flatMap(({ offer, packs }) => (packs > 0 ? [offer] : [])));
  return [...needs, ...besides.filter(({ offers }) => offers.some(({ offer }) => set.has(offer)))];
}

/**
 * The row of Offers by which so many packs of a material are bought where only the material is named: of a supplier
 * from whom something is ordered anyway, else of the preferred one, else the cheapest by quantity; among rows whose
 * price holds for so many packs, where there are any.
 * @param ordering the suppliers from whom something is ordered anyway
 * @returns null where nobody offers it
 */
export function offerFor(
  { offers, supplier: preferred }: BuyNeed,
  packs: number,
  ordering: readonly string[] = [],
): OfferProblem | null {
  const real = offers.filter(({ packQuantity }) => packQuantity > 0);
  const holding = real.filter(({ fromPacks }) => fromPacks <= packs);
  const anyway = new Set(ordering.map(keyOf));
  const rank = ({ supplier }: OfferProblem): number => {
    if (anyway.has(keyOf(supplier))) return 0;
    return preferred !== null && keyOf(supplier) === keyOf(preferred) ? 1 : 2;
  };
  const price = ({ packPrice, packQuantity }: OfferProblem): number => packPrice / packQuantity;
  const [best] = (holding.length > 0 ? holding : real).toSorted(
    (a, b) => rank(a) - rank(b) || price(a) - price(b),
  );
  return best ?? null;
}
