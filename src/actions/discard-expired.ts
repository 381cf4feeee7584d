import { type Day, spokenDay } from '../core/day.ts';
import { isTheLotOfItsName } from '../core/draw-order.ts';
import { type Exact, roundQuantity } from '../core/exact-number.ts';
import type { Random } from '../core/identifier.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { lifeLimitsOn } from '../core/life.ts';
import { leftOn, smallestLeftFrom, worthOn } from '../core/lot-account.ts';
import { lotMovement } from '../core/lot-movement.ts';
import { isHere } from '../core/lot-notices.ts';
import type { Coins } from '../core/money.ts';
import { nameForMovement } from '../core/movement-name.ts';
import { compareText } from '../core/notice.ts';
import type { Lot } from '../core/studio.ts';
import { spokenQuantity } from '../core/wording.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { findLot } from './find-lot.ts';
import { postMovements } from './post-movements.ts';
import { openMovements, type Refusal, refuse, type Written } from './writing-desk.ts';

/** A lot that has gone off with something left in it. */
export interface ExpiredLot {
  readonly lot: Lot;
  /** In the lot's unit. */
  readonly left: Exact;
  readonly goodUntil: Day;
  /** Which limit it was. */
  readonly reason: string;
  /** Null for a lot without a cost. */
  readonly worth: Coins | null;
  /** By which rule the material is to be thrown away; null where none is given. */
  readonly disposal: string | null;
}

/** How things are thrown away is not for a workbook to say. */
export const DISPOSAL_CAUTION =
  'Throw it away by your local rules and the supplier’s safety data sheet, by whoever is licensed for it; ' +
  'what stands under Disposal is your own note.';

/** The lots that have gone off with something left in them, what went off first at the top; discarded ones are not among them. */
export function expiredLots(ledger: Ledger, today: Day): ExpiredLot[] {
  return ledger.studio.lots
    .flatMap((lot): ExpiredLot[] => {
      const account = accountIn(ledger, lot);
      const limit = lifeLimitsOn(account, today)[0];
      const left = leftOn(account, today);
      if (limit === undefined || limit.day >= today || !isHere(account, today) || left.compare(0) <= 0)
        return [];
      const { day: goodUntil, reason } = limit;
      const { disposal } = lot.material.record;
      return [{ lot, left, goodUntil, reason, worth: worthOn(account, today), disposal }];
    })
    .toSorted((a, b) => a.goodUntil - b.goodUntil || compareText(a.lot.name, b.lot.name));
}

/** What was thrown away, lot by lot. */
export type DiscardedLots = Written & { readonly discarded: readonly ExpiredLot[] };

/**
 * Throws away what has gone off: what is left of each lot is Waste of nobody's job, all under one posting. That is
 * the studio's own loss: IAS 2 (Inventories), paragraph 16, keeps abnormal amounts of wasted materials out of the
 * cost of other work, and has them an expense of the time when they are lost.
 * @param lots those alone; null for all that have gone off
 */
export function discardExpired(
  snapshot: WorkbookSnapshot,
  lots: readonly string[] | null,
  today: Day,
  random: Random,
  by: string | null,
): DiscardedLots | Refusal {
  const desk = openMovements(snapshot, today, random, []);
  if (!desk.ok) return desk;
  const { ledger } = desk;
  const named = lots === null ? expiredLots(ledger, today) : expiredAmong(ledger, lots, today);
  if ('ok' in named) return named;
  const twins = named.filter(({ lot }) => !isTheLotOfItsName(ledger, lot));
  const discarded = named.filter(
    ({ lot }) => !twins.some((twin) => twin.lot === lot) && restOf(ledger, lot, today).compare(0) > 0,
  );
  const movements = discarded.map(({ lot, reason }) =>
    lotMovement(lot, {
      name: nameForMovement(accountIn(ledger, lot), today, desk.newIdentifier),
      date: today,
      kind: 'Waste',
      quantity: restOf(ledger, lot, today),
      note: `gone off: ${reason}`,
    }),
  );
  const remarks = twins.map(
    ({ lot }) =>
      `Lot ${lot.name} stands in two rows, and what is thrown away would fall on the first of them: give this row an ` +
      `identifier of its own, then throw it away.`,
  );
  const posted = postMovements(desk, movements, by, remarks);
  return { ...posted, discarded, changes: movements.length === 0 ? [] : posted.changes };
}

/** What can be thrown away of a lot: what is left, less what is entered for later days. */
function restOf(ledger: Ledger, lot: Lot, today: Day): Exact {
  return roundQuantity(smallestLeftFrom(accountIn(ledger, lot), today));
}

/** Those that a person names, each of which must have gone off with something left in it. */
export function expiredAmong(
  ledger: Ledger,
  names: readonly string[],
  today: Day,
): readonly ExpiredLot[] | Refusal {
  const expired = expiredLots(ledger, today);
  const chosen: ExpiredLot[] = [];
  for (const name of names) {
    const lot = findLot(ledger.studio, name);
    if ('ok' in lot) return lot;
    const found = expired.find((each) => each.lot === lot);
    if (found === undefined) return refuse(whyNotExpired(ledger, lot, today));
    if (!chosen.includes(found)) chosen.push(found);
  }
  return chosen;
}

function whyNotExpired(ledger: Ledger, lot: Lot, today: Day): string {
  const account = accountIn(ledger, lot);
  const left = leftOn(account, today);
  const limit = lifeLimitsOn(account, today)[0];
  if (!isHere(account, today) || left.compare(0) <= 0)
    return `Nothing is left of lot ${lot.name} to throw away.`;
  const good =
    limit === undefined
      ? `Nothing says that lot ${lot.name} goes off`
      : `Lot ${lot.name} is good until ${spokenDay(limit.day)} (${limit.reason})`;
  return (
    `${good}, so it has not expired; left in it: ${spokenQuantity(left, lot.record.unit)}. ` +
    `If it is to go all the same, enter a Waste in Movements.`
  );
}
