import { spokenDay } from '../../core/day.ts';
import { exactWords } from '../../core/forecast/planned-words.ts';
import type { MakeCost, MakePlan, PlannedBatch } from '../../core/make-plan/make-plan.ts';
import type { Currency } from '../../core/money.ts';
import { counted } from '../../core/wording.ts';
import { plannedMoney, plannedNumber } from '../plan-words.ts';
import { heading, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const BATCH_COLUMNS: readonly TextColumn[] = [
  { header: 'make on', align: 'left' },
  { header: 'how much', align: 'left' },
  { header: 'for', align: 'left' },
  { header: 'good until', align: 'left' },
  { header: 'thrown away', align: 'left' },
];

const WAY_COLUMNS: readonly TextColumn[] = [
  { header: 'way', align: 'left' },
  { header: 'batches', align: 'right' },
  { header: 'minutes', align: 'right' },
  { header: 'bench time', align: 'right' },
  { header: 'thrown away', align: 'left' },
];

/** When to make how much of one material, beside two other ways. */
export function makePlanText(plan: MakePlan, unit: string, currency: Currency, terminal: Terminal): string[] {
  const ways = [
    wayRow('as above', plan.cost, [], unit, currency),
    wayRow('for each job', plan.forEachJob.cost, plan.forEachJob.unserved, unit, currency),
    wayRow('once a week', plan.weekly.cost, plan.weekly.unserved, unit, currency),
  ];
  return [
    heading(`${plan.material}, by ${plan.recipe}`, terminal),
    ...textTable(
      BATCH_COLUMNS,
      plan.batches.map((batch) => batchRow(batch, unit)),
      terminal.width,
    ),
    ...plan.late.flatMap(({ job, what, day, quantity, readyOn }) =>
      wrapped(
        `${job}: ${what} on ${spokenDay(day)} needs ${exactWords(quantity, unit)}, which can be ready on ${spokenDay(readyOn)} at the earliest.`,
        terminal.width,
        2,
      ),
    ),
    '',
    ...textTable(WAY_COLUMNS, ways, terminal.width),
  ];
}

function batchRow({ makeOn, quantity, servings, goodUntil, waste }: PlannedBatch, unit: string): string[] {
  const jobs = [...new Set(servings.map(({ job, day }) => `${job} on ${spokenDay(day)}`))];
  return [
    spokenDay(makeOn),
    exactWords(quantity, unit),
    jobs.join(', '),
    goodUntil === null ? 'keeps' : spokenDay(goodUntil),
    plannedNumber(waste) === 0 ? '' : exactWords(waste, unit),
  ];
}

function wayRow(
  way: string,
  { batches, minutes, effort, waste, wasteCost }: MakeCost,
  unserved: readonly unknown[],
  unit: string,
  currency: Currency,
): string[] {
  const worth = wasteCost === null ? '' : `, worth ${plannedMoney(wasteCost, currency)}`;
  return [
    unserved.length === 0 ? way : `${way} (nothing fresh on ${counted(unserved.length, 'day')})`,
    String(batches),
    String(plannedNumber(minutes)),
    effort === null ? '' : plannedMoney(effort, currency),
    plannedNumber(waste) === 0 ? 'nothing' : `${exactWords(waste, unit)}${worth}`,
  ];
}
