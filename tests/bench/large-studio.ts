import { addDays, type Day, parseDay } from '../../src/core/day.ts';
import { createXlsx } from '../../src/files/new-xlsx.ts';
import { RECORD_TABLES, SETTINGS_TABLE, STOCK_TABLES } from '../../src/workbook/known-tables.ts';
import type { CellWrite } from '../../src/workbook/port.ts';

/** A studio far larger than any bench: what the time limits are measured on. */
export interface Size {
  readonly materials: number;
  readonly lots: number;
  readonly movements: number;
}

type Rows = readonly Readonly<Record<string, string | number | Date>>[];

const FIRST_DAY = parseDay('2025-01-06') as Day;
const DAYS = 650;
export const TODAY = addDays(FIRST_DAY, DAYS);

/** The bytes of a workbook of the given size, the same every time. */
export function largeStudio({ materials, lots, movements }: Size): Uint8Array {
  const entries = Math.ceil(movements / 4);
  const range = (count: number): number[] => Array.from({ length: count }, (_, place) => place);
  const day = (offset: number): Date => new Date((FIRST_DAY + (offset % DAYS)) * 86_400_000);
  const tables: Readonly<Record<string, Rows>> = {
    Materials: range(materials).map((n) => ({
      Material: `material ${n}`,
      Kind: 'Paste',
      'Stock unit': 'g',
      'Service level %': 95,
      'Life sealed days': 400,
      Supplier: `supplier ${n % 5}`,
    })),
    Suppliers: range(5).map((n) => ({
      Supplier: `supplier ${n}`,
      'Lead time days': 10 + n,
      'Lead time spread days': 3,
      'Minimum order': 20,
      Carriage: 12,
      'Carriage free over': 150,
    })),
    Offers: range(2 * materials).map((n) => ({
      Supplier: `supplier ${(n + Math.floor(n / materials)) % 5}`,
      Material: `material ${n % materials}`,
      'Pack quantity': n < materials ? 500 : 2000,
      Unit: 'g',
      'Pack price': n < materials ? 6 : 22,
    })),
    Recipes: range(20).map((n) => ({
      Recipe: `recipe ${n}`,
      Makes: `material ${n}`,
      Yield: 500,
      Unit: 'g',
      'Life days': 5,
      'Smallest batch': 20,
      Minutes: 40,
    })),
    RecipeParts: range(40).map((n) => ({
      Recipe: `recipe ${n % 20}`,
      Material: `material ${100 + n}`,
      Quantity: 50,
      Unit: 'g',
    })),
    Paste: range(lots).map((n) => ({
      Lot: `L-${n}`,
      Material: `material ${n % materials}`,
      Received: day(0),
      Quantity: 5000,
      Unit: 'g',
      Cost: 12.5,
    })),
    Treatments: range(20).map((n) => ({ Treatment: `treatment ${n}`, 'Extent unit': 'cm' })),
    UsageRates: range(20).map((n) => ({
      Treatment: `treatment ${n}`,
      Material: `material ${n}`,
      'Quantity per extent': 0.1,
      Unit: 'g',
    })),
    Jobs: range(200).map((n) => ({ Job: `J-${n}`, Stage: 'On the bench' })),
    TreatmentLog: range(entries).map((n) => ({
      Entry: `E-${n}`,
      Date: day(n),
      Job: `J-${n % 200}`,
      Treatment: `treatment ${n % 20}`,
      Extent: 10,
    })),
    Movements: range(movements).map((n) => ({
      Movement: `M-${n}`,
      Date: day(n),
      Kind: 'Use',
      Lot: `L-${n % lots}`,
      Quantity: 1 + (n % 7) / 8,
      Unit: 'g',
      Job: `J-${n % 200}`,
      Entry: `E-${n % entries}`,
    })),
    Settings: [{ Setting: 'currency', Value: 'EUR' }],
    Quotes: [],
    QuoteLines: [],
    Plan: range(200).map((n) => ({
      Job: `J-${n}`,
      Treatment: `treatment ${n % 20}`,
      Extent: 20_000,
      'Planned for': new Date((TODAY + (n % 80)) * 86_400_000),
    })),
  };
  const definitions = [...Object.values(RECORD_TABLES), ...STOCK_TABLES, SETTINGS_TABLE];
  return createXlsx({
    tabs: definitions
      .filter(({ name }) => name in tables)
      .map(({ name, columns }) => {
        const all = Object.values(columns);
        const rows = tables[name] ?? [];
        return {
          name,
          table: {
            name,
            columns: all.map(({ header, preparation }) => ({ header, width: 12, format: preparation })),
            rows:
              rows.length === 0
                ? [all.map(() => null)]
                : rows.map((row) => all.map(({ header }) => cell(row[header]))),
          },
        };
      }),
  });
}

function cell(value: string | number | Date | undefined): CellWrite | null {
  if (value === undefined) return null;
  if (typeof value === 'string') return { kind: 'text', text: value };
  if (typeof value === 'number') return { kind: 'number', number: value };
  return { kind: 'day', day: Math.round(value.getTime() / 86_400_000) as Day };
}
