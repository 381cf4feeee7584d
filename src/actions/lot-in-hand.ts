import { type Day, spokenDay } from '../core/day.ts';
import { accountIn } from '../core/ledger.ts';
import { stateOn } from '../core/lot-account.ts';
import type { Lot } from '../core/studio.ts';
import { findLot } from './find-lot.ts';
import { type Refusal, refuse, type WritingDesk } from './writing-desk.ts';

/** What was done with a lot on a day, and by whom. */
export interface Handled {
  readonly lot: string;
  readonly date: Day;
  readonly by: string | null;
}

/** The lot that somebody had in hand on a day: received by then, not discarded, and the day not after today. */
export function lotInHand(
  { ledger, today }: WritingDesk,
  { lot: name, date }: Pick<Handled, 'lot' | 'date'>,
): Lot | Refusal {
  const lot = findLot(ledger.studio, name);
  if ('ok' in lot) return lot;
  if (date > today) {
    return refuse(`The day given is ${spokenDay(date)}, after today: give the day on which it was done.`);
  }
  if (date < lot.record.received) {
    return refuse(
      `Lot ${lot.name} came in only on ${spokenDay(lot.record.received)}: give that day or a later one.`,
    );
  }
  return stateOn(accountIn(ledger, lot), date) === 'Discarded'
    ? refuse(`Lot ${lot.name} was discarded by ${spokenDay(date)}.`)
    : lot;
}
