import type { Day } from '../core/day.ts';
import { type Exact, floorQuantity, smaller } from '../core/exact-number.ts';
import type { Random } from '../core/identifier.ts';
import { accountIn } from '../core/ledger.ts';
import { smallestLeftFrom } from '../core/lot-account.ts';
import { lotMovement } from '../core/lot-movement.ts';
import { nameForMovement } from '../core/movement-name.ts';
import { USE, usesOfSheet, usesOfUnit } from '../core/uses.ts';
import { spokenNumber, spokenQuantity } from '../core/wording.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { type Handled, lotInHand } from './lot-in-hand.ts';
import { postMovements } from './post-movements.ts';
import { openMovements, type Refusal, refuse, type Written } from './writing-desk.ts';

export { bringBack, setWet } from './dry-lot.ts';

/** A sheet that is spoilt before its time. */
export interface SheetToRetire extends Handled {
  /** How many presses it has done; null where nobody knows, and half of its uses are taken for done. */
  readonly presses: Exact | null;
}

/**
 * Retires one sheet of a lot early: the uses that it would still have had are Waste, as a general loss of the studio.
 * Never more than is left of the lot.
 */
export function retireSheet(
  snapshot: WorkbookSnapshot,
  request: SheetToRetire,
  today: Day,
  random: Random,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, []);
  if (!desk.ok) return desk;
  const lot = lotInHand(desk, request);
  if ('ok' in lot) return lot;
  const ofSheet = usesOfSheet(lot);
  const ofUnit = usesOfUnit(lot);
  if (ofSheet === null || ofUnit === null) {
    return refuse(
      `${lot.material.name} is used once: give its Uses per unit in Materials if its sheets are used again.`,
    );
  }
  const { presses, date, by } = request;
  const sheet = lot.material.unit.name;
  if (presses !== null && (presses.d !== 1n || presses.compare(0) < 0)) {
    return refuse(`It has done a whole number of presses, or none: ${spokenNumber(presses)} can't be.`);
  }
  const done = presses ?? ofSheet.div(2).floor(0);
  const remaining = ofSheet.sub(done);
  if (remaining.compare(0) <= 0) {
    return refuse(
      `A ${sheet} of ${lot.material.name} has ${spokenQuantity(ofSheet, USE)}, and after ${pressesIn(done)} none is left to write off: ` +
        `its presses have taken it from stock already.`,
    );
  }
  const account = accountIn(desk.ledger, lot);
  const left = smallestLeftFrom(account, date).mul(ofUnit);
  if (left.compare(0) <= 0) return refuse(`No use is left of lot ${lot.name} to write off.`);
  const quantity = smaller(remaining, floorQuantity(left));
  const known =
    presses === null ? `${pressesIn(done)} taken for done, half of its uses` : `after ${pressesIn(done)}`;
  const waste = lotMovement(lot, {
    name: nameForMovement(account, date, desk.newIdentifier),
    date,
    kind: 'Waste',
    quantity,
    unit: USE,
    note: `${sheet} retired, ${known}`,
  });
  const remarks = [
    ...(presses === null
      ? [
          `Nobody said how many presses the ${sheet} has done, so half of its uses are taken for done: ` +
            `${spokenQuantity(quantity, USE)} are written off.`,
        ]
      : []),
    ...(quantity.compare(remaining) < 0
      ? [
          `The ${sheet} would still have had ${spokenQuantity(remaining, USE)}, but only ${spokenQuantity(quantity, USE)} ` +
            `are left of lot ${lot.name}: more is not written off.`,
        ]
      : []),
  ];
  return postMovements(desk, [waste], by, remarks);
}

function pressesIn(presses: Exact): string {
  return `${spokenNumber(presses)} ${presses.equals(1) ? 'press' : 'presses'}`;
}
