import { shareOut } from '../core/carriage-share.ts';
import type { Day } from '../core/day.ts';
import { type Exact, roundQuantity, ZERO } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { type Coins, type Currency, fromCoins, toCoins } from '../core/money.ts';
import { arrivedOf, inLineUnit, isOpenOrder, stillToCome } from '../core/on-order.ts';
import { valueOfDelivery } from '../core/order-value.ts';
import type { OrderRecord } from '../core/records.ts';
import type { OrderLine, Studio } from '../core/studio.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../core/wording.ts';
import type { Tables } from '../workbook/written-cells.ts';
import { noSuchName } from './nearest-name.ts';
import { findOrderLine, lineName, linesOf } from './order-lines.ts';
import type { LineReceived, OrderToReceive } from './order-to-receive.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** What came, worked out before it is written: one entry for each lot. */
export interface Delivery {
  readonly ok: true;
  readonly parts: readonly DeliveredPart[];
  /** What was charged for carriage; 0 where nobody says. */
  readonly carriage: Coins;
  /** Whether the carriage is in the costs of the lots; not where nothing has a value to share it by. */
  readonly isCarriageShared: boolean;
}

export interface DeliveredPart {
  readonly line: OrderLine;
  /** In the line's unit, to 6 decimals. */
  readonly quantity: Exact;
  /** How much of it is more than was still to come, in the line's unit. */
  readonly over: Exact;
  /** What it cost without carriage; null where nothing says. */
  readonly goods: Coins | null;
  readonly carriage: Coins;
  readonly supplierLot: string | null;
  readonly useBy: Day | null;
  readonly storedAt: string | null;
}

/** Works a delivery out: which lines, how much of each, what each cost with its share of the carriage. */
export function workOutDelivery(
  tables: Tables,
  studio: Studio,
  order: OrderRecord,
  { lines, carriage: charged }: Pick<OrderToReceive, 'lines' | 'carriage'>,
  today: Day,
): Delivery | Refusal {
  const { currency } = studio.settings;
  const carriage = charged === null ? 0n : coinsOf(charged, 'The carriage', currency);
  if (typeof carriage !== 'bigint') return carriage;
  const open = isOpenOrder(order) ? stillToCome(studio, linesOf(studio, order), today) : [];
  const toCome = new Map(open.map(({ line, quantity }) => [line, inLineUnit(line, quantity)]));
  const arrived = new Map<OrderLine, Exact>();
  const parts: Omit<DeliveredPart, 'carriage'>[] = [];
  for (const received of lines) {
    const line = findOrderLine(tables, studio, order, received.line);
    if ('ok' in line) return line;
    const rest = toCome.get(line) ?? ZERO;
    const quantity = quantityOf(line, received, rest);
    if ('ok' in quantity) return quantity;
    const place = placeOf(studio, received.storedAt);
    if (place !== null && typeof place !== 'string') return place;
    const before = arrived.get(line) ?? inLineUnit(line, arrivedOf(studio, line, line.record.line, today));
    const goods =
      received.goods === null
        ? valueOfDelivery(line.record, before, quantity, currency)
        : coinsOf(received.goods, `What ${line.material.name} cost`, currency);
    if (goods !== null && typeof goods !== 'bigint') return goods;
    const after = rest.sub(quantity);
    const over = after.compare(0) < 0 ? after.neg() : ZERO;
    toCome.set(line, after.add(over));
    arrived.set(line, before.add(quantity));
    const { supplierLot, useBy } = received;
    parts.push({ line, quantity, over, goods, supplierLot, useBy, storedAt: place });
  }
  const shares = shareOut(
    carriage,
    parts.map(({ goods }) => goods ?? 0n),
  );
  return {
    ok: true,
    carriage,
    isCarriageShared: shares !== null,
    parts: parts.map((part, place) => ({ ...part, carriage: shares?.[place] ?? 0n })),
  };
}

/** How much came of a line, in its unit. */
function quantityOf(line: OrderLine, { amount }: LineReceived, rest: Exact): Exact | Refusal {
  const { record, material } = line;
  const name = `line ${lineName(line)} (${material.name})`;
  if (amount === 'all to come') {
    const quantity = roundQuantity(rest);
    return quantity.compare(0) > 0
      ? quantity
      : refuse(`Nothing is still to come of ${name}: give how many packs came, if more did.`);
  }
  const factor =
    'packs' in amount ? record.packQuantity : material.converter.factor(amount.unit, record.unit);
  if (factor === null) {
    const kept = unitFor('2', record.unit);
    const given = 'packs' in amount ? '' : amount.unit.name;
    return refuse(
      `Nothing says how many ${kept} one ${given} of ${material.name} is: give what came in ${kept} or in packs.`,
    );
  }
  const quantity = roundQuantity(('packs' in amount ? amount.packs : amount.quantity).mul(factor));
  return quantity.compare(0) > 0
    ? quantity
    : refuse(`What came of ${name} must be more than 0, to 6 decimals.`);
}

function placeOf({ placesByKey, places }: Studio, named: string | null): string | null | Refusal {
  if (named === null) return null;
  const known = placesByKey.get(keyOf(named))?.storage;
  const names = places.map(({ storage }) => storage ?? '');
  return known ?? noSuchName('place', named, 'Places', names);
}

/** An amount of money as it was typed, in coins; what no coin pays is refused. */
function coinsOf(amount: Exact, what: string, currency: Currency): Coins | Refusal {
  const coins = toCoins(amount, currency);
  if (coins >= 0n && fromCoins(coins, currency).equals(amount)) return coins;
  return refuse(
    `${what} is given as ${spokenNumber(amount)}: an amount of 0 or more with at most ${currency.decimals} decimals is right.`,
  );
}

/** What came of a line, for people: 10 sheets of kozo tissue. */
export function spokenPart({ line, quantity }: Pick<DeliveredPart, 'line' | 'quantity'>): string {
  return `${spokenQuantity(quantity, line.record.unit)} of ${line.material.name}`;
}
