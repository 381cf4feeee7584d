import type { BuyNeed, NeedBy } from '../buying/basket-problem.ts';
import { addDays, DAYS_PER_WEEK, type Day, spokenDay } from '../day.ts';
import type { Forecast } from '../forecast/choose-forecast.ts';
import type { OrderLevel } from '../forecast/order-level.ts';
import { plannedWords } from '../forecast/planned-words.ts';
import { keyOf } from '../identifier.ts';
import type { Projection } from '../projection/projection.ts';
import { counted } from '../wording.ts';
import type { MaterialProblem, PlanProblem } from './plan-problem.ts';

/** What is less than this of a unit is nothing. */
const LEAST = 1e-6;

/** What was worked out of a material before it is asked whether to buy it. */
export interface BuyGrounds {
  readonly forecast: Forecast;
  readonly level: OrderLevel;
  /** With what is here, on its way and planned to be made, and nothing bought. */
  readonly projection: Projection;
}

/**
 * What should be bought of a material now. It is asked for once what is usable and on order, less what of it goes off
 * unused before an order could be here, is down to its level, or a job within that time finds too little. Then it is
 * filled up to the level and to what will be used in the cover days, as far as that can be used before it goes off.
 * @returns null where nothing should be bought
 */
export function buyNeedOf(
  problem: PlanProblem,
  material: MaterialProblem,
  grounds: BuyGrounds,
): BuyNeed | null {
  const { today } = problem;
  const { level, projection } = grounds;
  const leadEnd = addDays(today, Math.ceil(material.leadDays + problem.reviewDays));
  const coverEnd = addDays(leadEnd, problem.coverDays);
  const lost = sumOf(
    projection.goesOff.filter(({ goodUntil }) => goodUntil < leadEnd).map(({ quantity }) => quantity),
  );
  const { usable, onOrder } = material.plain;
  const there = usable + onOrder - lost;
  const missed = missedByJobs(problem, material, projection, leadEnd);
  const isDown = level.level > LEAST && there <= level.level + LEAST;
  if (!isDown && missed.length === 0) return null;
  const wanted = Math.max(level.level + useBetween(grounds, leadEnd, coverEnd) - there, 0);
  const most = mostUsed(problem, material, grounds);
  const forJobs = missed.at(-1)?.quantity ?? 0;
  const refill = most === null ? wanted : Math.min(wanted, most.quantity);
  const all = Math.max(refill, forJobs);
  if (all <= LEAST) return null;
  return {
    material: material.material,
    unit: material.unit,
    inPieces: material.inPieces,
    supplier: material.supplier,
    by: withRefill(missed, all, projection, problem.until),
    most: most?.quantity ?? null,
    mostBecause: most?.because ?? null,
    offers: material.offers,
    because: becauseOf(material, there, level, projection, missed),
  };
}

/**
 * What could be bought of a material that nothing asks for: of it only what a person sets by hand is bought.
 * @returns null where nobody offers it
 */
export function besideNeedOf(
  problem: PlanProblem,
  material: MaterialProblem,
  grounds: BuyGrounds,
): BuyNeed | null {
  if (material.offers.length === 0) return null;
  const most = mostUsed(problem, material, grounds);
  return {
    material: material.material,
    unit: material.unit,
    inPieces: material.inPieces,
    supplier: material.supplier,
    by: [],
    most: most?.quantity ?? null,
    mostBecause: most?.because ?? null,
    offers: material.offers,
    because: 'Added by hand: the plan does not ask for it now.',
  };
}

/**
 * What jobs lack by which day, within the time that an order takes; cumulative. What nobody can deliver in time and
 * what is on its way covers later is not ordered a second time: the job has to wait for it.
 */
