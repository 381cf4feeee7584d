import { describe, expect, test } from 'vitest';
import type { Arrival } from '../../../src/core/planning/plan-problem.ts';
import { projectionOf } from '../../../src/core/projection/projection.ts';
import { dayAfter, lotOf, planned, sourcesOf, TODAY, undrawn } from './helpers/some-sources.ts';

function arrival(offset: number | null, quantity: number): Arrival {
  return {
    order: 'O1',
    line: '1',
    supplier: 'S1',
    day: offset === null ? null : dayAfter(offset),
    quantity,
  };
}

function usableOn(sources: Parameters<typeof sourcesOf>[0], ...offsets: readonly number[]) {
  const { days } = projectionOf(sourcesOf(sources));
  return offsets.map((offset) => days[offset]?.usable);
}

describe('the first short day', () => {
  test('names the job that is hit, with what that job lacks', () => {
    const { firstShort, missed } = projectionOf(
      sourcesOf({
        lots: [lotOf('A', 10)],
        demands: [
          planned(2, 8, 'J1'),
          planned(3, 5, 'J2'),
          planned(3, 4, 'J3'),
          planned(3, 1, 'J2', 'Mending'),
        ],
      }),
    );
    expect(firstShort).toEqual({ day: dayAfter(3), job: 'J2', missing: 4 });
    expect(missed.map(({ job, what, quantity }) => [job, what, quantity])).toEqual([
      ['J2', 'Lining', 3],
      ['J3', 'Lining', 4],
      ['J2', 'Mending', 1],
    ]);
  });

  test('names no job where only unplanned use is hit', () => {
    const { firstShort } = projectionOf(sourcesOf({ lots: [lotOf('A', 2.5)], forecastPerWeek: 7 }));
    expect(firstShort).toEqual({ day: dayAfter(2), job: null, missing: 0.5 });
  });

  test('is none where everything is there to the last bit', () => {
    const tenths = [lotOf('A', 0.1), lotOf('B', 0.2), lotOf('C', 0.3)];
    const exactly = projectionOf(
      sourcesOf({
        lots: tenths.map((each) => ({ ...each, goodUntil: dayAfter(3) })),
        demands: Array.from({ length: 6 }, () => planned(1, 0.1)),
      }),
    );
    expect(exactly.firstShort).toBeNull();
    expect(exactly.goesOff).toEqual([]);
    expect(exactly.days.map(({ usable }) => usable)).toEqual([0.6, ...Array.from({ length: 13 }, () => 0)]);
  });

  test('what is less than a billionth is neither short nor left over', () => {
    const course = (quantity: number) =>
      projectionOf(
        sourcesOf({ lots: [lotOf('A', 1000, { goodUntil: dayAfter(3) })], demands: [planned(1, quantity)] }),
      );
    expect(course(1000.0000005).missed).toEqual([]);
    expect(course(1000.000002).missed).toMatchObject([{ quantity: 0.000002 }]);
    expect(course(999.9999995).goesOff).toEqual([]);
    expect(course(999.999998).goesOff).toMatchObject([{ quantity: 0.000002 }]);
  });

  test('what is missing is not made up for later', () => {
    const sources = sourcesOf({ demands: [planned(1, 5), planned(4, 2)], arrivals: [arrival(3, 6)] });
    const { days } = projectionOf(sources);
    expect(days.slice(0, 5).map(({ short, usable }) => [short, usable])).toEqual([
      [0, 0],
      [5, 0],
      [0, 0],
      [0, 6],
      [0, 4],
    ]);
  });
});

describe('the order of a day', () => {
  test('what the log has not drawn comes first, though it stands last, then what is planned, then forecast', () => {
    const { missed } = projectionOf(
      sourcesOf({
        until: TODAY,
        lots: [lotOf('A', 6)],
        demands: [planned(0, 4, 'J1'), undrawn(5, 'J2')],
        forecastPerWeek: 18,
      }),
    );
    expect(missed).toEqual([
      { day: TODAY, kind: 'planned', job: 'J1', what: 'Lining', quantity: 3 },
      { day: TODAY, kind: 'forecast', job: null, what: null, quantity: 2 },
    ]);
  });

  test('the earliest last day is drawn first, one that keeps last', () => {
    const sources = sourcesOf({
      lots: [
        lotOf('keeps', 5),
        lotOf('late', 5, { goodUntil: dayAfter(9) }),
        lotOf('soon', 5, { goodUntil: dayAfter(4) }),
      ],
      demands: [planned(1, 7)],
    });
    expect(projectionOf(sources).goesOff.map(({ lot, quantity }) => [lot, quantity])).toEqual([['late', 3]]);
  });

  test('among lots with the same last day the open one is drawn first', () => {
    const goodUntil = dayAfter(4);
    const sources = sourcesOf({
      lots: [lotOf('sealed', 5, { goodUntil, lifeOpenedDays: 90 }), lotOf('open', 5, { goodUntil })],
      demands: [planned(1, 5)],
    });
    expect(projectionOf(sources).goesOff.map(({ lot }) => lot)).toEqual(['sealed']);
  });
});

