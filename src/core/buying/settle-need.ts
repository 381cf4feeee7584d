import type { Day } from '../day.ts';
import type { BasketProblem, BuyNeed, NeedBy } from './basket-problem.ts';
import { type OfferRow, rowsOf, slackOf } from './offer-row.ts';
import { type Cover, packSums } from './whole-packs.ts';

/** What is really asked of the suppliers for a need: what can be here when, and be used before it goes off. */
export interface SettledNeed {
  readonly need: BuyNeed;
  readonly rows: readonly OfferRow[];
  /** What must be here by when, as far as any row can be. */
  readonly covers: readonly Cover[];
  /** No more than this is bought, in the stock unit; null where there is no limit. */
  readonly limit: number | null;
  /** All that is wanted, before anything was cut off because it could not be used. */
  readonly wanted: number;
  /** All that is asked for. */
  readonly asked: number;
}

/**
 * Settles what a need asks for. A day that nothing can make is put off to the first on which something can be here.
 * No more is bought than can be used, or than the smallest amount in whole packs that the waiting jobs need, where
 * that is more; what refills the stock is cut down to that.
 */
export function settleNeed(problem: BasketProblem, need: BuyNeed): SettledNeed {
  const wanted = need.by.at(-1)?.quantity ?? 0;
  // Of what isn't needed only what is set by hand is bought.
  const rows = rowsOf(problem, need).filter(({ byHand }) => byHand !== null || wanted > 0);
  const all = putOff(rows, need.by);
  const whole = { need, rows, covers: all, limit: need.most, wanted, asked: wanted };
  if (need.most === null || rows.length === 0) return whole;

  const jobs = putOff(rows, ofJobs(need.by));
  const forJobs = smallestSum(rows, jobs);
  const limit = Math.max(need.most, forJobs);
  if (smallestSum(rows, all) <= limit + slackOf(limit)) return { ...whole, limit };

  const largest = packSums(rows, jobs, limit).at(-1)?.quantity ?? 0;
  const asked = Math.min(largest, wanted);
  const last = Math.max(...rows.map(({ arrives }) => arrives)) as Day;
  return { ...whole, limit, covers: [...jobs, { day: last, quantity: asked, job: null }], asked };
}

/** Of cumulative needs what jobs wait for, cumulative again. */
function ofJobs(by: readonly NeedBy[]): NeedBy[] {
  let before = 0;
  let ofThem = 0;
  return by.flatMap((each) => {
    const more = Math.max(each.quantity - before, 0);
    before = Math.max(each.quantity, before);
    if (each.job === null || more === 0) return [];
    ofThem += more;
    return [{ ...each, quantity: ofThem }];
  });
}

/** The needs as covers: each by its day, or by the first day after it on which an open row can be here. */
function putOff(rows: readonly OfferRow[], by: readonly NeedBy[]): Cover[] {
  const first = firstOpenDay(rows);
  return by.flatMap(({ day, quantity, job }) => {
    if (setByHand(rows, day) >= quantity - slackOf(quantity)) return [];
    return first === null ? [] : [{ day: Math.max(day, first) as Day, quantity, job }];
  });
}

/** The first day on which a row that isn't set by hand can be here; null where all are set. */
function firstOpenDay(rows: readonly OfferRow[]): Day | null {
  const open = rows.filter(({ byHand }) => byHand === null).map(({ arrives }) => arrives);
  return open.length === 0 ? null : (Math.min(...open) as Day);
}

/** How much of what is set by hand is here by a day. */
function setByHand(rows: readonly OfferRow[], day: Day): number {
  return rows.reduce(
    (sum, { byHand, offer, arrives }) =>
      byHand !== null && arrives <= day ? sum + byHand * offer.packQuantity : sum,
    0,
  );
}

/** The smallest amount in whole packs that covers what is asked for in time. */
function smallestSum(rows: readonly OfferRow[], covers: readonly Cover[]): number {
  const fixed = setByHand(rows, Infinity as Day);
  const largest = Math.max(...covers.map(({ quantity }) => quantity), 0);
  const first = firstOpenDay(rows);
  // The packs that come first cover everything by themselves.
  const alone = rows
    .filter(({ byHand, arrives }) => byHand === null && arrives === first)
    .map(({ offer, least }) => Math.max(least, Math.ceil(largest / offer.packQuantity)) * offer.packQuantity);
  const bound = covers.length === 0 ? fixed : fixed + Math.min(...alone);
  return packSums(rows, covers, bound)[0]?.quantity ?? fixed;
}
