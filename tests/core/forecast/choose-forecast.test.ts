import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Forecast, forecastOf } from '../../../src/core/forecast/choose-forecast.ts';
import { croston } from '../../../src/core/forecast/croston.ts';
import { demandPattern } from '../../../src/core/forecast/demand-class.ts';
import { exponentialSmoothing } from '../../../src/core/forecast/exponential-smoothing.ts';
import type { Smoothing } from '../../../src/core/forecast/smoothed.ts';
import { smoothingWeight } from '../../../src/core/forecast/smoothing-weight.ts';
import { syntetosBoylan } from '../../../src/core/forecast/syntetos-boylan.ts';
import { startingUse, teunterSyntetosBabai } from '../../../src/core/forecast/teunter-syntetos-babai.ts';
import { factors, someUse } from './uses.ts';

const fromFirstUse: Smoothing = (values, weight) => teunterSyntetosBabai(values, weight, startingUse(values));
const SMOOTHINGS: readonly (readonly [string, Smoothing])[] = [
  ['simple exponential smoothing', exponentialSmoothing],
  ['Croston', croston],
  ['Syntetos and Boylan', syntetosBoylan],
  ['Teunter, Syntetos and Babai', fromFirstUse],
];
const weights = fc.double({ min: 0.01, max: 1, noNaN: true });
const weeks = someUse({ min: 1, max: 60 });

/** What was used in each week, all of it on the week's third day. */
function daysOf(weekly: readonly number[]): number[] {
  return weekly.flatMap((quantity) => [0, 0, quantity, 0, 0, 0, 0]);
}

function weeksWith(length: number, uses: Readonly<Record<number, number>>): number[] {
  return Array.from({ length }, (_, week) => uses[week] ?? 0);
}

describe.each(SMOOTHINGS)('%s', (_name, smoothing) => {
  test('what is fitted to a period is what its beginning alone forecasts', () => {
    fc.assert(
      fc.property(weeks, weights, fc.nat(), (weekly, weight, at) => {
        const period = at % weekly.length;
        const { fitted } = smoothing(weekly, weight);
        expect(fitted).toHaveLength(weekly.length);
        if (!weekly.slice(0, period).some((quantity) => quantity > 0)) return;
        expect(smoothing(weekly.slice(0, period), weight).forecast).toBeCloseTo(
          fitted[period] ?? Number.NaN,
          9,
        );
      }),
    );
  });

  test('the forecast never leaves what was used', () => {
    fc.assert(
      fc.property(weeks, weights, (weekly, weight) => {
        const { forecast } = smoothing(weekly, weight);
        expect(forecast).toBeGreaterThanOrEqual(0);
        expect(forecast).toBeLessThanOrEqual(Math.max(...weekly) * (1 + 1e-9));
      }),
    );
  });

  test('times as much use is times as much forecast, by the same weight', () => {
    fc.assert(
      fc.property(weeks, factors, weights, (weekly, factor, weight) => {
        const larger = weekly.map((quantity) => factor * quantity);
        const { forecast } = smoothing(weekly, weight);
        expect(Math.abs(smoothing(larger, weight).forecast - factor * forecast)).toBeLessThanOrEqual(
          1e-9 * factor * Math.max(...weekly),
        );
      }),
    );
  });

  test('no weight of the grid has missed less than the one that is chosen', () => {
    const missed = (weekly: readonly number[], weight: number): number =>
      smoothing(weekly, weight).fitted.reduce(
        (total, fitted, week) => total + (fitted - (weekly[week] ?? 0)) ** 2,
        0,
      ) / weekly.length;
    fc.assert(
      fc.property(weeks, fc.integer({ min: 1, max: 10 }), (weekly, twentieths) => {
        const chosen = smoothingWeight(weekly, smoothing);
        expect(Number.isInteger(Math.round(chosen * 1e6) / 50_000)).toBe(true);
        expect(missed(weekly, chosen)).toBeLessThanOrEqual(
          missed(weekly, twentieths / 20) * (1 + 1e-6) + 1e-6,
        );
      }),
    );
  });
});

test('use on every second week alternates: a small weight misses least; a lasting step takes a large one', () => {
  const alternating = [5, ...Array.from({ length: 40 }, (_, week) => 10 * (week % 2))];
  const step = Array.from({ length: 40 }, (_, week) => (week < 20 ? 1 : 10));
  expect(smoothingWeight(alternating, exponentialSmoothing)).toBe(0.05);
  expect(smoothingWeight(step, exponentialSmoothing)).toBe(0.5);
});

