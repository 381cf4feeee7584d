import type { Day } from './day.ts';
import { type Exact, larger, roundQuantity, sum, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import { keyWithin } from './identities.ts';
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

/** Whether something may still come of an order: its State says neither Received nor Cancelled. */
export function isOpenOrder({ state }: OrderRecord): boolean {
  return state === null || !CLOSED.has(keyOf(state));
}

/** What is on its way of a material on a day: ordered by then, not closed, less the lots that came of it. */
export function expectedOf(studio: Studio, material: Material, today: Day): Expected[] {
  const lines = studio.orderLines.filter(
    (line) => line.material === material && isOpenOrder(line.order) && line.order.orderedOn <= today,
  );
  return stillToCome(studio, lines, today);
}

/**
 * What is still to come of order lines on a day, whatever the State of their orders. A lot names its order line, or
 * the order alone: then it comes off the lines for its material, one after the other.
 * @param lines of an order and a material all of them, or none
 * @returns the lines of which something is still to come
 */
export function stillToCome(studio: Studio, lines: readonly OrderLine[], today: Day): Expected[] {
  const unassigned = new Map<string, Exact>();
  return lines
    .map((line) => {
      const key = keyWithin(line.record.order, line.material.name);
      const ofLine = line.record.line === null ? ZERO : arrivedOf(studio, line, line.record.line, today);
      const open = larger(line.quantity.sub(ofLine), ZERO);
      const spare = unassigned.get(key) ?? arrivedOf(studio, line, null, today);
      const quantity = larger(open.sub(spare), ZERO);
      unassigned.set(key, spare.sub(open.sub(quantity)));
      return { line, quantity, day: line.expected };
    })
    .filter(({ line, quantity }) => roundQuantity(inLineUnit(line, quantity)).compare(0) > 0);
}

/** A quantity of an order line in the line's own unit. */
export function inLineUnit({ record, quantity: ordered }: OrderLine, quantity: Exact): Exact {
  return quantity.mul(record.packs).mul(record.packQuantity).div(ordered);
}

/**
 * What has come of an order for the material of a line, in its stock unit: the lots that name this line of it, or
 * with null those that name none.
 */
export function arrivedOf(studio: Studio, line: OrderLine, named: string | null, today: Day): Exact {
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
