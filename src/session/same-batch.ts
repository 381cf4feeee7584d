import type { BatchPlan } from '../actions/make-batch.ts';

/** Whether two plans of a batch take the same quantities from the same lots at the same cost, and keep as long. */
export function sameBatch(a: BatchPlan, b: BatchPlan): boolean {
  return summary(a) === summary(b);
}

function summary({ parts, cost, goodUntil, amount, yielded, unit }: BatchPlan): string {
  return JSON.stringify([
    [amount.toFraction(), yielded.toFraction(), unit.name],
    String(cost),
    goodUntil,
    parts.map(({ material, missing, takes }) => [
      material.name,
      missing.toFraction(),
      takes.map(({ lot, quantity }) => [lot.name, quantity.toFraction()]),
    ]),
  ]);
}
