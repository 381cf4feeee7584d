import { addDays, type Day } from './day.ts';
import { accountsOf, type Ledger } from './ledger.ts';
import { isExpiredOn } from './life.ts';
import { isReversedBy, type LotAccount, type Posting } from './lot-account.ts';
import type { MovementKind } from './records.ts';
import type { Material } from './studio.ts';

/** Over how many days up to today demand is looked at, at most. */
export const LONGEST_WINDOW_DAYS = 365;
const SHORTEST_WINDOW_DAYS = 90;
const DEMANDING: ReadonlySet<MovementKind> = new Set(['Use', 'Waste', 'Make']);

/**
 * What a material was used of on each day, in its stock unit, up to and with today: Use, Waste and Make less what
 * was reversed. The window is the last 365 days, or since its first movement of any kind, at least 90 days. Waste
 * of a lot that had gone off is no demand.
 * @returns one figure a day, the earliest first; days without use are 0
 */
export function dailyDemand(ledger: Ledger, material: Material, today: Day): number[] {
  const accounts = accountsOf(ledger, material);
  const days = accounts.flatMap(({ postings }) => postings.map(({ movement }) => movement.day));
  const first = days.reduce((earliest, day) => (day < earliest ? day : earliest), today);
  const length = Math.min(Math.max(today - first + 1, SHORTEST_WINDOW_DAYS), LONGEST_WINDOW_DAYS);
  const start = addDays(today, 1 - length);
  const daily = Array.from({ length }, () => 0);
  for (const account of accounts) {
    const factor = account.lot.converter.factor(account.lot.record.unit, material.unit);
    if (factor === null) continue;
    for (const posting of account.postings) {
      const { day, change } = posting.movement;
      if (day < start || day > today || !isDemand(account, posting, today)) continue;
      daily[day - start] = (daily[day - start] ?? 0) - change.mul(factor).valueOf();
    }
  }
  return daily;
}

function isDemand(account: LotAccount, posting: Posting, today: Day): boolean {
  const { kind, reverses, day } = posting.movement;
  if (!DEMANDING.has(kind) || reverses !== null || isReversedBy(posting, today)) return false;
  return !(kind === 'Waste' && isExpiredOn(account, day));
}
