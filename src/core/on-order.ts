import type { Day } from './day.ts';
import { type Exact, larger, sum, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
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

/** What is on its way of a material on a day: ordered by then, not closed, less the lots that came of it. */
export function expectedOf(studio: Studio, material: Material, today: Day): Expected[] {
  return studio.orderLines
    .filter((line) => line.material === material && isOpen(line) && line.order.orderedOn <= today)
    .map((line) => ({
      line,
      quantity: larger(line.quantity.sub(arrivedOf(studio, line, today)), ZERO),
      day: line.expected,
    }))
    .filter(({ quantity }) => quantity.compare(0) > 0);
}

function isOpen({ order }: OrderLine): boolean {
  return order.state === null || !CLOSED.has(keyOf(order.state));
}

/** What has come of an order line: the lots that name it; a lot that names the order alone counts by its material. */
function arrivedOf(studio: Studio, line: OrderLine, today: Day): Exact {
  const lots = (studio.lotsOfMaterial.get(line.material) ?? []).filter(({ record }) => {
    if (record.order === null || record.received > today) return false;
    if (keyOf(record.order) !== keyOf(line.record.order)) return false;
    if (record.orderLine === null) return isFirstOfMaterial(studio, line);
    return line.record.line !== null && keyOf(record.orderLine) === keyOf(line.record.line);
  });
  return sum(
    lots.map((lot) => {
      const factor = lot.converter.factor(lot.record.unit, line.material.unit);
      return factor === null ? ZERO : lot.record.quantity.mul(factor);
    }),
  );
}

/** So that a lot without a line is taken off one line only. */
function isFirstOfMaterial(studio: Studio, line: OrderLine): boolean {
  return (
    studio.orderLines.find((other) => other.order === line.order && other.material === line.material) === line
  );
}
