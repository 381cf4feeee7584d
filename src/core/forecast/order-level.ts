import { DAYS_PER_WEEK } from '../day.ts';
import type { ServiceMeasure } from '../planning/plan-problem.ts';
import { dailyStatistics, leadTimeDeviation } from '../reorder-formula.ts';
import type { Forecast } from './choose-forecast.ts';
import { type LeadTime, leadTimeNeeds, plannedWithin, usualDays } from './lead-time-needs.ts';
import { netUse } from './net-use.ts';
import { fillRate } from './normal-loss.ts';
import { orderLevelSentence } from './order-level-sentence.ts';
import { roundPlanned } from './round-planned.ts';
import { chanceAt, levelForChance, levelForShareServed } from './service-levels.ts';

/** The stock (usable and on order) at which to order again, in the material's stock unit. */
export interface OrderLevel {
  /** What is planned within the lead time and review, and what else will probably be used in it, to the service level. */
  readonly level: number;
  /** What of it covers what isn't planned: a safety stock and the use that is expected. */
  readonly forUnplanned: number;
  /** What of it is planned within the lead time and review, and what the log has not drawn. */
  readonly planned: number;
  readonly keepAtLeast: number;
  /** What the plain formula says, which does not take out what is planned. */
  readonly plain: number;
  /** In what share of deliveries the plain level is enough, by what was used and is planned: from 0 to 1. */
  readonly plainChance: number;
  /**
   * What share of the use is served with the plain level, by the normal distribution on which its formula rests: from
   * 0 to 1; null where nothing is ordered.
   */
  readonly plainServed: number | null;
  readonly measure: ServiceMeasure;
  /** null where no service level is asked for: then the mean use is covered. */
  readonly servicePercent: number | null;
  /** How it came about, for a person. */
  readonly sentence: string;
}

/** What an order level is worked out from; quantities in the stock unit. */
export interface OrderLevelProblem extends LeadTime {
  /** What was used on each day up to and with today, the earliest first. A day below 0 is what came back: see netUse. */
  readonly daily: readonly number[];
  /** What is planned on each day from today on, as far as anything is. */
  readonly planned: readonly number[];
  /** What the log says was used and the ledger has not drawn yet. */
  readonly undrawn: number;
  /** In %, above 0 and below 100; null where none is asked for. */
  readonly servicePercent: number | null;
  readonly serviceMeans: ServiceMeasure;
  /** How much is usually ordered at a time. */
  readonly orderQuantity: number;
  readonly keepAtLeast: number;
  /** What the plain formula says: see reorder-formula.ts. */
  readonly plainLevel: number;
  /** Of the same use. */
  readonly forecast: Forecast;
  /** The name of the stock unit. */
  readonly unit: string;
  /** The same seed gives the same level. */
  readonly seed: number;
}

/**
 * When to order again: at what is planned within the lead time and review days, and so much more for other use that
 * the service level is reached; never below Keep at least. The need is drawn from what was used: see leadTimeNeeds.
 * Where use has died away, what was used counts only as far as the forecast still expects it.
 */
export function orderLevelOf(problem: OrderLevelProblem): OrderLevel {
  const { undrawn, keepAtLeast, plainLevel, servicePercent, serviceMeans } = problem;
  const days = usualDays(problem);
  const needs = leadTimeNeeds({ ...problem, daily: stillUsed(problem) });
  const planned = undrawn + plannedWithin(problem.planned, days);
  const needed = Math.max(undrawn + levelFor(needs, problem), planned);
  const figures = {
    level: roundPlanned(Math.max(needed, keepAtLeast)),
    forUnplanned: roundPlanned(needed - planned),
    planned: roundPlanned(planned),
    keepAtLeast,
    plain: plainLevel,
    plainChance: chanceAt(needs, plainLevel - undrawn),
    plainServed: plainServed(problem),
    measure: serviceMeans,
    servicePercent,
  };
  return { ...figures, sentence: orderLevelSentence(figures, days, problem) };
}

function levelFor(
  needs: Float64Array,
  { servicePercent, serviceMeans, orderQuantity }: OrderLevelProblem,
): number {
  if (servicePercent === null) return needs.reduce((total, need) => total + need, 0) / needs.length;
  const share = servicePercent / 100;
  return serviceMeans === 'share served'
    ? levelForShareServed(needs, share, orderQuantity)
    : levelForChance(needs, share);
}

function stillUsed({ daily, forecast }: OrderLevelProblem): number[] {
  const used = netUse(daily);
  const total = used.reduce((sum, quantity) => sum + quantity, 0);
  const expected = (forecast.perWeek * used.length) / DAYS_PER_WEEK;
  if (forecast.demandClass !== 'died away' || expected >= total) return used;
  return used.map((quantity) => (quantity * expected) / total);
}

function plainServed({
  daily,
  leadDays,
  leadSpreadDays,
  reviewDays,
  plainLevel,
  orderQuantity,
}: OrderLevelProblem): number | null {
  if (orderQuantity <= 0) return null;
  const { mean, deviation } = dailyStatistics(daily);
  const days = leadDays + reviewDays;
  const needDeviation = leadTimeDeviation(days, deviation, mean, leadSpreadDays);
  return fillRate(plainLevel, mean * days, needDeviation, orderQuantity);
}
