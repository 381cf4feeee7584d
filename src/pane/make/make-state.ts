import { signal } from '@preact/signals';
import type { LotName } from '../route.ts';
import { EMPTY_MAKE, type MakeDraft } from './make-draft.ts';

/** What stands in the form; it outlives a change of section, an error, and every new reading of the workbook. */
export const makeDraft = signal<MakeDraft>(EMPTY_MAKE);

/** The forms that wait until what they lack is made, the last one on top: she comes back to it. */
export const waitingDrafts = signal<readonly MakeDraft[]>([]);

/** The lot that was made last; null where none was. */
export const lastMade = signal<LotName | null>(null);

export function changeMake(change: (draft: MakeDraft) => MakeDraft): void {
  makeDraft.value = change(makeDraft.value);
}

/** Puts the form aside and begins another one. */
export function makeFirst(draft: MakeDraft): void {
  waitingDrafts.value = [...waitingDrafts.value, makeDraft.value];
  makeDraft.value = draft;
}

/**
 * Goes back to the form that was put aside last.
 * @returns whether there was one
 */
export function backToWaiting(): boolean {
  const draft = waitingDrafts.value.at(-1);
  if (draft === undefined) return false;
  waitingDrafts.value = waitingDrafts.value.slice(0, -1);
  makeDraft.value = draft;
  return true;
}
