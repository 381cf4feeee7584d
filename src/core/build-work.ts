import { type AmountUsed, type AsUsed, readAmountsUsed } from './as-used.ts';
import { roundQuantity } from './exact-number.ts';
import { groupBy } from './group-by.ts';
import { keyOf } from './identifier.ts';
import type { Index } from './identities.ts';
import { type Notice, notice } from './notice.ts';
import { isUnreadable, type JobRecord, nameOf, type Records } from './records.ts';
import {
  type Entry,
  type Lot,
  type Material,
  type PlanRow,
  STUDIO_JOB,
  type Treatment,
  type UsageRate,
} from './studio.ts';

/** Cells of a usage rate without which its quantity can't be worked out. */
const RATE_BEARING = ['Fixed quantity', 'Fixed per', 'Waste %', 'Whole'];

export function buildTreatments(records: Records, materials: Index<Material>): Treatment[] {
  const rates = records.usageRates.flatMap((record): UsageRate[] => {
    const material = materials.get(keyOf(record.material));
    if (material === undefined || isUnreadable(record, RATE_BEARING)) return [];
    return [{ record, material, fixedPer: record.fixedPer ?? 'entry' }];
  });
  const ratesOf = groupBy(rates, ({ record }) => keyOf(record.treatment));
  return records.treatments.map((record) => ({
    record,
    name: nameOf(record.treatment, record),
    rates: record.treatment === null ? [] : (ratesOf.get(keyOf(record.treatment)) ?? []),
  }));
}

function jobIsKnown(job: string, jobs: Index<JobRecord>): boolean {
  return keyOf(job) === keyOf(STUDIO_JOB) || jobs.has(keyOf(job));
}

/**
 * The log entries with the amounts that their Notes say were really used. Of entries with one identifier only the
 * first can be drawn: the ledger couldn't tell them apart.
 */
export function buildEntries(
  records: Records,
  treatments: Index<Treatment>,
  jobs: Index<JobRecord>,
  materials: Index<Material>,
  lots: Index<Lot>,
): { readonly entries: readonly Entry[]; readonly notices: readonly Notice[] } {
  const seen = new Set<string>();
  const notices: Notice[] = [];
  const entries = records.entries.flatMap((record): Entry[] => {
    const key = record.entry === null ? null : keyOf(record.entry);
    const isFirst = key === null || !seen.has(key);
    if (key !== null) seen.add(key);
    const treatment = treatments.get(keyOf(record.treatment));
    if (treatment === undefined || !jobIsKnown(record.job, jobs)) return [];
    const asUsed = readAmountsUsed(record.notes).flatMap((amount): AsUsed[] => {
      const { used, fault } = findAmount(amount, materials, lots);
      if (fault !== null) {
        const message = `Notes gives an amount used, but ${fault}.`;
        notices.push(notice('unknown-reference', record.entry, record, 'Notes', message));
      }
      return used === null ? [] : [used];
    });
    return [{ record, name: nameOf(record.entry, record), key: isFirst ? key : null, treatment, asUsed }];
  });
  return { entries, notices };
}

/** What an amount names, and in words what of it names nothing. */
function findAmount(
  amount: AmountUsed,
  materials: Index<Material>,
  lots: Index<Lot>,
): { readonly used: AsUsed | null; readonly fault: string | null } {
  const material = materials.get(keyOf(amount.material));
  if (material === undefined) {
    const fault = `there is no material ${amount.material}: correct it, or the usage rates alone are taken`;
    return { used: null, fault };
  }
  const used = { material, quantity: roundQuantity(amount.quantity), unit: amount.unit };
  if (amount.lot === null) return { used: { ...used, lot: null }, fault: null };
  const lot = lots.get(keyOf(amount.lot));
  return lot !== undefined && lot.material === material
    ? { used: { ...used, lot }, fault: null }
    : {
        used: { ...used, lot: null },
        fault: `there is no lot ${amount.lot} of ${material.name}: correct it, or the draw order picks the lot`,
      };
}

export function buildPlan(records: Records, treatments: Index<Treatment>, jobs: Index<JobRecord>): PlanRow[] {
  return records.plan.flatMap((record): PlanRow[] => {
    const treatment = treatments.get(keyOf(record.treatment));
    if (treatment === undefined || !jobIsKnown(record.job, jobs)) return [];
    return [{ record, job: jobs.get(keyOf(record.job)) ?? null, treatment }];
  });
}
