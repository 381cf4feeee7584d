import { basketOf } from '../core/buying/basket-of.ts';
import { solvePlan } from '../core/planning/solve-plan.ts';
import { highsSolver } from '../solver/highs-solver.ts';
import { loadHighs } from '../solver/load-highs.ts';
import type { PlannerReply, PlannerRequest } from './planner-messages.ts';

/** The script of the worker: it plans what it is asked, one request after the other. */

/** How often it is told how far a plan is, in milliseconds. */
const TOLD_EVERY = 50;

const solve = highsSolver(loadHighs);

function say(reply: PlannerReply): void {
  postMessage(reply);
}

async function answerTo(request: PlannerRequest): Promise<PlannerReply> {
  const { id } = request;
  try {
    if (request.kind === 'basket') {
      return { id, kind: 'answer', answer: await basketOf(request.problem, solve, request.currency) };
    }
    let told = performance.now();
    const step = (done: number, all: number): void => {
      const now = performance.now();
      if (now - told < TOLD_EVERY) return;
      told = now;
      say({ id, kind: 'progress', done, all });
    };
    return { id, kind: 'answer', answer: solvePlan(request.problem, step) };
  } catch (error) {
    return { id, kind: 'failed', message: error instanceof Error ? error.message : String(error) };
  }
}

self.addEventListener('message', ({ data }: MessageEvent<PlannerRequest>) => {
  void answerTo(data).then(say);
});
