import { booksOf } from '../../../src/actions/books.ts';
import { checkWorkbook } from '../../../src/actions/check-workbook.ts';
import type { Basket } from '../../../src/core/buying/basket.ts';
import { basketOf } from '../../../src/core/buying/basket-of.ts';
import { withWishes } from '../../../src/core/buying/wishes.ts';
import { planProblemOf } from '../../../src/core/planning/build-problem.ts';
import { outlookEnd } from '../../../src/core/planning/outlook.ts';
import type { MaterialPlan, PlanAnswer } from '../../../src/core/planning/plan-answer.ts';
import type { PlanProblem } from '../../../src/core/planning/plan-problem.ts';
import { solvePlan } from '../../../src/core/planning/solve-plan.ts';
import { highsSolver } from '../../../src/solver/highs-solver.ts';
import { loadHighs } from '../../../src/solver/load-highs.ts';
import type { WorkbookSnapshot } from '../../../src/workbook/port.ts';
import { TODAY } from './studio-in-node.ts';

const solve = highsSolver(loadHighs);

/** A plan that was worked out here, past the pane and its worker. */
export interface PlanInNode {
  readonly problem: PlanProblem;
  readonly answer: PlanAnswer;
}

export function planInNode(snapshot: WorkbookSnapshot): PlanInNode {
  const { stock } = checkWorkbook(snapshot, TODAY);
  const { ledger } = booksOf(snapshot);
  const problem = planProblemOf(ledger, stock, outlookEnd(ledger, TODAY));
  return { problem, answer: solvePlan(problem) };
}

export function materialIn({ answer }: PlanInNode, name: string): MaterialPlan {
  const found = answer.materials.find(({ material }) => material === name);
  if (found === undefined) throw new Error(`The plan has no ${name}`);
  return found;
}

/** The cheapest basket of a plan, with numbers of packs that were set by hand. */
export function basketInNode(
  { problem, answer }: PlanInNode,
  byHand: readonly { readonly offer: string; readonly packs: number }[] = [],
): Promise<Basket> {
  const { today } = answer;
  const needs = withWishes(answer.needs, answer.besides, byHand);
  const euro = { code: 'EUR', decimals: 2 };
  return basketOf({ today, needs, suppliers: problem.suppliers, byHand }, solve, euro);
}
