import { UTCDate } from '@date-fns/utc';
import { addYears, format, isValid, parse } from 'date-fns';

/**
 * A calendar day, counted in whole days from 1970-01-01 (day 0).
 * It has no time and no zone, so adding n to it is always n calendar days later.
 */
export type Day = number & { readonly __unit: 'day' };

export const DAYS_PER_WEEK = 7;

const MILLISECONDS = 86_400_000;
const ISO = /^(\d{4}-\d{2}-\d{2})(?:[T ]\d{2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?:Z|[+-]\d{2}:?\d{2})?)?$/i;
const REFERENCE = new UTCDate(0);
/** 0001-01-01 and 9999-12-31, between which a day has a four-digit year. */
const FIRST_DAY = -719_162;
const LAST_DAY = 2_932_896;

/**
 * Reads a day written as YYYY-MM-DD; a time of day behind it is ignored.
 * @returns the day, or null where the text is anything else or no day of the calendar (2026-02-30).
 */
export function parseDay(text: string): Day | null {
  const iso = ISO.exec(text.trim())?.[1];
  if (iso === undefined) return null;
  const date = parse(iso, 'yyyy-MM-dd', REFERENCE);
  return isValid(date) ? dayOfDate(date) : null;
}

/** Writes a day as YYYY-MM-DD. */
export function isoDay(day: Day): string {
  return format(dateOfDay(day), 'yyyy-MM-dd');
}

/** Writes a day for people, unmistakable in any country: 3 Apr 2026. */
export function spokenDay(day: Day): string {
  return format(dateOfDay(day), 'd MMM yyyy');
}

/**
 * The day that is `days` calendar days later (earlier where negative).
 * It stops at 9999-12-31 (0001-01-01), so that a life of 10 000 000 days still ends on a day that can be
 * written.
 */
export function addDays(day: Day, days: number): Day {
  return Math.min(Math.max(day + days, FIRST_DAY), LAST_DAY) as Day;
}

/** The same day of the year `years` later; 29 February falls back to the 28th. */
export function addCalendarYears(day: Day, years: number): Day {
  return dayOfDate(addYears(dateOfDay(day), years));
}

function dayOfDate(date: Date): Day {
  return Math.round(date.getTime() / MILLISECONDS) as Day;
}

function dateOfDay(day: Day): UTCDate {
  return new UTCDate(day * MILLISECONDS);
}
