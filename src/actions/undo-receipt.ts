import { keyOf } from '../core/identifier.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import type { Movement } from '../core/movement.ts';
import { isOpenOrder } from '../core/on-order.ts';
import { nameOf, type OrderRecord } from '../core/records.ts';
import type { Lot, Studio } from '../core/studio.ts';
import { isReceived, isUnreceiving, standingBesides, unmake } from '../core/unmake.ts';
import { setCell, textCell } from '../workbook/cell-write.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { Change } from '../workbook/port.ts';
import { stateByItsLots } from './order-lines.ts';
import {
  movementChanges,
  newPosting,
  type Refusal,
  refuse,
  type WritingDesk,
  type Written,
} from './writing-desk.ts';

/** The lots that came in with one posting, which no movement has. */
export function lotsReceivedBy({ studio }: Ledger, posting: string): Lot[] {
  return studio.lots.filter(
    (lot) => isReceived(lot) && lot.record.posting !== null && keyOf(lot.record.posting) === keyOf(posting),
  );
}

/**
 * Takes a delivery back: its lots are counted as nothing on the day they came and name their order no more, so that
 * it is on order again. Refused while anything else stands on one of them.
 */
export function undoReceipt(
  desk: WritingDesk & { readonly movementsTable: LocatedTable },
  posting: string,
  came: readonly Lot[],
  by: string | null,
): Written | Refusal {
  const { ledger: before, movementsTable, tables } = desk;
  const lots = came.filter(
    (lot) => !accountIn(before, lot).postings.some(({ movement }) => isUnreceiving(movement)),
  );
  if (lots.length === 0) return refuse(`Posting ${posting} has been taken back already.`);
  for (const lot of lots) {
    const standing = standingBesides(before, lot, []);
    if (standing.length === 0) continue;
    return refuse(
      `Lot ${lot.name}, which came in with posting ${posting}, has movements: take back ${spokenPostings(standing)} first.`,
    );
  }
  const made = lots.map((lot) => ({ lot, from: null }));
  const { ledger, movements } = unmake(before, made, desk.newIdentifier);
  const name = newPosting(desk, movementsTable, movements);
  const orders = ordersAfter(desk, lots);
  return {
    ok: true,
    posting: name,
    drawing: { ledger, movements, entries: [], shortfalls: [] },
    changes: [
      ...desk.changes,
      ...lots.flatMap((lot) => unlinked(tables.get(lot.record.place.table.toLowerCase()), lot)),
      ...orders.flatMap(({ order, state }) => {
        const table = tables.get(order.place.table.toLowerCase());
        return table === undefined ? [] : setCell(table, order.place.row, 'State', textCell(state));
      }),
      ...movementChanges(desk, movementsTable, ledger, movements, { name, by }),
    ],
    remarks: [
      ...orders.map(afterwards),
      ...lots.map((lot) => `The row of lot ${lot.name} stays where it is; nothing is left of it.`),
    ],
  };
}

/** The movements that stand in the way, by their postings where they have one. */
export function spokenPostings(movements: readonly Movement[]): string {
  const names = movements.map(({ name, record }) =>
    record?.posting == null
      ? `movement ${name ?? String(record?.place.sheetRow)}`
      : `posting ${record.posting}`,
  );
  return [...new Set(names)].join(', ');
}

/** The changes by which a lot names its order no more. */
function unlinked(table: LocatedTable | undefined, { record }: Lot): Change[] {
  if (table === undefined) return [];
  return ['Order', 'Order line'].flatMap((header) =>
    setCell(table, record.place.row, header, textCell(null)),
  );
}

interface OrderAfter {
  readonly order: OrderRecord;
  readonly state: string | null;
}

/**
 * The orders of lots that are taken back, with the State that the others leave them. One that a person gave, and not
 * what came, stays.
 */
function ordersAfter({ ledger: { studio }, tables, today }: WritingDesk, lots: readonly Lot[]): OrderAfter[] {
  const without = withoutLots(studio, lots);
  const orders = new Set(
    lots.flatMap(({ record }) =>
      record.order === null ? [] : (studio.ordersByKey.get(keyOf(record.order)) ?? []),
    ),
  );
  return [...orders].map((order) => {
    const isOfLots = keyOf(order.state ?? '') === keyOf(stateByItsLots(tables, studio, order, today));
    return { order, state: isOfLots ? stateByItsLots(tables, without, order, today) : order.state };
  });
}

function afterwards({ order, state }: OrderAfter): string {
  const name = nameOf(order.order, order);
  return isOpenOrder({ ...order, state })
    ? `What came of order ${name} by it is on order again.`
    : `What came of order ${name} by it is taken back; its State stays ${state ?? ''}, so that nothing is on order.`;
}

/** The studio as if some lots had never come. */
function withoutLots(studio: Studio, lots: readonly Lot[]): Studio {
  const lotsOfMaterial = new Map(
    [...studio.lotsOfMaterial].map(([material, own]) => [material, own.filter((lot) => !lots.includes(lot))]),
  );
  return { ...studio, lotsOfMaterial };
}
