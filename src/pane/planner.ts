import type { Basket } from '../core/buying/basket.ts';
import type { BasketProblem } from '../core/buying/basket-problem.ts';
import type { Currency } from '../core/money.ts';
import type { PlanAnswer } from '../core/planning/plan-answer.ts';
import type { PlanProblem } from '../core/planning/plan-problem.ts';

/**
 * Works plans out beside the pane, so that it goes on answering meanwhile. Both promises are rejected with an error
 * whose message is for the person where nothing came of it, and with the signal's reason once that says stop.
 */
export interface Planner {
  readonly plan: (problem: PlanProblem, options: PlanOptions) => Promise<PlanAnswer>;
  /** The cheapest basket; with what was set by hand kept. */
  readonly basket: (problem: BasketProblem, currency: Currency, signal: AbortSignal) => Promise<Basket>;
}

export interface PlanOptions {
  /** How many of all materials are worked out. */
  readonly progress: (done: number, all: number) => void;
  readonly signal: AbortSignal;
}
