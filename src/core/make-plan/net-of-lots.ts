import type { Day } from '../day.ts';
import { addDays } from '../day.ts';
import type { KnownDemand, LotSupply } from '../planning/plan-problem.ts';
import { inTurn } from './dated-needs.ts';

/** What remains below this share of what was asked for is nothing. */
const NOTHING = 1e-9;

/** A lot as it runs down. */
interface RunningLot extends Pick<LotSupply, 'from' | 'lifeOpenedDays'> {
  left: number;
  goodUntil: Day | null;
  isSealed: boolean;
}

/**
 * What the lots at hand do not cover of what is needed, each need with the day and the job that it had. Needs are
 * served by day, what the log has not drawn first; lots are drawn in the draw order as it is on that day: the earliest
 * good until first, then opened before sealed, then as they are given. A lot that is first drawn keeps no longer than
 * its life once opened from that day.
 * @param lots in draw order
 */
export function netOfLots(lots: readonly LotSupply[], demands: readonly KnownDemand[]): KnownDemand[] {
  const running: RunningLot[] = lots.map(({ from, lifeOpenedDays, quantity, goodUntil }) => ({
    from,
    lifeOpenedDays,
    left: quantity,
    goodUntil,
    isSealed: lifeOpenedDays !== null,
  }));
  const rest: KnownDemand[] = [];
  for (const demand of demands.toSorted(inTurn)) {
    let missing = demand.quantity;
    const isNothing = (quantity: number) => quantity <= NOTHING * demand.quantity;
    while (!isNothing(missing)) {
      const lot = nextLot(running, demand.day);
      if (lot === null) break;
      const taken = Math.min(lot.left, missing);
      missing -= taken;
      lot.left -= taken;
      open(lot, demand.day);
    }
    if (!isNothing(missing)) rest.push({ ...demand, quantity: missing });
  }
  return rest;
}

function nextLot(lots: readonly RunningLot[], day: Day): RunningLot | null {
  const usable = lots.filter(
    ({ left, from, goodUntil }) => left > 0 && from <= day && (goodUntil === null || goodUntil >= day),
  );
  return usable.toSorted(inDrawOrder)[0] ?? null;
}

function inDrawOrder(a: RunningLot, b: RunningLot): number {
  const [untilA, untilB] = [a, b].map(({ goodUntil }) => goodUntil ?? Number.POSITIVE_INFINITY);
  if (untilA !== undefined && untilB !== undefined && untilA !== untilB) return untilA - untilB;
  return Number(a.isSealed) - Number(b.isSealed);
}

function open(lot: RunningLot, day: Day): void {
  if (!lot.isSealed || lot.lifeOpenedDays === null) return;
  const opened = addDays(day, lot.lifeOpenedDays);
  lot.goodUntil = lot.goodUntil === null || opened < lot.goodUntil ? opened : lot.goodUntil;
  lot.isSealed = false;
}
