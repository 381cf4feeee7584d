import { addDays, type Day } from '../core/day.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import { costOfJob, type JobCost } from '../core/job-cost.ts';
import { type Quote, quoteJob } from '../core/quote.ts';
import type { QuoteRecord } from '../core/records.ts';
import { STUDIO_JOB } from '../core/studio.ts';
import {
  appendRows,
  dayCell,
  moneyCell,
  numberCell,
  quantityCell,
  textCell,
} from '../workbook/cell-write.ts';
import type { Change, WorkbookSnapshot } from '../workbook/port.ts';
import { booksOf } from './books.ts';
import { noSuchName } from './nearest-name.ts';
import { openDesk, type Refusal, refuse, tableNamed, type WritingDesk } from './writing-desk.ts';

/** A job's plan costed, and where it was frozen the changes that write it to Quotes. */
export interface Quoted {
  readonly ok: true;
  readonly quote: Quote;
  /** What the job has cost in materials so far. */
  readonly used: JobCost;
  /** The quote as it is written down; null where it isn't. */
  readonly frozen: {
    readonly quote: string;
    readonly version: number;
    readonly changes: readonly Change[];
  } | null;
}

/** Costs the plan of a job; frozen, it is written to Quotes and QuoteLines as a new version that stays as it is. */
export function quotePlan(
  snapshot: WorkbookSnapshot,
  job: string,
  freeze: boolean,
  today: Day,
  random: Random,
): Quoted | Refusal {
  const desk = freeze ? openDesk(snapshot, today, random) : null;
  if (desk?.ok === false) return desk;
  const ledger = desk?.ledger ?? booksOf(snapshot).ledger;
  const { studio } = ledger;
  const known = keyOf(job) === keyOf(STUDIO_JOB) ? STUDIO_JOB : studio.jobsByKey.get(keyOf(job))?.job;
  if (known == null) {
    return noSuchName(
      'job',
      job,
      'Jobs',
      studio.jobs.map((each) => each.job ?? ''),
    );
  }
  const quote = quoteJob(ledger, known, today);
  const used = costOfJob(ledger, known, today);
  if (desk === null) return { ok: true, quote, used, frozen: null };
  if (quote.rows.length === 0)
    return refuse(`Job ${known} has no row in Plan, so there is nothing to put into a quote.`);
  const frozen = freezeQuote(desk, quote);
  return 'ok' in frozen ? frozen : { ok: true, quote, used, frozen };
}

/** What a quote that was given is called in State; it is never changed afterwards. */
const GIVEN = 'Given';

function freezeQuote(desk: WritingDesk, quote: Quote): NonNullable<Quoted['frozen']> | Refusal {
  const quotes = tableNamed(desk, 'Quotes');
  if ('ok' in quotes) return quotes;
  const lines = tableNamed(desk, 'QuoteLines');
  if ('ok' in lines) return lines;
  const { settings, quotes: given } = desk.ledger.studio;
  const { currency, quoteValidDays } = settings;
  const before = latestOf(given, quote.job);
  const name = before?.quote ?? desk.newIdentifier('Q');
  const version = (before?.version ?? 0) + 1;
  const head = {
    quote: textCell(name),
    version: numberCell(version),
    job: textCell(quote.job),
    madeOn: dayCell(quote.asOf),
    validUntil: dayCell(quoteValidDays === null ? null : addDays(quote.asOf, quoteValidDays)),
    state: textCell(GIVEN),
    replaces: textCell(before === undefined ? null : String(before.version)),
    currency: textCell(currency.code === '' ? null : currency.code),
    consumables: moneyCell(quote.consumables, currency),
    markup: moneyCell(quote.markup, currency),
    benchTime: moneyCell(quote.benchTime, currency),
    other: moneyCell(quote.other, currency),
    tax: moneyCell(quote.tax, currency),
    total: moneyCell(quote.total, currency),
  };
  const rows = quote.lines.map((line, place) => ({
    quote: textCell(name),
    version: numberCell(version),
    line: textCell(String(place + 1)),
    item: textCell(line.item),
    treatment: textCell(line.treatment),
    material: textCell(line.material.record.material),
    what: textCell(line.what),
    quantity: quantityCell(line.quantity),
    unit: textCell(line.unit.name),
    each: moneyCell(line.each, currency),
    amount: moneyCell(line.amount, currency),
    basis: textCell(line.basis ?? 'not known'),
    how: textCell(line.how),
  }));
  return {
    quote: name,
    version,
    changes: [...desk.changes, ...appendRows(quotes, [head]), ...appendRows(lines, rows)],
  };
}

/** The quote of a job with the highest version. */
function latestOf(quotes: readonly QuoteRecord[], job: string): QuoteRecord | undefined {
  return quotes
    .filter((each) => each.quote !== null && keyOf(each.job) === keyOf(job))
    .toSorted((a, b) => b.version - a.version)[0];
}
