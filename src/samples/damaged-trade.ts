import type { SETTING_NAMES } from '../workbook/read-settings.ts';
import type {
  offersTable,
  orderLinesTable,
  ordersTable,
  quoteLinesTable,
  quotesTable,
  settingsTable,
  suppliersTable,
} from '../workbook/tables-trade.ts';
import type { SampleRow } from './sample-table.ts';

/** Bad rows in the tables of buying and quoting, and bad settings. */

export const DAMAGED_SUPPLIERS: readonly SampleRow<typeof suppliersTable>[] = [
  { supplier: 'Supplier A', leadTimeDays: 3, notes: 'fine' },
  { supplier: 'SUPPLIER A', notes: 'named twice' },
  { supplier: 'Supplier B', leadTimeDays: '2 weeks', notes: 'a time in words' },
];

const offer = {
  supplier: 'Supplier A',
  material: 'wheat starch',
  packQuantity: 500,
  unit: 'g',
  packPrice: 14,
} as const;

export const DAMAGED_OFFERS: readonly SampleRow<typeof offersTable>[] = [
  { ...offer },
  { ...offer, supplier: 'Supplier Nobody' },
  { ...offer, material: 'rye starch' },
  { ...offer, packPrice: 'on request' },
  { ...offer, unit: 'l' },
  { ...offer, packQuantity: 0 },
];

export const DAMAGED_ORDERS: readonly SampleRow<typeof ordersTable>[] = [
  { order: 'O-001', supplier: 'Supplier A', orderedOn: '2026-10-05', state: 'Received' },
  { order: 'O-001', supplier: 'Supplier A', orderedOn: '2026-10-06', state: 'Received' },
  { order: 'O-003', supplier: 'Supplier Nobody', orderedOn: '2026-10-07', state: 'Received' },
  { order: 'O-004', supplier: 'Supplier A', orderedOn: 'in spring', state: 'Received' },
];

const line = { order: 'O-001', material: 'wheat starch', packs: 1, packQuantity: 500, unit: 'g' } as const;

export const DAMAGED_ORDER_LINES: readonly SampleRow<typeof orderLinesTable>[] = [
  { ...line, line: 'line 1' },
  { ...line, line: 'line 1' },
  { ...line, line: 'line 2', order: 'O-909' },
  { ...line, line: 'line 3', material: 'rye starch' },
  { ...line, line: 'line 4', packs: 0 },
  { ...line, line: 'line 5', unit: 'ml' },
];

const quote = { quote: 'Q-001', version: 1, job: 'J-001', madeOn: '2026-10-05' } as const;

export const DAMAGED_QUOTES: readonly SampleRow<typeof quotesTable>[] = [
  { ...quote },
  { ...quote },
  { ...quote, version: 1.5 },
  { ...quote, quote: 'Q-002', job: 'J-909' },
  { ...quote, quote: 'Q-003', total: 'as agreed' },
];

const quoteLine = { quote: 'Q-001', version: 1, what: 'paste' } as const;

export const DAMAGED_QUOTE_LINES: readonly SampleRow<typeof quoteLinesTable>[] = [
  { ...quoteLine, line: 'line 1' },
  { ...quoteLine, line: 'line 1' },
  { ...quoteLine, line: 'line 2', quote: 'Q-909' },
  { ...quoteLine, line: 'line 3', treatment: 'gilding' },
  { ...quoteLine, line: 'line 4', material: 'rye starch' },
];

type DamagedSetting = {
  readonly setting: (typeof SETTING_NAMES)[number] | 'my own setting';
  readonly value: string | number;
};

const SETTINGS: readonly DamagedSetting[] = [
  { setting: 'tables version', value: 2 },
  { setting: 'currency', value: 'EUR' },
  { setting: 'currency decimals', value: 9 },
  { setting: 'warn days', value: 'two weeks' },
  { setting: 'cost basis', value: 'a guess' },
  { setting: 'markup %', value: -10 },
  { setting: 'tax %', value: 21 },
  { setting: 'tax %', value: 9 },
  { setting: 'my own setting', value: 'left alone' },
];

export const DAMAGED_SETTINGS: readonly SampleRow<typeof settingsTable>[] = SETTINGS;
