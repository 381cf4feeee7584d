import type { WorkbookBlueprint } from '../workbook/blueprint.ts';
import { RECORD_TABLES, SETTINGS_TABLE, STOCK_TABLES } from '../workbook/known-tables.ts';
import type { TableDefinition } from '../workbook/table-definition.ts';
import { READ_ME } from './read-me.ts';
import { settingRows } from './sample-settings.ts';
import { type SampleTable, sampleTable } from './sample-table.ts';
import { blueprintOf } from './sample-workbook.ts';
import { STARTER_MATERIALS } from './starter-materials.ts';
import { STARTER_PARTS, STARTER_PLACES, STARTER_RECIPES } from './starter-recipes.ts';
import { STARTER_RATES, STARTER_TREATMENTS } from './starter-treatments.ts';

const T = RECORD_TABLES;

/** All tables in the order of their tabs: what is opened daily first. */
const TABS: readonly TableDefinition[] = [
  T.entries,
  ...STOCK_TABLES,
  T.jobs,
  T.plan,
  T.materials,
  T.treatments,
  T.usageRates,
  T.recipes,
  T.recipeParts,
  T.suppliers,
  T.offers,
  T.orders,
  T.orderLines,
  T.items,
  T.removed,
  T.quotes,
  T.quoteLines,
  T.places,
  T.offcuts,
  T.counts,
  T.movements,
  SETTINGS_TABLE,
];

/** All of Jarleaf's tables in order: those given with their rows, the others blank. */
export function allTables(filled: readonly SampleTable[]): SampleTable[] {
  const byName = new Map(filled.map((table) => [table.definition.name, table]));
  return TABS.map((definition) => byName.get(definition.name) ?? sampleTable(definition, []));
}

/** A workbook to start with: every table, a sound first set of materials, treatments and recipes, no stock yet. */
export function starterBlueprint(): WorkbookBlueprint {
  return blueprintOf({
    title: 'Jarleaf: a workbook to start with',
    tabsBefore: [READ_ME],
    tables: allTables([
      sampleTable(T.materials, STARTER_MATERIALS),
      sampleTable(T.treatments, STARTER_TREATMENTS),
      sampleTable(T.usageRates, STARTER_RATES),
      sampleTable(T.recipes, STARTER_RECIPES),
      sampleTable(T.recipeParts, STARTER_PARTS),
      sampleTable(T.places, STARTER_PLACES),
      sampleTable(SETTINGS_TABLE, settingRows()),
    ]),
  });
}
