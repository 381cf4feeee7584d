import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../../../src/core/day.ts';
import type {
  JobRow,
  MaterialProblem,
  OfferProblem,
  RecipeProblem,
} from '../../../src/core/planning/plan-problem.ts';
import { type JobAnswer, jobAnswersOf } from '../../../src/core/projection/job-readiness.ts';
import { projectionOf } from '../../../src/core/projection/projection.ts';
import { lotOf, sourcesOf } from './helpers/some-sources.ts';

function on(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
}

const TODAY = on('2026-04-01');

const offer = (supplier: string): OfferProblem => ({
  offer: `Offers ${supplier}`,
  supplier,
  packQuantity: 10,
  packWords: '10 g',
  packPrice: 500,
  fromPacks: 1,
});

const recipe = (readyDays: number): RecipeProblem => ({
  recipe: 'R',
  lifeDays: 3,
  limitedByParts: false,
  smallestBatch: 0,
  minutes: 30,
  readyDays,
  parts: [],
});

function materialOf(material: string, more: Partial<MaterialProblem>): MaterialProblem {
  return {
    material,
    unit: 'g',
    inPieces: false,
    daily: [],
    lots: [],
    arrivals: [],
    demands: [],
    lifeSealedDays: null,
    lifeOpenedDays: null,
    keepAtLeast: 0,
    keepAtMost: null,
    servicePercent: null,
    supplier: null,
    leadDays: 0,
    leadSpreadDays: 0,
    recipe: null,
    offers: [],
    unitCost: null,
    plain: { level: 0, suggestedOrder: 0, onOrder: 0, usable: 0 },
    ...more,
  };
}

function need(job: string, day: string, quantity: number, kind: 'planned' | 'not drawn' = 'planned') {
  return { job, day: on(day), quantity, kind, what: 'Lining' };
}

function row(plannedFor: string | null, more: Partial<JobRow> = {}): JobRow {
  const day = plannedFor === null ? null : on(plannedFor);
  return { item: null, treatment: 'Lining', plannedFor: day, standingHours: 0, minutes: 0, ...more };
}

const SUPPLIERS = [
  ['Slow', 10],
  ['Quick', 2.5],
  ['Also quick', 3],
] as const;

function answers(
  materials: readonly MaterialProblem[],
  jobs: readonly { readonly job: string; readonly due?: string; readonly rows?: readonly JobRow[] }[],
): JobAnswer[] {
  const projections = materials.map((each) => {
    const { lots, demands } = each;
    const projection = projectionOf(sourcesOf({ today: TODAY, until: on('2026-05-31'), lots, demands }));
    return [each.material, projection] as const;
  });
  return jobAnswersOf(
    {
      today: TODAY,
      materials,
      jobs: jobs.map(({ job, due, rows }) => ({
        job,
        due: due === undefined ? null : on(due),
        rows: rows ?? [],
      })),
      suppliers: SUPPLIERS.map(([supplier, leadDays]) => ({
        supplier,
        leadDays,
        minimumOrder: 0,
        carriage: 0,
        carriageFreeOver: null,
      })),
    },
    new Map(projections),
  );
}

function onlyAnswer(...given: Parameters<typeof answers>): JobAnswer {
  const [answer, ...more] = answers(...given);
  if (answer === undefined || more.length > 0) throw new Error('one job was asked for');
  return answer;
}

