import type { Day } from './day.ts';

/**
 * The two ways in which spreadsheet files count days.
 * 1900: serial 1 is 1900-01-01, and serial 60 is a 29 February 1900 that never was (ISO/IEC 29500 keeps it).
 * 1904: serial 0 is 1904-01-01; the same day is 1462 less than in the 1900 system.
 */
export type DateSystem = 1900 | 1904;

/** The serial of 1970-01-01 in the 1900 system. */
const EPOCH_SERIAL = 25_569;
const OFFSET_1904 = 1462;
/** 9999-12-31, the last day that spreadsheets know. */
const LAST_SERIAL = 2_958_465;
const PHANTOM_LEAP_DAY = 60;

/**
 * The calendar day of a spreadsheet serial; a fraction (the time of day) is dropped.
 * @returns null where no day has that serial: negative, beyond the year 9999, or the 29 February 1900.
 */
export function dayOfSerial(serial: number, system: DateSystem): Day | null {
  const whole = Math.floor(serial) + (system === 1904 ? OFFSET_1904 : 0);
  if (!(serial >= 0 && whole >= 1 && whole <= LAST_SERIAL) || whole === PHANTOM_LEAP_DAY) return null;
  return (whole - EPOCH_SERIAL + (whole < PHANTOM_LEAP_DAY ? 1 : 0)) as Day;
}

/** The serial by which a file of the given date system stores a calendar day from 1904 on. */
export function serialOfDay(day: Day, system: DateSystem): number {
  const serial = day + EPOCH_SERIAL;
  const in1900 = serial <= PHANTOM_LEAP_DAY ? serial - 1 : serial;
  return system === 1904 ? in1900 - OFFSET_1904 : in1900;
}
