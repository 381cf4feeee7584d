import { keepBooks } from '../core/check.ts';
import { identifierMaker } from '../core/identifier.ts';
import { seededRandom } from '../core/seeded-random.ts';
import { createXlsx } from '../files/new-xlsx.ts';
import { openXlsx } from '../files/xlsx-workbook.ts';
import { RECORD_TABLES, SETTINGS_TABLE } from '../workbook/known-tables.ts';
import { takenIdentifiers } from '../workbook/name-rows.ts';
import { readWorkbook, type WorkbookReading } from '../workbook/read-workbook.ts';
import { stockTable } from '../workbook/tables-stock.ts';
import { batchesFor } from './demo-batches.ts';
import { keepHistory } from './demo-history.ts';
import { ITEM_ROWS, JOB_ROWS, PLAN_ROWS, REMOVED_ROWS } from './demo-jobs.ts';
import { demoEntries, entryRow } from './demo-log.ts';
import { type DemoLot, demoLots, offcutRows } from './demo-lots.ts';
import { DEMO_MATERIALS, DEMO_OFFERS, DEMO_PLACES, DEMO_RATES, DEMO_SUPPLIERS } from './demo-materials.ts';
import { OWN_COLUMNS, OWN_TAB } from './demo-own-touches.ts';
import { DEMO_ORDER_LINES, DEMO_ORDERS } from './demo-purchases.ts';
import { quoteRows } from './demo-quotes.ts';
import { type Rows, withBooksKept } from './demo-written.ts';
import { settingRows } from './sample-settings.ts';
import { type SampleTable, sampleTable } from './sample-table.ts';
import { blueprintOf } from './sample-workbook.ts';
import { allTables } from './starter-blueprint.ts';
import { STARTER_PARTS, STARTER_RECIPES } from './starter-recipes.ts';
import { STARTER_TREATMENTS } from './starter-treatments.ts';

/**
 * An invented one-bench studio after fourteen months of work; its day is Monday 2026-11-16.
 *
 * Job J-2031 (poster, folded, long tears) is on the bench. Logging its "mending tears" on that day with an extent of
 * 40 cm takes 84 cm² of "kozo tissue 5 g": the 45 cm² that are left of the first lot, the rest from the second.
 */
const SEED = 20261116;

const T = RECORD_TABLES;

/** The workbook of the demonstration studio. */
export function demoWorkbook(): Uint8Array {
  const random = seededRandom(SEED);
  const entries = demoEntries(random);
  const rows: Rows = {
    entries: entries.map(entryRow),
    lots: [],
    movements: [],
    quotes: [],
    quoteLines: [],
  };
  const beforeMaking = keepBooksOf(read(rows));
  const lots = demoLots(batchesFor(beforeMaking.studio, entries));
  const stocked: Rows = { ...rows, lots };
  const reading = read(stocked);
  const newIdentifier = identifierMaker(random, takenIdentifiers(reading));
  const bench = keepHistory({ studio: keepBooksOf(reading).studio, entries, lots, newIdentifier, random });
  const kept = withBooksKept(stocked, entries, bench, (each) => keepBooksOf(read(each)));
  const quoted = { ...kept, ...quoteRows(keepBooksOf(read(kept))) };
  return createXlsx(
    blueprintOf({
      title: 'Jarleaf: a studio to try things on',
      tables: tablesOf(quoted),
      ownColumns: OWN_COLUMNS,
      totals: { Quotes: ['Total'] },
      tabsAfter: [OWN_TAB],
    }),
  );
}

function read(rows: Rows): WorkbookReading {
  return readWorkbook(openXlsx(createXlsx(blueprintOf({ title: '', tables: tablesOf(rows) }))).snapshot());
}

function keepBooksOf({ records, settings, unreadable }: WorkbookReading) {
  return keepBooks(records, settings, unreadable).ledger;
}

function tablesOf({ entries, lots, movements, quotes, quoteLines }: Rows): SampleTable[] {
  const stock = new Map<string, DemoLot[]>();
  for (const lot of lots) stock.set(lot.table, [...(stock.get(lot.table) ?? []), lot]);
  return allTables([
    sampleTable(T.entries, entries),
    ...[...stock].map(([name, own]) =>
      sampleTable(
        stockTable(name),
        own.map(({ row }) => row),
      ),
    ),
    sampleTable(T.jobs, JOB_ROWS),
    sampleTable(T.plan, PLAN_ROWS),
    sampleTable(T.materials, DEMO_MATERIALS),
    sampleTable(T.treatments, STARTER_TREATMENTS),
    sampleTable(T.usageRates, DEMO_RATES),
    sampleTable(T.recipes, STARTER_RECIPES),
    sampleTable(T.recipeParts, STARTER_PARTS),
    sampleTable(T.suppliers, DEMO_SUPPLIERS),
    sampleTable(T.offers, DEMO_OFFERS),
    sampleTable(T.orders, DEMO_ORDERS),
    sampleTable(T.orderLines, DEMO_ORDER_LINES),
    sampleTable(T.items, ITEM_ROWS),
    sampleTable(T.removed, REMOVED_ROWS),
    sampleTable(T.quotes, quotes),
    sampleTable(T.quoteLines, quoteLines),
    sampleTable(T.places, DEMO_PLACES),
    sampleTable(T.offcuts, offcutRows(lots)),
    sampleTable(T.movements, movements),
    sampleTable(
      SETTINGS_TABLE,
      settingRows({
        'tax %': 21,
        'markup %': 25,
        'bench rate per hour': 48,
        'smallest consumables charge': 5,
      }),
    ),
  ]);
}
