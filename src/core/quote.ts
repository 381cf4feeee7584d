import { benchCost, benchMinutes } from './bench-time.ts';
import type { Day } from './day.ts';
import { ratesInForce } from './entry-needs.ts';
import { type Exact, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import { type Coins, percentOfCoins, toCoins } from './money.ts';
import { takesSharedFixed } from './planned-use.ts';
import { costLine, type QuoteLine } from './quote-line.ts';
import type { Material, PlanRow } from './studio.ts';
import type { Unit } from './unit.ts';

/** What a planned job lacks of a material today. */
export interface QuoteShortfall {
  readonly material: Material;
  readonly missing: Exact;
  readonly unit: Unit;
}

/** What a job's plan costs, every line to the coin. */
export interface Quote {
  readonly job: string;
  readonly asOf: Day;
  readonly rows: readonly PlanRow[];
  readonly lines: readonly QuoteLine[];
  readonly consumables: Coins;
  readonly markup: Coins;
  readonly benchMinutes: Exact;
  readonly benchTime: Coins;
  /** What lifts consumables and markup to the smallest charge. */
  readonly other: Coins;
  readonly tax: Coins;
  readonly total: Coins;
  readonly shortfalls: readonly QuoteShortfall[];
}

/**
 * Costs the plan of a job. Its rows are drawn in turn, in the order of the sheet, from today's stock, which stays as
 * it is. Consumables are the sum of the lines; markup is a percentage of them; the smallest charge lifts both, once;
 * tax is a percentage of all that and bench time.
 * @param job the identifier of the job
 */
export function quoteJob(ledger: Ledger, job: string, today: Day): Quote {
  const { settings, plan } = ledger.studio;
  const rows = plan.filter(({ record }) => keyOf(record.job) === keyOf(job));
  const lines: QuoteLine[] = [];
  const missing: QuoteShortfall[] = [];
  const shared = new Set<string>();
  let stock = ledger;
  for (const row of rows) {
    for (const rate of ratesInForce(row.treatment.rates, () => false)) {
      const withFixed = takesSharedFixed(shared, rate, row, row.record.plannedFor ?? today);
      const costed = costLine(stock, row, rate, withFixed, today);
      lines.push(...costed.lines);
      if (costed.missing.compare(0) > 0) {
        missing.push({ material: rate.material, missing: costed.missing, unit: rate.record.unit });
      }
      stock = costed.ledger;
    }
  }
  const consumables = lines.reduce((total, { amount }) => total + (amount ?? 0n), 0n);
  const markup = percentOfCoins(consumables, settings.markup);
  const smallest = toCoins(settings.smallestConsumablesCharge, settings.currency);
  const other = consumables > 0n && consumables + markup < smallest ? smallest - consumables - markup : 0n;
  const minutes = benchMinutes(rows, today);
  const benchTime = benchCost(minutes, settings.benchRatePerHour, settings.currency);
  const net = consumables + markup + other + benchTime;
  const tax = percentOfCoins(net, settings.tax);
  return {
    job,
    asOf: today,
    rows,
    lines,
    consumables,
    markup,
    benchMinutes: minutes,
    benchTime,
    other,
    tax,
    total: net + tax,
    shortfalls: joinShortfalls(missing),
  };
}

/** One shortfall a material and unit. */
function joinShortfalls(shortfalls: readonly QuoteShortfall[]): QuoteShortfall[] {
  const joined: QuoteShortfall[] = [];
  for (const { material, unit } of shortfalls) {
    if (joined.some((each) => each.material === material && each.unit.name === unit.name)) continue;
    const missing = shortfalls
      .filter((each) => each.material === material && each.unit.name === unit.name)
      .reduce((total, each) => total.add(each.missing), ZERO);
    joined.push({ material, missing, unit });
  }
  return joined;
}
