import type { Basket } from '../../core/buying/basket.ts';
import type { BasketProblem, BuyNeed } from '../../core/buying/basket-problem.ts';
import { withWishes } from '../../core/buying/wishes.ts';
import { keyOf } from '../../core/identifier.ts';
import type { OfferProblem } from '../../core/planning/plan-problem.ts';
import type { Plan } from '../planning/plan-state.ts';

/** A number of packs that a person has set. A row of Offers may move: so the pack is told besides its place. */
export interface SetByHand {
  readonly offer: string;
  readonly material: string;
  readonly supplier: string;
  readonly packWords: string;
  /** 0 for none. */
  readonly packs: number;
}

/** A pack that can be bought of something that is needed. */
export interface Offered {
  readonly material: string;
  readonly unit: string;
  readonly offer: OfferProblem;
}

/** What was set by hand, with one more set, or set otherwise. */
export function withPacks(
  set: readonly SetByHand[],
  pack: Omit<SetByHand, 'packs'>,
  packs: number,
): SetByHand[] {
  return [...set.filter(({ offer }) => offer !== pack.offer), { ...pack, packs }];
}

/** What was set by hand, but for some offers. */
export function withoutOffers(set: readonly SetByHand[], offers: readonly string[]): SetByHand[] {
  return set.filter(({ offer }) => !offers.includes(offer));
}

/** What of it still says something: its pack stands where it stood, and is asked for. */
export function stillOffered(set: readonly SetByHand[], needs: readonly BuyNeed[]): SetByHand[] {
  return set.filter((each) =>
    needs.some(
      ({ material, offers }) =>
        keyOf(material) === keyOf(each.material) &&
        offers.some(
          ({ offer, supplier, packWords }) =>
            offer === each.offer && keyOf(supplier) === keyOf(each.supplier) && packWords === each.packWords,
        ),
    ),
  );
}

/** What is to be bought, as the solver is asked. */
export function basketProblemOf({ problem, answer }: Plan, set: readonly SetByHand[]): BasketProblem {
  return {
    today: answer.today,
    needs: withWishes(answer.needs, answer.besides, set),
    suppliers: problem.suppliers,
    byHand: set.map(({ offer, packs }) => ({ offer, packs })),
  };
}

/** What is offered of the things that are needed and isn't in the basket, in the order of the needs. */
export function offeredBesides(needs: readonly BuyNeed[], basket: Basket): Offered[] {
  const taken = new Set(
    basket.orders.flatMap(({ lines }) => lines.filter(({ packs }) => packs > 0).map(({ offer }) => offer)),
  );
  return needs.flatMap(({ material, unit, offers }) =>
    offers.filter(({ offer }) => !taken.has(offer)).map((offer) => ({ material, unit, offer })),
  );
}

/** What is wrong with a number of packs as it was typed; the number itself where nothing is. */
export function packsTyped(text: string): number | { readonly problem: string } {
  const typed = text.trim();
  if (typed === '') return 0;
  if (!/^\d{1,4}$/.test(typed)) {
    return { problem: `${typed} is no number of packs: a whole number is right, 0 for none.` };
  }
  return Number(typed);
}
