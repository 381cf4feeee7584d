import { buildStudio } from './build-studio.ts';
import type { Day } from './day.ts';
import { entryNotices } from './entry-notices.ts';
import { duplicateNotices } from './identities.ts';
import { type Ledger, openLedger } from './ledger.ts';
import { lotNotices } from './lot-notices.ts';
import { materialNotices } from './material-notices.ts';
import { workOutMovements } from './movement.ts';
import { mostPressingFirst, type Notice } from './notice.ts';
import { orderNotices } from './order-notices.ts';
import type { Records, UnreadableIdentifiers } from './records.ts';
import { referenceNotices } from './references.ts';
import type { Settings } from './settings.ts';
import { type Stock, stockOn } from './stock.ts';
import { storedTogether } from './stored-apart.ts';

/** The ledger that a workbook's records make, with what in them can't be worked out. */
export interface Bookkeeping {
  readonly ledger: Ledger;
  /** Notices about the records themselves: duplicates, names that lead nowhere, units that don't convert. */
  readonly notices: readonly Notice[];
}

/** Follows the references between records and folds the movements into a ledger. */
export function keepBooks(
  records: Records,
  settings: Settings,
  unreadable: UnreadableIdentifiers,
): Bookkeeping {
  const { studio, notices } = buildStudio(records, settings);
  const movements = workOutMovements(records, studio.lotsByKey);
  return {
    ledger: openLedger(studio, movements.movements),
    notices: [
      ...duplicateNotices(records),
      ...referenceNotices(records, unreadable),
      ...notices,
      ...movements.notices,
    ],
  };
}

/** What there is on a day, and what needs attention, most pressing first. */
export interface Check {
  readonly stock: Stock;
  readonly notices: readonly Notice[];
}

/**
 * The stock on a day and every notice about it.
 * @param before notices from reading the workbook and keeping its books
 */
export function check(ledger: Ledger, today: Day, before: readonly Notice[]): Check {
  const stock = stockOn(ledger, today);
  return {
    stock,
    notices: mostPressingFirst([
      ...before,
      ...lotNotices(ledger, today),
      ...entryNotices(ledger, today),
      ...materialNotices(ledger, stock),
      ...orderNotices(ledger.studio, today),
      ...storedTogether(ledger, today),
    ]),
  };
}
