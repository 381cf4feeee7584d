import { type Day, spokenDay } from '../core/day.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import type { Ledger } from '../core/ledger.ts';
import { isOpenOrder, stillToCome } from '../core/on-order.ts';
import { nameOf, type OrderRecord } from '../core/records.ts';
import { withLot } from '../core/with-lot.ts';
import { setCell, textCell } from '../workbook/cell-write.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { Change, WorkbookSnapshot } from '../workbook/port.ts';
import { type Delivery, workOutDelivery } from './delivery.ts';
import { deliveryRemarks, lotRemarks } from './delivery-remarks.ts';
import { lotNotKept } from './lot-not-kept.ts';
import { lotRecordOf, lotRowChanges } from './new-lot.ts';
import {
  findOrder,
  lineRowsLeftOut,
  linesOf,
  mendFirst,
  stateByItsLots,
  tableForReceipt,
} from './order-lines.ts';
import type { OrderReceived, OrderToReceive, ReceivedLot } from './order-to-receive.ts';
import { openDesk, type Refusal, refuse, tableNamed, type WritingDesk } from './writing-desk.ts';

/**
 * Takes in what came of an order: each part of it becomes a lot in the stock table of its material, with what it cost
 * and its share of the carriage. What is still to come stays on order; the State of the order says whether anything is.
 */
export function receiveOrder(
  snapshot: WorkbookSnapshot,
  request: OrderToReceive,
  today: Day,
  random: Random,
): OrderReceived | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  const ordersTable = tableNamed(desk, 'Orders');
  if ('ok' in ordersTable) return ordersTable;
  const { studio } = desk.ledger;
  const order = findOrder(studio, request.order);
  if ('ok' in order) return order;
  const obstacle = obstacleTo(order, request, today);
  if (obstacle !== null) return refuse(obstacle);
  const delivery = workOutDelivery(desk.tables, studio, order, request, today);
  if (!delivery.ok) return delivery;
  const arrival = bringIn(desk, order, delivery, request);
  if ('ok' in arrival) return arrival;

  const { ledger, lots, posting, tables } = arrival;
  const leftOut = lineRowsLeftOut(desk.tables, studio, order);
  const isOpen = isOpenOrder(order);
  const toCome = isOpen ? stillToCome(ledger.studio, linesOf(studio, order), today) : [];
  const state = isOpen ? stateByItsLots(desk.tables, ledger.studio, order, today) : order.state;
  return {
    ok: true,
    posting,
    order,
    state,
    received: request.received,
    lots,
    toCome,
    drawing: { ledger, movements: [], entries: [], shortfalls: [] },
    changes: [
      ...desk.changes,
      ...lots.flatMap(({ lot }, place): Change[] => {
        const table = tables[place];
        return table === undefined ? [] : lotRowChanges(desk, table, ledger, lot);
      }),
      ...setCell(ordersTable, order.place.row, 'State', textCell(state)),
    ],
    remarks: [
      ...deliveryRemarks(desk.ledger.studio, order, delivery, request.carriage !== null, toCome, today),
      ...lots.flatMap(({ lot }) => lotRemarks(ledger, lot, today)),
      ...lots.flatMap(({ lot }, place) => {
        const table = tables[place];
        return table === undefined ? [] : lotNotKept(table, lot);
      }),
      ...(leftOut.length === 0 ? [] : [mendFirst(leftOut)]),
      ...stateNotKept(ordersTable, order, state),
    ],
  };
}

function obstacleTo(order: OrderRecord, { lines, received }: OrderToReceive, today: Day): string | null {
  const name = nameOf(order.order, order);
  if (order.state !== null && keyOf(order.state) === 'cancelled') {
    return `Order ${name} is cancelled: if it came after all, write Ordered into its State first.`;
  }
  if (lines.length === 0) return `Nothing came of order ${name}: name a line, and how many packs of it came.`;
  if (received > today) {
    return `The delivery is dated ${spokenDay(received)}, after today: take it in on the day on which it comes.`;
  }
  if (received < order.orderedOn) {
    return (
      `The delivery is dated ${spokenDay(received)}, and order ${name} was placed on ${spokenDay(order.orderedOn)}: ` +
      `give the day on which it came, or correct Ordered on.`
    );
  }
  return null;
}

interface Arrival {
  readonly ledger: Ledger;
  readonly lots: readonly ReceivedLot[];
  /** The table of each lot. */
  readonly tables: readonly LocatedTable[];
  readonly posting: string | null;
}

/** The lots of a delivery, in the ledger, under one posting. */
function bringIn(
  desk: WritingDesk,
  order: OrderRecord,
  { parts }: Delivery,
  { received, by }: OrderToReceive,
): Arrival | Refusal {
  const { currency } = desk.ledger.studio.settings;
  const tables: LocatedTable[] = [];
  for (const { line } of parts) {
    const table = tableForReceipt(desk, line.material);
    if ('ok' in table) return table;
    tables.push(table);
  }
  const posting = tables.some((table) => table.columns.has('Posting')) ? desk.newIdentifier('P') : null;
  let { ledger } = desk;
  const lots = parts.map((part, place): ReceivedLot => {
    const { line, quantity, goods, carriage, supplierLot, useBy, storedAt } = part;
    const { material, record } = line;
    const fields = {
      received,
      quantity,
      unit: record.unit,
      cost: goods === null ? null : goods + carriage,
      supplier: order.supplier,
      supplierLot,
      useBy,
      storedAt,
      order: order.order,
      orderLine: record.line,
      posting,
      notes: by === null ? null : `received by ${by}`,
    };
    const table = tables[place] ?? { snapshot: { name: '' } };
    const added = withLot(ledger, lotRecordOf(desk, table, material, fields, currency), material, null);
    ({ ledger } = added);
    return { lot: added.lot, line, packs: quantity.div(record.packQuantity), goods, carriage };
  });
  return { ledger, lots, tables, posting };
}

function stateNotKept(table: LocatedTable, order: OrderRecord, state: string | null): string[] {
  const column = table.columns.get('State')?.column;
  if (column !== undefined && !column.hasFormula(order.place.row)) return [];
  const name = nameOf(order.order, order);
  return [
    `The table ${table.snapshot.name} has no State to write into for order ${name}, so that it is ` +
      `“${state ?? ''}” is not kept. What is still to come is told from its lots all the same.`,
  ];
}
