import { decimal, type Exact, ZERO } from './exact-number.ts';
import { spokenNumber } from './wording.ts';

/** The end of the pH scale as strips and meters at a bench have it. */
const HIGHEST_PH = decimal('14');

/** Why a figure can't be a pH; null where it can. */
export function noPh(ph: Exact): string | null {
  return ph.compare(ZERO) < 0 || ph.compare(HIGHEST_PH) > 0
    ? `A pH of ${spokenNumber(ph)} can't be: 0 to 14 is right.`
    : null;
}
