import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareText } from '../../../src/core/notice.ts';
import { type ProjectionSources, projectionOf } from '../../../src/core/projection/projection.ts';
import { runs, SEED } from '../helpers/random-studio.ts';
import { plainProjection } from './helpers/plain-projection.ts';
import { someSources } from './helpers/some-sources.ts';

const wholeSources = someSources(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 9 }));

function sevenths(quantity: number): number {
  const whole = Math.round(quantity * 7);
  if (Math.abs(whole / 7 - quantity) >= 1e-6) throw new Error(`${quantity} is no number of sevenths`);
  return whole;
}

/** The projection as the plain simulation would say it: in sevenths. */
function inSevenths(sources: ProjectionSources) {
  const { days, missed, goesOff } = projectionOf(sources);
  return {
    days: days.map(({ day, ...quantities }) => ({
      day,
      ...Object.fromEntries(Object.entries(quantities).map(([what, each]) => [what, sevenths(each)])),
    })),
    missed: missed.map(({ day, job, what, quantity }) => [day, job, what, sevenths(quantity)]),
    goesOff: goesOff.map(({ lot, goodUntil, quantity, worth }) => [
      lot,
      goodUntil,
      sevenths(quantity),
      worth,
    ]),
  };
}

describe(`against a plain simulation, a seventh at a time (seed ${SEED})`, () => {
  test('every day, everything missed and everything that goes off is the same', () => {
    const seen = { missed: 0, goesOff: 0, shortened: 0, arrived: 0, made: 0, forecast: 0, plenty: 0 };
    fc.assert(
      fc.property(wholeSources, (sources) => {
        const { shortened, ...plain } = plainProjection(sources);
        const own = inSevenths(sources);
        expect(own.days).toEqual(plain.days);
        expect(own.missed).toEqual(plain.missed);
        expect(own.goesOff.map(String).toSorted(compareText)).toEqual(
          plain.goesOff.map(String).toSorted(compareText),
        );
        seen.missed += plain.missed.length > 0 ? 1 : 0;
        seen.plenty += plain.missed.length === 0 ? 1 : 0;
        seen.goesOff += plain.goesOff.length > 0 ? 1 : 0;
        seen.shortened += shortened > 0 ? 1 : 0;
        seen.arrived += plain.days.some(({ arrived }) => arrived > 0) ? 1 : 0;
        seen.made += plain.days.some(({ made }) => made > 0) ? 1 : 0;
        seen.forecast += plain.days.some(({ forecast }) => forecast > 0) ? 1 : 0;
      }),
      runs(5000),
    );
    for (const [what, cases] of Object.entries(seen)) expect(cases, what).toBeGreaterThan(500);
  });
});
