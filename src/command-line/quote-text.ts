import type { Quoted } from '../actions/quote-job.ts';
import { spokenDay } from '../core/day.ts';
import type { Currency } from '../core/money.ts';
import { counted, spokenNumber, spokenQuantity, unitFor } from '../core/wording.ts';
import { inCurrency, spokenMoney } from './check-text.ts';
import { heading, listed, type Terminal, wrapped } from './terminal.ts';
import { type TextColumn, textTable } from './text-table.ts';

const LINE_COLUMNS: readonly TextColumn[] = [
  { header: 'item', align: 'left' },
  { header: 'what', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'basis', align: 'left' },
  { header: 'amount', align: 'right' },
];

/** A quote as text: its lines, how each came about, and the sums. */
export function quoteText(answer: Quoted, currency: Currency, terminal: Terminal): string[] {
  const { quote, used, frozen } = answer;
  const lines = [
    heading(`Quote for job ${quote.job}, ${spokenDay(quote.asOf)}${inCurrency(currency)}`, terminal),
    '',
  ];
  if (quote.rows.length === 0)
    lines.push(`Job ${quote.job} has no row in Plan, so nothing can be costed yet.`);
  else if (quote.lines.length === 0) lines.push('The plan takes no material by the usage rates.');
  else {
    const rows = quote.lines.map((line) => [
      line.item ?? '',
      line.what,
      spokenNumber(line.quantity),
      unitFor(spokenNumber(line.quantity), line.unit),
      line.basis ?? 'not known',
      spokenMoney(line.amount, currency),
    ]);
    lines.push(...textTable(LINE_COLUMNS, rows, terminal.width));
  }
  lines.push('', ...sums(answer, currency, terminal.width));
  if (quote.lines.length > 0) {
    lines.push('', heading('How each line came about', terminal));
    for (const line of quote.lines) {
      const item = line.item === null ? '' : `${line.item}, `;
      lines.push(...listed(`${item}${line.what}: ${line.how}.`, terminal));
    }
  }
  if (quote.shortfalls.length > 0) {
    lines.push('', heading('Not in stock today', terminal));
    for (const { material, missing, unit } of quote.shortfalls) {
      lines.push(...listed(`${spokenQuantity(missing, unit)} of ${material.name}`, terminal));
    }
  }
  const without =
    used.withoutCost === 0 ? '' : `, and ${counted(used.withoutCost, 'movement')} of lots without a cost`;
  const soFar = `Taken from stock for this job so far: ${spokenMoney(used.cost, currency)}${without}.`;
  lines.push('', ...wrapped(soFar, terminal.width, 2));
  if (frozen !== null) {
    const kept = `Kept as quote ${frozen.quote}, version ${frozen.version}.`;
    const unknown = quote.lines.filter(({ amount }) => amount === null).length;
    const hint = `${counted(unknown, 'line')} without a known cost: give the lot its Cost, or the material an offer, and freeze again.`;
    lines.push(...wrapped(unknown === 0 ? kept : `${kept} It misses ${hint}`, terminal.width, 2));
  }
  return lines;
}

const SUM_COLUMNS: readonly TextColumn[] = [
  { header: 'sum', align: 'left' },
  { header: 'amount', align: 'right' },
];

function sums({ quote }: Quoted, currency: Currency, width: number): string[] {
  const unknown = quote.lines.filter(({ amount }) => amount === null).length;
  const minutes = spokenNumber(quote.benchMinutes);
  const rows: [string, bigint][] = [
    [
      unknown === 0 ? 'consumables' : `consumables, without ${counted(unknown, 'line')} of unknown cost`,
      quote.consumables,
    ],
    ['markup', quote.markup],
    ['to reach the smallest charge', quote.other],
    [`bench time, ${minutes} minutes`, quote.benchTime],
    ['tax', quote.tax],
    [unknown === 0 ? 'total' : 'total of what is known', quote.total],
  ];
  const shown = rows.filter(([name, coins]) => coins !== 0n || !name.startsWith('to reach'));
  return textTable(
    SUM_COLUMNS,
    shown.map(([name, coins]) => [name, spokenMoney(coins, currency)]),
    width,
  );
}
