import { CANCELLED, type OrderCancelled } from '../../actions/cancel-order.ts';
import type { PlacedNotice } from '../../actions/check-workbook.ts';
import type { RestOfOrder } from '../../actions/order-lines.ts';
import type { OrderReceived, ReceivedLot } from '../../actions/order-to-receive.ts';
import { type Day, isoDay } from '../../core/day.ts';
import { quantityNumber } from '../../core/exact-number.ts';
import { accountIn } from '../../core/ledger.ts';
import { totalCost } from '../../core/lot-account.ts';
import { type Currency, toCoins } from '../../core/money.ts';
import { type Expected, inLineUnit } from '../../core/on-order.ts';
import type { OpenOrder } from '../../core/open-orders.ts';
import { lotFigures } from '../../core/stock.ts';
import type { Studio } from '../../core/studio.ts';
import { currencyCode, day, money, noticesJson, writtenJson } from '../answers-json.ts';

/** What is on its way, as other programs read it. */
export function onItsWayJson(
  orders: readonly OpenOrder[],
  { settings }: Studio,
  today: Day,
  notices: readonly PlacedNotice[],
) {
  const { currency } = settings;
  return {
    asOf: isoDay(today),
    currency: currencyCode(currency),
    orders: orders.map(({ order, toCome, expected, daysLate }) => ({
      order: order.order,
      supplier: order.supplier,
      orderedOn: isoDay(order.orderedOn),
      expected: day(expected),
      daysLate,
      state: order.state,
      toCome: toCome.map((each) => toComeJson(each, currency)),
    })),
    notices: noticesJson(notices),
  };
}

/** What is still to come of a line, in the line's unit and in packs. */
function toComeJson({ line, quantity, day: expected }: Expected, currency: Currency) {
  const { record, material } = line;
  const left = inLineUnit(line, quantity);
  const { packPrice } = record;
  return {
    line: record.line,
    material: material.name,
    packs: quantityNumber(left.div(record.packQuantity)),
    packQuantity: quantityNumber(record.packQuantity),
    quantity: quantityNumber(left),
    unit: record.unit.name,
    packPrice: packPrice === null ? null : money(toCoins(packPrice, currency), currency),
    expected: day(expected),
  };
}

/** What came of an order, as other programs read it. */
export function receivedJson(
  received: OrderReceived,
  leftOut: RestOfOrder['leftOut'],
  today: Day,
  notices: readonly PlacedNotice[],
) {
  const { order, state, lots, toCome, drawing, remarks } = received;
  const { currency } = drawing.ledger.studio.settings;
  const goods = totalCost(lots.map((each) => each.goods));
  const carriage = lots.reduce((sum, each) => sum + each.carriage, 0n);
  return {
    order: order.order,
    supplier: order.supplier,
    state,
    received: isoDay(received.received),
    currency: currencyCode(currency),
    lots: lots.map((each) => lotJson(each, received, today)),
    goods: money(goods, currency),
    carriage: money(carriage, currency),
    cost: money(goods === null ? null : goods + carriage, currency),
    toCome: toCome.map((each) => toComeJson(each, currency)),
    notReceived: leftOut,
    remarks,
    ...writtenJson(received, notices),
  };
}

/** An order of which nothing more will come, as other programs read it. */
export function cancelledJson(cancelled: OrderCancelled, notices: readonly PlacedNotice[]) {
  const { order, notComing, drawing, remarks } = cancelled;
  const { currency } = drawing.ledger.studio.settings;
  return {
    order: order.order,
    supplier: order.supplier,
    state: CANCELLED,
    currency: currencyCode(currency),
    notComing: notComing.map((each) => toComeJson(each, currency)),
    remarks,
    ...writtenJson(cancelled, notices),
  };
}

function lotJson({ lot, line, packs, goods, carriage }: ReceivedLot, { drawing }: OrderReceived, today: Day) {
  const { record, material } = lot;
  const { currency } = drawing.ledger.studio.settings;
  return {
    lot: record.lot,
    line: line.record.line,
    material: material.name,
    table: record.place.table,
    packs: quantityNumber(packs),
    quantity: quantityNumber(record.quantity),
    unit: record.unit.name,
    goods: money(goods, currency),
    carriage: money(carriage, currency),
    cost: money(goods === null ? null : goods + carriage, currency),
    supplierLot: record.supplierLot,
    useBy: day(record.useBy),
    goodUntil: day(lotFigures(accountIn(drawing.ledger, lot), today).goodUntil),
    place: record.storedAt,
  };
}
