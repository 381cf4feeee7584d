import { signal } from '@preact/signals';
import { EMPTY_DRAFT, type LogDraft, withJobSettled } from './draft.ts';

/** What stands in the form; it outlives a change of section, an error, and every new reading of the workbook. */
export const logDraft = signal<LogDraft>(EMPTY_DRAFT);

/** The fields that she has left with something in them: what is wrong with these is told at once. */
export const leftFields = signal<ReadonlySet<string>>(new Set());

/**
 * Changes the draft.
 * @param offered the job that is offered now: with the first change it is the one that is meant
 */
export function changeDraft(offered: string | null, change: (draft: LogDraft) => LogDraft): void {
  logDraft.value = change(withJobSettled(logDraft.value, offered));
}

/** Notes that something is typed into a field: what is wrong with it is told once it is left again. */
export function enterField(field: string): void {
  if (!leftFields.value.has(field)) return;
  leftFields.value = new Set([...leftFields.value].filter((left) => left !== field));
}

/** Notes that a field was left. */
export function leaveField(field: string): void {
  if (!leftFields.value.has(field)) leftFields.value = new Set([...leftFields.value, field]);
}
