import { DISPOSAL_CAUTION, type ExpiredLot } from '../../actions/discard-expired.ts';
import { spokenDay } from '../../core/day.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import { groupBy } from '../../core/group-by.ts';
import type { Coins, Currency } from '../../core/money.ts';
import { counted, spokenNumber, unitFor } from '../../core/wording.ts';
import { day, money } from '../answers-json.ts';
import { inCurrency, spokenMoney } from '../check-text.ts';
import { heading, listed, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const COLUMNS: readonly TextColumn[] = [
  { header: 'lot', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'good until', align: 'left' },
  { header: 'because', align: 'left' },
  { header: 'worth', align: 'right' },
];

/** What has gone off, or was thrown away for it, with its worth and with what the studio notes on disposal. */
export function expiredText(
  title: string,
  lots: readonly ExpiredLot[],
  currency: Currency,
  terminal: Terminal,
): string[] {
  const rows = lots.map(({ lot, left, goodUntil, reason, worth }) => [
    lot.name,
    lot.material.name,
    spokenNumber(left),
    unitFor(spokenNumber(left), lot.record.unit),
    spokenDay(goodUntil),
    reason,
    spokenMoney(worth, currency),
  ]);
  const { worth, withoutCost } = worthOf(lots);
  const missing = withoutCost === 0 ? '' : `, and ${counted(withoutCost, 'lot')} without a cost`;
  const rules = [...groupBy(lots, ({ lot }) => lot.material)].map(([material, own]) => {
    const rule = own[0]?.disposal ?? null;
    return `${material.name}: ${rule ?? 'nothing is noted under Disposal'}`;
  });
  return [
    heading(`${title}${inCurrency(currency)}`, terminal),
    ...textTable(COLUMNS, rows, terminal.width),
    ...wrapped(
      `Worth in all ${spokenMoney(worth, currency)}${missing}: the studio’s loss, and no job’s cost.`,
      terminal.width,
      0,
    ),
    '',
    heading('Disposal', terminal),
    ...rules.flatMap((rule) => listed(rule, terminal)),
    ...wrapped(DISPOSAL_CAUTION, terminal.width, 0),
  ];
}

/** The worth of what has a cost, and how many lots have none. */
function worthOf(lots: readonly ExpiredLot[]): { readonly worth: Coins; readonly withoutCost: number } {
  return {
    worth: lots.reduce((total, { worth }) => total + (worth ?? 0n), 0n),
    withoutCost: lots.filter(({ worth }) => worth === null).length,
  };
}

export function expiredJson(lots: readonly ExpiredLot[], currency: Currency) {
  const { worth, withoutCost } = worthOf(lots);
  return {
    lots: lots.map((each) => ({
      lot: each.lot.name,
      material: each.lot.material.name,
      quantity: quantityNumber(each.left),
      unit: each.lot.record.unit.name,
      goodUntil: day(each.goodUntil),
      because: each.reason,
      worth: money(each.worth, currency),
      disposal: each.disposal,
    })),
    worth: money(worth, currency),
    withoutCost,
  };
}
