import { KEPT_BECAUSE } from '../core/carry-over.ts';
import { spokenDay } from '../core/day.ts';
import { groupBy } from '../core/group-by.ts';
import { counted } from '../core/wording.ts';
import type { CarriedOver } from './carry-over.ts';

/** What was folded and what is left behind, in a sentence. */
export function foldedWords({ folded, lots, entries }: CarriedOver): string {
  if (folded === 0) return 'Nothing can be folded yet: the new workbook holds all that the old one does.';
  return (
    `${counted(folded, 'movement')} of ${counted(lots.length, 'lot')} folded into ` +
    `${counted(lots.length, 'Carried movement')}; ${counted(entries, 'entry', 'entries')} of the treatment log left behind.`
  );
}

/** How many movements stay, each with the reason. */
export function keptWords({ kept }: CarriedOver): string[] {
  return kept.map(({ why, count }) => `${count} ${KEPT_BECAUSE[why]}`);
}

/** The notices that the new workbook no longer gives, by their code: what they are about. */
export function goneWords({ gone }: CarriedOver): string[] {
  return [...groupBy(gone, ({ code }) => code)].map(
    ([code, some]) => `${code}: ${[...new Set(some.map(({ subject }) => subject))].join(', ')}`,
  );
}

/**
 * Why the old workbook is to be kept.
 * @param old what it is called
 */
export function keepOldWords({ day }: CarriedOver, old: string): string {
  return (
    `No figure of ${spokenDay(day)} or later changes. Keep ${old} with the records of the jobs: it alone tells which ` +
    'lots went into objects that are handed back, what those jobs cost, and the figures of days before.'
  );
}
