import type { Written } from '../actions/writing-desk.ts';
import { spokenDay } from '../core/day.ts';
import { costIn } from '../core/ledger.ts';
import { totalCost } from '../core/lot-account.ts';
import { moneyText } from '../core/money.ts';
import { counted, spokenNumber, spokenQuantity } from '../core/wording.ts';

/** One sentence about what a drawing wrote: from which lots, and what it cost. */
export function drawnSentence({ drawing }: Written): string {
  const { entries, movements, shortfalls, ledger } = drawing;
  const one = entries.length === 1 ? entries[0] : undefined;
  const subject =
    one === undefined
      ? counted(entries.length, 'entry', 'entries')
      : `${one.entry.treatment.name}, ${spokenNumber(one.entry.record.extent)} ${one.entry.treatment.record.extentUnit}, for ${one.entry.record.job}`;
  if (one !== undefined && one.drawn === null) {
    return `Logged: ${subject}. It is drawn on ${spokenDay(one.entry.record.date)}.`;
  }
  if (entries.length === 0) return 'Nothing in the treatment log is waiting to be drawn.';
  const lots = [...new Set(movements.map(({ lot }) => lot.name))];
  const cost = totalCost(movements.map((movement) => costIn(ledger, movement)));
  const { currency } = ledger.studio.settings;
  const price = cost === null ? '' : `, ${[currency.code, moneyText(cost, currency)].join(' ').trim()}`;
  const taken = movements.length === 0 ? 'nothing taken from stock' : `taken from ${listed(lots)}${price}`;
  const missing = shortfalls.map(
    ({ missing: quantity, unit, material }) => `${spokenQuantity(quantity, unit)} of ${material.name}`,
  );
  return `${capitalised(subject)}: ${taken}.${missing.length === 0 ? '' : ` Not covered by any lot: ${missing.join(', ')}.`}`;
}

const MOST_NAMED = 4;

function listed(lots: readonly string[]): string {
  if (lots.length > MOST_NAMED) return counted(lots.length, 'lot');
  return new Intl.ListFormat('en-GB').format(lots);
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
