import type { Day } from '../core/day.ts';
import { type Exact, roundQuantity } from '../core/exact-number.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { lifeLimitsOn, openedOn, sealedLimitOn } from '../core/life.ts';
import { smallestLeftFrom } from '../core/lot-account.ts';
import { fromCoins } from '../core/money.ts';
import { nameForMovement } from '../core/movement-name.ts';
import type { LotRecord } from '../core/records.ts';
import { splitOff } from '../core/split.ts';
import type { Lot } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import { withLot } from '../core/with-lot.ts';
import { spokenQuantity } from '../core/wording.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import { lotNotKept } from './lot-not-kept.ts';
import { lotRecordOf, lotRowChanges, tableForLot } from './new-lot.ts';
import {
  movementChanges,
  newPosting,
  type Refusal,
  refuse,
  type WritingDesk,
  type Written,
} from './writing-desk.ts';

/** A part of a lot that becomes a lot of its own. */
export interface PartOfLot {
  /** In the lot's unit, above 0 and below what is left; see partWithin. */
  readonly quantity: Exact;
  readonly date: Day;
  readonly by: string | null;
  /** Whether it is opened by that, or is what the lot is otherwise. */
  readonly isOpened: boolean;
  readonly state: LotRecord['state'];
  /** What becomes of the part, in a word or two before “as lot X”: opened, set aside. */
  readonly deed: string;
}

/** How much of a lot is meant, in its unit: null where it is all that is left. */
export function partWithin(
  ledger: Ledger,
  lot: Lot,
  meant: { readonly quantity: Exact; readonly unit: Unit },
  date: Day,
): { readonly part: Exact | null } | Refusal {
  const { unit } = lot.record;
  const factor = lot.converter.factor(meant.unit, unit);
  if (factor === null) {
    return refuse(
      `Nothing says how many ${unit.name} of ${lot.material.name} one ${meant.unit.name} is: give the quantity in ${unit.name}.`,
    );
  }
  const part = roundQuantity(meant.quantity.mul(factor));
  const left = smallestLeftFrom(accountIn(ledger, lot), date);
  if (part.compare(0) <= 0) return refuse('A quantity above 0 is right.');
  const against = part.compare(roundQuantity(left));
  if (against > 0) {
    return refuse(
      `Only ${spokenQuantity(left, unit)} are left of lot ${lot.name}, less than ${spokenQuantity(part, unit)}: ` +
        `count it first if more is there.`,
    );
  }
  return { part: against === 0 ? null : part };
}

/**
 * Splits a part of a lot off into a lot of its own, in the same table: a Count takes it out and names the new lot,
 * which takes its share of the cost along. Its Use by is the last day that the lot has without what runs from being
 * opened.
 */
export function splitLot(
  desk: WritingDesk & { readonly movementsTable: LocatedTable },
  lot: Lot,
  { quantity, date, by, isOpened, state, deed }: PartOfLot,
): (Written & { readonly child: Lot }) | Refusal {
  const { movementsTable, ledger } = desk;
  const { record, material, recipe } = lot;
  const table = tableForLot(desk, material, lot);
  if ('ok' in table) return table;
  if (lot.doubtful) {
    return refuse(
      `A date, a state or the recipe of lot ${lot.name} can't be read, so nothing says until when a part of it is good: mend that first.`,
    );
  }
  const account = accountIn(ledger, lot);
  const { currency } = ledger.studio.settings;
  const { supplier, supplierLot, storedAt, ph, sheetWidth, sheetHeight, grammage, usesPerUnit } = record;
  const limit = isOpened ? sealedLimitOn(account, date) : (lifeLimitsOn(account, date)[0] ?? null);
  const blank = lotRecordOf(
    desk,
    table,
    material,
    {
      received: date,
      quantity,
      unit: record.unit,
      cost: null,
      supplier,
      supplierLot,
      useBy: limit?.day ?? null,
      opened: isOpened ? date : openedOn(account, date),
      storedAt,
      state,
      stateSince: state === null ? null : date,
      recipe: record.recipe,
      ph,
      sheetWidth,
      sheetHeight,
      grammage,
      usesPerUnit,
      notes: `from lot ${lot.name}${limit === null ? '' : `; Use by: ${limit.reason}`}`,
    },
    currency,
  );
  const split = splitOff(ledger, lot, {
    quantity,
    date,
    into: blank.lot,
    note: `${deed} as lot ${blank.lot}`,
    name: nameForMovement(account, date, desk.newIdentifier),
  });
  const posting = newPosting(desk, movementsTable, [split.count]);
  const cost = split.cost === null ? null : fromCoins(split.cost, currency);
  const { ledger: after, lot: child } = withLot(split.ledger, { ...blank, cost, posting }, material, recipe);
  return {
    ok: true,
    posting,
    child,
    drawing: { ledger: after, movements: [split.count], entries: [], shortfalls: [] },
    changes: [
      ...desk.changes,
      ...lotRowChanges(desk, table, after, child),
      ...movementChanges(desk, movementsTable, after, [split.count], { name: posting, by }),
    ],
    remarks: lotNotKept(table, child),
  };
}
