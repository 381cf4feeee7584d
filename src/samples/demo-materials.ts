import type { placesTable } from '../workbook/tables-stock.ts';
import type { offersTable, suppliersTable } from '../workbook/tables-trade.ts';
import type { usageRatesTable } from '../workbook/tables-work.ts';
import type { SampleRow } from './sample-table.ts';
import { type MaterialRow, STARTER_MATERIALS } from './starter-materials.ts';
import { STARTER_PLACES } from './starter-recipes.ts';
import { STARTER_RATES } from './starter-treatments.ts';

/** What the invented studio made of the first set: materials of its own, suppliers, and prices in euro. */

const PAPERS = 'Paper supplier A';
const BOARDS = 'Paper supplier B';
const LABORATORY = 'Laboratory supplier';
const BINDERY = 'Bindery supplier';

export const DEMO_SUPPLIERS: readonly SampleRow<typeof suppliersTable>[] = [
  {
    supplier: PAPERS,
    leadTimeDays: 10,
    leadTimeSpreadDays: 3,
    minimumOrder: 40,
    carriage: 9.5,
    carriageFreeOver: 150,
  },
  { supplier: BOARDS, leadTimeDays: 14, leadTimeSpreadDays: 4, carriage: 18, carriageFreeOver: 300 },
  { supplier: LABORATORY, leadTimeDays: 5, leadTimeSpreadDays: 1, carriage: 12 },
  { supplier: BINDERY, leadTimeDays: 7, leadTimeSpreadDays: 2, carriage: 6.9, notes: 'Closed in August.' },
];

type Offer = readonly [
  supplier: string,
  packQuantity: number,
  unit: string,
  packPrice: number,
  fromPacks?: number,
];

/** Packs by material; the first supplier is the usual one. */
const OFFERS: Readonly<Record<string, readonly Offer[]>> = {
  'kozo tissue 3.5 g': [
    [PAPERS, 5, 'sheet', 42.5],
    [PAPERS, 5, 'sheet', 39, 3],
  ],
  'kozo tissue 5 g': [
    [PAPERS, 5, 'sheet', 31],
    [PAPERS, 5, 'sheet', 28.4, 3],
    [BINDERY, 1, 'sheet', 7.2],
  ],
  'kozo tissue 9 g': [
    [PAPERS, 5, 'sheet', 27.5],
    [BINDERY, 1, 'sheet', 6.1],
  ],
  'kozo paper 20 g': [[PAPERS, 5, 'sheet', 24]],
  'infill paper 80 g': [
    [BOARDS, 10, 'sheet', 38],
    [PAPERS, 5, 'sheet', 22.5],
  ],
  'toned tissue 5 g': [[PAPERS, 1, 'sheet', 11.9]],
  'wheat starch': [
    [BINDERY, 500, 'g', 14.8],
    [BINDERY, 500, 'g', 13.2, 4],
  ],
  'methylcellulose powder': [[BINDERY, 250, 'g', 23.4]],
  gelatine: [[LABORATORY, 50, 'g', 12.6]],
  'calcium hydroxide': [[LABORATORY, 100, 'g', 11.3]],
  'magnesium hydroxide': [[LABORATORY, 250, 'g', 19.8]],
  ethanol: [[LABORATORY, 1, 'l', 16.4]],
  'pH buffer 7.00': [[LABORATORY, 100, 'ml', 8.9]],
  'pH buffer 10.01': [[LABORATORY, 100, 'ml', 9.4]],
  'silicone release paper': [
    [BOARDS, 10, 'sheet', 34],
    [BINDERY, 1, 'sheet', 4.2],
  ],
  'polyester web': [
    [BOARDS, 10, 'sheet', 29],
    [BINDERY, 1, 'sheet', 3.6],
  ],
  'casting film': [[BOARDS, 5, 'sheet', 21]],
  blotter: [
    [BOARDS, 25, 'sheet', 41],
    [BINDERY, 1, 'sheet', 2.1],
  ],
  'wool felt': [[BINDERY, 1, 'each', 18.5]],
  'polyester film 75 µm': [[BOARDS, 10, 'sheet', 46]],
  'alkaline board': [
    [BOARDS, 10, 'sheet', 52],
    [BOARDS, 10, 'sheet', 47.5, 3],
  ],
  'alkaline folder': [[BOARDS, 25, 'each', 44]],
  'clear corner': [[BINDERY, 100, 'each', 12.5]],
  'rubber sponge': [[BINDERY, 5, 'each', 19.5]],
  'grated eraser': [[BINDERY, 250, 'g', 13.9]],
  'stainless staple': [[BINDERY, 1000, 'each', 7.8]],
  'linen thread': [[BINDERY, 100, 'm', 9.6]],
  'cotton tape': [[BINDERY, 1, 'roll', 6.4]],
  'cotton swabs': [[LABORATORY, 100, 'each', 3.9]],
};

