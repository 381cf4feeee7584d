import { addDays, type Day, spokenDay } from '../core/day.ts';
import type { Exact } from '../core/exact-number.ts';
import { groupBy } from '../core/group-by.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import { totalCost } from '../core/lot-account.ts';
import { type Coins, type Currency, moneyText, toCoins } from '../core/money.ts';
import { carriageExpected, valueOfPacks } from '../core/order-value.ts';
import type { OrderLineRecord, SupplierRecord } from '../core/records.ts';
import type { Material, Studio } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import { spokenNumber, unitFor } from '../core/wording.ts';
import { appendRows, dayCell, type NewRow, quantityCell, textCell } from '../workbook/cell-write.ts';
import type { LocatedTable } from '../workbook/located-table.ts';
import type { CellWrite, WorkbookSnapshot } from '../workbook/port.ts';
import { noSuchName } from './nearest-name.ts';
import {
  openDesk,
  type Refusal,
  refuse,
  tableNamed,
  type WritingDesk,
  type Written,
} from './writing-desk.ts';

/** What is to be ordered: one order for each supplier named. */
export interface OrdersToPlace {
  readonly lines: readonly LineToOrder[];
  /** When the order from a supplier should be here; for one that isn't in it, by the lead time. */
  readonly expected: readonly { readonly supplier: string; readonly day: Day | null }[];
  readonly orderedOn: Day;
}

export interface LineToOrder {
  readonly supplier: string;
  readonly material: string;
  /** A whole number above 0. */
  readonly packs: Exact;
  readonly packQuantity: Exact;
  readonly unit: Unit;
  /** In the main unit of the currency; null where it isn't known. */
  readonly packPrice: Exact | null;
}

/** An order as it was written down. */
export interface PlacedOrder {
  readonly order: string;
  readonly supplier: SupplierRecord;
  readonly orderedOn: Day;
  readonly expected: Day | null;
  readonly lines: readonly PlacedLine[];
  /** Null as soon as a pack price isn't known. */
  readonly goods: Coins | null;
  /** What the supplier will probably charge for it; null where the value of the goods isn't known. */
  readonly carriage: Coins | null;
  readonly currency: Currency;
}

export type PlacedLine = Pick<OrderLineRecord, 'packs' | 'packQuantity' | 'unit' | 'packPrice'> & {
  readonly line: string;
  readonly material: Material;
  readonly amount: Coins | null;
};

export type OrdersPlaced = Written & { readonly orders: readonly PlacedOrder[] };

/** Writes orders down, one for each supplier: what was ordered is on its way from then on. */
export function placeOrder(
  snapshot: WorkbookSnapshot,
  request: OrdersToPlace,
  today: Day,
  random: Random,
): OrdersPlaced | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  const ordersTable = tableNamed(desk, 'Orders');
  if ('ok' in ordersTable) return ordersTable;
  const linesTable = tableNamed(desk, 'OrderLines');
  if ('ok' in linesTable) return linesTable;
  const { orderedOn, lines } = request;
  if (lines.length === 0)
    return refuse('There is nothing to order: name a material and how many packs of it.');
  if (orderedOn > today) {
    return refuse(
      `The order is dated ${spokenDay(orderedOn)}, after today: give the day on which it is placed.`,
    );
  }
  const { studio } = desk.ledger;
  const found: FoundLine[] = [];
  for (const line of lines) {
    const each = findLine(studio, line);
    if ('ok' in each) return each;
    found.push(each);
  }
  const orders: PlacedOrder[] = [];
  for (const [supplier, own] of groupBy(found, (line) => line.supplier)) {
    const placed = orderFrom(desk, supplier, own, request);
    if ('ok' in placed) return placed;
    orders.push(placed);
  }
  const heads = orders.map(headRow);
  const rows = orders.flatMap((order) => order.lines.map((line) => lineRow(order, line)));
  return {
    ok: true,
    posting: null,
    orders,
    drawing: { ledger: desk.ledger, movements: [], entries: [], shortfalls: [] },
    changes: [...desk.changes, ...appendRows(ordersTable, heads), ...appendRows(linesTable, rows)],
    remarks: [
      ...orders.flatMap(belowMinimum),
      ...notWritten(ordersTable, heads),
      ...notWritten(linesTable, rows),
    ],
  };
}

interface FoundLine {
  readonly supplier: SupplierRecord;
  readonly ordered: Omit<PlacedLine, 'line'>;
}

