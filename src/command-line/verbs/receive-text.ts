import { CANCELLED, type OrderCancelled } from '../../actions/cancel-order.ts';
import type { RestOfOrder } from '../../actions/order-lines.ts';
import type { OrderReceived, ReceivedLot } from '../../actions/order-to-receive.ts';
import { type Day, spokenDay } from '../../core/day.ts';
import { accountIn } from '../../core/ledger.ts';
import { totalCost } from '../../core/lot-account.ts';
import { moneyText } from '../../core/money.ts';
import { type Expected, inLineUnit } from '../../core/on-order.ts';
import type { OpenOrder } from '../../core/open-orders.ts';
import { nameOf, type OrderRecord } from '../../core/records.ts';
import { lotFigures } from '../../core/stock.ts';
import { counted, spokenNumber, spokenQuantity, unitFor } from '../../core/wording.ts';
import { inCurrency, spokenMoney } from '../check-text.ts';
import { deedLines } from '../lot-words.ts';
import { heading, type Terminal, wrapped } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const COMING_COLUMNS: readonly TextColumn[] = [
  { header: 'line', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'still to come', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'packs', align: 'right' },
];

const LOT_COLUMNS: readonly TextColumn[] = [
  { header: 'lot', align: 'left' },
  { header: 'material', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'goods', align: 'right' },
  { header: 'carriage', align: 'right' },
  { header: 'cost', align: 'right' },
  { header: 'good until', align: 'left' },
  { header: 'place', align: 'left' },
];

/** What is on its way, order by order. */
export function onItsWayText(orders: readonly OpenOrder[], today: Day, terminal: Terminal): string[] {
  if (orders.length === 0) return ['Nothing is on its way: no order is open.'];
  return orders.flatMap((open, place) => [
    ...(place === 0 ? [] : ['']),
    heading(`Order ${orderName(open.order)}, ${open.order.supplier}`, terminal),
    ...wrapped(whenText(open, today), terminal.width, 0),
    ...(open.toCome.length === 0
      ? []
      : ['', ...textTable(COMING_COLUMNS, open.toCome.map(comingRow), terminal.width)]),
  ]);
}

function whenText({ order, toCome, expected, daysLate }: OpenOrder, today: Day): string {
  const ordered = `Ordered on ${spokenDay(order.orderedOn)}`;
  if (toCome.length === 0) {
    return `${ordered}. As far as its lines can be worked out, nothing is still to come: write Received into its State.`;
  }
  if (expected === null) return `${ordered}; nobody says when it should be here.`;
  const by = order.expected === null ? ', by the lead time' : '';
  const late = daysLate > 0 ? `: ${counted(daysLate, 'day')} late` : expected === today ? ': today' : '';
  return `${ordered}, expected on ${spokenDay(expected)}${by}${late}.`;
}

function comingRow({ line, quantity }: Expected): string[] {
  const { record, material } = line;
  const left = inLineUnit(line, quantity);
  const number = spokenNumber(left);
  const packs = `${spokenNumber(left.div(record.packQuantity))} × ${spokenNumber(record.packQuantity)}`;
  return [record.line ?? '', material.name, number, unitFor(number, record.unit), packs];
}

/** What came of an order, lot by lot, with what it cost, and what is still to come. */
export function receivedText(
  received: OrderReceived,
  leftOut: RestOfOrder['leftOut'],
  today: Day,
  terminal: Terminal,
): string[] {
  const { order, lots, drawing } = received;
  const { currency } = drawing.ledger.studio.settings;
  const title = `Order ${orderName(order)} of ${order.supplier}, received on ${spokenDay(received.received)}`;
  const carriage = lots.reduce((sum, each) => sum + each.carriage, 0n);
  const known = totalCost(lots.flatMap(({ goods }) => goods ?? [])) ?? 0n;
  const unknown = lots.filter(({ goods }) => goods === null).length;
  const missing = unknown === 0 ? '' : `, and ${counted(unknown, 'lot')} without a cost`;
  const remarks = [...received.remarks, ...leftOut.map(({ why }) => `Not received: ${why}`)];
  return [
    heading(`${title}${inCurrency(currency)}`, terminal),
    '',
    ...textTable(
      LOT_COLUMNS,
      lots.map((each) => lotRow(each, received, today)),
      terminal.width,
    ),
    '',
    `In all ${moneyText(known + carriage, currency)}, ${moneyText(carriage, currency)} of it carriage${missing}.`,
    ...deedLines([stillToComeText(received)], { posting: received.posting, remarks }, terminal),
  ];
}

function lotRow({ lot, goods, carriage }: ReceivedLot, { drawing }: OrderReceived, today: Day): string[] {
  const { record, material } = lot;
  const { currency } = drawing.ledger.studio.settings;
  const { goodUntil } = lotFigures(accountIn(drawing.ledger, lot), today);
  const number = spokenNumber(record.quantity);
  return [
    lot.name,
    material.name,
    number,
    unitFor(number, record.unit),
    spokenMoney(goods, currency),
    moneyText(carriage, currency),
    spokenMoney(goods === null ? null : goods + carriage, currency),
    goodUntil === null ? '' : spokenDay(goodUntil),
    record.storedAt ?? '',
  ];
}

/** An order of which nothing more will come, and what of it is not on order any more. */
export function cancelledText(cancelled: OrderCancelled, terminal: Terminal): string[] {
  const { order, notComing, remarks } = cancelled;
  const rest = notComing.length === 0 ? '' : ` Not on order any more: ${expectedWords(notComing)}.`;
  return [
    heading(`Order ${orderName(order)} of ${order.supplier} is cancelled`, terminal),
    ...deedLines([`Its State is ${CANCELLED}.${rest}`], { posting: null, remarks }, terminal),
  ];
}

function stillToComeText({ order, state, toCome }: OrderReceived): string {
  const says = state === null ? '' : ` Its State is ${state}.`;
  return toCome.length === 0
    ? `Nothing is still to come of order ${orderName(order)}.${says}`
    : `Still to come: ${expectedWords(toCome)}.${says}`;
}

/** Quantities in the lines' own units: 10 sheets of kozo tissue and 2 kg of wheat starch. */
function expectedWords(expected: readonly Expected[]): string {
  const list = expected.map(
    ({ line, quantity }) =>
      `${spokenQuantity(inLineUnit(line, quantity), line.record.unit)} of ${line.material.name}`,
  );
  return new Intl.ListFormat('en-GB').format(list);
}

function orderName(order: OrderRecord): string {
  return nameOf(order.order, order);
}
