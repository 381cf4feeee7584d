import { addDays, type Day, spokenDay } from './day.ts';
import { roundQuantity, ZERO } from './exact-number.ts';
import { accountIn, type Ledger } from './ledger.ts';
import { goodUntilOn, isExpiredOn, lifeLimitsOn } from './life.ts';
import { isReversedBy, type LotAccount, leftOn, type Posting, stateOn } from './lot-account.ts';
import { type Notice, type NoticeCode, notice } from './notice.ts';
import type { Lot } from './studio.ts';
import { counted, spokenNumber, spokenPhLimits, spokenQuantity } from './wording.ts';

/** The notices about lots and their movements on a day. */
export function lotNotices(ledger: Ledger, today: Day): Notice[] {
  const { warnDays } = ledger.studio.settings;
  return ledger.studio.lots.flatMap((lot) => {
    const account = accountIn(ledger, lot);
    return [
      ...goneOff(account, today, warnDays),
      ...outsideItsPh(account, today),
      ...halfRetested(lot),
      ...overdrawn(account, today),
      ...usedAgainstRule(account, today),
      ...tooEarly(account, today),
      ...countDiffers(account, today),
    ];
  });
}

function about(lot: Lot, code: NoticeCode, column: string, message: string): Notice {
  return notice(code, lot.record.lot, lot.record, column, message);
}

function named(lot: Lot): string {
  return `Lot ${lot.name} (${lot.material.name})`;
}

/** Whether a lot was received by a day and not thrown away as a whole. */
export function isHere(account: LotAccount, today: Day): boolean {
  return account.lot.record.received <= today && stateOn(account, today) !== 'Discarded';
}

function goneOff(account: LotAccount, today: Day, warnDays: number): Notice[] {
  const { lot } = account;
  const limit = lifeLimitsOn(account, today)[0];
  const left = leftOn(account, today);
  if (limit === undefined || !isHere(account, today) || left.compare(0) <= 0) return [];
  const { day: goodUntil, reason } = limit;
  const rest = spokenQuantity(left, lot.record.unit);
  if (goodUntil < today) {
    const message = `${named(lot)} was good until ${spokenDay(goodUntil)} (${reason}); left in it: ${rest}. It is not drawn on by itself any more.`;
    return [about(lot, 'expired', 'Lot', message)];
  }
  if (goodUntil > addDays(today, warnDays)) return [];
  const when = goodUntil === today ? 'today' : spokenDay(goodUntil);
  return [
    about(lot, 'expiring', 'Lot', `${named(lot)} is good until ${when} (${reason}); left in it: ${rest}.`),
  ];
}

/** A lot whose measured pH lies outside what its material should have. */
function outsideItsPh(account: LotAccount, today: Day): Notice[] {
  const { lot } = account;
  const { ph } = lot.record;
  const { phLow, phHigh } = lot.material.record;
  if (ph === null || !isHere(account, today) || leftOn(account, today).compare(0) <= 0) return [];
  const isInside = (phLow === null || ph.compare(phLow) >= 0) && (phHigh === null || ph.compare(phHigh) <= 0);
  if (isInside) return [];
  const message =
    `${named(lot)} has pH ${spokenNumber(ph)}; by Materials it should have ${spokenPhLimits(phLow, phHigh)}. ` +
    `Measure again, or set the lot aside.`;
  return [about(lot, 'ph-outside', 'pH', message)];
}

/** A test of which only the day, or only the new date, is written down: it can't be taken into account. */
function halfRetested({ record, name, material }: Lot): Notice[] {
  const { retested, retestedUntil, unreadable } = record;
  const isAlone = (retested === null) !== (retestedUntil === null);
  if (!isAlone || unreadable.has('Retested') || unreadable.has('Retested until')) return [];
  const [blank, would] =
    retested === null
      ? ['Retested', 'the day of the test']
      : ['Retested until', 'the day until which it was found good'];
  const filled = retested === null ? 'Retested until' : 'Retested';
  const message =
    `${blank} of lot ${name} (${material.name}) is blank while ${filled} is filled, so the test is not taken into ` +
    `account: enter ${would}, or clear ${filled}.`;
  return [notice('unreadable', record.lot, record, blank, message)];
}

