import type { Day } from './day.ts';
import {
  compareEntries,
  entryNeeds,
  entryStatus,
  isCountable,
  isDrawable,
  rateQuantity,
  ratesInForce,
} from './entry-needs.ts';
import { type Exact, smaller, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import { compareText } from './notice.ts';
import { stillNeeded } from './still-needed.ts';
import type { Entry, Material, PlanRow, UsageRate } from './studio.ts';

/** What a plan row will take of one material. */
export interface PlannedUse {
  readonly row: PlanRow;
  readonly material: Material;
  /** The day it is planned for; overdue and undated ones count as today. */
  readonly day: Day;
  /** In the material's stock unit. */
  readonly quantity: Exact;
}

/** What a log entry that isn't drawn, or in part only, still takes of one material. */
export interface UndrawnUse {
  readonly entry: Entry;
  readonly material: Material;
  /** In the material's stock unit. */
  readonly quantity: Exact;
}

/** A plan row with the extent that is still to be done. */
export interface OpenPlanRow {
  readonly row: PlanRow;
  readonly day: Day;
  readonly extent: Exact;
}

/**
 * What jobs booked or on the bench will still take, earliest first: their plan rows by the usage rates, less the
 * extents already logged for the same job, item and treatment, which go to the earliest rows. Rows done are nil.
 * A fixed quantity counts while any extent remains; one per day or per job counts once for that day or job.
 */
export function plannedUses(ledger: Ledger, today: Day): PlannedUse[] {
  const shared = new Set<string>();
  return openPlanRows(ledger, today).flatMap(({ row, day, extent }) =>
    ratesInForce(row.treatment.rates, () => false)
      .filter((rate) => isCountable(ledger, rate))
      .flatMap((rate) => {
        const withFixed = takesSharedFixed(shared, rate, row, day);
        const quantity = inStockUnit(rate, rateQuantity(rate, extent, withFixed));
        return quantity === null ? [] : [{ row, material: rate.material, day, quantity }];
      }),
  );
}

/** Whether a row is the first to take a rate's fixed quantity on its day or in its job; notes it where it is. */
export function takesSharedFixed(
  shared: Set<string>,
  rate: UsageRate,
  row: PlanRow,
  day: Day | null,
): boolean {
  if (rate.fixedPer === 'entry') return true;
  const scope = rate.fixedPer === 'day' ? String(day) : keyOf(row.record.job);
  const key = `${rate.record.place.table} ${rate.record.place.row} ${rate.fixedPer} ${scope}`;
  if (shared.has(key)) return false;
  shared.add(key);
  return true;
}

/**
 * What log entries up to today still take: all of it where nothing is drawn, the rest where a part is. They stand in
 * the order in which they are drawn.
 */
export function undrawnUses(ledger: Ledger, today: Day): UndrawnUse[] {
  return ledger.studio.entries
    .filter(isDrawable)
    .filter((entry) => ['not drawn', 'part'].includes(entryStatus(ledger, entry, today)))
    .toSorted(compareEntries)
    .flatMap((entry) =>
      stillNeeded(ledger, entry, entryNeeds(ledger, entry, today), today).flatMap(({ need, missing }) => {
        const { material, unit } = need;
        const factor = material.converter.factor(unit, material.unit);
        return factor === null || missing.compare(0) <= 0
          ? []
          : [{ entry, material, quantity: missing.mul(factor) }];
      }),
    );
}

function inStockUnit(rate: UsageRate, quantity: Exact): Exact | null {
  const factor = rate.material.converter.factor(rate.record.unit, rate.material.unit);
  return factor === null ? null : quantity.mul(factor);
}

/** The plan rows of jobs booked or on the bench of which something is still to be done, by day. */
export function openPlanRows(ledger: Ledger, today: Day): OpenPlanRow[] {
  const logged = loggedExtents(ledger, today);
  return ledger.studio.plan
    .filter(
      ({ job, record }) => (job?.stage === 'Booked' || job?.stage === 'On the bench') && record.done !== true,
    )
    .map((row) => ({ row, day: dayOf(row, today) }))
    .sort(
      (a, b) =>
        a.day - b.day ||
        (a.row.record.plannedFor ?? today) - (b.row.record.plannedFor ?? today) ||
        compareText(a.row.record.line ?? '', b.row.record.line ?? '') ||
        a.row.record.place.row - b.row.record.place.row,
    )
    .flatMap(({ row, day }) => {
      const key = workKey(row.record);
      const done = smaller(logged.get(key) ?? ZERO, row.record.extent);
      logged.set(key, (logged.get(key) ?? ZERO).sub(done));
      const extent = row.record.extent.sub(done);
      return extent.compare(0) > 0 ? [{ row, day, extent }] : [];
    });
}

function dayOf({ record }: PlanRow, today: Day): Day {
  return record.plannedFor === null || record.plannedFor < today ? today : record.plannedFor;
}

function workKey(record: {
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
}): string {
  return [record.job, record.item ?? '', record.treatment].map(keyOf).join('\u0000');
}

function loggedExtents(ledger: Ledger, today: Day): Map<string, Exact> {
  const logged = new Map<string, Exact>();
  for (const { record } of ledger.studio.entries) {
    if (record.date > today) continue;
    const key = workKey(record);
    logged.set(key, (logged.get(key) ?? ZERO).add(record.extent));
  }
  return logged;
}