function missedByJobs(
  { today, suppliers }: PlanProblem,
  { offers, arrivals }: MaterialProblem,
  projection: Projection,
  until: Day,
): NeedBy[] {
  const leads = new Map(suppliers.map(({ supplier, leadDays }) => [keyOf(supplier), Math.ceil(leadDays)]));
  const fastest = Math.min(...offers.map(({ supplier }) => leads.get(keyOf(supplier)) ?? 0));
  const lastArrival = Math.max(...arrivals.map(({ day }) => day ?? today));
  let spare = leastUsableFrom(projection, lastArrival);
  const needs: NeedBy[] = [];
  let total = 0;
  for (const { kind, day, job, quantity } of projection.missed) {
    if (kind !== 'planned' || day > until) continue;
    const comesLater = day < lastArrival && addDays(today, fastest) > day && spare >= quantity - LEAST;
    if (comesLater) {
      spare -= quantity;
      continue;
    }
    total += quantity;
    const before = needs.at(-1);
    if (before?.day === day) needs[needs.length - 1] = { ...before, quantity: total };
    else needs.push({ day, quantity: total, job });
  }
  return needs;
}

/** The least that is usable on any day from one on: what of it nothing known will need. */
function leastUsableFrom({ days }: Projection, from: number): number {
  return Math.min(...days.filter(({ day }) => day >= from).map(({ usable }) => usable));
}

/** The jobs' needs, and the rest by the first day on which anything would be missing. */
function withRefill(
  missed: readonly NeedBy[],
  all: number,
  { firstShort }: Projection,
  until: Day,
): NeedBy[] {
  const last = missed.at(-1);
  if (last !== undefined && all <= last.quantity + LEAST) return [...missed];
  const wishedBy = firstShort?.day ?? until;
  const day = last === undefined || wishedBy > last.day ? wishedBy : last.day;
  if (last?.day === day) return [...missed.slice(0, -1), { ...last, quantity: all }];
  return [...missed, { day, quantity: all, job: null }];
}

/** What will be used after one day up to and with another: what is planned, and forecast beyond that. */
function useBetween({ projection, forecast }: BuyGrounds, after: Day, until: Day): number {
  const days = projection.days.filter(({ day }) => day > after && day <= until);
  const known = sumOf(days.map(({ planned, forecast: more, short }) => planned + more + short));
  const beyond = Math.max(until - after - days.length, 0);
  return known + (beyond * forecast.perWeek) / DAYS_PER_WEEK;
}

/** What can be used before it would go off, and kept under Keep at most; the tighter of the two. */
function mostUsed(
  problem: PlanProblem,
  material: MaterialProblem,
  grounds: BuyGrounds,
): { readonly quantity: number; readonly because: string } | null {
  const limits: { readonly quantity: number; readonly because: string }[] = [];
  const { lifeSealedDays, keepAtMost } = material;
  if (lifeSealedDays !== null) {
    const arrival = addDays(problem.today, Math.ceil(material.leadDays));
    const then = grounds.projection.days.find(({ day }) => day === arrival)?.usable ?? 0;
    const used = useBetween(grounds, arrival, addDays(arrival, lifeSealedDays));
    // Where no use is known or planned, nothing says how much would go off: Keep at least is her own word.
    if (used > LEAST) {
      limits.push({
        quantity: Math.max(used - then, 0),
        because: `it keeps ${counted(lifeSealedDays, 'day')}`,
      });
    }
  }
  if (keepAtMost !== null) {
    const { usable, onOrder } = material.plain;
    limits.push({
      quantity: Math.max(keepAtMost - usable - onOrder, 0),
      because: `no more than ${plannedWords(keepAtMost, material.unit)} should be kept`,
    });
  }
  return limits.toSorted((a, b) => a.quantity - b.quantity)[0] ?? null;
}

function becauseOf(
  material: MaterialProblem,
  there: number,
  level: OrderLevel,
  { firstShort }: Projection,
  missed: readonly NeedBy[],
): string {
  const first = missed[0];
  if (first !== undefined) {
    return `${first.job ?? ''} lacks ${plannedWords(first.quantity, material.unit)} on ${spokenDay(first.day)}.`;
  }
  const down =
    `${plannedWords(there, material.unit)} left with what is on order: ` +
    `order when down to ${plannedWords(level.level, material.unit)}.`;
  return firstShort === null ? down : `${down} Without an order it runs out on ${spokenDay(firstShort.day)}.`;
}

function sumOf(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