function overdrawn(account: LotAccount, today: Day): Notice[] {
  const { lot } = account;
  const left = leftOn(account, today);
  if (!isHere(account, today) || left.compare(0) >= 0) return [];
  const over = spokenQuantity(left.neg(), lot.record.unit);
  const message = `${named(lot)}: more used than recorded, by ${over}. Weigh or count what is there and enter a Count in Movements, or reverse what was drawn from it by mistake.`;
  return [about(lot, 'overdrawn', 'Quantity', message)];
}

function standingUses(account: LotAccount, today: Day): Posting[] {
  return account.postings.filter(
    (posting) =>
      posting.movement.day <= today &&
      posting.movement.reverses === null &&
      (posting.movement.kind === 'Use' || posting.movement.kind === 'Make') &&
      !isReversedBy(posting, today),
  );
}

function usedAgainstRule(account: LotAccount, today: Day): Notice[] {
  const { lot } = account;
  const uses = standingUses(account, today);
  const notices: Notice[] = [];
  const expired = uses.filter(({ movement }) => isExpiredOn(account, movement.day));
  const last = expired.at(-1);
  if (last !== undefined) {
    const goodUntil = goodUntilOn(account, last.movement.day);
    const message =
      `${named(lot)} was used on ${spokenDay(last.movement.date)}, after ${goodUntil === null ? 'its last day' : spokenDay(goodUntil)}, the last day it was good ` +
      `(${counted(expired.length, 'movement')} in all).`;
    notices.push(about(lot, 'expired-used', 'Lot', message));
  }
  const barred = uses.filter(({ movement }) => stateOn(account, movement.day) !== 'Usable');
  const lastBarred = barred.at(-1);
  if (lastBarred !== undefined) {
    const state = stateOn(account, lastBarred.movement.day).toLowerCase();
    const message =
      `${named(lot)} was used on ${spokenDay(lastBarred.movement.date)} although it was ${state} ` +
      `(${counted(barred.length, 'movement')} in all). Reverse what is wrong, or correct State or State since.`;
    notices.push(about(lot, 'set-aside-used', 'State', message));
  }
  return notices;
}

function tooEarly(account: LotAccount, today: Day): Notice[] {
  const { lot, postings } = account;
  return postings
    .filter(
      (posting) =>
        posting.movement.date < lot.record.received &&
        posting.movement.date <= today &&
        posting.movement.reverses === null &&
        !isReversedBy(posting, today),
    )
    .flatMap(({ movement }) => {
      if (movement.record === null) return [];
      const message =
        `Movement of ${spokenDay(movement.date)} on lot ${lot.name}, which was received only on ${spokenDay(lot.record.received)}: ` +
        `it counts from that day. Correct Received of the lot, or reverse the movement.`;
      return [notice('too-early', movement.name, movement.record, 'Date', message)];
    });
}

/** The typed figure of a lot whose Left somebody has overwritten; null where it holds what was written, or nothing. */
function typedLeft(lot: Lot): typeof lot.record.left {
  const { left, leftAsWritten } = lot.record;
  if (left === null || (leftAsWritten !== null && roundQuantity(left).equals(roundQuantity(leftAsWritten))))
    return null;
  return left;
}

function countDiffers(account: LotAccount, today: Day): Notice[] {
  const { lot } = account;
  if (!hasOpenCount(account, today)) return [];
  const typed = typedLeft(lot) ?? ZERO;
  const left = leftOn(account, today);
  const { unit } = lot.record;
  const message =
    `Left of ${named(lot).replace('Lot', 'lot')} was typed over with ${spokenQuantity(typed, unit)}; by its movements it is ` +
    `${spokenQuantity(left, unit)}. To keep your figure add a row to Movements, Count, quantity ` +
    `${roundQuantity(typed.sub(left)).toString()}, unit ${unit.name}; else clear the cell.`;
  return [about(lot, 'count-differs', 'Left', message)];
}

/** Whether somebody has typed over what is left of a lot, and the ledger says otherwise: a count not posted yet. */
export function hasOpenCount(account: LotAccount, today: Day): boolean {
  const typed = typedLeft(account.lot);
  return typed !== null && !roundQuantity(typed).equals(roundQuantity(leftOn(account, today)));
}
