import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/core/day.ts';
import { type ProjectionSources, projectionOf } from '../../../src/core/projection/projection.ts';
import { runs, SEED } from '../helpers/random-studio.ts';
import { someSources, TODAY } from './helpers/some-sources.ts';

const anyQuantity = fc.double({ min: 0.001, max: 50, noNaN: true });
const anySources = someSources(anyQuantity, fc.double({ min: 0, max: 20, noNaN: true }));
/** Each figure is rounded to a millionth. */
const ROUNDING = 1e-6;

function sumOf(quantities: readonly number[]): number {
  return quantities.reduce((total, quantity) => total + quantity, 0);
}

/** How much there is at the start of today, among lots. */
function atStart({ lots, today }: ProjectionSources): number {
  return sumOf(lots.filter(({ from }) => from <= today).map(({ quantity }) => quantity));
}

describe(`properties of every projection (seed ${SEED})`, () => {
  test('what is there, arrives and is made is what is drawn, goes off and is left, on every day', () => {
    fc.assert(
      fc.property(anySources, (sources) => {
        let there = atStart(sources);
        for (const { arrived, made, planned, forecast, wentOff, usable } of projectionOf(sources).days) {
          expect(Math.abs(there + arrived + made - (planned + forecast + wentOff + usable))).toBeLessThan(
            6 * ROUNDING,
          );
          there = usable;
        }
      }),
      runs(2000),
    );
  });

  test('what is drawn and missing is what is needed: known demands, and the forecast beyond them by weeks', () => {
    fc.assert(
      fc.property(anySources, (sources) => {
        const { today, demands, forecastPerWeek } = sources;
        const until = addDays(today, 20);
        const { days } = projectionOf({ ...sources, until });
        for (const week of [0, 1, 2]) {
          const own = days.slice(7 * week, 7 * week + 7);
          const due = demands.filter(({ day }) => Math.floor(Math.max(day - today, 0) / 7) === week);
          const plan = sumOf(due.filter(({ kind }) => kind === 'planned').map(({ quantity }) => quantity));
          const needed = sumOf(due.map(({ quantity }) => quantity)) + Math.max(forecastPerWeek - plan, 0);
          const served = sumOf(own.map(({ planned, forecast, short }) => planned + forecast + short));
          expect(Math.abs(served - needed)).toBeLessThan(30 * ROUNDING);
        }
      }),
      runs(1000),
    );
  });

  test('nothing is below zero, and what is short is what is missed, while nothing is left', () => {
    fc.assert(
      fc.property(anySources, (sources) => {
        const { days, missed, firstShort } = projectionOf(sources);
        for (const { day, ...quantities } of days) {
          for (const quantity of Object.values(quantities)) expect(quantity).toBeGreaterThanOrEqual(0);
          const own = missed.filter((each) => each.day === day);
          expect(Math.abs(sumOf(own.map(({ quantity }) => quantity)) - quantities.short)).toBeLessThan(
            (own.length + 1) * ROUNDING,
          );
          if (own.length > 0) expect(quantities.usable).toBe(0);
        }
        expect(firstShort?.day ?? null).toBe(missed[0]?.day ?? null);
        expect(firstShort?.job ?? null).toBe(missed[0]?.job ?? null);
      }),
      runs(2000),
    );
  });

  test('what goes off by days is what goes off by lots, and its worth adds up', () => {
    fc.assert(
      fc.property(anySources, (sources) => {
        const { days, goesOff, worthGoingOff } = projectionOf(sources);
        const byDays = sumOf(days.map(({ wentOff }) => wentOff));
        expect(Math.abs(byDays - sumOf(goesOff.map(({ quantity }) => quantity)))).toBeLessThan(40 * ROUNDING);
        expect(worthGoingOff).toBe(sumOf(goesOff.map(({ worth }) => worth ?? 0)));
        expect(goesOff.map(({ goodUntil }) => goodUntil)).toEqual(
          goesOff.map(({ goodUntil }) => goodUntil).toSorted((a, b) => a - b),
        );
      }),
      runs(1000),
    );
  });

  test('looking further changes nothing about the days before', () => {
    fc.assert(
      fc.property(anySources, fc.integer({ min: 0, max: 23 }), (sources, offset) => {
        const far = projectionOf({ ...sources, until: addDays(TODAY, 24) });
        const near = projectionOf({ ...sources, until: addDays(TODAY, offset) });
        expect(near.days).toEqual(far.days.slice(0, offset + 1));
        expect(near.missed).toEqual(far.missed.filter(({ day }) => day <= TODAY + offset));
      }),
      runs(1000),
    );
  });

  test('the sources are left as they were, and the answer can be handed to another thread', () => {
    fc.assert(
      fc.property(anySources, (sources) => {
        const before = structuredClone(sources);
        const answer = projectionOf(sources);
        expect(sources).toEqual(before);
        expect(structuredClone(answer)).toEqual(answer);
        expect(projectionOf(structuredClone(sources))).toEqual(answer);
      }),
      runs(300),
    );
  });
});
