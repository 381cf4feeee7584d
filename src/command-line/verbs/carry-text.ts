import type { CarriedOver } from '../../actions/carry-over.ts';
import { foldedWords, goneWords, keepOldWords, keptWords } from '../../actions/carry-words.ts';
import { KEPT_BECAUSE } from '../../core/carry-over.ts';
import { isoDay, spokenDay } from '../../core/day.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import { spokenNumber, unitFor } from '../../core/wording.ts';
import { day, money } from '../answers-json.ts';
import { inCurrency, spokenMoney } from '../check-text.ts';
import { heading, listed, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const COLUMNS: readonly TextColumn[] = [
  { header: 'lot', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'movements', align: 'right' },
  { header: 'carried', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'cost', align: 'right' },
  { header: 'opened', align: 'left' },
];

/** What carrying over did, as text. */
export function carryText(
  carried: CarriedOver,
  { from, to }: { readonly from: string; readonly to: string },
  terminal: Terminal,
): string[] {
  const { lots, kept, gone, currency } = carried;
  const say = (text: string): string[] => wrapped(text, terminal.width, 0);
  const lines = [
    heading(`Carried over to ${spokenDay(carried.day)}${inCurrency(currency)}`, terminal),
    ...say(foldedWords(carried)),
  ];
  if (lots.length > 0) {
    const rows = lots.map(({ lot, folded: own, carried: one, cost, opened }) => {
      const number = spokenNumber(one.quantity);
      const since = opened === null ? '' : spokenDay(opened);
      return [
        lot.name,
        lot.material.name,
        String(own.length),
        number,
        unitFor(number, one.unit),
        spokenMoney(cost, currency),
        since,
      ];
    });
    lines.push('', ...textTable(COLUMNS, rows, terminal.width));
    if (lots.some(({ opened }) => opened !== null))
      lines.push(...say('Opened was written where only folded movements told it.'));
  }
  if (kept.length > 0) {
    lines.push('', heading('Movements that stay', terminal));
    for (const words of keptWords(carried)) lines.push(...listed(words, terminal));
  }
  if (gone.length > 0) {
    lines.push('', heading('Notices that go with what they are about', terminal));
    for (const words of goneWords(carried)) lines.push(...listed(words, terminal));
  }
  lines.push('', ...say(keepOldWords(carried, from)));
  if (carried.posting !== null) lines.push('', `Posting ${carried.posting}.`);
  lines.push(`Saved to ${to}.`);
  return lines;
}

export function carryJson(carried: CarriedOver, from: string) {
  const { currency } = carried;
  return {
    asOf: isoDay(carried.day),
    from,
    posting: carried.posting,
    folded: carried.folded,
    entriesLeftBehind: carried.entries,
    lots: carried.lots.map(({ lot, folded, carried: one, cost, opened }) => ({
      lot: lot.name,
      material: lot.material.name,
      folded: folded.length,
      movement: one.name,
      date: isoDay(one.date),
      quantity: quantityNumber(one.quantity),
      unit: one.unit.name,
      cost: money(cost, currency),
      opened: day(opened),
    })),
    kept: carried.kept.map(({ why, count }) => ({ count, why: KEPT_BECAUSE[why] })),
    gone: carried.gone.map(({ code, severity, subject, message }) => ({ code, severity, subject, message })),
  };
}
