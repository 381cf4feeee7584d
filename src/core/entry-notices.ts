import { type Day, spokenDay } from './day.ts';
import { entryNeeds, entryStatus, extentDrawn, isDrawable } from './entry-needs.ts';
import { roundQuantity } from './exact-number.ts';
import type { Ledger } from './ledger.ts';
import { type Notice, notice } from './notice.ts';
import { stillNeeded } from './still-needed.ts';
import type { Entry } from './studio.ts';
import { spokenNumber, spokenQuantity } from './wording.ts';

/** The notices about log entries on a day: what is not drawn yet, and what was changed after it was drawn. */
export function entryNotices(ledger: Ledger, today: Day): Notice[] {
  return ledger.studio.entries
    .filter(isDrawable)
    .flatMap((entry) => [...notDrawn(ledger, entry, today), ...changed(ledger, entry, today)]);
}

function about(entry: Entry): string {
  const { record, treatment } = entry;
  const item = record.item === null ? '' : `, item ${record.item}`;
  return `${treatment.name} of ${spokenDay(record.date)} for ${record.job}${item}`;
}

function notDrawn(ledger: Ledger, entry: Entry, today: Day): Notice[] {
  const status = entryStatus(ledger, entry, today);
  if (status !== 'not drawn' && status !== 'part') return [];
  const { record } = entry;
  if (status === 'not drawn') {
    const message = `${about(entry)} (${spokenNumber(record.extent)} ${entry.treatment.record.extentUnit}) is not drawn yet.`;
    return [notice('not-drawn', record.entry, record, 'Entry', message)];
  }
  const missing = stillNeeded(ledger, entry, entryNeeds(ledger, entry, today), today)
    .filter((each) => each.missing.compare(0) > 0)
    .map((each) => `${spokenQuantity(each.missing, each.need.unit)} of ${each.need.material.name}`);
  const rest = missing.length === 0 ? 'nothing is missing any more' : `still missing: ${missing.join(', ')}`;
  return [
    notice('not-drawn', record.entry, record, 'Drawn', `${about(entry)} is drawn in part only; ${rest}.`),
  ];
}

function changed(ledger: Ledger, entry: Entry, today: Day): Notice[] {
  const { record } = entry;
  const status = entryStatus(ledger, entry, today);
  if (record.drawnFor === null || (status !== 'drawn' && status !== 'part')) return [];
  const drawnFor = extentDrawn(ledger, entry, today);
  if (roundQuantity(drawnFor).equals(roundQuantity(record.extent))) return [];
  const unit = entry.treatment.record.extentUnit;
  const message =
    `${about(entry)} was drawn for ${spokenNumber(drawnFor)} ${unit}, and Extent now says ${spokenNumber(record.extent)} ${unit}: ` +
    `reverse what was drawn and draw it again.`;
  return [notice('entry-changed', record.entry, record, 'Extent', message)];
}
