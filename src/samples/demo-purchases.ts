import type { orderLinesTable, ordersTable } from '../workbook/tables-trade.ts';
import { DEMO_OFFERS, materialNamed } from './demo-materials.ts';
import type { SampleRow } from './sample-table.ts';

/** What came in: one row of figures a delivery, each of one or more lots of a material. */

/** What a lot is in the story that the workbook tells, so that the history can find it. */
export type LotRole =
  | 'overdrawn jar'
  | 'worn release paper'
  | 'nearly used tissue'
  | 'spilt eraser'
  | 'miscounted tissue'
  | 'lot set aside'
  | 'discarded lot';

export interface Purchase {
  readonly material: string;
  readonly received: string;
  readonly quantity: number;
  readonly unit: string;
  readonly cost: number;
  readonly role?: LotRole;
  readonly more?: Readonly<Record<string, string | number>>;
}

type Delivery = readonly [
  received: string,
  quantity: number,
  lots: number,
  role?: LotRole | null,
  more?: Readonly<Record<string, string | number>>,
];

const DELIVERIES: Readonly<Record<string, readonly Delivery[]>> = {
  'kozo tissue 3.5 g': [['2025-09-02', 5, 1]],
  'kozo tissue 5 g': [
    [
      '2025-09-02',
      1,
      1,
      'nearly used tissue',
      { sheetWidth: 54, sheetHeight: 66, notes: 'A smaller sheet than usual.' },
    ],
    ['2026-05-18', 5, 1],
  ],
  'kozo tissue 9 g': [['2025-09-02', 5, 1, 'miscounted tissue']],
  'kozo paper 20 g': [
    ['2025-09-02', 5, 1],
    [
      '2026-06-08',
      5,
      1,
      'lot set aside',
      { state: 'Set aside', stateSince: '2026-08-03', notes: 'Foxed along one edge: ask the supplier.' },
    ],
  ],
  'infill paper 80 g': [['2025-09-02', 10, 1]],
  'toned tissue 5 g': [['2026-02-11', 2, 1]],
  'wheat starch': [['2025-09-03', 500, 1]],
  'methylcellulose powder': [['2025-09-03', 250, 1]],
  gelatine: [
    ['2025-09-08', 50, 1, 'overdrawn jar', { tare: 112.4 }],
    ['2026-09-21', 50, 1],
  ],
  'calcium hydroxide': [['2026-03-16', 100, 1]],
  'magnesium hydroxide': [
    ['2026-01-07', 250, 1],
    ['2025-09-08', 100, 1],
  ],
  ethanol: [
    ['2025-09-08', 1000, 1],
    ['2026-04-20', 1000, 1],
  ],
  'pH buffer 7.00': [
    ['2025-09-08', 100, 3, null, { useBy: '2027-08-31' }],
    ['2026-04-20', 100, 3, null, { useBy: '2028-02-29' }],
  ],
  'pH buffer 10.01': [
    ['2025-09-08', 100, 5, null, { useBy: '2027-05-31' }],
    ['2026-01-26', 100, 5, null, { useBy: '2027-12-31' }],
    ['2026-06-29', 100, 4, null, { useBy: '2028-05-31' }],
  ],
  'silicone release paper': [
    ['2025-09-05', 2, 1, 'worn release paper'],
    ['2026-09-28', 10, 1],
  ],
  'polyester web': [['2025-09-05', 10, 1]],
  'casting film': [['2025-09-05', 5, 1]],
  blotter: [
    ['2025-09-05', 25, 1],
    ['2026-05-04', 25, 1],
  ],
  'wool felt': [['2025-09-04', 2, 1]],
  'polyester film 75 µm': [['2025-09-05', 5, 1]],
  'alkaline board': [['2025-09-05', 10, 1]],
  'alkaline folder': [['2025-09-05', 75, 1]],
  'clear corner': [['2025-11-10', 100, 1]],
  'rubber sponge': [
    [
      '2025-09-04',
      5,
      1,
      'discarded lot',
      { state: 'Discarded', stateSince: '2026-04-30', notes: 'Gone hard and crumbling.' },
    ],
    ['2026-04-27', 10, 1],
  ],
  'grated eraser': [
    ['2025-09-04', 300, 1, 'spilt eraser'],
    ['2026-11-12', 250, 1],
  ],
  'stainless staple': [['2025-09-04', 1000, 1]],
  'linen thread': [['2025-09-04', 100, 1]],
  'cotton tape': [['2025-09-04', 2, 1]],
};

/** Of the usual supplier's offer without a minimum, in proportion. */
function costOf(material: string, quantity: number, unit: string): number {
  const offer = DEMO_OFFERS.find((each) => each.material === material);
  const pack = Number(offer?.packQuantity) * (offer?.unit === 'l' && unit === 'ml' ? 1000 : 1);
  return Math.round((Number(offer?.packPrice) * quantity * 100) / pack) / 100;
}

/** Everything that was bought, lot by lot, by the day on which it came. */
export const PURCHASES: readonly Purchase[] = Object.entries(DELIVERIES)
  .flatMap(([material, deliveries]) => {
    const unit = materialNamed(material).stockUnit;
    return deliveries.flatMap(([received, quantity, lots, role, more]) =>
      Array.from(
        { length: lots },
        (): Purchase => ({
          material,
          received,
          quantity,
          unit,
          cost: costOf(material, quantity, unit),
          ...(role === undefined || role === null ? {} : { role }),
          ...(more === undefined ? {} : { more }),
        }),
      ),
    );
  })
  .toSorted((a, b) => (a.received < b.received ? -1 : a.received > b.received ? 1 : 0));

/** The orders: two were delivered, and one of tissue and film is on its way. */
export const DEMO_ORDERS: readonly SampleRow<typeof ordersTable>[] = [
  {
    order: 'O-101',
    supplier: 'Paper supplier A',
    orderedOn: '2026-05-06',
    expected: '2026-05-18',
    state: 'Received',
  },
  {
    order: 'O-102',
    supplier: 'Bindery supplier',
    orderedOn: '2026-11-04',
    expected: '2026-11-12',
    state: 'Received',
  },
  {
    order: 'O-103',
    supplier: 'Paper supplier A',
    orderedOn: '2026-11-09',
    expected: '2026-11-25',
    state: 'Ordered',
  },
  {
    order: 'O-104',
    supplier: 'Paper supplier B',
    orderedOn: '2026-11-11',
    expected: '2026-11-27',
    state: 'Ordered',
  },
];

export const DEMO_ORDER_LINES: readonly SampleRow<typeof orderLinesTable>[] = [
  {
    order: 'O-101',
    line: 'line 1',
    material: 'kozo tissue 5 g',
    packs: 1,
    packQuantity: 5,
    unit: 'sheet',
    packPrice: 31,
  },
  {
    order: 'O-102',
    line: 'line 1',
    material: 'grated eraser',
    packs: 1,
    packQuantity: 250,
    unit: 'g',
    packPrice: 13.9,
  },
  {
    order: 'O-103',
    line: 'line 1',
    material: 'kozo tissue 5 g',
    packs: 2,
    packQuantity: 5,
    unit: 'sheet',
    packPrice: 31,
  },
  {
    order: 'O-103',
    line: 'line 2',
    material: 'kozo tissue 9 g',
    packs: 1,
    packQuantity: 5,
    unit: 'sheet',
    packPrice: 27.5,
  },
  {
    order: 'O-104',
    line: 'line 1',
    material: 'polyester film 75 µm',
    packs: 1,
    packQuantity: 10,
    unit: 'sheet',
    packPrice: 46,
  },
];
