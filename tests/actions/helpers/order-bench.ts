import type { LineReceived, OrderToReceive } from '../../../src/actions/order-to-receive.ts';
import type { LineToOrder, OrdersToPlace } from '../../../src/actions/place-order.ts';
import { decimal } from '../../../src/core/exact-number.ts';
import { unitNamed } from '../../../src/core/unit.ts';
import { date, dayOf, type Literal } from '../../helpers/literal.ts';

/** A studio that orders from two suppliers; its figures can be worked out in the head. */

export const TODAY = dayOf('2026-04-03');

export const ORDERING = {
  Materials: [
    {
      Material: 'Tissue 5',
      Description: 'long-fibred,\n 5 g/m2',
      Kind: 'Tissue',
      'Stock unit': 'sheet',
      Supplier: 'Paper mill',
    },
    {
      Material: 'Gelatine',
      Kind: 'Paste',
      'Stock unit': 'g',
      Supplier: 'Paper mill',
      'Life sealed days': 100,
    },
    { Material: 'Ethanol', Kind: 'Buffer', 'Stock unit': 'ml', Supplier: 'Chemist', Hazards: 'H225 H319' },
    { Material: 'Lime', Kind: 'Buffer', 'Stock unit': 'g', Supplier: 'Chemist', Hazards: 'H315' },
    { Material: 'Swab', Kind: 'Sundry', 'Stock unit': 'each', Counted: 'no' },
  ],
  Tissue: [
    { Lot: 'T-1', Material: 'Tissue 5', Received: date('2026-01-10'), Quantity: 2, Unit: 'sheet', Cost: 9 },
  ],
  Paste: [],
  Buffers: [],
  Sundries: [],
  Movements: [],
  TreatmentLog: [],
  Suppliers: [
    {
      Supplier: 'Paper mill',
      'Lead time days': 9.5,
      'Minimum order': 100,
      Carriage: 12,
      'Carriage free over': 150,
    },
    { Supplier: 'Chemist' },
  ],
  Offers: [
    { Supplier: 'Chemist', Material: 'Ethanol', 'Pack quantity': 1, Unit: 'l', 'Pack price': 14.5 },
    { Supplier: 'Paper mill', Material: 'Tissue 5', 'Pack quantity': 10, Unit: 'sheet', 'Pack price': 31 },
  ],
  Orders: [],
  OrderLines: [],
  Places: [{ Place: 'Plan chest' }],
  Settings: [{ Setting: 'currency', Value: 'EUR' }],
} satisfies Literal;

/** So many packs of something from a supplier, written `2 × 10 sheet at 31`. */
export function packs(supplier: string, material: string, text: string): LineToOrder {
  const [, count = '', quantity = '', unit = '', price] =
    /^(\S+) × (\S+) (.+?)(?: at (\S+))?$/.exec(text) ?? [];
  return {
    supplier,
    material,
    packs: decimal(count),
    packQuantity: decimal(quantity),
    unit: unitNamed(unit),
    packPrice: price === undefined ? null : decimal(price),
  };
}

export function orders(lines: readonly LineToOrder[], more: Partial<OrdersToPlace> = {}): OrdersToPlace {
  return { lines, expected: [], orderedOn: dayOf('2026-03-10'), ...more };
}

/** What came of a line: so many packs, a quantity written `5 sheet`, or all that is to come. */
export function came(
  line: string,
  amount: number | string = 'all to come',
  more: Partial<LineReceived> = {},
): LineReceived {
  return {
    line,
    amount: amountOf(amount),
    supplierLot: null,
    useBy: null,
    storedAt: null,
    goods: null,
    ...more,
  };
}

function amountOf(amount: number | string): LineReceived['amount'] {
  if (typeof amount === 'number') return { packs: decimal(String(amount)) };
  if (amount === 'all to come') return amount;
  const [quantity = '', unit = ''] = amount.split(' ');
  return { quantity: decimal(quantity), unit: unitNamed(unit) };
}

/** A delivery of an order; the carriage as decimal text. */
export function delivery(
  order: string,
  lines: readonly LineReceived[],
  { carriage, ...more }: Partial<Omit<OrderToReceive, 'carriage'>> & { readonly carriage?: string } = {},
): OrderToReceive {
  return {
    order,
    lines,
    received: TODAY,
    carriage: carriage === undefined ? null : decimal(carriage),
    by: null,
    ...more,
  };
}
