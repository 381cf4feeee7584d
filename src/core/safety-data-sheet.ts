import { addCalendarYears, type Day } from './day.ts';
import type { Settings } from './settings.ts';
import type { Material } from './studio.ts';

/** The day on which the safety data sheet of a material was last read, its offers' too; null where none is given. */
export function sheetLastRead(material: Material): Day | null {
  const days = [material.record, ...material.offers]
    .map((row) => row.sdsChecked)
    .filter((day) => day !== null);
  return days.length === 0 ? null : (Math.max(...days) as Day);
}

/** The last day by which it should be read again, by the setting sds years. */
export function sheetReadAgainBy(lastRead: Day, { sdsYears }: Settings): Day {
  return addCalendarYears(lastRead, sdsYears);
}
