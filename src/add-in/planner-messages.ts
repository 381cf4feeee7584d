import type { Basket } from '../core/buying/basket.ts';
import type { BasketProblem } from '../core/buying/basket-problem.ts';
import type { Currency } from '../core/money.ts';
import type { PlanAnswer } from '../core/planning/plan-answer.ts';
import type { PlanProblem } from '../core/planning/plan-problem.ts';

/** What is asked of the worker that plans; each request has a number of its own, by which it is answered. */
export type PlannerRequest =
  | { readonly id: number; readonly kind: 'plan'; readonly problem: PlanProblem }
  | {
      readonly id: number;
      readonly kind: 'basket';
      readonly problem: BasketProblem;
      readonly currency: Currency;
    };

/** What the worker says of a request: how far it is, and how it ended. */
export type PlannerReply =
  | { readonly id: number; readonly kind: 'progress'; readonly done: number; readonly all: number }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: PlanAnswer | Basket }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };
