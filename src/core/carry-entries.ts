import type { Day } from './day.ts';
import { entryStatus, extentDrawn, isDrawable } from './entry-needs.ts';
import { roundQuantity } from './exact-number.ts';
import { groupBy } from './group-by.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import type { Row } from './records.ts';
import { type Entry, type Material, STUDIO_JOB, type Studio } from './studio.ts';

const CLOSED: ReadonlySet<string> = new Set(['Handed back', 'Declined']);

/**
 * Whether a job's trace is over: it is handed back or declined. What is nobody's, and the job STUDIO where it has no
 * row, has no object to trace. A job that nobody knows stays open.
 */
export function isClosedJob({ jobsByKey }: Studio, job: string | null): boolean {
  if (job === null) return true;
  const record = jobsByKey.get(keyOf(job));
  if (record === undefined) return keyOf(job) === keyOf(STUDIO_JOB);
  return record.stage !== null && CLOSED.has(record.stage);
}

/**
 * The log entries that a new workbook can do without, as far as they tell themselves: of closed jobs, before a day,
 * drawn in full for the extent that they say, and nothing about them in doubt.
 */
export function closedEntries(
  ledger: Ledger,
  today: Day,
  before: Day,
  isInDoubt: (row: Row) => boolean,
): Entry[] {
  const { studio } = ledger;
  const times = groupBy(studio.entries, ({ name }) => keyOf(name));
  return studio.entries.filter((entry) => {
    const { key, record, name } = entry;
    if (key === null || record.date >= before || !isClosedJob(studio, record.job)) return false;
    if ((times.get(keyOf(name))?.length ?? 0) > 1 || isInDoubt(record) || record.unreadable.size > 0)
      return false;
    if (entryStatus(ledger, entry, today) !== 'drawn') return false;
    return roundQuantity(extentDrawn(ledger, entry, today)).equals(roundQuantity(record.extent));
  });
}

/**
 * What entries share with each other a fixed quantity that one of them has drawn: they go together or stay together,
 * or another would take it anew.
 */
export function sharingKeys({ treatment, record }: Entry): string[] {
  const sharings = new Set(
    treatment.rates
      .filter((rate) => rate.record.fixedQuantity !== null && rate.fixedPer !== 'entry')
      .map((rate) => rate.fixedPer),
  );
  return [...sharings].map((per) =>
    [keyOf(treatment.name), per, per === 'day' ? String(record.date) : keyOf(record.job)].join('\u0000'),
  );
}

/** The earliest day from which an entry that is not drawn in full will still be drawn, by the materials that it may take. */
export function waitingSince(ledger: Ledger, today: Day): ReadonlyMap<Material, Day> {
  const since = new Map<Material, Day>();
  for (const entry of ledger.studio.entries.filter(isDrawable)) {
    const status = entryStatus(ledger, entry, today);
    if (status !== 'not drawn' && status !== 'part') continue;
    const { date } = entry.record;
    for (const { material } of [...entry.treatment.rates, ...entry.asUsed]) {
      const before = since.get(material);
      if (before === undefined || date < before) since.set(material, date);
    }
  }
  return since;
}
