import type { Day } from '../day.ts';
import type { OfferProblem, SupplierProblem } from '../planning/plan-problem.ts';

/** What should be bought of one material now, in its stock unit. */
export interface BuyNeed {
  readonly material: string;
  readonly unit: string;
  readonly inPieces: boolean;
  /** The preferred supplier; null where none is named. */
  readonly supplier: string | null;
  /** How much must be here by which day, beyond what is here and on its way; cumulative, by day. The last is all that is needed. */
  readonly by: readonly NeedBy[];
  /** What can be used before it would go off, and fits under Keep at most; null where there is no such limit. */
  readonly most: number | null;
  /** Why there is such a limit: `it keeps 90 days`; null where there is none. */
  readonly mostBecause: string | null;
  readonly offers: readonly OfferProblem[];
  /** Why it is needed, for a person. */
  readonly because: string;
}

export interface NeedBy {
  readonly day: Day;
  /** All that is needed up to and with that day. */
  readonly quantity: number;
  /** The job that waits for it; null where it is to refill the stock. */
  readonly job: string | null;
}

export interface BasketProblem {
  readonly today: Day;
  readonly needs: readonly BuyNeed[];
  readonly suppliers: readonly SupplierProblem[];
  /** What a person has set by hand: so many packs of an offer, 0 for none. By OfferProblem.offer. */
  readonly byHand: readonly { readonly offer: string; readonly packs: number }[];
}
