import type { Written } from '../../actions/writing-desk.ts';
import { type Exact, sum, ZERO } from '../../core/exact-number.ts';
import { costIn } from '../../core/ledger.ts';
import { totalCost } from '../../core/lot-account.ts';
import type { Coins } from '../../core/money.ts';
import { compareText } from '../../core/notice.ts';
import type { LotFigures, Stock } from '../../core/stock.ts';
import type { Lot } from '../../core/studio.ts';

/** The lots that were made here and are not used up, the latest first. */
export function madeLots({ lots, today }: Stock): LotFigures[] {
  return lots
    .filter(({ lot, left, state }) => {
      const isHere = lot.record.received <= today && state !== 'Discarded';
      return lot.recipe !== null && isHere && left.compare(0) > 0;
    })
    .toSorted((a, b) => b.lot.record.received - a.lot.record.received || compareText(a.lot.name, b.lot.name));
}

/** Whether a lot has gone off by a day. */
export function hasGoneOff({ goodUntil }: LotFigures, { today }: Stock): boolean {
  return goodUntil !== null && goodUntil < today;
}

/** Whether a lot is a bath: a solution, whose pH is measured and which is emptied as a whole. */
export function isBath({ material }: Lot): boolean {
  return material.record.kind === 'Buffer';
}

/** What is left of a bath, as far as it falls on one job and item; null for the studio's own loss. */
export interface Share {
  readonly job: string | null;
  readonly item: string | null;
  /** In the lot's unit. */
  readonly quantity: Exact;
  readonly cost: Coins | null;
}

/** On which jobs what is left of a lot falls when it is emptied. */
export function sharesOf({ drawing }: Written): Share[] {
  const movements = drawing.movements.filter(({ kind }) => kind === 'Waste');
  const keys = [...new Set(movements.map(({ job, item }) => JSON.stringify([job, item])))];
  return keys.map((key) => {
    const own = movements.filter(({ job, item }) => JSON.stringify([job, item]) === key);
    const inLotUnit = own.map(({ quantity, unit, lot }) =>
      quantity.mul(lot.converter.factor(unit, lot.record.unit) ?? ZERO),
    );
    return {
      job: own[0]?.job ?? null,
      item: own[0]?.item ?? null,
      quantity: sum(inLotUnit),
      cost: totalCost(own.map((movement) => costIn(drawing.ledger, movement))),
    };
  });
}

/** Whether the same would be charged to the same jobs; which of them bears an odd coin doesn't matter. */
export function sameShares(a: readonly Share[], b: readonly Share[]): boolean {
  return summary(a) === summary(b);
}

function summary(shares: readonly Share[]): string {
  return JSON.stringify([
    String(totalCost(shares.map(({ cost }) => cost))),
    shares.map(({ job, item, quantity }) => [job, item, quantity.toFraction()]),
  ]);
}

/** Whom a share falls on, in words. */
export function shareOn({ job, item }: Share): string {
  if (job === null) return 'no job: the studio’s own loss';
  return item === null ? job : `${job}, ${item}`;
}
