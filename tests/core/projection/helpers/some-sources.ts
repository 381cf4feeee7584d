import fc from 'fast-check';
import type { Day } from '../../../../src/core/day.ts';
import type { KnownDemand, LotSupply } from '../../../../src/core/planning/plan-problem.ts';
import type { ProjectionSources } from '../../../../src/core/projection/projection.ts';

export const TODAY = 20_500 as Day;

export function dayAfter(offset: number): Day {
  return (TODAY + offset) as Day;
}

/** Sources without anything in them, with what a test says. */
export function sourcesOf(some: Partial<ProjectionSources>): ProjectionSources {
  return {
    today: TODAY,
    until: dayAfter(13),
    lots: [],
    arrivals: [],
    batches: [],
    demands: [],
    forecastPerWeek: 0,
    lifeSealedDays: null,
    lifeOpenedDays: null,
    unitCost: null,
    ...some,
  };
}

/** A lot that is here, keeps and has no cost, unless a test says otherwise. */
export function lotOf(lot: string, quantity: number, more: Partial<LotSupply> = {}): LotSupply {
  return { lot, quantity, from: TODAY, goodUntil: null, lifeOpenedDays: null, unitWorth: null, ...more };
}

export function planned(offset: number, quantity: number, job = 'J1', what = 'Lining'): KnownDemand {
  return { day: dayAfter(offset), quantity, kind: 'planned', job, what };
}

export function undrawn(quantity: number, job = 'J1', what = 'Lining'): KnownDemand {
  return { day: TODAY, quantity, kind: 'not drawn', job, what };
}

const SPAN = 24;
const dayWithin = (least: number, most: number) => fc.integer({ min: least, max: most }).map(dayAfter);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { freq: 2 });
const life = fc.integer({ min: 0, max: 6 });

/** Sources with quantities of one kind, so few that they run out and go off often. */
export function someSources(
  quantity: fc.Arbitrary<number>,
  perWeek: fc.Arbitrary<number>,
): fc.Arbitrary<ProjectionSources> {
  const unitWorth = maybe(fc.integer({ min: 0, max: 900 }));
  const lot = fc.record({
    quantity,
    from: fc.oneof(
      { weight: 3, arbitrary: fc.constant(TODAY) },
      { weight: 1, arbitrary: dayWithin(0, SPAN) },
    ),
    lifeOpenedDays: maybe(life),
    unitWorth,
  });
  const ends = maybe(dayWithin(0, SPAN));
  const batch = fc.record({ readyOn: dayWithin(0, SPAN), quantity, unitWorth });
  const arrival = fc.record({ day: maybe(dayWithin(-4, SPAN)), quantity });
  const demand = fc.record({
    day: dayWithin(-2, SPAN + 6),
    quantity,
    kind: fc.constantFrom('planned', 'planned', 'not drawn'),
    job: fc.constantFrom('J1', 'J2', 'J3'),
    what: fc.constantFrom('Lining', 'Mending'),
  });
  return fc.record({
    today: fc.constant(TODAY),
    until: dayWithin(0, SPAN),
    lots: fc
      .array(fc.tuple(lot, ends), { maxLength: 5 })
      .map((lots) => lots.map(([own, goodUntil], place) => ({ ...own, goodUntil, lot: `L${place}` }))),
    arrivals: fc
      .array(arrival, { maxLength: 2 })
      .map((all) => all.map((own) => ({ ...own, order: 'O', line: null, supplier: 'S' }))),
    batches: fc
      .array(fc.tuple(batch, ends), { maxLength: 3 })
      .map((batches) => batches.map(([own, goodUntil]) => ({ ...own, goodUntil }))),
    demands: fc.array(demand, { maxLength: 8 }),
    forecastPerWeek: perWeek,
    lifeSealedDays: maybe(life),
    lifeOpenedDays: maybe(life),
    unitCost: unitWorth,
  });
}
