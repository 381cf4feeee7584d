import { type Day, isoDay } from '../core/day.ts';
import type { MaterialKind } from '../core/records.ts';
import { type offcutsTable, STOCK_TABLE_OF_KIND } from '../workbook/tables-stock.ts';
import type { Batch } from './demo-batches.ts';
import { dayOf } from './demo-jobs.ts';
import { materialNamed } from './demo-materials.ts';
import { type LotRole, PURCHASES } from './demo-purchases.ts';
import type { SampleRow, SampleValue } from './sample-table.ts';

/** Every lot of the invented studio, named in the order in which they came, a letter for each stock table. */
export interface DemoLot {
  readonly lot: string;
  readonly table: string;
  readonly received: Day;
  readonly role: LotRole | null;
  /** How many times its recipe was made; null for what was bought. */
  readonly times: number | null;
  readonly row: Readonly<Record<string, SampleValue>>;
}

const PLACE_OF_KIND: Readonly<Record<MaterialKind, string>> = {
  Tissue: 'Plan chest',
  Paste: 'Dark cupboard',
  Buffer: 'Dark cupboard',
  'Release paper': 'Plan chest',
  Housing: 'Plan chest',
  Sundry: 'Room',
};
const PLACE_OF_MATERIAL: Readonly<Record<string, string>> = {
  ethanol: 'Solvent cabinet',
  'pre-wetting alcohol 30 %': 'Solvent cabinet',
  'wheat starch paste': 'Refrigerator',
  'gelatine 1 %': 'Refrigerator',
};

type Unnamed = Omit<DemoLot, 'lot'>;

export function demoLots(batches: readonly Batch[]): DemoLot[] {
  const lots: Unnamed[] = [
    ...PURCHASES.map(
      ({ material, received, quantity, unit, cost, role, more }): Unnamed => ({
        table: STOCK_TABLE_OF_KIND[materialNamed(material).kind],
        received: dayOf(received),
        role: role ?? null,
        times: null,
        row: {
          material,
          received,
          quantity,
          unit,
          cost,
          supplier: materialNamed(material).supplier,
          storedAt: placeOf(material),
          ...orderOf(material, received),
          ...more,
        },
      }),
    ),
    ...batches.map(({ material, made, times }): Unnamed => {
      const yieldOfOne = material.recipe?.record.yield.valueOf() ?? 0;
      const quantity = Math.round(yieldOfOne * times * 1000) / 1000;
      return {
        table: STOCK_TABLE_OF_KIND[material.record.kind],
        received: made,
        role: null,
        times,
        row: {
          material: material.name,
          received: isoDay(made),
          quantity,
          unit: material.recipe?.record.unit.name,
          recipe: material.recipe?.name,
          storedAt: placeOf(material.name),
        },
      };
    }),
  ];
  const numbers = new Map<string, number>();
  return lots
    .map((lot, place) => ({ lot, place }))
    .toSorted((a, b) => a.lot.received - b.lot.received || a.place - b.place)
    .map(({ lot }) => {
      const number = (numbers.get(lot.table) ?? 0) + 1;
      numbers.set(lot.table, number);
      const name = `${lot.table.charAt(0)}-${String(number).padStart(3, '0')}`;
      return { ...lot, lot: name, row: { lot: name, ...lot.row } };
    });
}

/** Remnants that were kept, of the first lot of their material. */
export function offcutRows(lots: readonly DemoLot[]): SampleRow<typeof offcutsTable>[] {
  const firstLot = (material: string): string | undefined =>
    lots.find(({ row }) => row['material'] === material)?.lot;
  return [
    { offcut: 'C-01', lot: firstLot('infill paper 80 g'), width: 18, height: 24, keptOn: '2026-04-02' },
    {
      offcut: 'C-02',
      lot: firstLot('alkaline board'),
      width: 24,
      height: 33,
      keptOn: '2026-06-30',
      usedOn: '2026-09-29',
    },
    { offcut: 'C-03', lot: firstLot('polyester film 75 µm'), width: 20, height: 60, keptOn: '2026-10-30' },
  ];
}

function placeOf(material: string): string {
  return PLACE_OF_MATERIAL[material] ?? PLACE_OF_KIND[materialNamed(material).kind];
}

/** Of two deliveries the order is known. */
function orderOf(material: string, received: string): Readonly<Record<string, string>> {
  if (material === 'kozo tissue 5 g' && received === '2026-05-18')
    return { order: 'O-101', orderLine: 'line 1' };
  if (material === 'grated eraser' && received === '2026-11-12')
    return { order: 'O-102', orderLine: 'line 1' };
  return {};
}
