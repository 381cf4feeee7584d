import type { Day } from '../core/day.ts';
import { roundQuantity } from '../core/exact-number.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import { accountIn, post } from '../core/ledger.ts';
import { leftOn } from '../core/lot-account.ts';
import { hasOpenCount } from '../core/lot-notices.ts';
import { movementOf } from '../core/movement.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import {
  movementChanges,
  newPosting,
  openMovements,
  type Refusal,
  refuse,
  type Written,
} from './writing-desk.ts';

/**
 * Posts what somebody typed over Left of a lot as a Count: the difference between her figure and the ledger's, as of
 * today. Nothing is posted where the two agree.
 * @param place the lot's row
 */
export function postCount(
  snapshot: WorkbookSnapshot,
  place: { readonly table: string; readonly row: number },
  today: Day,
  random: Random,
  by: string | null = null,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, []);
  if (!desk.ok) return desk;
  const { movementsTable } = desk;
  const lot = desk.ledger.studio.lots.find(
    ({ record }) => record.place.table === place.table && record.place.row === place.row,
  );
  if (lot !== undefined && desk.ledger.studio.lotsByKey.get(keyOf(lot.name)) !== lot) {
    return refuse(
      `Lot ${lot.name} stands in two rows, and a Count would fall on the first of them: ` +
        'give this row an identifier of its own, then post the count.',
    );
  }
  const account = lot === undefined ? undefined : accountIn(desk.ledger, lot);
  if (lot === undefined || account === undefined || !hasOpenCount(account, today)) {
    return refuse('What is typed in Left of this lot is what its movements give: there is nothing to post.');
  }
  if (lot.record.received > today) {
    return refuse(
      `Lot ${lot.name} is received only later: what is left of it can be counted from that day on.`,
    );
  }
  const typed = lot.record.left;
  const difference = roundQuantity((typed ?? leftOn(account, today)).sub(leftOn(account, today)));
  const count = movementOf({
    name: desk.newIdentifier('M'),
    date: today,
    kind: 'Count',
    lot,
    quantity: difference,
    unit: lot.record.unit,
    job: null,
    item: null,
    entry: null,
    lotIs: 'confirmed',
    into: null,
    note: null,
    reverses: null,
    record: null,
  });
  if (count === null) throw new Error(`${lot.record.unit.name} is the unit of lot ${lot.name} itself`);
  const ledger = post(desk.ledger, [count]);
  const posting = newPosting(desk, movementsTable, [count]);
  const changes = movementChanges(desk, movementsTable, ledger, [count], { name: posting, by });
  return {
    ok: true,
    posting,
    drawing: { ledger, movements: [count], entries: [], shortfalls: [] },
    changes: [...desk.changes, ...changes],
    remarks: [],
  };
}
