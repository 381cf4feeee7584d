import type { TreatmentPlan } from '../actions/plan-treatment.ts';

/** Whether two plans take the same quantities from the same lots at the same cost. */
export function samePlan(a: TreatmentPlan, b: TreatmentPlan): boolean {
  return summary(a) === summary(b);
}

function summary({ waits, uses, cost }: TreatmentPlan): string {
  return JSON.stringify([
    waits,
    String(cost),
    uses.map(({ material, takes, missing }) => [
      material.name,
      missing.toFraction(),
      takes.map(({ lot, quantity }) => [lot.name, quantity.toFraction()]),
    ]),
  ]);
}
