/** A series smoothed from its beginning to its end. */
export interface Smoothed {
  /** What is forecast for the period after the last, and for every one after that. */
  readonly forecast: number;
  /**
   * For each period what was forecast for it one period before, knowing only the periods until then. What there is
   * before anything is known is said by each method.
   */
  readonly fitted: readonly number[];
}

/** A method with its weight: how much of each error the next forecast takes up, above 0 and at most 1. */
export type Smoothing = (values: readonly number[], weight: number) => Smoothed;
