import { addDays, type Day } from '../day.ts';
import type { Arrival, LotSupply } from '../planning/plan-problem.ts';

/** A batch that is planned to be made, in the material's stock unit. */
export interface BatchSupply {
  readonly readyOn: Day;
  /** The last day on which it may be used; null where it keeps. */
  readonly goodUntil: Day | null;
  readonly quantity: number;
  /** What one stock unit of it costs, in coins; null where that isn't known. */
  readonly unitWorth: number | null;
}

/** Something that is drawn on in the course of a projection: its rest and its last day change. */
export interface Supply {
  readonly kind: 'lot' | 'arrival' | 'batch';
  /** A lot's identifier; null for what is yet to arrive or to be made. */
  readonly lot: string | null;
  /** The day at whose start it comes in; today or earlier where it is there. */
  readonly from: Day;
  readonly unitWorth: number | null;
  left: number;
  goodUntil: Day | null;
  /** How long it keeps from its first draw; null where it is open, or that doesn't matter. */
  lifeOpenedDays: number | null;
}

/** All that a material's supplies are made of. */
export interface SupplySources {
  readonly today: Day;
  /** Those that are here in draw order, as among lots that are otherwise alike the earlier in the list goes first. */
  readonly lots: readonly LotSupply[];
  readonly arrivals: readonly Arrival[];
  readonly batches: readonly BatchSupply[];
  readonly lifeSealedDays: number | null;
  readonly lifeOpenedDays: number | null;
  /** What one stock unit costs to get again, in coins; null where nothing gives a figure. */
  readonly unitCost: number | null;
}

/** The supplies, those that are here first. An arrival of which nobody knows the day is not among them. */
export function suppliesOf(sources: SupplySources): Supply[] {
  const { today, lots, arrivals, batches, lifeSealedDays, lifeOpenedDays, unitCost } = sources;
  return [
    ...lots.map(
      ({ lot, quantity, from, goodUntil, lifeOpenedDays: life, unitWorth }): Supply => ({
        kind: 'lot',
        lot,
        from,
        unitWorth,
        left: quantity,
        goodUntil,
        lifeOpenedDays: life,
      }),
    ),
    ...arrivals.flatMap(({ day, quantity }): Supply[] => {
      if (day === null) return [];
      const from = day < today ? addDays(today, 1) : day;
      const goodUntil = lifeSealedDays === null ? null : addDays(from, lifeSealedDays);
      return [
        { kind: 'arrival', lot: null, from, unitWorth: unitCost, left: quantity, goodUntil, lifeOpenedDays },
      ];
    }),
    ...batches.map(
      ({ readyOn, goodUntil, quantity, unitWorth }): Supply => ({
        kind: 'batch',
        lot: null,
        from: readyOn,
        unitWorth,
        left: quantity,
        goodUntil,
        lifeOpenedDays,
      }),
    ),
  ];
}

/** Parts supplies by whether their last day is over on a day; what is used up is in neither. */
export function partGone(
  supplies: readonly Supply[],
  day: Day,
): { readonly usable: Supply[]; readonly gone: Supply[] } {
  const usable: Supply[] = [];
  const gone: Supply[] = [];
  for (const supply of supplies) {
    if (supply.left === 0) continue;
    (supply.goodUntil !== null && supply.goodUntil < day ? gone : usable).push(supply);
  }
  return { usable, gone };
}

/**
 * Brings supplies into draw order: the earliest last day first (those that keep come last), then open before sealed,
 * then what came in first. Those alike in all that stay as they stand.
 */
export function sortInDrawOrder(supplies: Supply[]): void {
  supplies.sort(
    (a, b) =>
      compareLastDays(a.goodUntil, b.goodUntil) ||
      Number(a.lifeOpenedDays !== null) - Number(b.lifeOpenedDays !== null) ||
      a.from - b.from,
  );
}

function compareLastDays(a: Day | null, b: Day | null): number {
  if (a === b) return 0;
  if (a === null) return 1;
  return b === null ? -1 : a - b;
}

/**
 * Draws a quantity on a day from supplies in draw order. What is sealed is opened by the first draw, and from then on
 * keeps no longer than opened; the order still holds, as all that stood before it is used up and its turn is no later.
 * @param noise what is no more than this is nothing: the rest of a sum of numbers that aren't exact
 * @returns what none of them covers
 */
export function drawFrom(supplies: Supply[], quantity: number, day: Day, noise: number): number {
  let missing = quantity;
  for (const supply of supplies) {
    if (missing <= noise) break;
    if (supply.left === 0) continue;
    const taken = Math.min(supply.left, missing);
    missing -= taken;
    supply.left = supply.left - taken <= noise ? 0 : supply.left - taken;
    if (supply.lifeOpenedDays === null) continue;
    const openUntil = addDays(day, supply.lifeOpenedDays);
    if (supply.goodUntil === null || openUntil < supply.goodUntil) supply.goodUntil = openUntil;
    supply.lifeOpenedDays = null;
  }
  return missing <= noise ? 0 : missing;
}
