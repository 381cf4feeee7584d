import type { FunctionName } from './evaluate-call.ts';
import { cost, cover, goodUntil, left, orderAt, usable } from './functions.ts';

/** The functions by the ids that functions.json gives them. */
export const FUNCTIONS_BY_ID = {
  LEFT: left,
  USABLE: usable,
  GOODUNTIL: goodUntil,
  COST: cost,
  COVER: cover,
  ORDERAT: orderAt,
} as const satisfies Record<FunctionName, unknown>;

/**
 * Tells the spreadsheet which code stands behind the functions. To be called while the page loads, before
 * Office.onReady: cells that were calculated meanwhile wait for it.
 * @returns false where the spreadsheet has no custom functions, as on a tablet
 */
export function associateFunctions(): boolean {
  if (typeof CustomFunctions === 'undefined') return false;
  for (const [id, code] of Object.entries(FUNCTIONS_BY_ID)) CustomFunctions.associate(id, code);
  return true;
}
