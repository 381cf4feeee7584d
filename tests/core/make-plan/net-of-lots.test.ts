import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Day } from '../../../src/core/day.ts';
import { netOfLots } from '../../../src/core/make-plan/net-of-lots.ts';
import type { KnownDemand, LotSupply } from '../../../src/core/planning/plan-problem.ts';

const TODAY = 20_000;

function lot(
  name: string,
  quantity: number,
  more: Partial<Record<'from' | 'until' | 'opened', number>> = {},
) {
  return {
    lot: name,
    quantity,
    from: (TODAY + (more.from ?? 0)) as Day,
    goodUntil: more.until === undefined ? null : ((TODAY + more.until) as Day),
    lifeOpenedDays: more.opened ?? null,
    unitWorth: null,
  } satisfies LotSupply;
}

function demand(after: number, quantity: number, kind: KnownDemand['kind'] = 'planned'): KnownDemand {
  return { day: (TODAY + after) as Day, quantity, kind, job: `J-${after}-${kind}`, what: 'Lining' };
}

/** What no lot covers, day by day and unit by unit: each unit comes from the jar that stands first on that day. */
function unitByUnit(lots: readonly LotSupply[], demands: readonly KnownDemand[]): number[] {
  const jars = lots.map((jar, index) => ({
    ...jar,
    index,
    left: jar.quantity,
    opened: null as number | null,
  }));
  const last = (jar: (typeof jars)[number]) =>
    Math.min(
      jar.goodUntil ?? Number.POSITIVE_INFINITY,
      jar.opened === null || jar.lifeOpenedDays === null
        ? Number.POSITIVE_INFINITY
        : jar.opened + jar.lifeOpenedDays,
    );
  const missing = demands.map(() => 0);
  for (let today = TODAY; today <= TODAY + 30; today += 1) {
    for (const kind of ['not drawn', 'planned']) {
      for (const [index, need] of demands.entries()) {
        if (need.day !== today || need.kind !== kind) continue;
        for (let unit = 0; unit < need.quantity; unit += 1) {
          let chosen: (typeof jars)[number] | null = null;
          for (const jar of jars) {
            if (jar.left < 1 || jar.from > today || last(jar) < today) continue;
            const closed = (one: typeof jar) => (one.lifeOpenedDays !== null && one.opened === null ? 1 : 0);
            const sooner =
              chosen === null ||
              last(jar) < last(chosen) ||
              (last(jar) === last(chosen) && closed(jar) < closed(chosen));
            if (sooner) chosen = jar;
          }
          if (chosen === null) {
            missing[index] = (missing[index] ?? 0) + 1;
            continue;
          }
          chosen.left -= 1;
          chosen.opened ??= today;
        }
      }
    }
  }
  return missing;
}

const someLots = fc.array(
  fc
    .record({
      quantity: fc.integer({ min: 0, max: 12 }),
      from: fc.constantFrom(0, 0, 0, 2, 5),
      until: fc.option(fc.integer({ min: 0, max: 12 })),
      opened: fc.option(fc.integer({ min: 0, max: 5 }), { freq: 2 }),
    })
    .map(({ quantity, from, until, opened }) =>
      lot('L', quantity, {
        from,
        ...(until === null ? {} : { until }),
        ...(opened === null ? {} : { opened }),
      }),
    ),
  { maxLength: 5 },
);
const someDemands = fc.array(
  fc
    .tuple(
      fc.integer({ min: 0, max: 12 }),
      fc.integer({ min: 1, max: 8 }),
      fc.constantFrom('planned' as const, 'not drawn' as const),
    )
    .map(([after, quantity, kind]) => demand(after, quantity, kind)),
  { maxLength: 8 },
);

describe('against a plain simulation, unit by unit', () => {
  test('the same is missing of each need', () => {
    fc.assert(
      fc.property(someLots, someDemands, (lots, plain) => {
        const demands = plain.map((need, index) => ({ ...need, what: `need ${index}` }));
        const rest = netOfLots(lots, demands);
        expect(demands.map(({ what }) => rest.find((need) => need.what === what)?.quantity ?? 0)).toEqual(
          unitByUnit(lots, demands),
        );
      }),
      { numRuns: 3000 },
    );
  });

  test('any share of a unit: what is missing is no more than was asked for, and grows as lots shrink', () => {
    const amount = fc.double({ min: 0.001, max: 20, noNaN: true });
    fc.assert(
      fc.property(amount, fc.array(amount, { maxLength: 6 }), (there, asked) => {
        const demands = asked.map((quantity, after) => demand(after, quantity));
        const missing = (quantity: number) =>
          netOfLots([lot('L', quantity)], demands).reduce((sum, need) => sum + need.quantity, 0);
        const all = asked.reduce((sum, quantity) => sum + quantity, 0);
        expect(missing(there)).toBeCloseTo(Math.max(0, all - there), 6);
        expect(missing(there / 2)).toBeCloseTo(Math.max(0, all - there / 2), 6);
      }),
    );
  });
});

describe('examples', () => {
  test('what the log has not drawn comes first, and a need keeps its day and its job', () => {
    const demands = [demand(0, 5), demand(0, 4, 'not drawn'), demand(3, 2)];
    expect(netOfLots([lot('A', 6)], demands)).toEqual([{ ...demand(0, 5), quantity: 3 }, demand(3, 2)]);
  });

  test('a lot that is opened keeps no longer than its life once opened', () => {
    const demands = [demand(0, 1), demand(3, 1), demand(4, 1)];
    expect(netOfLots([lot('A', 9, { opened: 3 })], demands)).toEqual([demand(4, 1)]);
    expect(netOfLots([lot('A', 9)], demands)).toEqual([]);
  });

  test('of two lots with the same last day the one that was opened on the way is finished first', () => {
    const lots = [lot('B', 5, { from: 1, until: 3, opened: 1 }), lot('A', 5, { until: 9, opened: 3 })];
    expect(netOfLots(lots, [demand(0, 1), demand(1, 4), demand(3, 5)])).toEqual([]);
  });

  test('a lot serves neither before it is there nor after its last day', () => {
    const demands = [demand(1, 1), demand(2, 1), demand(5, 1), demand(6, 1)];
    expect(netOfLots([lot('A', 9, { from: 2, until: 5 })], demands)).toEqual([demand(1, 1), demand(6, 1)]);
  });

  test('of a hair’s breadth that is missing by rounding nothing is left', () => {
    expect(netOfLots([lot('A', 0.1), lot('B', 0.2)], [demand(0, 0.3)])).toEqual([]);
  });
});
