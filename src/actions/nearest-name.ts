import { distance } from 'fastest-levenshtein';
import { keyOf } from '../core/identifier.ts';

const MOST_SUGGESTIONS = 3;
/** The share of letters that may differ in a name that is still suggested. */
const SHARE_THAT_DIFFERS = 0.4;

/** The names that are most like the one that was typed, the most alike first; at most three. */
export function nearest(typed: string, names: readonly string[]): string[] {
  const key = keyOf(typed);
  return names
    .filter((name) => name !== '')
    .map((name) => ({ name, steps: keyOf(name).includes(key) ? 0 : distance(key, keyOf(name)) }))
    .filter(({ name, steps }) => steps <= SHARE_THAT_DIFFERS * Math.max(key.length, name.length))
    .sort((a, b) => a.steps - b.steps)
    .slice(0, MOST_SUGGESTIONS)
    .map(({ name }) => name);
}
