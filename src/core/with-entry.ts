import type { AsUsed } from './as-used.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import type { EntryRecord } from './records.ts';
import type { Entry, Treatment } from './studio.ts';

/** The ledger of a studio that has one more log entry, not drawn yet. */
export function withEntry(
  ledger: Ledger,
  record: EntryRecord & { readonly entry: string },
  treatment: Treatment,
  asUsed: readonly AsUsed[],
): { readonly ledger: Ledger; readonly entry: Entry } {
  const entry: Entry = { record, name: record.entry, key: keyOf(record.entry), treatment, asUsed };
  const { studio } = ledger;
  const entriesOfTreatment = new Map(studio.entriesOfTreatment);
  entriesOfTreatment.set(treatment, [...(entriesOfTreatment.get(treatment) ?? []), entry]);
  return {
    ledger: { ...ledger, studio: { ...studio, entries: [...studio.entries, entry], entriesOfTreatment } },
    entry,
  };
}