const CHECKED = '2026-03-09';

export const DEMO_OFFERS: readonly SampleRow<typeof offersTable>[] = Object.entries(OFFERS).flatMap(
  ([material, offers]) =>
    offers.map(([supplier, packQuantity, unit, packPrice, fromPacks]) => ({
      supplier,
      material,
      packQuantity,
      unit,
      packPrice,
      fromPacks,
      checkedOn: CHECKED,
    })),
);

/** When the safety data sheets were looked at; that of the calcium hydroxide is due. */
const SDS_CHECKED: Readonly<Record<string, string>> = {
  'calcium hydroxide': '2023-05-22',
  'magnesium hydroxide': '2025-02-10',
  ethanol: '2025-02-10',
  'pH buffer 7.00': '2025-09-01',
  'pH buffer 10.01': '2025-09-01',
};

const OWN_MATERIALS: readonly MaterialRow[] = [
  {
    material: 'toned tissue 5 g',
    description: 'kozo tissue toned at the bench',
    composition: 'kozo fibre',
    kind: 'Tissue',
    stockUnit: 'sheet',
    sheetWidth: 30,
    sheetHeight: 45,
    grammage: 5,
  },
  { material: 'alkaline folder', description: 'four flaps', kind: 'Housing', stockUnit: 'each' },
  { material: 'clear corner', description: 'polyester photo corner', kind: 'Housing', stockUnit: 'each' },
  {
    material: 'cotton tape',
    description: 'unbleached, 1 cm wide, 50 m',
    kind: 'Sundry',
    stockUnit: 'roll',
    sheetWidth: 1,
    sheetHeight: 5000,
  },
];

const SERVICE_LEVELS: Readonly<Record<string, number>> = { 'kozo tissue 5 g': 95, 'wheat starch': 90 };

/** What this studio keeps more of than the starter: a paper and a web that it would not like to wait for. */
const KEEP_AT_LEAST: Readonly<Record<string, number>> = { 'kozo paper 20 g': 5, 'polyester web': 6 };

export const DEMO_MATERIALS: readonly MaterialRow[] = [...STARTER_MATERIALS, ...OWN_MATERIALS].map((row) => {
  const name = row.material;
  return {
    ...row,
    supplier: OFFERS[name]?.[0]?.[0],
    sdsChecked: SDS_CHECKED[name],
    serviceLevel: SERVICE_LEVELS[name],
    keepAtLeast: KEEP_AT_LEAST[name] ?? row.keepAtLeast,
  };
});

/** A material of the studio. */
export function materialNamed(name: string): MaterialRow {
  const material = DEMO_MATERIALS.find((row) => row.material === name);
  if (material === undefined) throw new Error(`the studio has no ${name}`);
  return material;
}

/** Every object that is housed gets a folder as well. */
export const DEMO_RATES: readonly SampleRow<typeof usageRatesTable>[] = [
  ...STARTER_RATES,
  {
    treatment: 'housing',
    material: 'alkaline folder',
    quantityPerExtent: 1,
    unit: 'each',
    whole: 'yes',
    stays: 'contact only',
  },
];

export const DEMO_PLACES: readonly SampleRow<typeof placesTable>[] = [
  ...STARTER_PLACES,
  { storage: 'Solvent cabinet', cold: 'no', walkingOrder: 4 },
  { storage: 'Plan chest', cold: 'no', walkingOrder: 5 },
];
