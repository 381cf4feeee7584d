import { type Day, spokenDay } from '../core/day.ts';
import { type Exact, floorQuantity, larger } from '../core/exact-number.ts';
import type { Random } from '../core/identifier.ts';
import { accountIn } from '../core/ledger.ts';
import { type LotAccount, leftOn, smallestLeftFrom, stateOn } from '../core/lot-account.ts';
import { lotMovement } from '../core/lot-movement.ts';
import { nameForMovement } from '../core/movement-name.ts';
import type { Lot } from '../core/studio.ts';
import { isSiliconeCoated, maxUses, USE, usesOfUnit } from '../core/uses.ts';
import { spokenNumber, spokenQuantity } from '../core/wording.ts';
import { dayCell, textCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { withChanges } from '../workbook/with-changes.ts';
import { changeLot } from './change-lot.ts';
import { writeLotCells } from './lot-cells.ts';
import { type Handled, lotInHand } from './lot-in-hand.ts';
import { postMovements } from './post-movements.ts';
import { partWithin, splitLot } from './split-lot.ts';
import {
  openDesk,
  openMovements,
  type Refusal,
  refuse,
  type WritingDesk,
  type Written,
} from './writing-desk.ts';

/** Sheets that are out of action while they dry. */
export interface WetSheets extends Handled {
  /** How many, in the material's stock unit; null for the whole lot. */
  readonly sheets: Exact | null;
}

/** Sheets that are dry or washed and come back. */
export interface BroughtBack extends Handled {
  /** How many uses that gives back; null for none. */
  readonly uses: Exact | null;
  readonly how: 'dried' | 'washed';
}

/**
 * Sets a lot aside while it dries, from a day on. Of some of its sheets only: those are split off into a lot of their
 * own, and the others stay in use.
 */
export function setWet(
  snapshot: WorkbookSnapshot,
  request: WetSheets,
  today: Day,
  random: Random,
): (Written & { readonly wet: Lot }) | Refusal {
  const { sheets, date, by } = request;
  if (sheets === null) {
    const desk = openDesk(snapshot, today, random);
    if (!desk.ok) return desk;
    const lot = lotToWet(desk, request);
    return 'ok' in lot ? lot : wetWhole(snapshot, desk, lot, date, random);
  }
  const desk = openMovements(snapshot, today, random, ['Into']);
  if (!desk.ok) return desk;
  const lot = lotToWet(desk, request);
  if ('ok' in lot) return lot;
  const within = partWithin(desk.ledger, lot, { quantity: sheets, unit: lot.material.unit }, date);
  if ('ok' in within) return within;
  const { part } = within;
  if (part === null) return wetWhole(snapshot, desk, lot, date, random);
  if (desk.tables.get(lot.record.place.table.toLowerCase())?.columns.has('State') !== true) {
    return refuse(
      `The table ${lot.record.place.table} has no column State, where this must be written: add it.`,
    );
  }
  const set = { isOpened: false, state: 'Set aside', deed: 'set aside wet' } as const;
  const split = splitLot(desk, lot, { quantity: part, date, by, ...set });
  return split.ok ? { ...split, wet: split.child } : split;
}

function lotToWet(desk: WritingDesk, request: WetSheets): Lot | Refusal {
  const lot = lotInHand(desk, request);
  if ('ok' in lot) return lot;
  const account = accountIn(desk.ledger, lot);
  if (lot.record.state === 'Set aside') {
    const { stateSince } = lot.record;
    return refuse(
      `Lot ${lot.name} is set aside${stateSince === null ? '' : ` since ${spokenDay(stateSince)}`} already.`,
    );
  }
  return stateOn(account, request.date) !== 'Usable' ||
    smallestLeftFrom(account, request.date).compare(0) <= 0
    ? refuse(`Nothing usable is left of lot ${lot.name}.`)
    : lot;
}

function wetWhole(
  snapshot: WorkbookSnapshot,
  desk: WritingDesk,
  lot: Lot,
  date: Day,
  random: Random,
): (Written & { readonly wet: Lot }) | Refusal {
  const changed = changeLot(
    snapshot,
    desk,
    lot,
    [
      { header: 'State', cell: textCell('Set aside'), needed: true },
      { header: 'State since', cell: dayCell(date), needed: false },
    ],
    { today: desk.today, random },
  );
  return changed.ok ? { ...changed, wet: changed.lot } : changed;
}

/**
 * Brings a lot back into use that was set aside wet, and gives back what drying or washing restores: a Put back of
 * uses, never above what the lot had when it came. Silicone release paper gets nothing back, as its coating is worn.
 */
export function bringBack(
  snapshot: WorkbookSnapshot,
  request: BroughtBack,
  today: Day,
  random: Random,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, []);
  if (!desk.ok) return desk;
  const lot = lotInHand(desk, request);
  if ('ok' in lot) return lot;
  const { uses, how, date, by } = request;
  const account = accountIn(desk.ledger, lot);
  const { state, stateSince } = lot.record;
  const isAside = state === 'Set aside';
  if (!isAside && uses === null)
    return refuse(`Lot ${lot.name} is not set aside: there is nothing to bring back.`);
  if (isAside && stateSince !== null && stateSince > date) {
    return refuse(
      `Lot ${lot.name} is set aside only since ${spokenDay(stateSince)}: give that day or a later one.`,
    );
  }
  const obstacle = uses === null ? null : obstacleToUses(account, uses, date);
  if (obstacle !== null) return refuse(obstacle);
  const written = writeLotCells(
    desk,
    lot,
    isAside
      ? [
          { header: 'State', cell: textCell(null), needed: true },
          { header: 'State since', cell: dayCell(null), needed: true },
        ]
      : [],
  );
  if ('ok' in written) return written;
  const changes = [...desk.changes, ...written.changes];
  const after = openMovements(withChanges(snapshot, changes), today, random, []);
  if (!after.ok) return after;
  const back = lotInHand(after, request);
  if ('ok' in back) return back;
  const movements =
    uses === null
      ? []
      : [
          lotMovement(back, {
            name: nameForMovement(account, date, after.newIdentifier),
            date,
            kind: 'Put back',
            quantity: uses,
            unit: USE,
            note: how,
          }),
        ];
  const posted = postMovements(after, movements, by, written.remarks);
  return { ...posted, changes: [...changes, ...posted.changes] };
}

