import type { Coins } from './money.ts';

/**
 * Shares an amount out in proportion to weights, to the coin, by largest remainders: each gets its share rounded
 * down, and the coins that are left go one by one to those whose share lost most by that, the first of equals first.
 * So no share is a coin or more off, and together they are exactly the amount.
 *
 * By it the carriage of a delivery becomes part of what its goods cost, by their value: what is paid for bringing
 * goods in belongs to their cost of purchase (IAS 2, paragraphs 10 and 11; read second-hand).
 * @param amount 0 or more
 * @param weights each 0 or more
 * @returns null where the weights come to nothing, so that there is nothing to share by
 */
export function shareOut(amount: Coins, weights: readonly bigint[]): Coins[] | null {
  const total = weights.reduce((sum, weight) => sum + weight, 0n);
  if (total === 0n) return null;
  const shares = weights.map((weight) => (amount * weight) / total);
  const remainders = weights.map((weight, place) => ({ place, remainder: (amount * weight) % total }));
  const left = amount - shares.reduce((sum, share) => sum + share, 0n);
  const next = remainders
    .toSorted((a, b) =>
      a.remainder === b.remainder ? a.place - b.place : a.remainder > b.remainder ? -1 : 1,
    )
    .slice(0, Number(left));
  for (const { place } of next) shares[place] = (shares[place] ?? 0n) + 1n;
  return shares;
}
