import { type Day, isoDay } from '../../core/day.ts';
import type { Studio } from '../../core/studio.ts';

/** The calendar year of a day. */
export function yearOf(day: Day): number {
  return Number(isoDay(day).slice(0, 'YYYY'.length));
}

/** From this year back to the one in which the first lot came in. */
export function yearsToChoose({ lots }: Studio, today: Day): number[] {
  const last = yearOf(today);
  const first = Math.min(last, ...lots.map(({ record }) => yearOf(record.received)));
  return Array.from({ length: last - first + 1 }, (_, back) => last - back);
}
