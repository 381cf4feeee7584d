import { keyOf } from '../core/identifier.ts';
import { spokenQuantity } from '../core/wording.ts';
import type { BatchDraft } from './batch-draft.ts';
import type { BatchPour } from './batch-to-make.ts';
import { findNamed, type NamedTreatment, type TreatmentToLog } from './treatment-to-log.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** The treatment to be logged for a batch that is poured out at once: it takes its amount from the new lot. */
export function pouredRequest(
  { lot, plan }: BatchDraft,
  { job, item, treatment, extent, amount }: BatchPour,
  by: string | null,
): TreatmentToLog {
  return {
    job,
    item,
    treatment,
    extent,
    date: plan.date,
    minutes: null,
    by,
    notes: null,
    asUsed: [
      {
        material: lot.material.name,
        quantity: amount ?? plan.yielded,
        unit: plan.unit,
        lot: lot.name,
      },
    ],
  };
}

/**
 * Finds what the treatment names, in the ledger with the new lot; refused where the treatment doesn't use what was
 * made, or more is to be poured out than there is.
 */
export function findPour(
  { ledger, lot, plan }: BatchDraft,
  request: TreatmentToLog,
): NamedTreatment | Refusal {
  const named = findNamed(ledger.studio, request);
  if (!named.ok) return named;
  const { name } = lot.material;
  if (!named.treatment.rates.some(({ material }) => material === lot.material)) {
    const users = ledger.studio.treatments
      .filter(({ rates }) => rates.some(({ material }) => keyOf(material.name) === keyOf(name)))
      .map((treatment) => treatment.name);
    const hint = users.length === 0 ? 'No treatment does' : `${users.join(' and ')} would`;
    return refuse(
      `${named.treatment.name} doesn't use ${name} by the usage rates, so it can't be poured out for it. ${hint}.`,
    );
  }
  const amount = request.asUsed[0]?.quantity ?? plan.yielded;
  if (amount.compare(plan.yielded) > 0) {
    return refuse(
      `${spokenQuantity(amount, plan.unit)} can't be poured out of ${spokenQuantity(plan.yielded, plan.unit)}.`,
    );
  }
  return named;
}
