import type { Coins } from '../../core/money.ts';
import type { Quote } from '../../core/quote.ts';
import { counted, spokenNumber } from '../../core/wording.ts';

/** A sum of a quote: what it is, and how much. */
export interface Sum {
  readonly name: string;
  readonly coins: Coins;
  readonly isTotal: boolean;
}

/** The sums of a quote in the order in which they add up; those of nothing that is charged are left out. */
export function sumsOf(quote: Quote): Sum[] {
  const unknown = quote.lines.filter(({ amount }) => amount === null).length;
  const without = unknown === 0 ? '' : `, without ${counted(unknown, 'line')} of unknown cost`;
  const rows: readonly (readonly [string, Coins, boolean])[] = [
    [`Consumables${without}`, quote.consumables, true],
    ['Markup', quote.markup, false],
    ['To reach the smallest charge', quote.other, false],
    [`Bench time, ${spokenNumber(quote.benchMinutes)} minutes`, quote.benchTime, true],
    ['Tax', quote.tax, false],
  ];
  const shown = rows.filter(([, coins, isAlways]) => isAlways || coins !== 0n);
  return [
    ...shown.map(([name, coins]) => ({ name, coins, isTotal: false })),
    { name: unknown === 0 ? 'Total' : 'Total of what is known', coins: quote.total, isTotal: true },
  ];
}
