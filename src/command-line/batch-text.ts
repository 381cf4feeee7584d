import type { BatchPart, BatchPlan, MadeBatch } from '../actions/make-batch.ts';
import { missingParts } from '../core/batch.ts';
import { spokenDay } from '../core/day.ts';
import { keyOf } from '../core/identifier.ts';
import type { Currency } from '../core/money.ts';
import { counted, spokenNumber, spokenQuantity, unitFor } from '../core/wording.ts';
import { cautionsText } from './cautions-text.ts';
import { inCurrency, spokenMoney } from './check-text.ts';
import { heading, listed, type Terminal, wrapped } from './terminal.ts';
import { type TextColumn, textTable } from './text-table.ts';

const PART_COLUMNS: readonly TextColumn[] = [
  { header: 'material', align: 'left' },
  { header: 'lot', align: 'left' },
  { header: 'lot is', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'cost', align: 'right' },
];

/**
 * A batch as text: what goes in and from which lots, what it costs, until when and why it is good, what to mind.
 * @param made the lot that was made and the posting; null where it is only planned
 */
export function batchText(
  plan: BatchPlan,
  made: MadeBatch | null,
  currency: Currency,
  terminal: Terminal,
): string[] {
  const { recipe, yielded, unit, date, cost } = plan;
  const product = recipe.record.makes;
  const by = keyOf(recipe.name) === keyOf(product) ? '' : `, by ${recipe.name}`;
  const what = `${spokenQuantity(yielded, unit)} of ${product}${by}`;
  const line =
    made === null
      ? `To make ${what}:`
      : `Made ${what}, ${spokenDay(date)}: lot ${made.lot.name}, ${costWords(plan, currency)}.`;
  const missing = missingParts(plan.parts);
  return [
    ...wrapped(line, terminal.width, 2),
    '',
    heading(`${made === null ? 'Ingredients' : 'Taken from stock'}${inCurrency(currency)}`, terminal),
    ...textTable(
      PART_COLUMNS,
      plan.parts.flatMap((part) => partRows(part, currency)),
      terminal.width,
    ),
    ...(made === null ? [`In all ${spokenMoney(cost, currency)}.`] : []),
    ...(missing.length === 0
      ? []
      : [
          '',
          heading('Not covered by any lot', terminal),
          ...missing.flatMap((each) => missingLine(each, terminal)),
        ]),
    '',
    ...wrapped(goodUntilWords(plan), terminal.width, 0),
    ...readyWords(plan),
    ...(made?.remarks ?? plan.remarks).flatMap((remark) => wrapped(remark, terminal.width, 0)),
    ...spaced(cautionsText(recipe, terminal)),
  ];
}

function costWords({ cost }: BatchPlan, currency: Currency): string {
  return cost === null
    ? 'cost not known'
    : `cost ${[currency.code, spokenMoney(cost, currency)].join(' ').trim()}`;
}

function partRows({ material, needed, unit, takes }: BatchPart, currency: Currency): string[][] {
  if (takes.length === 0) {
    const number = spokenNumber(needed);
    const lot = material.counted ? 'none' : 'not counted';
    return [[material.name, lot, '', number, unitFor(number, unit), '']];
  }
  return takes.map((take) => {
    const number = spokenNumber(take.quantity);
    return [
      material.name,
      take.lot.name,
      take.lotIs,
      number,
      unitFor(number, take.unit),
      spokenMoney(take.cost, currency),
    ];
  });
}

function missingLine({ material, missing, unit, makeFirst }: BatchPart, terminal: Terminal): string[] {
  const first = makeFirst === null ? '' : `, made here by ${makeFirst.name}`;
  return listed(`${spokenQuantity(missing, unit)} of ${material.name}${first}`, terminal);
}

function goodUntilWords({ goodUntil, goodUntilBecause }: BatchPlan): string {
  return goodUntil === null
    ? `Good until: ${goodUntilBecause}.`
    : `Good until ${spokenDay(goodUntil)}: ${goodUntilBecause}.`;
}

function readyWords({ readyAfterHours }: BatchPlan): string[] {
  if (readyAfterHours === null || readyAfterHours.equals(0)) return [];
  const hours = spokenNumber(readyAfterHours);
  return [`Ready after ${counted(Number(hours), 'hour')}.`];
}

function spaced(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', ...lines];
}
