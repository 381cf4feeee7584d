import { booksOf } from '../../actions/books.ts';
import { checkWorkbook, type WorkbookCheck } from '../../actions/check-workbook.ts';
import { noSuchName } from '../../actions/nearest-name.ts';
import { addDays, type Day } from '../../core/day.ts';
import { keyOf } from '../../core/identifier.ts';
import { planProblemOf } from '../../core/planning/build-problem.ts';
import { LONGEST_OUTLOOK_DAYS, outlookEnd } from '../../core/planning/outlook.ts';
import type { PlanAnswer } from '../../core/planning/plan-answer.ts';
import type { PlanProblem } from '../../core/planning/plan-problem.ts';
import { solvePlan } from '../../core/planning/solve-plan.ts';
import { CallRefused, dayOption } from '../arguments.ts';
import type { Command, Context } from '../context.ts';
import { missesSome, printJson, printLines, refused } from '../finish.ts';
import { planJson } from './plan-json.ts';
import { jobsText, materialPlanText, planText } from './plan-text.ts';

/** Prints what will run out, what to make, and whether jobs can be done on their days. */
export const plan: Command = (context) => {
  const { call, terminal } = context;
  const { answer, checked } = outlook(context);
  const { currency } = checked.settings;
  const named = { material: call.text('material'), job: call.text('job') };
  const materials = answer.materials.filter((each) => isNamed(each.material, named.material));
  const jobs = answer.jobs.filter((each) => isNamed(each.job, named.job));
  if (named.material !== null && materials.length === 0) {
    const names = answer.materials.map(({ material }) => material);
    return Promise.resolve(refused(noSuchName('material', named.material, 'Materials', names), terminal));
  }
  if (named.job !== null && jobs.length === 0) {
    const names = answer.jobs.map(({ job }) => job);
    return Promise.resolve(
      refused(noSuchName('job', named.job, 'Jobs booked or on the bench', names), terminal),
    );
  }
  const shown: PlanAnswer = {
    ...answer,
    materials: named.job === null ? materials : [],
    jobs: named.material === null ? jobs : [],
  };
  const only = named.material === null ? undefined : materials[0];
  if (call.flag('json')) printJson(planJson(shown, currency, checked.notices), terminal);
  else {
    const lines =
      only !== undefined
        ? materialPlanText(only, answer, currency, terminal)
        : named.job !== null
          ? jobsText(jobs, terminal).slice(1)
          : planText(shown, currency, terminal);
    printLines([...lines, ...missesSome(checked.notices)], terminal);
  }
  const isShort =
    shown.jobs.some(({ canBeDone }) => !canBeDone) ||
    shown.materials.some(({ projection }) => projection.firstShort !== null);
  return Promise.resolve(isShort ? 1 : 0);
};

/** What the workbook says, and the plan for it up to the day that the call names. */
export function outlook({ call, file, today }: Pick<Context, 'call' | 'file' | 'today'>): {
  readonly checked: WorkbookCheck;
  readonly problem: PlanProblem;
  readonly answer: PlanAnswer;
} {
  const snapshot = file.workbook.snapshot();
  const checked = checkWorkbook(snapshot, today);
  const { ledger } = booksOf(snapshot);
  const until = lastDay(dayOption(call, 'until'), today) ?? outlookEnd(ledger, today);
  const problem = planProblemOf(ledger, checked.stock, until);
  return { checked, problem, answer: solvePlan(problem) };
}

function lastDay(until: Day | null, today: Day): Day | null {
  if (until === null) return null;
  if (until < today || until > addDays(today, LONGEST_OUTLOOK_DAYS)) {
    throw new CallRefused(`--until must be a day from today on, at most ${LONGEST_OUTLOOK_DAYS} days ahead.`);
  }
  return until;
}

function isNamed(name: string, wanted: string | null): boolean {
  return wanted === null || keyOf(name) === keyOf(wanted);
}
