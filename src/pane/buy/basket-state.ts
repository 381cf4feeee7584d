import { type ReadonlySignal, signal } from '@preact/signals';
import type { Basket } from '../../core/buying/basket.ts';
import { keepingFocus } from '../focus.ts';
import type { Planner } from '../planner.ts';
import type { Plan } from '../planning/plan-state.ts';
import { basketProblemOf, type SetByHand, stillOffered } from './by-hand.ts';

/** A basket, the plan that it is for, and what was set by hand in it. */
export interface SolvedBasket {
  readonly plan: Plan;
  readonly set: readonly SetByHand[];
  readonly basket: Basket;
}

export type Solving =
  | { readonly kind: 'at rest' }
  | { readonly kind: 'working' }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly message: string };

/** What is typed quickly one after the other is priced once, in milliseconds. */
const QUIET = 200;

const solved = signal<SolvedBasket | null>(null);
const state = signal<Solving>({ kind: 'at rest' });
let asked: {
  readonly plan: Plan;
  readonly set: readonly SetByHand[];
  readonly control: AbortController;
} | null = null;

/** What she has set by hand; it outlives a change of section and every new plan. */
export const setByHand = signal<readonly SetByHand[]>([]);
/** The latest basket; it may be of an earlier plan while a new one is worked out. */
export const latestBasket: ReadonlySignal<SolvedBasket | null> = solved;
export const solving: ReadonlySignal<Solving> = state;

/** Has a basket worked out, unless that was asked for already; an earlier request is given up. */
export async function basketFor(
  planner: Planner,
  plan: Plan,
  set: readonly SetByHand[],
  wait: (milliseconds: number) => Promise<void> = quiet,
): Promise<void> {
  if (asked?.plan === plan && asked.set === set) return;
  const isChangedByHand = asked?.plan === plan;
  asked?.control.abort();
  const own = { plan, set, control: new AbortController() };
  asked = own;
  state.value = { kind: 'working' };
  try {
    if (isChangedByHand) await wait(QUIET);
    if (asked !== own) return;
    const kept = stillOffered(set, [...plan.answer.needs, ...plan.answer.besides]);
    const { currency } = plan.books.settings;
    const basket = await planner.basket(basketProblemOf(plan, kept), currency, own.control.signal);
    if (asked !== own) return;
    await keepingFocus(() => {
      solved.value = { plan, set: kept, basket };
      state.value = { kind: 'at rest' };
    });
  } catch (fault) {
    // What was given up for a newer request, or by the person, has been answered already.
    if (asked !== own || own.control.signal.aborted) return;
    await keepingFocus(() => {
      state.value = { kind: 'failed', message: fault instanceof Error ? fault.message : String(fault) };
    });
  }
}

export function stopSolving(): void {
  asked?.control.abort();
  state.value = { kind: 'stopped' };
}

/** Works it out anew after it was stopped, or failed. */
export async function solveAgain(planner: Planner, plan: Plan, set: readonly SetByHand[]): Promise<void> {
  asked = null;
  await basketFor(planner, plan, set);
}

function quiet(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
