import { RECORD_TABLES } from './known-tables.ts';
import type { TableDefinition } from './table-definition.ts';
import { stockTable } from './tables-stock.ts';

type FieldOf<D extends TableDefinition> = keyof D['columns'] & string;

/** Columns of a table, by record field. */
interface BroughtColumns {
  readonly definition: TableDefinition;
  readonly fields: readonly string[];
}

function brought<D extends TableDefinition>(definition: D, fields: readonly FieldOf<D>[]): BroughtColumns {
  return { definition, fields };
}

/** The columns that version 2 of the tables brought, in the order in which they are added. */
export const BROUGHT_TO_STOCK = brought(stockTable('Tissue'), [
  'stateSince',
  'recipe',
  'ph',
  'tare',
  'sheetWidth',
  'sheetHeight',
  'grammage',
  'usesPerUnit',
  'retested',
  'retestedUntil',
  'retestedBy',
  'posting',
  'notes',
]);
export const BROUGHT: readonly BroughtColumns[] = [
  brought(RECORD_TABLES.materials, ['phLow', 'phHigh', 'keepAtMost', 'hazards', 'sdsChecked', 'disposal']),
  brought(RECORD_TABLES.recipes, [
    'lifeColdDays',
    'lifeDarkDays',
    'smallestBatch',
    'readyAfterHours',
    'limitedByParts',
    'cautions',
  ]),
  brought(RECORD_TABLES.places, ['cold', 'dark', 'walkingOrder']),
  brought(RECORD_TABLES.movements, ['lotIs', 'into', 'posting', 'by', 'posted', 'note']),
];

/** The table that version 2 brought. */
export const BROUGHT_TABLE: TableDefinition = RECORD_TABLES.counts;
