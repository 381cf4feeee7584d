import { addDays, isoDay } from '../core/day.ts';
import { quantityNumber } from '../core/exact-number.ts';
import type { Ledger } from '../core/ledger.ts';
import { type Coins, fromCoins } from '../core/money.ts';
import { quoteJob } from '../core/quote.ts';
import { dayOf } from './demo-jobs.ts';
import type { Rows } from './demo-written.ts';

/** The quotes that were given, costed by the rules on the day on which they were made. */

const GIVEN: readonly (readonly [quote: string, job: string, madeOn: string, state: string])[] = [
  ['Q-201', 'J-2036', '2026-10-30', 'Accepted'],
  ['Q-202', 'J-2037', '2026-11-02', 'Accepted'],
  ['Q-203', 'J-2038', '2026-11-12', 'Given'],
];

export function quoteRows(ledger: Ledger): Pick<Rows, 'quotes' | 'quoteLines'> {
  const { currency, quoteValidDays } = ledger.studio.settings;
  const money = (coins: Coins | null): number | null =>
    coins === null ? null : fromCoins(coins, currency).valueOf();
  const costed = GIVEN.map(([quote, job, madeOn, state]) => ({
    quote,
    state,
    figures: quoteJob(ledger, job, dayOf(madeOn)),
  }));
  return {
    quotes: costed.map(({ quote, state, figures }) => ({
      quote,
      version: 1,
      job: figures.job,
      state,
      madeOn: isoDay(figures.asOf),
      validUntil: quoteValidDays === null ? null : isoDay(addDays(figures.asOf, quoteValidDays)),
      currency: currency.code,
      consumables: money(figures.consumables),
      markup: money(figures.markup),
      benchTime: money(figures.benchTime),
      other: money(figures.other),
      tax: money(figures.tax),
      total: money(figures.total),
    })),
    quoteLines: costed.flatMap(({ quote, figures }) =>
      figures.lines.map((line, place) => ({
        quote,
        version: 1,
        line: `line ${place + 1}`,
        item: line.item,
        treatment: line.treatment,
        material: line.material.name,
        what: line.what,
        quantity: quantityNumber(line.quantity),
        unit: line.unit.name,
        each: money(line.each),
        amount: money(line.amount),
        basis: line.basis,
        how: line.how,
      })),
    ),
  };
}
