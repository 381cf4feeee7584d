import { type BatchPlan, type BatchToMake, makeBatch, planBatch } from '../../actions/make-batch.ts';
import { planTreatment, type TreatmentPlan } from '../../actions/plan-treatment.ts';
import type { Lot } from '../../core/studio.ts';
import { MOVED } from '../../session/opened-workbook.ts';
import { sameBatch } from '../../session/same-batch.ts';
import { samePlan } from '../../session/same-plan.ts';
import type { Done } from '../../session/session-state.ts';
import type { PaneSession } from '../pane-session.ts';
import { madeSentence, pouredWords } from './make-words.ts';
import { besidesThePoured } from './make-work.ts';

/** What she saw before she said so. */
export interface ShownBatch {
  readonly request: BatchToMake;
  readonly plan: BatchPlan;
  readonly besides: TreatmentPlan | null;
}

/**
 * Makes a batch, and pours it where that is asked.
 * @returns the lot too, where it was made; where its figures would be other ones than she saw, nothing is written
 */
export async function makeIt(
  session: PaneSession,
  { request, plan, besides }: ShownBatch,
): Promise<{ readonly done: Done; readonly lot: Lot | null }> {
  let lot: Lot | null = null;
  const done = await session.carryOut(
    request.pour === null ? 'Making' : 'Making and pouring',
    (snapshot, today, random) => {
      const now = planBatch(snapshot, request, today);
      const treatment = besidesThePoured(request, now.ok ? now.recipe.record.makes : null, (asked) =>
        planTreatment(snapshot, asked, today),
      );
      if (now.ok && !sameBatch(now, plan)) return MOVED;
      if (treatment?.ok === true && besides !== null && !samePlan(treatment, besides)) return MOVED;
      return makeBatch(snapshot, request, today, random);
    },
    (written) => {
      lot = written.lot;
      const { currency } = written.drawing.ledger.studio.settings;
      return `${madeSentence(written.plan, written.lot.name, currency)}${pouredWords(request)}`;
    },
  );
  return { done, lot: done.kind === 'done' ? lot : null };
}
