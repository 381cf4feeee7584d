import type { JobCost } from '../../core/job-cost.ts';
import { type Currency, moneyText } from '../../core/money.ts';
import type { QuoteLine } from '../../core/quote-line.ts';
import { counted, spokenQuantity } from '../../core/wording.ts';

/** What was taken from stock for a job up to today, in a sentence. */
export function usedWords({ cost, withoutCost }: JobCost, currency: Currency): string {
  const code = currency.code === '' ? '' : ` ${currency.code}`;
  const without = withoutCost === 0 ? '' : `, and ${counted(withoutCost, 'movement')} of lots without a cost`;
  return `Taken from stock for this job so far: ${moneyText(cost, currency)}${code}${without}.`;
}

/** On which basis a line stands, with its lots. */
export function basisWords({ basis, lots }: QuoteLine): string {
  if (basis === null) return 'no lot and no offer says what it costs';
  return basis === 'lots'
    ? `at cost of ${lots.length === 1 ? 'lot' : 'lots'} ${lots.join(', ')}`
    : 'at today’s price';
}

/** How much of a line, and what one of it costs where that is a coin or more. */
export function measureWords({ quantity, unit, each }: QuoteLine, currency: Currency): string {
  const per = unit.name === 'each' ? 'each' : `per ${unit.name}`;
  const price = each === null || each === 0n ? '' : `, ${moneyText(each, currency)} ${per}`;
  return `${spokenQuantity(quantity, unit)}${price}`;
}

/** The treatment that a line belongs to, with its item. */
export function groupOf({ treatment, item }: QuoteLine): string {
  return item === null ? treatment : `${item}: ${treatment}`;
}
