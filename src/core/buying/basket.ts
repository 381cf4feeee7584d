import type { Day } from '../day.ts';

/** What to order now from whom; money in coins. */
export interface Basket {
  readonly orders: readonly BasketOrder[];
  readonly goods: number;
  readonly carriage: number;
  readonly total: number;
  /** What can't be bought, or not in time, and why. Sentences for a person. */
  readonly remarks: readonly BasketRemark[];
}

export interface BasketRemark {
  readonly material: string;
  readonly kind:
    | 'no offer'
    | 'too late'
    | 'would go off'
    | 'by hand too little'
    | 'by hand too much'
    | 'not solved';
  readonly sentence: string;
}

export interface BasketOrder {
  readonly supplier: string;
  /** When it would be here, ordered today. */
  readonly expected: Day;
  readonly lines: readonly BasketLine[];
  readonly goods: number;
  readonly carriage: number;
  /** Why carriage is charged or not, and what was added for the smallest order. */
  readonly reasons: readonly string[];
}

export interface BasketLine {
  readonly offer: string;
  readonly material: string;
  readonly unit: string;
  readonly packs: number;
  readonly packQuantity: number;
  readonly packWords: string;
  readonly packPrice: number;
  readonly amount: number;
  /** Set by hand. */
  readonly byHand: boolean;
  /** Why so many, and why here: plain words. */
  readonly reasons: readonly string[];
}
