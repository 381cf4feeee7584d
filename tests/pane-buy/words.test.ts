import { expect, test } from 'vitest';
import { exactWords, plannedWords } from '../../src/core/forecast/planned-words.ts';
import type { MakePlan } from '../../src/core/make-plan/make-plan.ts';
import type { JobAnswer, JobWant } from '../../src/core/projection/job-readiness.ts';
import { goingOffIn, goingOffInAll, pressingIn } from '../../src/pane/buy/pressing.ts';
import { lineReasons } from '../../src/pane/buy/reasons.ts';
import {
  batchInWords,
  lateInWords,
  servingsInWords,
  waysInWords,
} from '../../src/pane/make/make-plan-words.ts';
import { coinsOf } from '../../src/pane/planning/planned-words.ts';
import { answerInWords, wantInWords } from '../../src/pane/quote/job-words.ts';
import { inDays, materialPlan, NO_ANSWER, orderLevel, today } from './helpers.ts';

test.each([
  [12.345678, 'g', '12.3 g'],
  [0.0112, 'sheet', '0.011 sheets'],
  [1, 'sheet', '1 sheet'],
  [1234.56, 'ml', '1235 ml'],
  [99.95, 'g', '100 g'],
  [0.0000001, 'sheet', '0 sheets'],
])('%d of %s, as far as a plan promises, is %s', (quantity, unit, words) => {
  expect(plannedWords(quantity, unit)).toBe(words);
});

test('what is to be made or is missing is told as it was worked out; coins become whole', () => {
  expect(exactWords(203.4567, 'g')).toBe('203.457 g');
  expect(coinsOf(1249.6)).toBe(1250n);
  expect(coinsOf(null)).toBeNull();
});

test('what runs out comes first by its day, then what is down, the lowest first; the rest is left out', () => {
  const runsOut = (material: string, days: number, job: string | null) =>
    materialPlan({
      material,
      level: orderLevel(4),
      projection: {
        ...materialPlan({}).projection,
        firstShort: { day: inDays(days), missing: 3, job },
      },
    });
  const down = (material: string, usable: number, onOrder = 0) =>
    materialPlan({ material, usable, onOrder, level: orderLevel(20) });
  const materials = [
    down('B', 10),
    runsOut('later', 9, null),
    down('enough', 10, 11),
    down('A', 1, 4),
    runsOut('sooner', 2, '26-014'),
    materialPlan({ material: 'none asked for', usable: 0 }),
  ];
  expect(pressingIn({ ...NO_ANSWER, materials })).toEqual([
    {
      material: 'sooner',
      hits: 'Runs out on 5 Apr 2026: 26-014 lacks 3 sheets.',
      runsOut: inDays(2),
      standing: '12 sheets usable; order when down to 4 sheets.',
    },
    {
      material: 'later',
      hits: 'Runs out on 12 Apr 2026 by its usual use.',
      runsOut: inDays(9),
      standing: '12 sheets usable; order when down to 4 sheets.',
    },
    {
      material: 'A',
      hits: null,
      runsOut: null,
      standing: '1 sheet usable and 4 sheets on order; order when down to 20 sheets.',
    },
    { material: 'B', hits: null, runsOut: null, standing: '10 sheets usable; order when down to 20 sheets.' },
  ]);
});

test('what goes off is told by its last day, with what it is worth together as far as that is known', () => {
  const goesOff = [
    { lot: 'P-2', goodUntil: inDays(8), quantity: 12.3456, worth: 140 },
    { lot: 'P-1', goodUntil: inDays(3), quantity: 5, worth: null },
    { lot: 'P-3', goodUntil: inDays(2), quantity: 0, worth: 0 },
  ];
  const plan = materialPlan({ unit: 'g', projection: { ...materialPlan({}).projection, goesOff } });
  const listed = goingOffIn({ ...NO_ANSWER, materials: [plan] });
  expect(listed.map(({ lot, quantity, worth }) => [lot, quantity, worth])).toEqual([
    ['P-1', '5 g', null],
    ['P-2', '12.3 g', 140],
  ]);
  expect(goingOffInAll(listed)).toEqual({ lots: '2 lots', worth: 140 });
});