/** Finds what a line names, or refuses it saying what would be right. */
function findLine(studio: Studio, line: LineToOrder): FoundLine | Refusal {
  const { packs, packQuantity, unit, packPrice } = line;
  const supplier = studio.suppliersByKey.get(keyOf(line.supplier));
  if (supplier === undefined) {
    const names = studio.suppliers.map((each) => each.supplier ?? '');
    return noSuchName('supplier', line.supplier, 'Suppliers', names);
  }
  const material = studio.materialsByKey.get(keyOf(line.material));
  if (material === undefined) {
    const names = studio.materials.map((each) => each.name);
    return noSuchName('material', line.material, 'Materials', names);
  }
  if (packs.compare(0) <= 0 || packs.d !== 1n) {
    return refuse(
      `${spokenNumber(packs)} packs of ${material.name} can’t be ordered: a whole number of packs above 0 is right.`,
    );
  }
  if (packQuantity.compare(0) <= 0) {
    return refuse(
      `A pack of ${material.name} holds ${spokenNumber(packQuantity)}: a quantity above 0 is right.`,
    );
  }
  if (packPrice !== null && packPrice.compare(0) < 0) {
    return refuse(
      `A pack of ${material.name} costs ${spokenNumber(packPrice)}: a price of 0 or more is right.`,
    );
  }
  if (material.converter.factor(unit, material.unit) === null) {
    const kept = unitFor('2', material.unit);
    return refuse(
      `Nothing says how many ${kept} one ${unit.name} of ${material.name} is: give the pack in ${kept}, ` +
        `or add to Materials the fact that links them.`,
    );
  }
  const amount = valueOfPacks(packs, packPrice, studio.settings.currency);
  return { supplier, ordered: { material, packs, packQuantity, unit, packPrice, amount } };
}

function orderFrom(
  desk: WritingDesk,
  supplier: SupplierRecord,
  lines: readonly FoundLine[],
  { orderedOn, expected: given }: OrdersToPlace,
): PlacedOrder | Refusal {
  const name = supplier.supplier ?? '';
  const { currency } = desk.ledger.studio.settings;
  const lead = supplier.leadTimeDays;
  const byLeadTime = lead === null ? null : addDays(orderedOn, lead.ceil(0).valueOf());
  const said = given.find((each) => keyOf(each.supplier) === keyOf(name));
  const expected = said === undefined ? byLeadTime : said.day;
  if (expected !== null && expected < orderedOn) {
    return refuse(
      `The order from ${name} is expected on ${spokenDay(expected)}, before it is placed on ${spokenDay(orderedOn)}: ` +
        `give a later day, or none.`,
    );
  }
  const goods = totalCost(lines.map(({ ordered }) => ordered.amount));
  return {
    order: desk.newIdentifier('D'),
    supplier,
    orderedOn,
    expected,
    lines: lines.map(({ ordered }) => ({ ...ordered, line: desk.newIdentifier('H') })),
    goods,
    carriage: goods === null ? null : carriageExpected(supplier, goods, currency),
    currency,
  };
}

function headRow({ order, supplier, orderedOn, expected }: PlacedOrder): NewRow {
  return {
    order: textCell(order),
    supplier: textCell(supplier.supplier),
    orderedOn: dayCell(orderedOn),
    expected: dayCell(expected),
    state: textCell('Ordered'),
  };
}

function lineRow({ order }: PlacedOrder, line: PlacedLine): NewRow {
  const { packPrice } = line;
  const price: CellWrite =
    packPrice === null ? { kind: 'blank' } : { kind: 'number', number: packPrice.valueOf() };
  return {
    order: textCell(order),
    line: textCell(line.line),
    material: textCell(line.material.name),
    packs: quantityCell(line.packs),
    packQuantity: quantityCell(line.packQuantity),
    unit: textCell(line.unit.name),
    packPrice: price,
  };
}

function belowMinimum({ supplier, goods, currency }: PlacedOrder): string[] {
  const { minimumOrder } = supplier;
  if (minimumOrder === null || goods === null) return [];
  const least = toCoins(minimumOrder, currency);
  if (goods >= least) return [];
  return [
    `${supplier.supplier ?? ''} delivers from ${moneyText(least, currency)} of goods on, and this order comes to ` +
      `${moneyText(goods, currency)}: ask, or add to it.`,
  ];
}

/** What of new rows a table has no column for, or a formula in it. */
function notWritten(table: LocatedTable, rows: readonly NewRow[]): string[] {
  return Object.entries(table.definition.columns).flatMap(([field, { header }]) => {
    const column = table.columns.get(header)?.column;
    const isFilled = rows.some((row) => row[field] !== undefined && row[field].kind !== 'blank');
    if (!isFilled || (column !== undefined && !column.calculated)) return [];
    const why = column === undefined ? 'has no column' : 'fills by a formula the column';
    return [
      `The table ${table.snapshot.name} ${why} ${header}, so what belongs there of the order is not kept.`,
    ];
  });
}