describe('what a job lacks', () => {
  test('is what earlier demands of all jobs leave it without, summed for each material and day', () => {
    const tissue = materialOf('Tissue', {
      lots: [lotOf('A', 10, { from: TODAY })],
      offers: [offer('Slow')],
      demands: [
        need('J1', '2026-04-20', 8),
        need('J2', '2026-04-21', 3),
        need('J2', '2026-04-21', 4),
        need('J2', '2026-04-22', 1.5),
      ],
    });
    const [first, second] = answers([tissue], [{ job: 'J1' }, { job: 'j2 ' }]);
    expect(first).toMatchObject({ job: 'J1', wants: [], canBeDone: true });
    expect(second?.wants.map(({ day, missing, latestBy }) => [day, missing, latestBy])).toEqual([
      [on('2026-04-21'), 5, on('2026-04-11')],
      [on('2026-04-22'), 1.5, on('2026-04-12')],
    ]);
    expect(second?.canBeDone).toBe(true);
  });

  test('is not what the log has not drawn', () => {
    const tissue = materialOf('Tissue', { demands: [need('J1', '2026-04-01', 8, 'not drawn')] });
    expect(onlyAnswer([tissue], [{ job: 'J1' }])).toMatchObject({ wants: [], canBeDone: true });
  });

  test('is ordered where it is here soonest, at the latest a whole lead time before', () => {
    const tissue = (more: Partial<MaterialProblem>) =>
      onlyAnswer(
        [
          materialOf('Tissue', {
            demands: [need('J1', '2026-04-20', 8)],
            offers: [offer('Slow'), offer('Quick'), offer('Also quick')],
            ...more,
          }),
        ],
        [{ job: 'J1' }],
      ).wants;
    const expected = { how: 'buy', supplier: 'Quick', latestBy: on('2026-04-17'), tooLate: false };
    expect(tissue({})).toEqual([
      { ...expected, onItsWay: null, material: 'Tissue', unit: 'g', day: on('2026-04-20'), missing: 8 },
    ]);
    expect(tissue({ supplier: 'Slow' })).toMatchObject([expected]);
    expect(tissue({ supplier: 'ALSO QUICK' })).toMatchObject([{ ...expected, supplier: 'Also quick' }]);
  });

  test('and when what is on order comes too late for it is told', () => {
    const coming = (day: string | null, quantity: number) => ({
      order: 'O-1',
      line: null,
      supplier: 'Slow',
      day: day === null ? null : on(day),
      quantity,
    });
    const arrivals = [
      coming('2026-04-25', 5),
      coming('2026-04-22', 2),
      coming(null, 50),
      coming('2026-04-28', 9),
    ];
    const tissue = materialOf('Tissue', { demands: [need('J1', '2026-04-20', 8)], arrivals });
    expect(onlyAnswer([tissue], [{ job: 'J1' }]).wants).toMatchObject([
      { missing: 8, how: 'nowhere', onItsWay: on('2026-04-28') },
    ]);
    const enough = { ...tissue, arrivals: [coming('2026-04-25', 6), coming('2026-04-22', 2)] };
    expect(onlyAnswer([enough], [{ job: 'J1' }]).wants).toMatchObject([{ onItsWay: on('2026-04-25') }]);
  });

  test('is made where a recipe makes it, ready so many days before', () => {
    const paste = materialOf('Paste', {
      demands: [need('J1', '2026-04-20', 8)],
      recipe: recipe(1),
      offers: [offer('Quick')],
    });
    expect(onlyAnswer([paste], [{ job: 'J1' }]).wants).toMatchObject([
      { how: 'make', supplier: null, latestBy: on('2026-04-19'), tooLate: false },
    ]);
  });

  test('today is not too late, yesterday is', () => {
    const wanted = (day: string) =>
      onlyAnswer(
        [materialOf('Tissue', { demands: [need('J1', day, 8)], offers: [offer('Slow')] })],
        [{ job: 'J1' }],
      );
    expect(wanted('2026-04-11')).toMatchObject({ canBeDone: true, wants: [{ tooLate: false }] });
    expect(wanted('2026-04-10')).toMatchObject({ canBeDone: false, wants: [{ tooLate: true }] });
  });

  test('what nobody sells or makes can not be had', () => {
    const tissue = materialOf('Tissue', { demands: [need('J1', '2026-04-20', 8)] });
    expect(onlyAnswer([tissue], [{ job: 'J1' }])).toMatchObject({
      canBeDone: false,
      wants: [{ how: 'nowhere', latestBy: null, supplier: null, tooLate: false }],
    });
  });

  test('counts the ingredients of what is made for it, and stands by day', () => {
    const paste = materialOf('Paste', { demands: [need('J1', '2026-04-20', 8)], recipe: recipe(0) });
    const starch = materialOf('Starch', { demands: [need('J1', '2026-04-19', 1)] });
    const answer = onlyAnswer([paste, starch], [{ job: 'J1' }]);
    expect(answer.wants.map(({ material }) => material)).toEqual(['Starch', 'Paste']);
    expect(answer.canBeDone).toBe(false);
  });
});

