import { type BathShare, bathShares, wasteOf } from '../core/bath.ts';
import { type Day, spokenDay } from '../core/day.ts';
import { decimal, type Exact, roundQuantity, ZERO } from '../core/exact-number.ts';
import type { Random } from '../core/identifier.ts';
import { accountIn } from '../core/ledger.ts';
import { goodUntilOn, isExpiredOn } from '../core/life.ts';
import { type LotAccount, leftOn } from '../core/lot-account.ts';
import type { Lot } from '../core/studio.ts';
import { spokenNumber, spokenQuantity } from '../core/wording.ts';
import { quantityCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { findLot } from './find-lot.ts';
import { writeLotCells } from './lot-cells.ts';
import { lotInHand } from './lot-in-hand.ts';
import { postMovements } from './post-movements.ts';
import { openDesk, openMovements, type Refusal, refuse, type Written } from './writing-desk.ts';

/**
 * Empties a bath: what is left of it is Waste of the jobs and items that used it, in proportion; where nobody's job
 * did, or the bath has gone off by then, it is the studio's own loss. Exactly 0 is left.
 */
export function emptyBath(
  snapshot: WorkbookSnapshot,
  request: { readonly lot: string; readonly date: Day; readonly by: string | null },
  today: Day,
  random: Random,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, []);
  if (!desk.ok) return desk;
  const { date, by } = request;
  const lot = lotInHand(desk, request);
  if ('ok' in lot) return lot;
  const account = accountIn(desk.ledger, lot);
  const obstacle = obstacleTo(account, date);
  if (obstacle !== null) return refuse(obstacle);

  const left = leftOn(account, date);
  const isExpired = isExpiredOn(account, date);
  const shares: BathShare[] = isExpired
    ? [{ job: null, item: null, quantity: roundQuantity(left) }]
    : bathShares(account, left);
  const movements = wasteOf(account, shares, date, 'bath emptied', desk.newIdentifier);
  return postMovements(desk, movements, by, nobodysRemark(account, shares, isExpired, date));
}

/** Why a share of a bath falls on no job. */
function nobodysRemark(
  account: LotAccount,
  shares: readonly BathShare[],
  isExpired: boolean,
  date: Day,
): string[] {
  if (shares.every(({ job }) => job !== null)) return [];
  const goodUntil = goodUntilOn(account, date);
  if (isExpired && goodUntil !== null) {
    return [
      `It was good until ${spokenDay(goodUntil)}: what has gone off is the studio's loss, and no job's cost.`,
    ];
  }
  return [
    shares.length === 1
      ? 'No job used it, so what is thrown away is the studio’s loss.'
      : 'A part of it was used for no job, so as much of what is thrown away is the studio’s loss.',
  ];
}

function obstacleTo(account: LotAccount, date: Day): string | null {
  const { lot } = account;
  const last = account.postings.findLast(
    ({ movement, reversedOn }) => movement.reverses === null && reversedOn === null,
  );
  if (last !== undefined && last.movement.day > date) {
    return (
      `Lot ${lot.name} has a movement on ${spokenDay(last.movement.day)}, so it wasn't emptied on ${spokenDay(date)}: ` +
      `give that day or a later one.`
    );
  }
  const left = leftOn(account, date);
  if (left.compare(ZERO) < 0) {
    const more = spokenQuantity(left.neg(), lot.record.unit);
    return `Of lot ${lot.name} ${more} more were used than recorded: count it or mend its movements first.`;
  }
  return left.equals(ZERO) ? `Nothing is left of lot ${lot.name}.` : null;
}

const HIGHEST_PH = decimal('14');

/** Keeps a bath for another time, with the pH that was measured in it. */
export function keepBath(
  snapshot: WorkbookSnapshot,
  request: { readonly lot: string; readonly ph: Exact | null; readonly by: string | null },
  today: Day,
  random: Random,
): Written | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  const lot = findLot(desk.ledger.studio, request.lot);
  if ('ok' in lot) return lot;
  const { ph } = request;
  const left = leftOn(accountIn(desk.ledger, lot), today);
  if (left.compare(ZERO) <= 0) return refuse(`Nothing is left of lot ${lot.name} that could be kept.`);
  if (ph !== null && (ph.compare(ZERO) < 0 || ph.compare(HIGHEST_PH) > 0)) {
    return refuse(`A pH of ${spokenNumber(ph)} can't be: 0 to 14 is right.`);
  }
  const cells =
    ph === null
      ? NOTHING
      : writeLotCells(desk, lot, [{ header: 'pH', cell: quantityCell(ph), needed: true }]);
  if ('ok' in cells) return cells;
  return {
    ok: true,
    posting: null,
    drawing: { ledger: desk.ledger, movements: [], entries: [], shortfalls: [] },
    changes: [...desk.changes, ...cells.changes],
    remarks: [keptWords(lot, left, ph), ...cells.remarks],
  };
}

const NOTHING = { changes: [], remarks: [] };

function keptWords(lot: Lot, left: Exact, ph: Exact | null): string {
  const kept = `${spokenQuantity(left, lot.record.unit)} of lot ${lot.name} are kept`;
  return ph === null ? `${kept}; no pH was given.` : `${kept}, at pH ${spokenNumber(ph)}.`;
}