test('what differs only by the noise of adding up does not choose the weight', () => {
  const noisy = Array.from({ length: 40 }, (_, week) => (week < 20 ? 0.3 : 0.1 + 0.2));
  expect(smoothingWeight(noisy, exponentialSmoothing)).toBe(0.05);
});

describe('forecast', () => {
  test('the same amount each week is forecast, by every method that begins with a use', () => {
    const amounts = fc.double({ min: 0.01, max: 1000, noNaN: true });
    fc.assert(
      fc.property(amounts, fc.integer({ min: 1, max: 60 }), (amount, length) => {
        const weekly = Array.from({ length }, () => amount);
        const forecast = forecastOf(daysOf(weekly), 'g');
        expect(forecast.demandClass).toBe(length < 4 ? 'too little' : 'smooth');
        expect(Math.abs(forecast.perWeek - amount)).toBeLessThanOrEqual(1e-6);
        expect(exponentialSmoothing(weekly, 0.3).forecast).toBeCloseTo(amount, 9);
        expect(croston(weekly, 0.3).forecast).toBeCloseTo(amount, 9);
        expect(syntetosBoylan(weekly, 0.3).forecast).toBeCloseTo(0.85 * amount, 9);
        expect(fromFirstUse(weekly, 0.3).forecast).toBeCloseTo(amount, 9);
      }),
    );
  });

  test('times as much use is the same class and method and times as much forecast', () => {
    fc.assert(
      fc.property(someUse({ min: 1, max: 370 }), factors, (daily, factor) => {
        const one = forecastOf(daily, 'g');
        const many = forecastOf(
          daily.map((quantity) => factor * quantity),
          'g',
        );
        expect([many.demandClass, many.method, many.weight]).toEqual([
          one.demandClass,
          one.method,
          one.weight,
        ]);
        expect(Math.abs(many.perWeek - factor * one.perWeek)).toBeLessThanOrEqual(1e-6 * (1 + factor));
      }),
    );
  });

  test('what was used and has not died away has a forecast above 0, and a sentence says it', () => {
    fc.assert(
      fc.property(weeks, (weekly) => {
        const forecast = forecastOf(daysOf(weekly), 'sheet');
        if (forecast.demandClass === 'none') expect(forecast.perWeek).toBe(0);
        else if (forecast.demandClass !== 'died away') expect(forecast.perWeek).toBeGreaterThan(0);
        expect(forecast.sentence.includes('nothing is forecast')).toBe(forecast.demandClass === 'none');
        expect(forecast.sentence).toContain(`${weekly.length} week`);
        expect(structuredClone(forecast)).toEqual(forecast);
      }),
    );
  });

  test('weeks end today, and the days before the first whole week are left out', () => {
    const daily = [100, 100, ...daysOf([1, 2, 3])];
    expect(forecastOf(daily, 'g').weekly).toEqual([1, 2, 3]);
    expect(forecastOf([5, 5, 5, 5, 5, 5], 'g').weekly).toEqual([]);
    expect(forecastOf([5, 5, 5, 5, 5, 5], 'g').sentence).toContain('no whole week');
  });

  test('what came back was not used: it is taken off the latest use before it', () => {
    const daily = [0, 4, 0, 0, 0, 0, 0, 3, 2, 0, -4, 0, 0, 0];
    expect(forecastOf(daily, 'g').weekly).toEqual([4, 1]);
    expect(forecastOf([-9, 0, 0, 2, 0, 0, 0], 'g').weekly).toEqual([2]);
  });
});

