import type { Day } from '../day.ts';
import type { Exact } from '../exact-number.ts';
import type { Ledger } from '../ledger.ts';
import { openPlanRows } from '../planned-use.ts';
import { type JobRecord, nameOf } from '../records.ts';
import type { JobProblem, JobRow } from './plan-problem.ts';

/** The jobs booked or on the bench with what is still to be done for each, by day. */
export function jobProblems(ledger: Ledger, today: Day): JobProblem[] {
  const rows = new Map<JobRecord, JobRow[]>();
  for (const { row, extent } of openPlanRows(ledger, today)) {
    if (row.job === null) continue;
    const own = rows.get(row.job) ?? [];
    own.push({
      item: row.record.item,
      treatment: row.treatment.name,
      plannedFor: row.record.plannedFor,
      standingHours: row.treatment.record.standingHours?.valueOf() ?? 0,
      minutes: minutesOf(row.treatment.record, extent),
    });
    rows.set(row.job, own);
  }
  return [...rows].map(([job, own]) => ({ job: nameOf(job.job, job), due: job.due, rows: own }));
}

function minutesOf(
  { setupMinutes, minutesPerExtent }: { setupMinutes: Exact | null; minutesPerExtent: Exact | null },
  extent: Exact,
): number {
  return (setupMinutes?.valueOf() ?? 0) + (minutesPerExtent?.mul(extent).valueOf() ?? 0);
}
