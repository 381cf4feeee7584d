import type { Written } from '../actions/writing-desk.ts';
import { spokenDay } from '../core/day.ts';
import type { Shortfall } from '../core/draw.ts';
import { sum } from '../core/exact-number.ts';
import { costIn } from '../core/ledger.ts';
import { totalCost } from '../core/lot-account.ts';
import { moneyText } from '../core/money.ts';
import type { Movement } from '../core/movement.ts';
import type { Entry } from '../core/studio.ts';
import { counted, spokenNumber, spokenQuantity } from '../core/wording.ts';

/** One sentence about what a drawing wrote: from which lots, and what it cost. */
export function drawnSentence(written: Written): string {
  const { entries, movements } = written.drawing;
  const one = entries.length === 1 ? entries[0] : undefined;
  const subject = one === undefined ? counted(entries.length, 'entry', 'entries') : subjectOf(one.entry);
  if (one !== undefined && one.drawn === null) {
    return `Logged: ${subject}. It is drawn on ${spokenDay(one.entry.record.date)}.`;
  }
  if (entries.length === 0) return 'Nothing in the treatment log is waiting to be drawn.';
  const price = priceOf(written);
  const taken = takenFrom(movements);
  const costs = movements.length === 0 || price === null ? taken : `${taken}, ${price}`;
  return `${capitalised(subject)}: ${costs}.${missingOf(written)}`;
}

/** One sentence about an entry that was drawn again: what its lots give now, and by how much the cost has changed. */
export function redrawnSentence(written: Written): string {
  const [one] = written.drawing.entries;
  if (one === undefined) return 'What was drawn before is put back.';
  const taken = takenFrom(written.drawing.movements.filter(({ reverses }) => reverses === null));
  const price = priceOf(written);
  const difference = price === null ? '' : ` The difference is ${price}.`;
  return `${capitalised(subjectOf(one.entry))}, drawn again: what was drawn before is put back, and ${taken}.${difference}${missingOf(written)}`;
}

function subjectOf({ record, treatment }: Entry): string {
  const item = record.item === null ? '' : `, ${record.item}`;
  return `${treatment.name}, ${spokenNumber(record.extent)} ${treatment.record.extentUnit}, for ${record.job}${item}`;
}

function takenFrom(movements: readonly Movement[]): string {
  const lots = [...new Set(movements.map(({ lot }) => lot.name))];
  return lots.length === 0 ? 'nothing taken from stock' : `taken from ${listed(lots)}`;
}

/** What its movements cost together; null where a lot without a cost is among them. */
function priceOf({ drawing: { movements, ledger } }: Written): string | null {
  const cost = totalCost(movements.map((movement) => costIn(ledger, movement)));
  const { currency } = ledger.studio.settings;
  return cost === null ? null : [currency.code, moneyText(cost, currency)].join(' ').trim();
}

/** What no lot covers, each material once; two units of one material stay apart. */
function missingOf({ drawing: { shortfalls } }: Written): string {
  const byMaterial = new Map<string, Shortfall[]>();
  for (const shortfall of shortfalls) {
    const key = `${shortfall.unit.name} of ${shortfall.material.name}`;
    byMaterial.set(key, [...(byMaterial.get(key) ?? []), shortfall]);
  }
  const missing = [...byMaterial.values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const quantity = sum(own.map((each) => each.missing));
    return [`${spokenQuantity(quantity, first.unit)} of ${first.material.name}`];
  });
  return missing.length === 0 ? '' : ` Not covered by any lot: ${missing.join(', ')}.`;
}

const MOST_NAMED = 4;

function listed(lots: readonly string[]): string {
  if (lots.length > MOST_NAMED) return counted(lots.length, 'lot');
  return new Intl.ListFormat('en-GB').format(lots);
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