describe('class', () => {
  const classOf = (weekly: readonly number[]): string => demandPattern(weekly).demandClass;

  test.each<[string, number[], string]>([
    ['no week', [], 'none'],
    ['no use', weeksWith(52, {}), 'none'],
    ['three uses', weeksWith(52, { 20: 1, 40: 1, 50: 1 }), 'too little'],
    ['each week alike', Array.from({ length: 52 }, (_, week) => 5 + (week % 2)), 'smooth'],
    [
      'each week in different amounts',
      Array.from({ length: 52 }, (_, week) => (week % 5 ? 1 : 20)),
      'erratic',
    ],
    ['every third week alike', Array.from({ length: 52 }, (_, week) => (week % 3 ? 0 : 5)), 'intermittent'],
    ['one use and a long time', weeksWith(52, { 0: 1 }), 'too little'],
    ['two uses and a long time', weeksWith(52, { 0: 1, 3: 1 }), 'died away'],
  ])('%s: %s', (_name, weekly, expected) => {
    expect(classOf(weekly)).toBe(expected);
  });

  test('what lies on a cut-off is still regular', () => {
    // 25 uses in 33 weeks: p is 1.32. Sizes 3 and 17, as many of the one as of the other: v is 49 ÷ 100.
    const often = [...Array.from({ length: 24 }, () => 5), ...Array.from({ length: 8 }, () => 0), 5];
    expect(demandPattern(often).meanInterval).toBe(1.32);
    expect(classOf(often)).toBe('smooth');
    expect(classOf([0, ...often])).toBe('intermittent');
    const sizes = Array.from({ length: 20 }, (_, week) => (week % 2 ? 17 : 3));
    expect(demandPattern(sizes).sizeVariation).toBeCloseTo(0.49, 12);
    expect(classOf(sizes)).toBe('smooth');
    expect(classOf(sizes.map((size) => (size === 3 ? 2.9 : size)))).toBe('erratic');
  });

  test('use has died away after more than four usual intervals, and not before eight weeks', () => {
    const everyThird = (quiet: number): number[] => [
      ...Array.from({ length: 12 }, (_, week) => (week % 3 === 2 ? 5 : 0)),
      ...Array.from({ length: quiet }, () => 0),
    ];
    expect(classOf(everyThird(12))).toBe('intermittent');
    expect(classOf(everyThird(13))).toBe('died away');
    const everyWeek = (quiet: number): number[] => [5, 5, 5, 5, ...Array.from({ length: quiet }, () => 0)];
    expect(classOf(everyWeek(7))).toBe('smooth');
    expect(classOf(everyWeek(8))).toBe('died away');
  });

  test('once use has died away the forecast sinks with each further week, to nothing in the end', () => {
    const forecasts = [10, 20, 40, 300].map((quiet) =>
      forecastOf(daysOf([5, 5, 4, 5, 6, 5, ...Array.from({ length: quiet }, () => 0)]), 'g'),
    );
    const perWeek = forecasts.map((forecast) => forecast.perWeek);
    expect(forecasts.map(({ method }) => method)).toEqual(perWeek.map(() => 'Teunter–Syntetos–Babai'));
    expect(perWeek).toEqual(perWeek.toSorted((a, b) => b - a));
    expect(perWeek[0]).toBeLessThan(5);
    expect(perWeek.at(-1)).toBeLessThan(0.001);
  });
});

test.each<[Partial<Forecast>, number[], string]>([
  [
    { method: 'none', weight: null },
    weeksWith(52, {}),
    'Not used in the last 52 weeks: nothing is forecast.',
  ],
  [
    { method: 'mean', weight: null },
    weeksWith(52, { 30: 26, 40: 26 }),
    'Used in 2 of 52 weeks, too seldom to see a rhythm, so the plain mean of all weeks is taken: about 1 sheet a week.',
  ],
  [
    { method: 'simple exponential smoothing', weight: 0.05 },
    Array.from({ length: 52 }, () => 3),
    'Used in 52 of 52 weeks, about every week, in similar amounts, so later weeks count more than earlier ones ' +
      '(simple exponential smoothing, weight 0.05): about 3 sheets a week.',
  ],
  [
    { demandClass: 'lumpy', method: 'Syntetos–Boylan' },
    Array.from({ length: 52 }, (_, week) => (week % 4 === 3 ? (week % 16 === 3 ? 40 : 4) : 0)),
    'Used in 13 of 52 weeks, about every 4 weeks, in very different amounts, so how much and how often are followed ' +
      "apart (Croston's method as corrected by Syntetos and Boylan, weight ",
  ],
  [
    { method: 'Teunter–Syntetos–Babai' },
    Array.from({ length: 52 }, (_, week) => (week < 12 && week % 3 === 2 ? 5 : 0)),
    'Used in 4 of 52 weeks, about every 3 weeks, but not in the last 40 weeks: it seems to have died away, so the ' +
      "forecast sinks with every week without use (Teunter, Syntetos and Babai's method, weight ",
  ],
])('the sentence of %o', (expected, weekly, sentence) => {
  const forecast = forecastOf(daysOf(weekly), 'sheet');
  expect(forecast).toMatchObject(expected);
  expect(forecast.sentence.slice(0, sentence.length)).toBe(sentence);
  if (forecast.weight !== null) expect(forecast.sentence).toContain(`weight ${forecast.weight}): about `);
});
