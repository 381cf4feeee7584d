import { exact } from '../exact-number.ts';
import { unitNamed } from '../unit.ts';
import { spokenQuantity } from '../wording.ts';

const SHOWN_DIGITS = 3;

/**
 * A quantity that is reckoned ahead, for a person: in whole units from 100 on, below that to three digits, as nobody
 * knows it better.
 * @param unit the name of a unit
 */
export function plannedWords(quantity: number, unit: string): string {
  const isLarge = Math.abs(quantity) >= 10 ** (SHOWN_DIGITS - 1);
  const shown = isLarge ? Math.round(quantity) : Number(quantity.toPrecision(SHOWN_DIGITS));
  return spokenQuantity(exact(shown), unitNamed(unit));
}
