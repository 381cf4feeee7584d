import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Day, isoDay, parseDay } from '../../src/core/day.ts';
import { dayOfSerial, serialOfDay } from '../../src/core/serial-date.ts';
import { daysFrom } from './arbitraries.ts';

const START_1900 = parseDay('1900-01-01') ?? Number.NaN;
const START_1904 = parseDay('1904-01-01') ?? Number.NaN;

const written = (day: Day | null): string | null => (day === null ? null : isoDay(day));

describe('properties', () => {
  test('a day is read back from its serial, whatever the time of day', () => {
    const timeOfDay = fc.double({ min: 0, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(daysFrom(START_1900), timeOfDay, (day, time) => {
        expect(dayOfSerial(serialOfDay(day, 1900) + time, 1900)).toBe(day);
      }),
    );
    fc.assert(
      fc.property(daysFrom(START_1904), timeOfDay, (day, time) => {
        expect(dayOfSerial(serialOfDay(day, 1904) + time, 1904)).toBe(day);
      }),
    );
  });

  test('the next day has the next serial, but for the day after 1900-02-28', () => {
    fc.assert(
      fc.property(daysFrom(START_1900), (day) => {
        const next = serialOfDay((day + 1) as Day, 1900);
        expect(next - serialOfDay(day, 1900)).toBe(isoDay(day) === '1900-02-28' ? 2 : 1);
      }),
    );
  });

  test('the serial of the 1904 system is 1462 less', () => {
    // 1904 serial = 1900 serial − 1462: from memory, checked by own arithmetic (4 years and the phantom day).
    fc.assert(
      fc.property(daysFrom(START_1904), (day) => serialOfDay(day, 1904) === serialOfDay(day, 1900) - 1462),
    );
  });
});

describe('outside checks', () => {
  test.each([
    [1, '1900-01-01'], // a spreadsheet help page, read
    [59, '1900-02-28'], // the day before the phantom one
    [60, null], // 29 February 1900, which ECMA-376 and ISO/IEC 29500 keep: a library's documentation, read
    [61, '1900-03-01'], // a library's documentation, read
    [36161, '1999-01-01'], // a spreadsheet help page, read
    [40179, '2010-01-01'], // a library's documentation, read
    [45351, '2024-02-29'], // own arithmetic
    [46023, '2026-01-01'], // own arithmetic
    [2_958_465, '9999-12-31'], // the last date of spreadsheets: from memory
  ])('serial %i of the 1900 system is %s', (serial, text) => {
    expect(written(dayOfSerial(serial, 1900))).toBe(text);
    if (text !== null) expect(serialOfDay(parseDay(text) as Day, 1900)).toBe(serial);
  });

  test.each([
    [0, '1904-01-01'], // from memory
    [60, '1904-03-01'], // 1904 is a leap year: counted by hand, 31 + 29 days
    [34699, '1999-01-01'], // 36161 − 1462: from memory, recomputed
    [44561, '2026-01-01'], // 46023 − 1462: own arithmetic
    [2_957_003, '9999-12-31'], // 2958465 − 1462: own arithmetic
  ])('serial %i of the 1904 system is %s', (serial, text) => {
    expect(written(dayOfSerial(serial, 1904))).toBe(text);
    expect(serialOfDay(parseDay(text) as Day, 1904)).toBe(serial);
  });
});

describe('edges', () => {
  test.each([0, 0.75, -1, -0.5, 60.5, 2_958_466, 1e300, Number.NaN, Number.POSITIVE_INFINITY])(
    '%d is no day in the 1900 system',
    (serial) => {
      expect(dayOfSerial(serial, 1900)).toBeNull();
    },
  );

  test.each([-1, -0.5, -1402, 2_957_004, Number.NaN, Number.NEGATIVE_INFINITY])(
    '%d is no day in the 1904 system',
    (serial) => {
      expect(dayOfSerial(serial, 1904)).toBeNull();
    },
  );

  test('the last minute of the last day is still that day', () => {
    expect(written(dayOfSerial(2_958_465.9993, 1900))).toBe('9999-12-31');
  });
});