const COST = { batches: 1, minutes: 45, effort: 3600, waste: 0, wasteCost: 0 };
const PLAN: MakePlan = {
  material: 'Wheat starch paste',
  recipe: 'Paste, thick',
  batches: [
    {
      makeOn: today,
      readyOn: inDays(1),
      goodUntil: inDays(5),
      quantity: 60,
      servings: [{ day: inDays(1), job: '26-014', what: 'Mend tear', quantity: 52.5 }],
      waste: 7.5,
    },
  ],
  cost: { ...COST, waste: 7.5, wasteCost: 31 },
  forEachJob: { cost: { ...COST, batches: 3, minutes: 135, effort: null }, unserved: [] },
  weekly: { cost: { ...COST, batches: 2 }, unserved: [inDays(3)] },
  late: [{ day: today, job: '26-015', what: 'Mend tear', quantity: 4, readyOn: inDays(1) }],
  unserved: [],
};

test('a batch says for whom it is, when it is ready, until when it is good, and what of it nobody needs', () => {
  const [batch = expect.unreachable()] = PLAN.batches;
  expect(servingsInWords(batch, 'g')).toEqual(['52.5 g for 26-014, Mend tear, on 4 Apr 2026']);
  expect(batchInWords(batch, 'g')).toBe(
    'Ready on 4 Apr 2026. Good until 8 Apr 2026; 7.5 g of it nobody needs.',
  );
  expect(batchInWords({ ...batch, readyOn: today, goodUntil: null, waste: 0 }, 'g')).toBe('It keeps.');
  expect(lateInWords(PLAN.late[0] ?? expect.unreachable(), 'g')).toBe(
    '26-015, Mend tear, needs 4 g on 3 Apr 2026: it can be ready on 4 Apr 2026 at the earliest.',
  );
});

test('the ways of making stand side by side', () => {
  expect(waysInWords(PLAN, 'g')).toEqual([
    {
      name: 'As planned here',
      batches: '1 batch',
      minutes: '45 min',
      effort: 3600,
      waste: '7.5 g',
      wasteCost: 31,
      against: null,
    },
    {
      name: 'A batch for each job',
      batches: '3 batches',
      minutes: '135 min',
      effort: null,
      waste: 'nothing',
      wasteCost: null,
      against: null,
    },
    {
      name: 'Once a week',
      batches: '2 batches',
      minutes: '45 min',
      effort: 3600,
      waste: 'nothing',
      wasteCost: null,
      against: 'nothing fresh on 1 day',
    },
  ]);
});

const WANT: JobWant = {
  material: 'Repair tissue 5',
  unit: 'sheet',
  day: inDays(20),
  missing: 8,
  how: 'buy',
  latestBy: inDays(10),
  supplier: 'Paper mill',
  tooLate: false,
  onItsWay: null,
};
const LACKS = 'Repair tissue 5: 8 sheets missing on 23 Apr 2026';

test.each<[Partial<JobWant>, string]>([
  [{}, `${LACKS}. Order it from Paper mill by 13 Apr 2026.`],
  [{ how: 'make', supplier: null }, `${LACKS}. Make it by 13 Apr 2026.`],
  [{ how: 'make', supplier: null, latestBy: inDays(20) }, `${LACKS}. Make it on that day.`],
  [
    { tooLate: true, onItsWay: inDays(21) },
    `${LACKS}. To have it then, it was to be ordered from Paper mill by 13 Apr 2026. What is on order should be here on 24 Apr 2026.`,
  ],
  [{ how: 'nowhere', latestBy: null, supplier: null }, `${LACKS}. Nobody sells it, and no recipe makes it.`],
])('a job that lacks something, %o', (told, words) => {
  expect(wantInWords({ ...WANT, ...told })).toBe(words);
});

test.each<[Pick<JobAnswer, 'canBeDone' | 'wants'>, string]>([
  [{ canBeDone: true, wants: [] }, 'Yes: what it takes is there on its days.'],
  [{ canBeDone: true, wants: [WANT] }, 'Yes, if what is missing is made or ordered in time.'],
  [{ canBeDone: false, wants: [WANT] }, 'Not as it is planned now.'],
])('whether it can be done, %#', (told, words) => {
  expect(answerInWords({ job: '26-014', due: null, readyOn: null, obstacles: [], ...told })).toBe(words);
});

test('why a material is needed stands first among the reasons of its line, and once', () => {
  const line = { reasons: ['Cheaper in all.', 'It runs out.'] } as unknown as Parameters<
    typeof lineReasons
  >[0];
  const need = { because: 'It runs out.' } as unknown as NonNullable<Parameters<typeof lineReasons>[1]>;
  expect(lineReasons(line, need)).toEqual(['It runs out.', 'Cheaper in all.']);
  expect(lineReasons(line, undefined)).toEqual(['Cheaper in all.', 'It runs out.']);
});
