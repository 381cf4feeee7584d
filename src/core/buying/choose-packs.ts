import { type BasketModel, cashProgramme } from './basket-programme.ts';
import { tieProgramme } from './basket-ties.ts';
import type { ProgrammeSolution, SolveProgramme } from './integer-programme.ts';
import type { OfferRow } from './offer-row.ts';
import { relaxedModel, relaxedProgramme } from './relaxed-programme.ts';
import type { SettledNeed } from './settle-need.ts';

/** So many packs of a row, at least one. */
export interface ChosenRow {
  readonly need: SettledNeed;
  readonly row: OfferRow;
  readonly packs: number;
}

export type ChosenPacks =
  | { readonly kind: 'chosen'; readonly rows: readonly ChosenRow[] }
  | { readonly kind: 'failed'; readonly message: string };

/**
 * The packs of the cheapest basket. Where none holds everything, as few needs as can be are left open; a solver that
 * finds nothing gives no basket.
 */
export async function choosePacks(model: BasketModel, solve: SolveProgramme): Promise<ChosenPacks> {
  const first = await solve(cashProgramme(model));
  if (first.kind === 'optimal') return { kind: 'chosen', rows: await amongEqual(model, first, solve) };
  if (first.kind === 'failed') return first;
  const relaxed = await solve(relaxedProgramme(model));
  if (relaxed.kind !== 'optimal') return unsolved(relaxed);
  const rest = relaxedModel(model, relaxed.values);
  const second = await solve(cashProgramme(rest));
  if (second.kind !== 'optimal') return unsolved(second);
  return { kind: 'chosen', rows: await amongEqual(rest, second, solve) };
}

type Optimal = Extract<ProgrammeSolution, { kind: 'optimal' }>;

function unsolved(solution: Exclude<ProgrammeSolution, Optimal>): ChosenPacks {
  return {
    kind: 'failed',
    message: solution.kind === 'failed' ? solution.message : 'no packs make up what was asked for',
  };
}

/** Of the baskets that cost the same the best; where that can't be told in time, the one that was found first. */
async function amongEqual(model: BasketModel, found: Optimal, solve: SolveProgramme): Promise<ChosenRow[]> {
  const best = await solve(tieProgramme(model, Math.round(found.cost)));
  const { values } = best.kind === 'optimal' ? best : found;
  return model.rows.flatMap(({ row, need, packs }) => {
    const count = values.get(packs) ?? 0;
    return count > 0 ? [{ need, row, packs: count }] : [];
  });
}
