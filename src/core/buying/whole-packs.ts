import type { Day } from '../day.ts';
import { groupBy } from '../group-by.ts';
import { type OfferRow, slackOf } from './offer-row.ts';

/** So much, in the stock unit, must be here by the end of a day. */
export interface Cover {
  readonly day: Day;
  readonly quantity: number;
  /** The job that waits for it; null where none does. */
  readonly job: string | null;
}

/** An amount that whole packs make up, and the least that they cost. */
export interface PackSum {
  /** In the stock unit. */
  readonly quantity: number;
  /** Coins, without carriage. */
  readonly goods: number;
}

/**
 * More sums than this are not told apart: of those that lie closer together than this part of the limit one is kept.
 * Packs of real offers make up far fewer.
 */
const MOST_SUMS = 20_000;

/**
 * The amounts that whole packs of some rows can make up in time, smallest first. What is set by hand is in all of
 * them.
 * @param covers what must be here by when; one that nothing can cover leaves no sum
 * @param limit in the stock unit; sums above it are left out
 * @param keepPrices whether sums of the same amount at different prices are told apart; otherwise the cheapest is kept
 */
export function packSums(
  rows: readonly OfferRow[],
  covers: readonly Cover[],
  limit: number,
  keepPrices = false,
): PackSum[] {
  const waiting = covers.toSorted((a, b) => a.day - b.day);
  let sums: PackSum[] = [{ quantity: 0, goods: 0 }];
  const meet = (before: Day): void => {
    while (waiting[0] !== undefined && waiting[0].day < before) {
      const { quantity } = waiting[0];
      sums = sums.filter((each) => each.quantity >= quantity - slackOf(quantity));
      waiting.shift();
    }
  };
  for (const choices of packsOf(rows)) {
    meet(choices.arrives);
    const found = new Map<string, PackSum>();
    for (const sum of sums) {
      for (const { quantity, goods } of choices.upTo(limit - sum.quantity)) {
        const next = { quantity: sum.quantity + quantity, goods: sum.goods + goods };
        const key = `${Math.round(next.quantity * 1e7)}${keepPrices ? ` ${next.goods}` : ''}`;
        const before = found.get(key);
        if (before === undefined || next.goods < before.goods) found.set(key, next);
      }
    }
    sums = thinned([...found.values()], limit);
  }
  meet(Infinity as Day);
  // What is set by hand and comes later was not looked at when earlier packs were chosen.
  return sums
    .filter(({ quantity }) => quantity <= limit + slackOf(limit))
    .toSorted((a, b) => a.quantity - b.quantity || a.goods - b.goods);
}

interface PackChoices {
  readonly arrives: Day;
  /** What some packs of it make up, none included, as far as it stays within a limit. */
  readonly upTo: (limit: number) => PackSum[];
}

/** The packs of the rows, earliest first; what is set by hand leaves no choice, whatever the limit. */
function packsOf(rows: readonly OfferRow[]): PackChoices[] {
  const open = groupBy(
    rows.filter(({ byHand }) => byHand === null),
    ({ pack }) => pack,
  );
  const choices: PackChoices[] = [...open.values()].map((group) => ({
    arrives: group[0]?.arrives ?? (0 as Day),
    upTo: (limit) => [{ quantity: 0, goods: 0 }, ...group.flatMap((row) => countsOf(row, limit))],
  }));
  const fixed: PackChoices[] = rows.flatMap(({ byHand, offer, price, arrives }) =>
    byHand === null
      ? []
      : [{ arrives, upTo: () => [{ quantity: byHand * offer.packQuantity, goods: byHand * price }] }],
  );
  return [...choices, ...fixed].toSorted((a, b) => a.arrives - b.arrives);
}

function countsOf({ offer, least, most, price }: OfferRow, limit: number): PackSum[] {
  const counts: PackSum[] = [];
  for (let packs = least; packs <= most; packs += 1) {
    const quantity = packs * offer.packQuantity;
    if (quantity > limit + slackOf(limit)) break;
    counts.push({ quantity, goods: packs * price });
  }
  return counts;
}

/** One sum of each stretch of the limit, the cheapest, where there are too many to go on with. */
function thinned(sums: readonly PackSum[], limit: number): PackSum[] {
  if (sums.length <= MOST_SUMS) return [...sums];
  const kept = new Map<number, PackSum>();
  for (const sum of sums) {
    const stretch = Math.floor((sum.quantity / limit) * MOST_SUMS);
    const before = kept.get(stretch);
    if (before === undefined || sum.goods < before.goods) kept.set(stretch, sum);
  }
  return [...kept.values()];
}
