import type {
  itemsTable,
  jobsTable,
  planTable,
  recipePartsTable,
  recipesTable,
  removedTable,
  treatmentLogTable,
  treatmentsTable,
  usageRatesTable,
} from '../workbook/tables-work.ts';
import type { SampleRow } from './sample-table.ts';

/** Bad rows in the tables of what is done; Notes says what is wrong with each, where a table has Notes. */

const entry = { date: '2026-11-02', job: 'J-001', treatment: 'testing', extent: 2 } as const;

export const DAMAGED_LOG: readonly SampleRow<typeof treatmentLogTable>[] = [
  { ...entry, entry: 'E-001', treatment: 'mending tears', drawn: 'yes', drawnFor: 2, notes: 'fine' },
  { ...entry, entry: 'E-001', notes: 'entry named twice' },
  { ...entry, entry: 'E-003', job: 'J-909', notes: 'unknown job' },
  { ...entry, entry: 'E-004', treatment: 'gilding', notes: 'unknown treatment' },
  { ...entry, entry: 'E-005', item: 'letter Z', notes: 'unknown item' },
  { ...entry, entry: 'E-006', extent: '20 cm', notes: 'unit typed in' },
  { ...entry, entry: 'E-007', extent: -3, notes: 'a negative extent' },
  { ...entry, entry: 'E-008', date: '11/16/2026', notes: 'a date as text' },
  { ...entry, entry: 'E-009', minutes: 'half an hour', notes: 'minutes in words' },
  { ...entry, entry: 'E-010', job: null, notes: 'no job' },
];

export const DAMAGED_TREATMENTS: readonly SampleRow<typeof treatmentsTable>[] = [
  { treatment: 'testing', extentUnit: 'spot', notes: 'fine' },
  { treatment: 'mending tears', extentUnit: 'cm', notes: 'fine' },
  { treatment: 'Testing', extentUnit: 'spot', notes: 'named twice' },
  { treatment: 'pressing', extentUnit: 'item', setupMinutes: 'ten', notes: 'minutes in words' },
  { treatment: 'washing', extentUnit: 'dm²', setupPer: 'week', notes: 'no such word' },
  { treatment: 'drying', extentUnit: null, notes: 'no extent unit' },
];

const rate = {
  treatment: 'mending tears',
  material: 'wheat starch',
  quantityPerExtent: 0.03,
  unit: 'g',
} as const;

export const DAMAGED_RATES: readonly SampleRow<typeof usageRatesTable>[] = [
  { ...rate },
  { ...rate, treatment: 'gilding' },
  { ...rate, material: 'rye starch' },
  { ...rate, material: 'kozo tissue', unit: 'ml' },
  { ...rate, fixedPer: 'week' },
  { ...rate, whole: 'perhaps' },
  { ...rate, stays: 'a while' },
  { ...rate, quantityPerExtent: '0,03' },
];

const recipe = { makes: 'wheat starch', yield: 400, unit: 'g' } as const;

export const DAMAGED_RECIPES: readonly SampleRow<typeof recipesTable>[] = [
  { ...recipe, recipe: 'paste', method: 'fine' },
  { ...recipe, recipe: 'Paste', method: 'named twice' },
  { ...recipe, recipe: 'size', makes: 'rye starch', method: 'makes an unknown material' },
  { ...recipe, recipe: 'wash', yield: 0, method: 'a yield of 0' },
  { ...recipe, recipe: 'thin paste', unit: 'l', method: "a unit that doesn't lead to g" },
  { ...recipe, recipe: 'thick paste', lifeDays: 2.5, method: 'half a day' },
];

const part = { recipe: 'paste', material: 'wheat starch', quantity: 57, unit: 'g' } as const;

export const DAMAGED_PARTS: readonly SampleRow<typeof recipePartsTable>[] = [
  { ...part },
  { ...part, recipe: 'old paste' },
  { ...part, material: 'rye starch' },
  { ...part, unit: 'ml' },
  { ...part, quantity: 'a pinch' },
];

export const DAMAGED_JOBS: readonly SampleRow<typeof jobsTable>[] = [
  { job: 'J-001', client: 'private collector A.', stage: 'On the bench', notes: 'fine' },
  { job: 'J-001', client: 'private collector B.', notes: 'named twice' },
  { job: 'J-003', stage: 'Lost', notes: 'no such stage' },
  { job: 'J-004', storedAt: 'Attic', notes: 'unknown place' },
  { job: 'J-005', height: -3, notes: 'a negative height' },
  { job: 'J-006', due: '2027-02-29', notes: 'no such day' },
  { job: 'J-007', leaves: 18.5, notes: 'half a leaf' },
];

export const DAMAGED_ITEMS: readonly SampleRow<typeof itemsTable>[] = [
  { job: 'J-001', item: 'letter A' },
  { job: 'J-001', item: 'Letter A' },
  { job: 'J-909', item: 'letter A' },
];

export const DAMAGED_PLAN: readonly SampleRow<typeof planTable>[] = [
  { line: 'N-001', job: 'J-001', treatment: 'testing', extent: 1 },
  { line: 'N-001', job: 'J-001', treatment: 'testing', extent: 1 },
  { line: 'N-003', job: 'J-909', treatment: 'testing', extent: 1 },
  { line: 'N-004', job: 'J-001', treatment: 'gilding', extent: 1 },
  { line: 'N-005', job: 'J-001', item: 'letter Z', treatment: 'testing', extent: 1 },
  { line: 'N-006', job: 'J-001', treatment: 'testing', extent: 1, plannedFor: 'soon' },
  { line: 'N-007', job: 'J-001', treatment: 'testing', extent: 1, done: 'nearly' },
];

export const DAMAGED_REMOVED: readonly SampleRow<typeof removedTable>[] = [
  { job: 'J-001', what: 'staple', removedOn: '2026-11-02' },
  { job: 'J-909', what: 'staple', removedOn: '2026-11-02' },
  { job: 'J-001', item: 'letter Z', what: 'staple', removedOn: '2026-11-02' },
  { job: 'J-001', what: null, removedOn: '2026-11-02' },
];
