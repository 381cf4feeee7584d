import type { Day } from './day.ts';
import { type Exact, ratio, roundHalfAway } from './exact-number.ts';
import { type LotAccount, leftOn } from './lot-account.ts';
import { type Coins, type Currency, toCoins } from './money.ts';
import type { Lot, Material } from './studio.ts';
import { unitNamed } from './unit.ts';

/** What is used again and again (release papers, webs, blotters, felts), counted in uses. */

export const USE = unitNamed('use');

/** How many uses one unit of a lot has (the unit it is kept in); null for what is used once. */
export function usesOfUnit(lot: Lot): Exact | null {
  return lot.converter.factor(lot.record.unit, USE);
}

/** How many uses a lot had when it came: its Quantity in uses; null for what is used once. */
export function maxUses(lot: Lot): Exact | null {
  return usesOfUnit(lot)?.mul(lot.record.quantity) ?? null;
}

/** How many uses are left in a lot at the end of a day; null for what is used once. */
export function usesLeft(account: LotAccount, day: Day): Exact | null {
  return usesOfUnit(account.lot)?.mul(leftOn(account, day)) ?? null;
}

/** What one use comes to, to the coin: the lot's Cost over all its uses; null without a cost, or for what is used once. */
export function costPerUse(lot: Lot, currency: Currency): Coins | null {
  const uses = maxUses(lot);
  const { cost } = lot.record;
  if (uses === null || cost === null) return null;
  return roundHalfAway(ratio(toCoins(cost, currency), 1).div(uses));
}

/**
 * How many uses one sheet of a lot has (one of the material's stock unit): its own Uses per unit, else the
 * material's; null for what is used once.
 */
export function usesOfSheet({ record, material, converter }: Lot): Exact | null {
  return converter.factor(record.unit, USE) === null
    ? null
    : (record.usesPerUnit ?? material.record.usesPerUnit);
}

const SILICONE = /silicone|siliconi[sz]ed/i;

/**
 * Whether a material is coated with silicone, by what its name, description or composition says: its coating wears
 * off with every press, and neither drying nor washing brings it back.
 */
export function isSiliconeCoated({ name, record }: Material): boolean {
  return [name, record.description, record.composition].some((text) => text !== null && SILICONE.test(text));
}
