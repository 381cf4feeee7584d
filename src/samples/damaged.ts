import { createXlsx } from '../files/new-xlsx.ts';
import { RECORD_TABLES, SETTINGS_TABLE } from '../workbook/known-tables.ts';
import { STOCK_TABLE_OF_KIND, stockTable } from '../workbook/tables-stock.ts';
import {
  DAMAGED_HOUSING,
  DAMAGED_MATERIALS,
  DAMAGED_MOVEMENTS,
  DAMAGED_OFFCUTS,
  DAMAGED_PASTE,
  DAMAGED_PLACES,
  DAMAGED_RELEASE_PAPER,
  DAMAGED_SUNDRIES,
  DAMAGED_TISSUE,
} from './damaged-stock.ts';
import {
  DAMAGED_OFFERS,
  DAMAGED_ORDER_LINES,
  DAMAGED_ORDERS,
  DAMAGED_QUOTE_LINES,
  DAMAGED_QUOTES,
  DAMAGED_SETTINGS,
  DAMAGED_SUPPLIERS,
} from './damaged-trade.ts';
import {
  DAMAGED_ITEMS,
  DAMAGED_JOBS,
  DAMAGED_LOG,
  DAMAGED_PARTS,
  DAMAGED_PLAN,
  DAMAGED_RATES,
  DAMAGED_RECIPES,
  DAMAGED_REMOVED,
  DAMAGED_TREATMENTS,
} from './damaged-work.ts';
import { sampleTable } from './sample-table.ts';
import { blueprintOf } from './sample-workbook.ts';
import { allTables } from './starter-blueprint.ts';

const T = RECORD_TABLES;
const STOCK = STOCK_TABLE_OF_KIND;

/** A workbook with one of every kind of bad row, so that one can see what is said about each. */
export function damagedWorkbook(): Uint8Array {
  return createXlsx(
    blueprintOf({
      title: 'Jarleaf: one of every kind of bad row',
      tables: allTables([
        sampleTable(T.entries, DAMAGED_LOG),
        sampleTable(stockTable(STOCK.Tissue), DAMAGED_TISSUE),
        sampleTable(stockTable(STOCK.Paste), DAMAGED_PASTE),
        sampleTable(stockTable(STOCK['Release paper']), DAMAGED_RELEASE_PAPER),
        sampleTable(stockTable(STOCK.Housing), DAMAGED_HOUSING),
        sampleTable(stockTable(STOCK.Sundry), DAMAGED_SUNDRIES),
        sampleTable(T.jobs, DAMAGED_JOBS),
        sampleTable(T.plan, DAMAGED_PLAN),
        sampleTable(T.materials, DAMAGED_MATERIALS),
        sampleTable(T.treatments, DAMAGED_TREATMENTS),
        sampleTable(T.usageRates, DAMAGED_RATES),
        sampleTable(T.recipes, DAMAGED_RECIPES),
        sampleTable(T.recipeParts, DAMAGED_PARTS),
        sampleTable(T.suppliers, DAMAGED_SUPPLIERS),
        sampleTable(T.offers, DAMAGED_OFFERS),
        sampleTable(T.orders, DAMAGED_ORDERS),
        sampleTable(T.orderLines, DAMAGED_ORDER_LINES),
        sampleTable(T.items, DAMAGED_ITEMS),
        sampleTable(T.removed, DAMAGED_REMOVED),
        sampleTable(T.quotes, DAMAGED_QUOTES),
        sampleTable(T.quoteLines, DAMAGED_QUOTE_LINES),
        sampleTable(T.places, DAMAGED_PLACES),
        sampleTable(T.offcuts, DAMAGED_OFFCUTS),
        sampleTable(T.movements, DAMAGED_MOVEMENTS),
        sampleTable(SETTINGS_TABLE, DAMAGED_SETTINGS),
      ]),
      changedColumns: {
        [T.materials.name]: { serviceLevel: { format: 'percent' } },
        [STOCK.Sundry]: { quantity: { format: 'day' } },
        [STOCK['Release paper']]: { cost: { formula: 'NA()' } },
        [STOCK.Housing]: { unit: null },
      },
    }),
  );
}
