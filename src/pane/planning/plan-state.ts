import { type ReadonlySignal, signal } from '@preact/signals';
import { planProblemOf } from '../../core/planning/build-problem.ts';
import { outlookEnd } from '../../core/planning/outlook.ts';
import type { PlanAnswer } from '../../core/planning/plan-answer.ts';
import type { PlanProblem } from '../../core/planning/plan-problem.ts';
import type { Books } from '../../session/session-state.ts';
import { keepingFocus } from '../focus.ts';
import type { Planner } from '../planner.ts';

/** A plan, and the books that it was worked out of. */
export interface Plan {
  readonly books: Books;
  readonly problem: PlanProblem;
  readonly answer: PlanAnswer;
}

/** What the planner is at. */
export type Planning =
  | { readonly kind: 'at rest' }
  /** 0 of 0 until the first material is worked out. */
  | { readonly kind: 'working'; readonly done: number; readonly all: number }
  /** The person said stop. */
  | { readonly kind: 'stopped' }
  /** The message says why nothing came of it. */
  | { readonly kind: 'failed'; readonly message: string };

const current = signal<Plan | null>(null);
const state = signal<Planning>({ kind: 'at rest' });
let asked: { readonly books: Books; readonly control: AbortController } | null = null;

/** The latest plan; it may be of earlier books while a new one is worked out. Null before there is one. */
export const latestPlan: ReadonlySignal<Plan | null> = current;
export const planning: ReadonlySignal<Planning> = state;

/** Has a plan worked out of some books, unless that was asked for already; an earlier request is given up. */
export async function planFor(planner: Planner, books: Books): Promise<void> {
  if (asked?.books === books) return;
  asked?.control.abort();
  const own = { books, control: new AbortController() };
  asked = own;
  state.value = { kind: 'working', done: 0, all: 0 };
  const { signal: stop } = own.control;
  try {
    const { ledger, stock, today } = books;
    const problem = planProblemOf(ledger, stock, outlookEnd(ledger, today));
    const answer = await planner.plan(problem, {
      signal: stop,
      progress: (done, all) => {
        if (asked === own) state.value = { kind: 'working', done, all };
      },
    });
    if (asked !== own) return;
    await keepingFocus(() => {
      current.value = { books, problem, answer };
      state.value = { kind: 'at rest' };
    });
  } catch (fault) {
    // What was given up for newer books, or by the person, has been answered already.
    if (asked !== own || stop.aborted) return;
    await keepingFocus(() => {
      state.value = { kind: 'failed', message: fault instanceof Error ? fault.message : String(fault) };
    });
  }
}

/** Stops what is worked out now. */
export function stopPlanning(): void {
  asked?.control.abort();
  state.value = { kind: 'stopped' };
}

/** Works the plan out anew after it was stopped, or failed. */
export async function planAgain(planner: Planner, books: Books): Promise<void> {
  asked = null;
  await planFor(planner, books);
}
