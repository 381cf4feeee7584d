import { expect } from 'vitest';
import type { KeptBecause } from '../../../src/core/carry-over.ts';
import { isoDay } from '../../../src/core/day.ts';
import type { MovementRecord, Records } from '../../../src/core/records.ts';
import { carriedOver } from './carried-records.ts';
import { saidOn } from './said.ts';
import { lot, material, movement } from './stock-records.ts';
import { on, recordsOf } from './studio-of.ts';
import { job } from './work-records.ts';

export const DAY = on('2026-01-01');
const JOBS = [job('over', 'Handed back'), job('open', 'On the bench')];

/** A studio with one lot of paste, 100 g for 10.00, and its movements. */
export function paste(movements: readonly MovementRecord[], more: Partial<Records> = {}): Records {
  return recordsOf({
    materials: [material('Paste', 'g')],
    lots: [lot('A', 'Paste', '2024-01-01', 100, { cost: '10.00' })],
    jobs: JOBS,
    movements,
    ...more,
  });
}

export function use(
  name: string,
  day: string,
  quantity: number | string,
  of: string | null = null,
  entryOf = '',
): MovementRecord {
  return movement(name, day, 'Use', 'A', quantity, {
    ...(of === null ? {} : { job: of }),
    ...(entryOf === '' ? {} : { entry: entryOf }),
  });
}

/** The movements afterwards, by name, Carried ones with their quantity; no figure must differ. */
export function folded(records: Records): string[] {
  const { records: carried } = carriedOver(records, DAY);
  for (const day of ['2026-01-01', '2026-06-01']) {
    const without = ['too-early', 'expired-used', 'set-aside-used'] as const;
    expect(saidOn(carried, on(day), without)).toEqual(saidOn(records, on(day), without));
  }
  return carried.movements
    .map(({ movement: name, kind, lot: of, quantity, unit: { name: in_ }, date }) =>
      kind === 'Carried' ? `${of} ${quantity.toString()} ${in_} ${isoDay(date)}` : (name ?? ''),
    )
    .toSorted();
}

export function kept(records: Records): Partial<Record<KeptBecause, number>> {
  return Object.fromEntries(carriedOver(records, DAY).answer.kept.map(({ why, count }) => [why, count]));
}
