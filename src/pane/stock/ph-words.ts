import type { Exact } from '../../core/exact-number.ts';
import type { Material } from '../../core/studio.ts';
import { spokenNumber } from '../../core/wording.ts';

/** Between which values the pH of a material should lie: 7.5 to 9, from 7, up to 8; null where nothing is said. */
export function phRangeWords({ record: { phLow, phHigh } }: Material): string | null {
  if (phLow !== null && phHigh !== null) return `${spokenNumber(phLow)} to ${spokenNumber(phHigh)}`;
  if (phLow !== null) return `${spokenNumber(phLow)} and above`;
  return phHigh === null ? null : `${spokenNumber(phHigh)} and below`;
}

/** Whether a pH lies outside of what it should be. */
export function isPhOutside({ record: { phLow, phHigh } }: Material, ph: Exact): boolean {
  return (phLow !== null && ph.compare(phLow) < 0) || (phHigh !== null && ph.compare(phHigh) > 0);
}
