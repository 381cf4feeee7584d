import type { TreatmentPlan } from '../../actions/plan-treatment.ts';
import type { TreatmentToLog } from '../../actions/treatment-to-log.ts';
import type { Refusal } from '../../actions/writing-desk.ts';
import type { Day } from '../../core/day.ts';
import type { Studio, Treatment } from '../../core/studio.ts';
import type { LogDraft } from './draft.ts';
import { type HeadField, type Problem, readHead } from './log-request.ts';
import { type LineField, type MaterialLine, materialLines, readLines } from './material-lines.ts';

/** A form as far as it can be worked out. */
export interface LogWork {
  readonly treatment: Treatment | null;
  readonly problems: readonly Problem<HeadField | LineField>[];
  readonly lines: readonly MaterialLine[];
  /** What is asked of stock, and what it would give; null until the head of the form is filled in. */
  readonly asked: { readonly request: TreatmentToLog; readonly plan: TreatmentPlan } | null;
  /** Why there is no plan although the form is filled in. */
  readonly refusal: string | null;
}

/** Works out a form: what the rates take, what she changed about it, and what is taken then. */
export function workOut(
  draft: LogDraft,
  studio: Studio,
  today: Day,
  planTreatment: (request: TreatmentToLog) => TreatmentPlan | Refusal,
): LogWork {
  const { request: byRates, treatment, problems } = readHead(draft, studio, today);
  const nothing = { treatment, problems, lines: [], asked: null, refusal: null };
  if (byRates === null) return nothing;
  const first = planTreatment(byRates);
  if (!first.ok) return { ...nothing, refusal: first.message };
  // What is dated after today takes nothing yet, so there is nothing to change.
  const lines = first.waits ? [] : materialLines(draft, first, studio);
  const read = readLines(lines, studio);
  const all = [...problems, ...read.problems];
  if (read.asUsed.length === 0) {
    return { treatment, problems: all, lines, asked: { request: byRates, plan: first }, refusal: null };
  }
  const request = { ...byRates, asUsed: read.asUsed };
  const plan = planTreatment(request);
  return {
    treatment,
    problems: all,
    lines,
    asked: plan.ok ? { request, plan } : null,
    refusal: plan.ok ? null : plan.message,
  };
}
