import type { NeedOfDay, ServedPoint } from './cumulative-need.ts';

/** What says which batches there can be; quantities in millionths. */
export interface SplitRules {
  /** 0 where there is no least. */
  readonly smallest: number;
  /** Infinity where there is no limit. */
  readonly largest: number;
  /** How many days may lie between the first and the last day that a batch serves. */
  readonly spanDays: number;
  /** A batch costs the same on all days, and holding costs nothing. */
  readonly daysAreAlike: boolean;
}

/**
 * The points at which one batch may end and the next begin, in order, from nothing served to everything: enough of
 * them to hold a plan that costs least.
 *
 * Why these are enough. Take a plan that costs least, of these one with the fewest batches. With its days held, let
 * x₀ = 0 ≤ x₁ ≤ … ≤ xₙ = all be what is served up to each batch. Each x is bounded by what is needed before the batch
 * is ready and by what is needed while it keeps, so by sums of whole days; the cost is linear in the x but for the
 * waste, which bends where x – x′ is the smallest batch, and x – x′ is at most the largest. The cost is therefore least
 * at a corner, at which every x is tied: it is a sum of whole days, or it lies by the smallest or the largest batch
 * beyond, or before, an x that is tied. Ties run along neighbours and never turn back. So each x is a sum of whole days
 * and so many such steps on from it, all of them forwards or all of them backwards, and each step is a batch.
 *
 * Where such steps may stop. Two neighbouring batches of that plan can never be made as one, or a plan with fewer
 * batches would cost no more: one needs no more waste and no second set-up. They can be made as one on the later
 * of their days where they serve the same one day (that day suits both, and holds less long); where all days are alike,
 * wherever one batch keeps long enough for both.
 */
export function splitPoints(
  days: readonly NeedOfDay[],
  pointOf: (served: number) => ServedPoint,
  rules: SplitRules,
): ServedPoint[] {
  const total = days.at(-1)?.upTo ?? 0;
  const points = new Map<number, ServedPoint>();
  const at = (served: number): ServedPoint => {
    const known = points.get(served);
    if (known !== undefined) return known;
    const point = pointOf(served);
    points.set(served, point);
    return point;
  };
  const ends = [0, ...days.map(({ upTo }) => upTo)].map(at);
  const sizes = [...new Set([rules.smallest, rules.largest])].filter((size) => size > 0 && size < total);
  for (const direction of [1, -1]) {
    const taken = sizes.map(() => new Set<number>());
    const steps: { readonly point: ServedPoint; readonly previous: ServedPoint | null }[] = ends.map(
      (point) => ({ point, previous: null }),
    );
    for (let step = steps.pop(); step !== undefined; step = steps.pop()) {
      const { point, previous } = step;
      for (const [index, size] of sizes.entries()) {
        const served = point.served + direction * size;
        if (served <= 0 || served >= total || taken[index]?.has(served) === true) continue;
        const next = pointOf(served);
        if (!oneBatch(point, next, rules.spanDays, rules.largest)) continue;
        if (previous !== null && canBeOne(previous, next, rules)) continue;
        taken[index]?.add(served);
        steps.push({ point: at(served), previous: point });
      }
    }
  }
  return [...points.values()].toSorted((a, b) => a.served - b.served);
}

function canBeOne(a: ServedPoint, b: ServedPoint, { daysAreAlike, spanDays, largest }: SplitRules): boolean {
  return oneBatch(a, b, daysAreAlike ? spanDays : 0, largest);
}

/** Whether one batch can serve what lies between two points. */
function oneBatch(a: ServedPoint, b: ServedPoint, spanDays: number, largest: number): boolean {
  const [from, to] = a.served < b.served ? [a, b] : [b, a];
  return to.served - from.served <= largest && to.lastDay - from.nextDay <= spanDays;
}
