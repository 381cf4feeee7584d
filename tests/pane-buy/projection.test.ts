import fc from 'fast-check';
import { expect, test } from 'vitest';
import { projectionChart } from '../../src/pane/stock/projection-steps.ts';
import { chartInWords, eventfulDays } from '../../src/pane/stock/projection-words.ts';
import { inDays, materialPlan, orderLevel, projected } from './helpers.ts';

const DAYS = [
  projected(0, 10),
  projected(1, 10),
  projected(2, 4, { planned: 6 }),
  projected(3, 9, { arrived: 5 }),
  projected(4, 0, { wentOff: 8, planned: 1, short: 2 }),
];

test('days on one height are one step, and what happens has a row for each kind that occurs', () => {
  const { steps, rows, level } = projectionChart(DAYS, 5);
  expect(steps.map(({ from, to }) => [from, to])).toEqual([
    [0, 40],
    [40, 60],
    [60, 80],
    [80, 100],
  ]);
  expect(steps.map(({ at }) => Math.round(at))).toEqual([7, 63, 17, 100]);
  expect(Math.round(level ?? 0)).toBe(54);
  expect(rows).toEqual([
    { mark: 'arrives', at: [70] },
    { mark: 'goes off', at: [90] },
    { mark: 'missing', at: [90] },
  ]);
});

test('nothing at all is a flat line without an order level', () => {
  const { steps, level, scale } = projectionChart([projected(0, 0), projected(1, 0)], 0);
  expect(steps).toEqual([{ from: 0, to: 100, at: 100 }]);
  expect(level).toBeNull();
  expect(scale.length).toBeGreaterThan(0);
});

test('whatever the figures, all lies inside, the steps join, and two to five lines stand behind them', () => {
  const quantity = fc.double({ min: 0, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(fc.array(quantity, { minLength: 1, maxLength: 120 }), quantity, (usable, level) => {
      const chart = projectionChart(
        usable.map((each, place) => projected(place, each)),
        level,
      );
      const { steps, scale } = chart;
      expect(steps[0]?.from).toBe(0);
      expect(steps.at(-1)?.to).toBeCloseTo(100, 9);
      for (const [place, step] of steps.entries()) {
        expect(step.at >= 0 && step.at <= 100).toBe(true);
        if (place > 0) expect(step.from).toBe(steps[place - 1]?.to);
      }
      expect(scale.length).toBeGreaterThanOrEqual(2);
      expect(scale.length).toBeLessThanOrEqual(5);
      for (const { at } of scale) expect(at >= 0 && at < 100).toBe(true);
    }),
  );
});

test('the table holds today, the days on which something happens, and the last day', () => {
  const calm = [...DAYS, projected(5, 0, { forecast: 0.2 }), projected(6, 0)];
  expect(eventfulDays(calm, 'sheet')).toEqual([
    { day: inDays(0), events: [], usable: '10 sheets' },
    { day: inDays(2), events: ['6 sheets for what is planned'], usable: '4 sheets' },
    { day: inDays(3), events: ['5 sheets arriving'], usable: '9 sheets' },
    {
      day: inDays(4),
      events: ['1 sheet for what is planned', '8 sheets going off unused', '2 sheets missing'],
      usable: '0 sheets',
    },
    { day: inDays(6), events: [], usable: '0 sheets' },
  ]);
});

test('what the chart shows is told in sentences', () => {
  const plan = materialPlan({
    usable: 10,
    level: orderLevel(5),
    projection: {
      days: DAYS,
      firstShort: { day: inDays(4), missing: 2, job: null },
      missed: [],
      goesOff: [],
      worthGoingOff: 0,
    },
  });
  expect(chartInWords(plan)).toBe(
    'What is usable from 3 Apr 2026 to 7 Apr 2026: 10 sheets today, 0 sheets on the last day. ' +
      'It runs out on 7 Apr 2026. Order when down to 5 sheets. The table below says the same day by day.',
  );
});
