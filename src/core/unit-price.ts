import type { Exact } from './exact-number.ts';
import type { OfferRecord } from './records.ts';
import type { Material } from './studio.ts';

/** A pack that can be bought, in terms of the material's stock unit. */
export interface Pack {
  readonly offer: OfferRecord;
  /** How much of the stock unit a pack holds. */
  readonly quantity: Exact;
  /** What one stock unit costs in it, in the currency's main unit. */
  readonly pricePerUnit: Exact;
}

/**
 * The cheapest pack, by pack price ÷ pack quantity, among the offers whose From packs is not above the packs that
 * a quantity needs (rounded up against From packs; a blank From packs is 1). Of equals the first row is taken.
 * @param quantity in the material's stock unit
 * @returns null where no offer fits, or none converts to the stock unit
 */
export function cheapestPack(
  material: Material,
  offers: readonly OfferRecord[],
  quantity: Exact,
): Pack | null {
  let cheapest: Pack | null = null;
  for (const offer of offers) {
    const factor = material.converter.factor(offer.unit, material.unit);
    if (factor === null) continue;
    const inPack = offer.packQuantity.mul(factor);
    const needed = quantity.div(inPack).ceil(0);
    if (offer.fromPacks !== null && offer.fromPacks.compare(needed.compare(1) < 0 ? 1 : needed) > 0) continue;
    const pack = { offer, quantity: inPack, pricePerUnit: offer.packPrice.div(inPack) };
    if (cheapest === null || pack.pricePerUnit.compare(cheapest.pricePerUnit) < 0) cheapest = pack;
  }
  return cheapest;
}
