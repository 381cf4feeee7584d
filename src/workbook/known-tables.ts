import type { ZodType } from 'zod';
import type { Records, Row } from '../core/records.ts';
import type { TableDefinition } from './table-definition.ts';
import {
  countsTable,
  materialsTable,
  movementsTable,
  offcutsTable,
  placesTable,
  STOCK_TABLE_OF_KIND,
  stockTable,
} from './tables-stock.ts';
import {
  offersTable,
  orderLinesTable,
  ordersTable,
  quoteLinesTable,
  quotesTable,
  settingsTable,
  suppliersTable,
} from './tables-trade.ts';
import {
  itemsTable,
  jobsTable,
  planTable,
  recipePartsTable,
  recipesTable,
  removedTable,
  treatmentLogTable,
  treatmentsTable,
  usageRatesTable,
} from './tables-work.ts';

/** Each table's rows must come out as the records of its field. */
type RecordTables = {
  readonly [F in Exclude<keyof Records, 'lots'>]: TableDefinition & {
    readonly schema: ZodType<Omit<Records[F][number], keyof Row>>;
  };
};

/** The tables that hold one kind of record each, by the field of Records that they fill. */
export const RECORD_TABLES = {
  materials: materialsTable,
  movements: movementsTable,
  entries: treatmentLogTable,
  treatments: treatmentsTable,
  usageRates: usageRatesTable,
  recipes: recipesTable,
  recipeParts: recipePartsTable,
  jobs: jobsTable,
  items: itemsTable,
  plan: planTable,
  removed: removedTable,
  suppliers: suppliersTable,
  offers: offersTable,
  orders: ordersTable,
  orderLines: orderLinesTable,
  quotes: quotesTable,
  quoteLines: quoteLinesTable,
  places: placesTable,
  offcuts: offcutsTable,
  counts: countsTable,
} as const satisfies RecordTables;

export const SETTINGS_TABLE = settingsTable;

/** The stock tables that every workbook may have; others are known by their columns. */
export const STOCK_TABLES = Object.values(STOCK_TABLE_OF_KIND).map(stockTable);
