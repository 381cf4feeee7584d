import { totalCost } from '../../core/lot-account.ts';
import { type Coins, type Currency, moneyText } from '../../core/money.ts';
import type { CountDifference } from '../../core/stocktake-differences.ts';
import { counted, spokenQuantity } from '../../core/wording.ts';

/** An amount with its currency; that it isn't known where a lot has no cost. */
export function worthWords(worth: Coins | null, currency: Currency): string {
  return worth === null ? 'worth not known' : `worth ${moneyWithCode(worth, currency)}`;
}

function moneyWithCode(coins: Coins, currency: Currency): string {
  return `${moneyText(coins, currency)} ${currency.code}`.trim();
}

/** How what was counted differs from what was expected, and what that is worth. */
export function differenceWords(
  { difference, cost, lot }: Pick<CountDifference, 'difference' | 'cost' | 'lot'>,
  currency: Currency,
): string {
  const direction = difference.compare(0);
  if (direction === 0) return 'as expected';
  const size = spokenQuantity(difference.abs(), lot.record.unit);
  const worth = worthWords(cost === null ? null : cost < 0n ? -cost : cost, currency);
  return `${size} ${direction < 0 ? 'less' : 'more'} than expected, ${worth}`;
}

/** What all differences come to: how many lots differ, and the loss or gain. */
export function sumWords(differences: readonly CountDifference[], currency: Currency): string {
  const differing = differences.filter(({ difference }) => !difference.equals(0));
  if (differing.length === 0) return 'no difference';
  const cost = totalCost(differing.map((each) => each.cost));
  const lots = counted(differing.length, 'lot');
  if (cost === null) return `${lots}, worth not known`;
  if (cost === 0n) return `${lots}, worth nothing in sum`;
  return cost > 0n
    ? `${lots}, a loss of ${moneyWithCode(cost, currency)}`
    : `${lots}, a gain of ${moneyWithCode(-cost, currency)}`;
}
