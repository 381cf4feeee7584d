import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { addCalendarYears, addDays, type Day, isoDay, parseDay, spokenDay } from '../../src/core/day.ts';
import { daysFrom } from './arbitraries.ts';

const YEAR_1 = -719_162;
const YEAR_9999_END = 2_932_896;

const day = (text: string): Day => {
  const read = parseDay(text);
  if (read === null) throw new Error(`${text} is no day`);
  return read;
};

describe('properties', () => {
  test('what is written is read back', () => {
    fc.assert(fc.property(daysFrom(YEAR_1), (any) => parseDay(isoDay(any)) === any));
  });

  test('is written as the platform itself writes that many days after 1970-01-01', () => {
    fc.assert(
      fc.property(daysFrom(YEAR_1), (any) => {
        expect(isoDay(any)).toBe(new Date(any * 86_400_000).toISOString().slice(0, 10));
      }),
    );
  });

  test('written days sort as days', () => {
    fc.assert(fc.property(daysFrom(YEAR_1), daysFrom(YEAR_1), (a, b) => a < b === isoDay(a) < isoDay(b)));
  });

  test('days added are taken off again', () => {
    fc.assert(
      fc.property(daysFrom(0), fc.integer({ min: 0, max: 100_000 }), (any, days) => {
        fc.pre(any + days <= YEAR_9999_END);
        expect(addDays(addDays(any, days), -days)).toBe(any);
      }),
    );
  });

  test('n years later has the same month and day, but for 29 February', () => {
    fc.assert(
      fc.property(daysFrom(YEAR_1), fc.integer({ min: 0, max: 50 }), (any, years) => {
        const year = Number(isoDay(any).slice(0, 4)) + years;
        fc.pre(year <= 9999 && !isoDay(any).endsWith('-02-29'));
        expect(isoDay(addCalendarYears(any, years))).toBe(
          `${String(year).padStart(4, '0')}${isoDay(any).slice(4)}`,
        );
      }),
    );
  });
});

describe('time zones', () => {
  afterEach(() => {
    vi.unstubAllEnvs();
  });

  test.each([
    ['America/Los_Angeles', 480],
    ['Pacific/Kiritimati', -840],
    ['Asia/Kolkata', -330],
  ])('a day is the same in %s', (zone, minutesBehind) => {
    vi.stubEnv('TZ', zone);
    expect(new Date(Date.UTC(2026, 0, 1)).getTimezoneOffset()).toBe(minutesBehind);
    for (const text of ['1900-01-01', '1969-12-31', '2026-03-08', '2026-03-29', '2026-10-25', '2026-11-01']) {
      expect(isoDay(day(text))).toBe(text);
      expect(day(text)).toBe(Date.parse(`${text}T00:00:00Z`) / 86_400_000);
      expect(isoDay(addCalendarYears(day(text), 1)).slice(4)).toBe(text.slice(4));
    }
    expect(spokenDay(day('2026-04-03'))).toBe('3 Apr 2026');
  });
});

describe('outside checks', () => {
  test('2000-01-01 is day 10957', () => {
    // POSIX time of 2000-01-01T00:00:00Z is 946 684 800 s: from memory; ÷ 86 400 by own arithmetic.
    expect(day('2000-01-01')).toBe(946_684_800 / 86_400);
  });

  test.each([
    // Gregorian leap years as in ISO 8601: from memory.
    ['2024-02-29', true],
    ['2000-02-29', true],
    ['1900-02-29', false],
    ['2026-02-29', false],
    ['2026-04-31', false],
    ['2026-13-01', false],
    ['2026-00-10', false],
  ])('%s is a day: %s', (text, exists) => {
    expect(parseDay(text) !== null).toBe(exists);
  });

  test.each([
    // Counted on a calendar by hand.
    ['2026-01-31', 30, '2026-03-02'],
    ['2024-02-28', 1, '2024-02-29'],
    ['2026-03-28', 2, '2026-03-30'],
    ['2026-12-31', 1, '2027-01-01'],
    ['2026-01-01', -1, '2025-12-31'],
    ['2026-05-05', 0, '2026-05-05'],
  ])('%s and %i days is %s', (from, days, to) => {
    expect(isoDay(addDays(day(from), days))).toBe(to);
  });
});

describe('edges', () => {
  test.each([
    '2026-04-03T00:00',
    '2026-04-03 09:15',
    '2026-04-03T23:59:59.999Z',
    '2026-04-03t23:59:59+02:00',
    '  2026-04-03 ',
  ])('a time of day behind the day is ignored: %s', (text) => {
    expect(parseDay(text)).toBe(day('2026-04-03'));
  });

  test.each([
    '',
    '2026',
    '2026-4-3',
    '03/04/2026',
    '26-04-03',
    '2026-04-03 to 2026-04-05',
    '2026-04-03 10:00 to 2026-04-05',
    '12026-04-03',
    '46023',
    '0000-01-01',
  ])('"%s" is no day', (text) => {
    expect(parseDay(text)).toBeNull();
  });

  test('a life without end stops at the last day that can be written', () => {
    expect(isoDay(addDays(day('2026-04-03'), 1e9))).toBe('9999-12-31');
    expect(isoDay(addDays(day('2026-04-03'), -1e9))).toBe('0001-01-01');
  });

  test('29 February falls back to the 28th', () => {
    expect(isoDay(addCalendarYears(day('2024-02-29'), 1))).toBe('2025-02-28');
    expect(isoDay(addCalendarYears(day('2024-02-29'), 4))).toBe('2028-02-29');
    expect(isoDay(addCalendarYears(day('2024-02-29'), -3))).toBe('2021-02-28');
  });
});
