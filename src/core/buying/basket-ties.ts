import { keyOf } from '../identifier.ts';
import {
  type BasketModel,
  cashCosts,
  cashProgramme,
  type ModelRow,
  variablesOf,
} from './basket-programme.ts';
import type { IntegerProgramme } from './integer-programme.ts';

/**
 * Among the baskets that cost no more than a sum, the one with the fewest orders; then the one with the fewest rows
 * that aren't of a material's preferred supplier; then the one that leaves least over.
 * @param cash what the cheapest basket costs, in coins
 */
export function tieProgramme(model: BasketModel, cash: number): IntegerProgramme {
  const { rows, suppliers } = model;
  const shares = rows.map((row): [string, number] => [row.packs, shareOf(row)]);
  const mostOver = rows.reduce((sum, row) => sum + shareOf(row) * packsFor(row, cash), 0);
  const elsewhere = mostOver + 1;
  const order = elsewhere * (rows.length + 1);
  const costs = new Map([
    ...shares,
    ...rows.flatMap(({ used, row, need }): [string, number][] => {
      const preferred = need.need.supplier;
      const isElsewhere = preferred !== null && keyOf(preferred) !== row.supplier;
      return used !== null && isElsewhere ? [[used, elsewhere]] : [];
    }),
    ...suppliers.map(({ ordered }): [string, number] => [ordered, order]),
  ]);
  const terms = [...cashCosts(model)].map(([variable, factor]) => ({ variable, factor }));
  return {
    variables: variablesOf(model, costs),
    constraints: [...cashProgramme(model).constraints, { terms, relation: '<=', bound: cash }],
  };
}

/** What a pack is of all that is asked for of its material, so that sheets and grams can be added up. */
function shareOf({ row, need }: ModelRow): number {
  return need.asked > 0 ? row.offer.packQuantity / need.asked : 0;
}

function packsFor({ row, most }: ModelRow, cash: number): number {
  return row.price > 0 ? Math.min(most, Math.floor(cash / row.price)) : most;
}
