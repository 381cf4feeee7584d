import { distance } from 'fastest-levenshtein';
import { keyOf } from '../core/identifier.ts';
import { type Refusal, refuse } from './writing-desk.ts';

const MOST_SUGGESTIONS = 3;
/** The share of letters that may differ in a name that is still suggested. */
const SHARE_THAT_DIFFERS = 0.4;

/** The refusal of a name that no row bears, with the names that may have been meant. */
export function noSuchName(what: string, name: string, where: string, names: readonly string[]): Refusal {
  const near = nearest(name, names);
  const hint = near.length === 0 ? `Add it to ${where} first.` : `Did you mean ${near.join(' or ')}?`;
  return refuse(`There is no ${what} called ${name} in ${where}. ${hint}`);
}

/** The names that are most like the one that was typed, the most alike first; at most three. */
export function nearest(typed: string, names: readonly string[]): string[] {
  const key = keyOf(typed);
  return names
    .filter((name) => name !== '')
    .map((name) => ({ name, steps: keyOf(name).includes(key) ? 0 : distance(key, keyOf(name)) }))
    .filter(({ name, steps }) => steps <= SHARE_THAT_DIFFERS * Math.max(key.length, name.length))
    .toSorted((a, b) => a.steps - b.steps)
    .slice(0, MOST_SUGGESTIONS)
    .map(({ name }) => name);
}
