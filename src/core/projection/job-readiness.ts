import { addDays, type Day } from '../day.ts';
import { roundPlanned } from '../forecast/round-planned.ts';
import { groupBy } from '../group-by.ts';
import { keyOf } from '../identifier.ts';
import type { MaterialProblem, PlanProblem, SupplierProblem } from '../planning/plan-problem.ts';
import { dayObstacles, readyOnOf } from './job-days.ts';
import type { MissedDemand, Projection } from './projection.ts';

/** Whether a job can be done on its days, and what must be got for it by when. */
export interface JobAnswer {
  readonly job: string;
  readonly due: Day | null;
  /** The day on which its last treatment has dried or been pressed; null where nothing is dated. */
  readonly readyOn: Day | null;
  /** Everything is there on its day, or can still be made or bought in time, the standing hours fit, and it is ready when due. */
  readonly canBeDone: boolean;
  readonly wants: readonly JobWant[];
  /** What of its days doesn't fit: standing hours, due. Sentences for a person. */
  readonly obstacles: readonly string[];
}

/** A material that a job will not find. */
export interface JobWant {
  readonly material: string;
  readonly unit: string;
  /** The day on which it is needed. */
  readonly day: Day;
  readonly missing: number;
  readonly how: 'make' | 'buy' | 'nowhere';
  /** The latest day on which it can be made or ordered; null where nothing sells or makes it. */
  readonly latestBy: Day | null;
  /** Where it is ordered; null where it is made or nowhere to be had. */
  readonly supplier: string | null;
  /** The latest day has passed. */
  readonly tooLate: boolean;
  /** The first day after it on which so much of what is ordered already should be here; null where none is. */
  readonly onItsWay: Day | null;
}

/** How a material is got: by when at the latest for a day, and from whom. */
interface Source {
  readonly how: 'make' | 'buy';
  readonly daysBefore: number;
  readonly supplier: string | null;
}

/**
 * For each job, what its planned treatments will not find on their days, by when that must be made or ordered at the
 * latest, and what of its days doesn't fit. Whether a treatment is right or safe is not for this to say.
 * What a batch made for a job lacks of its ingredients is among the job's wants where their demands name the job.
 * @param projections by material, with the demands of all jobs and batches served in turn. What a projection counts on
 *   (arrivals, batches) is not wanting: where it counts on batches, only what comes too late for them is.
 */
export function jobAnswersOf(
  { today, jobs, materials, suppliers }: Pick<PlanProblem, 'today' | 'jobs' | 'materials' | 'suppliers'>,
  projections: ReadonlyMap<string, Pick<Projection, 'missed'>>,
): JobAnswer[] {
  const lacks = groupBy(
    materials.flatMap((material) => {
      const source = sourceOf(material, suppliers);
      const missed = projections.get(material.material)?.missed ?? [];
      return lacksOf(missed).map(({ job, day, quantity }) => ({
        job,
        want: wantOf(today, material, source, day, quantity),
      }));
    }),
    ({ job }) => keyOf(job),
  );
  return jobs.map((problem) => {
    const { job, due } = problem;
    const wants = (lacks.get(keyOf(job)) ?? []).map(({ want }) => want).toSorted((a, b) => a.day - b.day);
    const obstacles = dayObstacles(today, problem);
    return {
      job,
      due,
      readyOn: readyOnOf(today, problem),
      canBeDone: obstacles.length === 0 && wants.every(({ how, tooLate }) => how !== 'nowhere' && !tooLate),
      wants,
      obstacles,
    };
  });
}

interface Lack {
  readonly job: string;
  readonly day: Day;
  readonly quantity: number;
}

/** What planned treatments miss, once for each job and day; what the log has not drawn was there when it was used. */
function lacksOf(missed: readonly MissedDemand[]): Lack[] {
  const lacks = new Map<string, Lack>();
  for (const { kind, job, day, quantity } of missed) {
    if (kind !== 'planned' || job === null) continue;
    const key = `${day} ${keyOf(job)}`;
    lacks.set(key, { job, day, quantity: (lacks.get(key)?.quantity ?? 0) + quantity });
  }
  return [...lacks.values()];
}

function wantOf(
  today: Day,
  { material, unit, arrivals }: MaterialProblem,
  source: Source | null,
  day: Day,
  missing: number,
): JobWant {
  const latestBy = source === null ? null : addDays(day, -source.daysBefore);
  return {
    material,
    unit,
    day,
    missing: roundPlanned(missing),
    how: source?.how ?? 'nowhere',
    latestBy,
    supplier: source?.supplier ?? null,
    tooLate: latestBy !== null && latestBy < today,
    onItsWay: comesOn(arrivals, day, missing),
  };
}

/** It is made where a recipe makes it, else ordered where it is here first; of several alike from the preferred one. */
function sourceOf(
  { recipe, offers, supplier: preferred }: MaterialProblem,
  suppliers: readonly SupplierProblem[],
): Source | null {
  if (recipe !== null) return { how: 'make', daysBefore: recipe.readyDays, supplier: null };
  const leadDays = new Map(suppliers.map((each) => [keyOf(each.supplier), each.leadDays]));
  const isPreferred = (supplier: string): boolean =>
    preferred !== null && keyOf(preferred) === keyOf(supplier);
  const ways = offers.map(
    ({ supplier }): Source => ({
      how: 'buy',
      daysBefore: Math.ceil(leadDays.get(keyOf(supplier)) ?? 0),
      supplier,
    }),
  );
  return (
    ways.toSorted(
      (a, b) =>
        a.daysBefore - b.daysBefore ||
        Number(isPreferred(b.supplier ?? '')) - Number(isPreferred(a.supplier ?? '')),
    )[0] ?? null
  );
}

/** The first day after one by which so much has arrived since. */
function comesOn(arrivals: MaterialProblem['arrivals'], after: Day, missing: number): Day | null {
  const coming = arrivals
    .flatMap(({ day, quantity }) => (day !== null && day > after ? [{ day, quantity }] : []))
    .toSorted((a, b) => a.day - b.day);
  let total = 0;
  for (const { day, quantity } of coming) {
    total += quantity;
    if (total >= missing) return day;
  }
  return null;
}
