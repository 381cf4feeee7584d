import type { Day } from '../core/day.ts';
import type { Exact } from '../core/exact-number.ts';
import type { Coins } from '../core/money.ts';
import type { Expected } from '../core/on-order.ts';
import type { OrderRecord } from '../core/records.ts';
import type { Lot, OrderLine } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import type { Written } from './writing-desk.ts';

/** What came of an order, all of it or a part. Each entry of `lines` becomes a lot. */
export interface OrderToReceive {
  readonly order: string;
  readonly lines: readonly LineReceived[];
  readonly received: Day;
  /** What was charged for bringing this delivery, in the main unit of the currency; null where nobody says. */
  readonly carriage: Exact | null;
  readonly by: string | null;
}

/** What came of one order line with one supplier’s lot and date; a line may stand in several. */
export interface LineReceived {
  /** The identifier of the line within its order, or the name of its material. */
  readonly line: string;
  readonly amount: AmountReceived;
  readonly supplierLot: string | null;
  readonly useBy: Day | null;
  readonly storedAt: string | null;
  /** What it cost without carriage, in the main unit of the currency; null for what the order’s pack price gives. */
  readonly goods: Exact | null;
}

/** So many packs of the line, a quantity in a unit that leads to the line’s, or whatever of it is still to come. */
export type AmountReceived =
  | { readonly packs: Exact }
  | { readonly quantity: Exact; readonly unit: Unit }
  | 'all to come';

/** A lot that came in. */
export interface ReceivedLot {
  readonly lot: Lot;
  readonly line: OrderLine;
  /** How many packs of its line it is. */
  readonly packs: Exact;
  /** What it cost without carriage; null where that isn't known. */
  readonly goods: Coins | null;
  /** Its share of the carriage. */
  readonly carriage: Coins;
}

export type OrderReceived = Written & {
  readonly order: OrderRecord;
  /** What the State of the order says now. */
  readonly state: string | null;
  readonly received: Day;
  readonly lots: readonly ReceivedLot[];
  /** What is still to come of it. */
  readonly toCome: readonly Expected[];
};