describe('what goes off', () => {
  test('may be used on its last day, and is gone the day after, with what it is worth', () => {
    const sources = sourcesOf({
      lots: [lotOf('A', 6, { goodUntil: dayAfter(2), unitWorth: 12.6 }), lotOf('B', 1, { goodUntil: TODAY })],
      demands: [planned(2, 2)],
    });
    const { days, goesOff, worthGoingOff } = projectionOf(sources);
    expect(days.slice(0, 4).map(({ usable, wentOff }) => [usable, wentOff])).toEqual([
      [7, 0],
      [6, 1],
      [4, 0],
      [0, 4],
    ]);
    expect(goesOff).toEqual([
      { lot: 'B', goodUntil: TODAY, quantity: 1, worth: null },
      { lot: 'A', goodUntil: dayAfter(2), quantity: 4, worth: 50 },
    ]);
    expect(worthGoingOff).toBe(50);
  });

  test('ends sooner once it is opened, never later', () => {
    const opened = (goodUntil: number | null) =>
      projectionOf(
        sourcesOf({
          lots: [
            lotOf('A', 6, {
              goodUntil: goodUntil === null ? null : dayAfter(goodUntil),
              lifeOpenedDays: 3,
            }),
          ],
          demands: [planned(2, 1), planned(4, 1)],
        }),
      ).goesOff;
    expect(opened(null)).toEqual([{ lot: 'A', goodUntil: dayAfter(5), quantity: 4, worth: null }]);
    expect(opened(10)[0]?.goodUntil).toBe(dayAfter(5));
    expect(opened(4)[0]?.goodUntil).toBe(dayAfter(4));
  });

  test('counts what is yet to arrive and to be made, without a lot', () => {
    const sources = sourcesOf({
      arrivals: [arrival(1, 3)],
      batches: [{ readyOn: dayAfter(2), goodUntil: dayAfter(3), quantity: 2, unitWorth: 7 }],
      lifeSealedDays: 5,
      unitCost: 4,
    });
    expect(projectionOf(sources).goesOff).toEqual([
      { lot: null, goodUntil: dayAfter(3), quantity: 2, worth: 14 },
      { lot: null, goodUntil: dayAfter(6), quantity: 3, worth: 12 },
    ]);
  });
});

describe('what comes in', () => {
  test('is there on its day; what is overdue comes tomorrow, what nobody knows never', () => {
    expect(usableOn({ arrivals: [arrival(0, 2)] }, 0, 1)).toEqual([2, 2]);
    expect(usableOn({ arrivals: [arrival(-3, 2)] }, 0, 1)).toEqual([0, 2]);
    expect(usableOn({ arrivals: [arrival(null, 2)] }, 0, 1, 13)).toEqual([0, 0, 0]);
    expect(usableOn({ lots: [lotOf('A', 2, { from: dayAfter(3) })] }, 2, 3)).toEqual([0, 2]);
  });

  test('can be used on the same day', () => {
    const { firstShort } = projectionOf(
      sourcesOf({
        arrivals: [arrival(2, 3)],
        batches: [{ readyOn: dayAfter(4), goodUntil: dayAfter(4), quantity: 2, unitWorth: null }],
        demands: [planned(2, 3), planned(4, 2)],
      }),
    );
    expect(firstShort).toBeNull();
  });
});

describe('what is planned is not also forecast', () => {
  const forecast = (...demands: Parameters<typeof sourcesOf>[0]['demands'] & object) =>
    projectionOf(sourcesOf({ lots: [lotOf('A', 1000)], demands, forecastPerWeek: 14 })).days.map(
      (day) => day.forecast,
    );
  const week = (quantity: number) => Array.from({ length: 7 }, () => quantity);

  test('a plan takes the place of as much of its own week, and of no other', () => {
    expect(forecast()).toEqual([...week(2), ...week(2)]);
    expect(forecast(planned(3, 7))).toEqual([...week(1), ...week(2)]);
    expect(forecast(planned(7, 20))).toEqual([...week(2), ...week(0)]);
  });

  test('what the log has not drawn is past use and takes no place', () => {
    expect(forecast(undrawn(7))).toEqual([...week(2), ...week(2)]);
  });

  test('a last week that is looked at in part is forecast in proportion, with its whole plan', () => {
    const days = projectionOf(
      sourcesOf({
        until: dayAfter(8),
        lots: [lotOf('A', 1000)],
        demands: [planned(12, 7)],
        forecastPerWeek: 14,
      }),
    ).days;
    expect(days.map((day) => day.forecast)).toEqual([...week(2), 1, 1]);
  });
});
