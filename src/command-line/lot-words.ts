import type { Written } from '../actions/writing-desk.ts';
import { type Day, spokenDay } from '../core/day.ts';
import { quantityNumber } from '../core/exact-number.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { lifeLimitsOn, openedOn } from '../core/life.ts';
import { leftOn, stateOn } from '../core/lot-account.ts';
import type { Lot } from '../core/studio.ts';
import { usesLeft } from '../core/uses.ts';
import { day } from './answers-json.ts';
import { type Terminal, wrapped } from './terminal.ts';

/** How one lot is spoken of, in text and JSON, by the verbs that do something with it. */

/** Lot B-1 (borax buffer). */
export function namedLot(lot: Lot): string {
  return `Lot ${lot.name} (${lot.material.name})`;
}

/** Until when a lot is good, and by what: good until 3 Apr 2026 (printed date). */
export function goodWords(ledger: Ledger, lot: Lot, today: Day): string {
  if (lot.doubtful) return 'until when it is good can’t be told';
  const first = lifeLimitsOn(accountIn(ledger, lot), today)[0];
  return first === undefined
    ? 'nothing says that it goes off'
    : `good until ${spokenDay(first.day)} (${first.reason})`;
}

/** What stands of a lot after something was done with it. */
export function lotStateJson(ledger: Ledger, lot: Lot, today: Day) {
  const account = accountIn(ledger, lot);
  const first = lifeLimitsOn(account, today)[0];
  const uses = usesLeft(account, today);
  return {
    lot: lot.record.lot,
    material: lot.material.name,
    left: quantityNumber(leftOn(account, today)),
    unit: lot.record.unit.name,
    usesLeft: uses === null ? null : quantityNumber(uses),
    state: stateOn(account, today),
    opened: day(openedOn(account, today)),
    goodUntil: day(first?.day ?? null),
    goodUntilBecause: first?.reason ?? null,
  };
}

/** What was done, sentence by sentence, with the remarks and the posting. */
export function deedLines(
  sentences: readonly string[],
  { remarks, posting }: Pick<Written, 'remarks' | 'posting'>,
  terminal: Terminal,
): string[] {
  return [
    ...sentences.flatMap((sentence) => wrapped(sentence, terminal.width, 2)),
    ...remarks.flatMap((remark) => ['', ...wrapped(remark, terminal.width, 0)]),
    ...(posting === null ? [] : ['', `Posting ${posting}.`]),
  ];
}
