import type { Day } from './day.ts';
import { type Exact, larger, sum, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import type { OrderRecord } from './records.ts';
import type { Material, OrderLine, Studio } from './studio.ts';

const CLOSED: ReadonlySet<string> = new Set(['received', 'cancelled']);

/** An order line that is still on its way. */
export interface Expected {
  readonly line: OrderLine;
  /** What is still to come, in the material's stock unit. */
  readonly quantity: Exact;
  /** The day on which it should be here; null where nobody knows. */
  readonly day: Day | null;
}

/**
 * What is on its way of a material on a day: ordered by then, not closed, less the lots that came of it. A lot names
 * its order line, or the order alone: then it comes off the lines for its material, one after the other.
 */
export function expectedOf(studio: Studio, material: Material, today: Day): Expected[] {
  const unassigned = new Map<OrderRecord, Exact>();
  return studio.orderLines
    .filter((line) => line.material === material && isOpen(line) && line.order.orderedOn <= today)
    .map((line) => {
      const { order } = line;
      const ofLine = line.record.line === null ? ZERO : arrivedOf(studio, line, line.record.line, today);
      const open = larger(line.quantity.sub(ofLine), ZERO);
      const spare = unassigned.get(order) ?? arrivedOf(studio, line, null, today);
      const quantity = larger(open.sub(spare), ZERO);
      unassigned.set(order, spare.sub(open.sub(quantity)));
      return { line, quantity, day: line.expected };
    })
    .filter(({ quantity }) => quantity.compare(0) > 0);
}

function isOpen({ order }: OrderLine): boolean {
  return order.state === null || !CLOSED.has(keyOf(order.state));
}

/**
 * What has come of an order for the material of a line, in its stock unit: the lots that name this line of it, or
 * with null those that name none.
 */
function arrivedOf(studio: Studio, line: OrderLine, named: string | null, today: Day): Exact {
  const lots = (studio.lotsOfMaterial.get(line.material) ?? []).filter(
    ({ record }) =>
      record.order !== null &&
      keyOf(record.order) === keyOf(line.record.order) &&
      record.received <= today &&
      (record.orderLine === null
        ? named === null
        : named !== null && keyOf(record.orderLine) === keyOf(named)),
  );
  return sum(
    lots.map((lot) => {
      const factor = lot.converter.factor(lot.record.unit, line.material.unit);
      return factor === null ? ZERO : lot.record.quantity.mul(factor);
    }),
  );
}
