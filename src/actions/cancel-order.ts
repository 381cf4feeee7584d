import type { Day } from '../core/day.ts';
import type { Random } from '../core/identifier.ts';
import { type Expected, isOpenOrder, stillToCome } from '../core/on-order.ts';
import { stateByArrivals } from '../core/order-state.ts';
import { nameOf, type OrderRecord } from '../core/records.ts';
import { setCell, textCell } from '../workbook/cell-write.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { findOrder, lineRowsLeftOut, linesOf, mendFirst } from './order-lines.ts';
import { openDesk, type Refusal, refuse, tableNamed, type Written } from './writing-desk.ts';

/** The State of an order of which nothing more will come. */
export const CANCELLED = 'Cancelled';

export type OrderCancelled = Written & {
  readonly order: OrderRecord;
  /** What was still to come and will not. */
  readonly notComing: readonly Expected[];
};

/**
 * Closes an order of which nothing more will come: a mistake, or what the supplier can't deliver. What has come stays;
 * the rest is not on order any more. Refused where the order is closed already, or nothing of it is still to come.
 */
export function cancelOrder(
  snapshot: WorkbookSnapshot,
  name: string,
  today: Day,
  random: Random,
): OrderCancelled | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  const table = tableNamed(desk, 'Orders');
  if ('ok' in table) return table;
  const { studio } = desk.ledger;
  const order = findOrder(studio, name);
  if ('ok' in order) return order;
  const called = nameOf(order.order, order);
  const leftOut = lineRowsLeftOut(desk.tables, studio, order);
  const lines = linesOf(studio, order);
  const notComing = stillToCome(studio, lines, today);
  if (!isOpenOrder(order)) {
    return refuse(`Nothing is still to come of order ${called}: its State is ${order.state ?? ''}.`);
  }
  if (lines.length > 0 && notComing.length === 0 && leftOut.length === 0) {
    return refuse(`All of order ${called} has come: write Received into its State.`);
  }
  const obstacle = stateObstacle(table, order);
  if (obstacle !== null) return refuse(obstacle);
  const hasArrivals = stateByArrivals(studio, order, today) !== 'Ordered';
  return {
    ok: true,
    posting: null,
    order,
    notComing,
    drawing: { ledger: desk.ledger, movements: [], entries: [], shortfalls: [] },
    changes: [...desk.changes, ...setCell(table, order.place.row, 'State', textCell(CANCELLED))],
    remarks: [
      ...(hasArrivals ? [`What has come of order ${called} stays in stock.`] : []),
      ...(leftOut.length === 0 ? [] : [mendFirst(leftOut)]),
      `To have it on order again, write Ordered into the State of order ${called}.`,
    ],
  };
}

function stateObstacle(table: LocatedTable, order: OrderRecord): string | null {
  const column = table.columns.get('State')?.column;
  const { name } = table.snapshot;
  if (column === undefined) {
    return `The table ${name} has no column State, without which the order would stay on its way: add the column State to the table.`;
  }
  return column.hasFormula(order.place.row)
    ? `A formula fills the State of order ${nameOf(order.order, order)} in the table ${name}, which must be written: delete the formula from that cell.`
    : null;
}
