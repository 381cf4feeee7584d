import { vi } from 'vitest';
import { addDays, type Day } from '../../src/core/day.ts';
import type { MaterialPlan, PlanAnswer } from '../../src/core/planning/plan-answer.ts';
import { solvePlan } from '../../src/core/planning/solve-plan.ts';
import type { ProjectedDay } from '../../src/core/projection/projection.ts';
import type { Planner } from '../../src/pane/planner.ts';
import { date, dayOf, type Literal } from '../helpers/literal.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

export const today = dayOf(TODAY);

export function inDays(days: number): Day {
  return addDays(today, days);
}

/** The small studio with a job on the bench that needs more tissue than there is, and an order that is late. */
export const SHOP: Literal = {
  ...STUDIO,
  Treatments: STUDIO.Treatments.map((row) => ({ ...row, 'Standing hours': null })),
  Jobs: [
    {
      Job: '26-014',
      Client: 'County archive',
      Object: 'Map',
      Stage: 'On the bench',
      Due: date('2026-05-30'),
    },
  ],
  Items: [],
  Plan: [{ Line: '1', Job: '26-014', Treatment: 'Mend tear', Extent: 40, 'Planned for': date('2026-04-15') }],
  Suppliers: [{ Supplier: 'Paper mill', 'Lead time days': 10, Carriage: 6 }],
  Orders: [
    {
      Order: 'D-1',
      Supplier: 'Paper mill',
      'Ordered on': date('2026-03-20'),
      Expected: date('2026-03-31'),
      State: 'Ordered',
    },
  ],
  OrderLines: [
    {
      Order: 'D-1',
      Line: '1',
      Material: 'Wheat starch',
      Packs: 2,
      'Pack quantity': 1,
      Unit: 'kg',
      'Pack price': 14,
    },
  ],
};

/** What the pane's state needs of a page; nothing in it has the focus. */
export function withoutPage(): void {
  vi.stubGlobal('document', { activeElement: null, hasFocus: () => false, querySelector: () => null });
  vi.stubGlobal('requestAnimationFrame', (frame: () => void) => setTimeout(frame));
}

/** A planner that answers at once, on this thread; what it is asked is kept. */
export function plannerHere(
  basket: Planner['basket'] = () => Promise.reject(new Error('not asked')),
): Planner {
  return { plan: async (problem, { progress }) => solvePlan(problem, progress), basket };
}

/** A planner whose answers the test gives itself. */
export function heldPlanner() {
  const asked: { readonly signal: AbortSignal; readonly progress: (done: number, all: number) => void }[] =
    [];
  const answers: { readonly give: (answer: PlanAnswer) => void; readonly fail: (fault: Error) => void }[] =
    [];
  const planner: Planner = {
    plan: (_, { signal, progress }) =>
      new Promise((give, fail) => {
        asked.push({ signal, progress });
        answers.push({ give, fail });
      }),
    basket: () => Promise.reject(new Error('not asked')),
  };
  return { planner, asked, answers };
}

export const NO_ANSWER: PlanAnswer = {
  today,
  until: inDays(90),
  materials: [],
  jobs: [],
  needs: [],
  besides: [],
  year: { materials: [], suppliers: [] },
};

/** A day of a projection on which nothing happens but what is told. */
export function projected(place: number, usable: number, told: Partial<ProjectedDay> = {}): ProjectedDay {
  return {
    day: inDays(place),
    usable,
    planned: 0,
    forecast: 0,
    arrived: 0,
    made: 0,
    wentOff: 0,
    short: 0,
    ...told,
  };
}

/** The plan of a material of which nothing is said but what is told. */
export function materialPlan(
  told: Partial<MaterialPlan> & { readonly level?: MaterialPlan['level'] },
): MaterialPlan {
  return {
    material: 'Repair tissue 5',
    unit: 'sheet',
    usable: 12,
    onOrder: 0,
    forecast: {
      demandClass: 'none',
      method: 'none',
      weight: null,
      perWeek: 0,
      meanInterval: null,
      sizeVariation: null,
      weekly: [],
      sentence: 'Nothing of it was used.',
    },
    level: orderLevel(0),
    projection: { days: [], firstShort: null, missed: [], goesOff: [], worthGoingOff: 0 },
    make: null,
    ...told,
  };
}

export function orderLevel(level: number): MaterialPlan['level'] {
  return {
    level,
    forUnplanned: level,
    planned: 0,
    keepAtLeast: 0,
    plain: level,
    plainChance: 1,
    plainServed: null,
    measure: 'chance of no shortage',
    servicePercent: null,
    sentence: '',
  };
}
