import { type Day, spokenDay } from '../core/day.ts';
import { type Exact, ratio, roundHalfAway, roundQuantity, sum, ZERO } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { lifeLimitsOn } from '../core/life.ts';
import { totalCost } from '../core/lot-account.ts';
import { moneyText } from '../core/money.ts';
import { arrivedOf, type Expected, inLineUnit } from '../core/on-order.ts';
import { carriageExpected, valueOfDelivery, valueOfPacks } from '../core/order-value.ts';
import { nameOf, type OrderRecord } from '../core/records.ts';
import type { Lot, OrderLine, Studio } from '../core/studio.ts';
import { type DeliveredPart, type Delivery, spokenPart } from './delivery.ts';
import { linesOf } from './order-lines.ts';

/**
 * What a person should know of a delivery besides: more than was ordered, no price, carriage that is in no cost.
 * @param studio before the delivery
 * @param isCarriageSaid whether the person said what carriage was charged, be it nothing
 */
export function deliveryRemarks(
  studio: Studio,
  order: OrderRecord,
  delivery: Delivery,
  isCarriageSaid: boolean,
  toCome: readonly Expected[],
  today: Day,
): string[] {
  return [
    ...overOrdered(delivery.parts),
    ...unpriced(delivery),
    ...(isCarriageSaid ? ofCarriage(studio, delivery, toCome) : carriageUnsaid(studio, order, today)),
  ];
}

function overOrdered(parts: readonly DeliveredPart[]): string[] {
  return [...new Set(parts.map(({ line }) => line))].flatMap((line) => {
    const over = roundQuantity(sum(parts.flatMap((part) => (part.line === line ? [part.over] : []))));
    if (over.compare(0) <= 0) return [];
    return [
      `More came than was still to come: ${spokenPart({ line, quantity: over })} over. All of it is taken in.`,
    ];
  });
}

function unpriced({ parts, carriage }: Delivery): string[] {
  const without = parts.filter(({ goods }) => goods === null);
  if (without.length === 0) return [];
  const list = new Intl.ListFormat('en-GB').format(without.map(spokenPart));
  const others =
    carriage > 0n && without.length < parts.length ? ' The carriage is in the cost of the others.' : '';
  return [`Nothing says what a pack costs, so Cost stays blank for ${list}: fill it in.${others}`];
}

function ofCarriage(
  { settings: { currency } }: Studio,
  delivery: Delivery,
  toCome: readonly Expected[],
): string[] {
  const { carriage, isCarriageShared, parts } = delivery;
  if (carriage === 0n) return [];
  const amount = moneyText(carriage, currency);
  if (!isCarriageShared) {
    return [
      `The carriage of ${amount} is in no lot’s cost, as nothing that came has a price by which it could be shared: ` +
        `add it to Cost by hand.`,
    ];
  }
  if (toCome.length === 0) return [];
  const now = totalCost(parts.map(({ goods }) => goods));
  const later = totalCost(
    toCome.map(({ line, quantity }) =>
      valueOfDelivery(line.record, ZERO, inLineUnit(line, quantity), currency),
    ),
  );
  const part =
    now === null || later === null || now + later === 0n
      ? 'the part of it that belongs to what came'
      : `${moneyText(roundHalfAway(ratio(carriage * now, now + later)), currency)}, the part of what came by its value`;
  return [
    `All of the carriage of ${amount} is in the cost of what came, and nothing of it in what is still to come. ` +
      `If it was charged for the whole order, take this back and give ${part}.`,
  ];
}

/** A remark where the supplier charges for carriage and nobody says what it was; once for an order. */
function carriageUnsaid(studio: Studio, order: OrderRecord, today: Day): string[] {
  const supplier = studio.suppliersByKey.get(keyOf(order.supplier));
  const lines = linesOf(studio, order);
  const isFirst = lines.every((line) => hasComeOf(studio, line, today).equals(0));
  const { currency } = studio.settings;
  const goods = totalCost(lines.map(({ record }) => valueOfPacks(record.packs, record.packPrice, currency)));
  if (supplier === undefined || !isFirst) return [];
  const usual = carriageExpected(supplier, goods ?? 0n, currency);
  if (usual === 0n) return [];
  return [
    `Nobody said what carriage was charged, so none is in the cost; by Suppliers ${order.supplier} charges ` +
      `${moneyText(usual, currency)} for order ${nameOf(order.order, order)}.`,
  ];
}

function hasComeOf(studio: Studio, line: OrderLine, today: Day): Exact {
  const { line: named } = line.record;
  const alone = arrivedOf(studio, line, null, today);
  return named === null ? alone : alone.add(arrivedOf(studio, line, named, today));
}

/** What a person should know of a lot that came in: it has gone off already, or is not counted. */
export function lotRemarks(ledger: Ledger, lot: Lot, today: Day): string[] {
  const limit = lifeLimitsOn(accountIn(ledger, lot), today)[0];
  const { material } = lot;
  return [
    ...(limit !== undefined && limit.day < today
      ? [
          `Lot ${lot.name} (${material.name}) was good until ${spokenDay(limit.day)} (${limit.reason}): nothing is drawn from it by itself.`,
        ]
      : []),
    ...(material.counted
      ? []
      : [
          `${material.name} is not counted: lot ${lot.name} says that it came, and nothing is drawn from it.`,
        ]),
  ];
}
