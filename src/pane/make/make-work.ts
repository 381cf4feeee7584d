import type { BatchPlan, BatchToMake } from '../../actions/make-batch.ts';
import { lotsToName, type PlannedUse, type TreatmentPlan } from '../../actions/plan-treatment.ts';
import type { TreatmentToLog } from '../../actions/treatment-to-log.ts';
import type { Refusal } from '../../actions/writing-desk.ts';
import type { Day } from '../../core/day.ts';
import { sum, ZERO } from '../../core/exact-number.ts';
import type { Ledger } from '../../core/ledger.ts';
import { totalCost } from '../../core/lot-account.ts';
import type { Problem } from '../log/log-request.ts';
import { type LineField, type MaterialLine, materialLines, readLines } from '../log/material-lines.ts';
import { linesIn, type MakeDraft } from './make-draft.ts';
import { type MakeField, type ReadMake, readMake } from './make-request.ts';

/** A form as far as it can be worked out. */
export interface MakeWork extends Omit<ReadMake, 'request' | 'problems'> {
  readonly problems: readonly Problem<MakeField | LineField>[];
  readonly lines: readonly MaterialLine[];
  /** What is asked of stock, and what it would give; null until the form says what is to be made. */
  readonly asked: {
    readonly request: BatchToMake;
    readonly plan: BatchPlan;
    readonly uses: readonly PlannedUse[];
  } | null;
  /** What the treatment takes besides what is poured; null where nothing is poured. */
  readonly besides: TreatmentPlan | null;
  /** Why there is no plan although the form is filled in. */
  readonly refusal: string | null;
}

/** Works out what a batch and a treatment would take; nothing is written. */
export interface Planner {
  readonly ledger: Ledger;
  readonly today: Day;
  readonly planBatch: (request: BatchToMake) => BatchPlan | Refusal;
  readonly planTreatment: (request: TreatmentToLog) => TreatmentPlan | Refusal;
}

/** Works out a form: what the recipe takes, what she changed about it, and what is taken then. */
export function workOutBatch(draft: MakeDraft, planner: Planner): MakeWork {
  const { ledger, today, planBatch } = planner;
  const { request: byRecipe, problems, ...read } = readMake(draft, ledger.studio, today);
  const nothing = { ...read, problems, lines: [], asked: null, besides: null, refusal: null };
  if (byRecipe === null) return nothing;
  const first = planBatch(byRecipe);
  if (!first.ok) return { ...nothing, refusal: first.message };
  const lines = materialLines(linesIn(draft), { uses: usesOf(first, ledger) }, ledger.studio);
  const { asUsed, problems: lineProblems } = readLines(lines, ledger.studio);
  const request = asUsed.length === 0 ? byRecipe : { ...byRecipe, asUsed };
  const plan = asUsed.length === 0 ? first : planBatch(request);
  const besides = besidesThePoured(request, read.material?.name ?? null, planner.planTreatment);
  const refusal = [plan, besides].find((each) => each?.ok === false);
  return {
    ...read,
    problems: [...problems, ...lineProblems],
    lines,
    asked: plan.ok ? { request, plan, uses: usesOf(plan, ledger) } : null,
    besides: besides?.ok === true ? besides : null,
    refusal: refusal?.ok === false ? refusal.message : null,
  };
}

/** What a plan takes of the ingredients that are counted, one per material, with the lots that could be named instead. */
export function usesOf({ parts, date }: BatchPlan, ledger: Ledger): PlannedUse[] {
  const counted = parts.filter(({ material }) => material.counted);
  return [...new Set(counted.map(({ material }) => material))].map((material): PlannedUse => {
    const own = counted.filter((part) => part.material === material);
    const unit = own[0]?.unit ?? material.unit;
    const takes = own.flatMap((part) =>
      part.takes.map(({ lot, lotIs, cost, ...take }) => ({
        lot,
        lotIs,
        cost,
        quantity: take.quantity.mul(lot.converter.factor(take.unit, unit) ?? ZERO),
      })),
    );
    const inUnit = (part: (typeof own)[number]) => material.converter.factor(part.unit, unit) ?? ZERO;
    const quantity = sum(own.map((part) => part.needed.mul(inUnit(part))));
    return {
      material,
      unit,
      quantity,
      byRates: quantity,
      takes,
      missing: sum(own.map((part) => part.missing.mul(inUnit(part)))),
      cost: totalCost(takes.map(({ cost }) => cost)),
      alternatives: [],
      lots: lotsToName(ledger, material, unit, date),
    };
  });
}

/**
 * What a treatment takes besides the batch that is poured for it.
 * @param made the material that is poured
 */
export function besidesThePoured(
  { pour, date, by, notes, unit }: BatchToMake,
  made: string | null,
  planTreatment: Planner['planTreatment'],
): TreatmentPlan | Refusal | null {
  if (pour === null || made === null) return null;
  const { job, item, treatment, extent } = pour;
  // The batch comes from its new lot: by these amounts nothing of the material is taken from others.
  const fromTheBatch = { material: made, quantity: ZERO, unit, lot: null };
  const asUsed = [fromTheBatch];
  return planTreatment({ job, item, treatment, extent, date, minutes: null, by, notes, asUsed });
}