/** Why so many uses can't be given back to a lot; null where they can. */
function obstacleToUses(account: LotAccount, uses: Exact, date: Day): string | null {
  const { lot } = account;
  const ofUnit = usesOfUnit(lot);
  const most = maxUses(lot);
  if (ofUnit === null || most === null) {
    return `${lot.material.name} is used once: give its Uses per unit in Materials if its sheets are used again.`;
  }
  if (isSiliconeCoated(lot.material)) {
    return (
      `${lot.material.name} is coated with silicone, by what Materials says of it: its coating wears off, and neither ` +
      `drying nor washing gives uses back.`
    );
  }
  if (uses.d !== 1n || uses.compare(0) <= 0) {
    return `Uses are whole and above 0: ${spokenNumber(uses)} can't be given back.`;
  }
  const room = most.sub(largestLeftFrom(account, date).mul(ofUnit));
  if (uses.compare(room) <= 0) return null;
  const free = floorQuantity(room).floor(0);
  const had = spokenQuantity(most, USE);
  return free.compare(0) <= 0
    ? `Lot ${lot.name} had ${had} when it came, and has them all: none can be given back.`
    : `Lot ${lot.name} had ${had} when it came: at most ${spokenQuantity(free, USE)} can be given back.`;
}

/** The most that is left at the end of a day or of any later one, in the lot's unit. */
function largestLeftFrom(account: LotAccount, day: Day): Exact {
  return account.postings
    .filter(({ movement }) => movement.day > day)
    .reduce((most, { left }) => larger(most, left), leftOn(account, day));
}