describe('standing hours', () => {
  const standing = (hours: number, second: Partial<JobRow>, from = '2026-04-06', to = '2026-04-06') =>
    onlyAnswer(
      [],
      [
        {
          job: 'J1',
          rows: [
            row(from, { treatment: 'Washing', standingHours: hours, item: 'I1' }),
            row(to, { treatment: 'Mending', item: 'I1', ...second }),
          ],
        },
      ],
    ).obstacles;

  test('of a day leave the next day free, of more the days after', () => {
    expect(standing(24, {}, '2026-04-06', '2026-04-07')).toEqual([]);
    expect(standing(48, {}, '2026-04-06', '2026-04-07')).toEqual([
      'Mending of I1 is planned for 7 Apr 2026, but Washing, planned for 6 Apr 2026, stands for 48 hours: ' +
        'it fits from 8 Apr 2026 on.',
    ]);
    expect(standing(48, {}, '2026-04-06', '2026-04-08')).toEqual([]);
    expect(standing(49, {}, '2026-04-06', '2026-04-08')).toHaveLength(1);
  });

  test('on one day only a second treatment that must stand is in the way, unless it is the same one', () => {
    expect(standing(24, {})).toEqual([]);
    expect(standing(24, { standingHours: 4 })).toEqual([]);
    expect(standing(24, { standingHours: 24 })).toHaveLength(1);
    expect(standing(4, { standingHours: 24 })).toEqual([]);
    expect(standing(24, { standingHours: 24, treatment: 'washing' })).toEqual([]);
  });

  test('hold for the same item; a treatment of the whole job is of every item', () => {
    expect(standing(48, { item: 'I2' }, '2026-04-06', '2026-04-07')).toEqual([]);
    expect(standing(48, { item: 'i1' }, '2026-04-06', '2026-04-07')).toHaveLength(1);
    expect(standing(48, { item: null }, '2026-04-06', '2026-04-07')).toEqual([
      'Mending of I1 is planned for 7 Apr 2026, but Washing, planned for 6 Apr 2026, stands for 48 hours: ' +
        'it fits from 8 Apr 2026 on.',
    ]);
  });

  test('what is planned after does not matter to what is planned before', () => {
    expect(standing(48, {}, '2026-04-06', '2026-04-03')).toEqual([]);
  });

  test('what is overdue is done today at the earliest, what has no day is in nobody’s way', () => {
    expect(standing(24, {}, '2026-03-30', '2026-04-01')).toEqual([
      'Mending of I1 is planned for 1 Apr 2026, but Washing, planned for 30 Mar 2026 and still to be done, ' +
        'stands for 24 hours: it fits from 2 Apr 2026 on.',
    ]);
    const undated = [
      row(null, { treatment: 'Washing', standingHours: 48 }),
      row('2026-04-01', { treatment: 'Mending' }),
    ];
    expect(onlyAnswer([], [{ job: 'J1', rows: undated }]).obstacles).toEqual([]);
  });

  test('an obstacle keeps the job from being done', () => {
    const rows = [
      row('2026-04-06', { treatment: 'Washing', standingHours: 48 }),
      row('2026-04-07', { treatment: 'Mending' }),
    ];
    expect(onlyAnswer([], [{ job: 'J1', rows }])).toMatchObject({
      canBeDone: false,
      obstacles: [
        'Mending is planned for 7 Apr 2026, but Washing, planned for 6 Apr 2026, stands for 48 hours: ' +
          'it fits from 8 Apr 2026 on.',
      ],
    });
  });
});

describe('ready and due', () => {
  const job = (due: string, ...rows: readonly JobRow[]) => onlyAnswer([], [{ job: 'J1', due, rows }]);

  test('a job is ready when the last treatment has stood', () => {
    const rows = [row('2026-04-06', { standingHours: 72, item: 'I1' }), row('2026-04-08', { item: 'I2' })];
    expect(job('2026-04-09', ...rows)).toMatchObject({
      readyOn: on('2026-04-09'),
      obstacles: [],
      canBeDone: true,
    });
  });

  test('it is too late where that is after it is due', () => {
    expect(job('2026-04-08', row('2026-04-06', { standingHours: 72 }))).toMatchObject({
      readyOn: on('2026-04-09'),
      obstacles: ['J1 is due on 8 Apr 2026, but as planned it is ready on 9 Apr 2026.'],
      canBeDone: false,
    });
  });

  test('what is in the way of its days is said as well', () => {
    const rows = [row('2026-04-06', { standingHours: 72 }), row('2026-04-07', { treatment: 'Mending' })];
    const twice = [...rows, row('2026-04-07', { treatment: 'Mending' })];
    expect(job('2026-04-08', ...twice).obstacles).toEqual(job('2026-04-08', ...rows).obstacles);
    expect(job('2026-04-08', ...rows).obstacles).toEqual([
      'Mending is planned for 7 Apr 2026, but Lining, planned for 6 Apr 2026, stands for 72 hours: ' +
        'it fits from 9 Apr 2026 on.',
      'J1 is due on 8 Apr 2026, but as planned it is ready on 9 Apr 2026.',
    ]);
  });

  test('what is overdue and what has no day counts as done today', () => {
    expect(job('2026-04-30', row('2026-03-01')).readyOn).toBe(TODAY);
    const undated = [row('2026-04-01'), row(null, { standingHours: 72 })];
    expect(job('2026-04-30', ...undated).readyOn).toBe(on('2026-04-04'));
  });

  test('where nothing has a day it is not known when it is ready, but a due day that is past is', () => {
    expect(job('2026-04-01', row(null, { standingHours: 72 }))).toMatchObject({
      readyOn: null,
      obstacles: [],
    });
    expect(job('2026-03-31', row(null), row(null))).toMatchObject({
      readyOn: null,
      obstacles: ['J1 was due on 31 Mar 2026; still to be done: 2 treatments.'],
      canBeDone: false,
    });
    expect(job('2026-03-31')).toMatchObject({ readyOn: null, obstacles: [], canBeDone: true });
  });
});
