import { addDays, type Day } from '../day.ts';
import { keyOf } from '../identifier.ts';
import type { OfferProblem, SupplierProblem } from '../planning/plan-problem.ts';
import type { BasketProblem, BuyNeed } from './basket-problem.ts';

/** A row of Offers as it can be bought: how many packs, at which price, and when they would be here. */
export interface OfferRow {
  readonly offer: OfferProblem;
  /** The key of the supplier; see keyOf. */
  readonly supplier: string;
  /** Coins for a pack. For a count set by hand the price that holds for so many. */
  readonly price: number;
  /** The fewest packs when any are bought. */
  readonly least: number;
  /** The most for which this price holds: from the next price break on that of its row does. May be infinite. */
  readonly most: number;
  /** The day on which they are here, ordered today. */
  readonly arrives: Day;
  /** So many packs were set by hand, above 0; null where that is open. */
  readonly byHand: number | null;
  /** Rows of one supplier with the same pack share it; they are price breaks of all packs. */
  readonly pack: string;
}

/** Quantities that differ by less than this part of themselves are the same. */
export const SAME = 1e-9;

/** The slack within which a sum of packs covers a quantity, or stays within it. */
export function slackOf(quantity: number): number {
  return SAME * Math.max(1, Math.abs(quantity));
}

/** A supplier that has no row: nothing is known, so nothing is asked, and it is there on the same day. */
const UNKNOWN = { leadDays: 0, minimumOrder: 0, carriage: 0, carriageFreeOver: null };

/** The terms of a supplier by its key. */
export function supplierTerms(problem: BasketProblem, key: string): SupplierProblem {
  return problem.suppliers.find(({ supplier }) => keyOf(supplier) === key) ?? { supplier: key, ...UNKNOWN };
}

/**
 * The rows of Offers that a need can be bought by. A row set to 0 by hand is left out, as if it were not there; where
 * a row is set to some packs, a person has said how much of the material she wants, and no other row of it is bought. A
 * row that another of its pack always beats is left out too.
 */
export function rowsOf(problem: BasketProblem, need: BuyNeed): OfferRow[] {
  const byHand = new Map(problem.byHand.map(({ offer, packs }) => [offer, packs]));
  const packs = new Map<string, OfferProblem[]>();
  for (const offer of need.offers) {
    if (!(offer.packQuantity > 0) || byHand.get(offer.offer) === 0) continue;
    const key = `${keyOf(offer.supplier)} ${offer.packQuantity.toPrecision(12)}`;
    packs.set(key, [...(packs.get(key) ?? []), offer]);
  }
  const rows = [...packs].flatMap(([pack, offers]) => {
    const arrivalOf = ({ supplier }: OfferProblem) =>
      addDays(problem.today, Math.ceil(supplierTerms(problem, keyOf(supplier)).leadDays));
    const set = offers.filter(({ offer }) => byHand.has(offer));
    const total = set.reduce((sum, { offer }) => sum + (byHand.get(offer) ?? 0), 0);
    const ranges =
      set.length === 0
        ? priceBreaks(offers)
        : set.map((offer) => ({ offer, price: priceFor(offers, total), least: 1, most: Infinity }));
    return ranges.map((range) => ({
      ...range,
      supplier: keyOf(range.offer.supplier),
      arrives: arrivalOf(range.offer),
      byHand: byHand.get(range.offer.offer) ?? null,
      pack,
    }));
  });
  const set = rows.filter((row) => row.byHand !== null);
  return set.length > 0 ? set : rows;
}

/** The lowest price that holds for so many packs; below every From packs, that of the row with the fewest. */
function priceFor(offers: readonly OfferProblem[], packs: number): number {
  const fewest = Math.min(...offers.map(({ fromPacks }) => fromPacks));
  const holding = offers.filter(({ fromPacks }) => fromPacks <= Math.max(packs, fewest));
  return Math.min(...holding.map(({ packPrice }) => packPrice));
}

/** The rows of one pack, each up to where a cheaper one holds. */
function priceBreaks(offers: readonly OfferProblem[]) {
  const sorted = offers.toSorted((a, b) => a.fromPacks - b.fromPacks || a.packPrice - b.packPrice);
  const steps: OfferProblem[] = [];
  for (const offer of sorted) {
    if (offer.packPrice < (steps.at(-1)?.packPrice ?? Infinity)) steps.push(offer);
  }
  const fewest = (step: OfferProblem | undefined): number =>
    step === undefined ? Infinity : Math.max(Math.ceil(step.fromPacks - SAME), 1);
  return steps.map((offer, index) => ({
    offer,
    price: offer.packPrice,
    least: fewest(offer),
    most: fewest(steps[index + 1]) - 1,
  }));
}
