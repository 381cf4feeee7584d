import type { CellWrite } from '../workbook/port.ts';
import type {
  materialsTable,
  movementsTable,
  offcutsTable,
  placesTable,
  stockTable,
} from '../workbook/tables-stock.ts';
import type { SampleRow } from './sample-table.ts';

/** Bad rows in the tables of what is kept; Notes says what is wrong with each, and "fine" where nothing is. */

type LotRow = SampleRow<ReturnType<typeof stockTable>>;
type MovementRow = SampleRow<typeof movementsTable>;

const material = { kind: 'Paste', stockUnit: 'g' } as const;

/** Service level % is formatted as a percentage in this workbook: 0.95 reads as 95. */
export const DAMAGED_MATERIALS: readonly SampleRow<typeof materialsTable>[] = [
  {
    material: 'kozo tissue',
    kind: 'tissue',
    stockUnit: 'Sheets',
    sheetWidth: 60,
    sheetHeight: 90,
    serviceLevel: 0.95,
    notes: 'fine',
  },
  { ...material, material: 'wheat starch', notes: 'fine' },
  { material: 'limewater', kind: 'Buffer', stockUnit: 'l', notes: 'fine' },
  { ...material, material: 'mystery powder', kind: 'Powder', notes: 'no such kind' },
  { ...material, material: 'spotted tissue', stockUnit: 'leaf', notes: 'no such unit' },
  { ...material, material: 'LIMEWATER', notes: 'named twice' },
  { ...material, material: 'gelatine', supplier: 'Supplier Nobody', notes: 'unknown supplier' },
  { ...material, material: 'agar', lifeSealedDays: '2 years', notes: 'a life in words' },
  { ...material, material: 'gellan', counted: 'maybe', notes: 'neither yes nor no' },
  { ...material, material: 'rice starch', serviceLevel: 1.2, notes: '120 %' },
  { ...material, material: 'cellulose', sdsChecked: '03/04/2026', notes: 'a date of two meanings' },
  { ...material, material: 'alginate', kind: null, notes: 'no kind' },
];

const lot = { material: 'wheat starch', received: '2026-01-12', quantity: 500, unit: 'g' } as const;

export const DAMAGED_PASTE: readonly LotRow[] = [
  { ...lot, lot: 'P-001', quantity: 5000, notes: 'fine' },
  { ...lot, lot: 'P-002', quantity: '12 g', notes: 'unit typed in' },
  { ...lot, lot: 'P-003', quantity: 'about 500', notes: 'words' },
  { ...lot, lot: 'P-004', quantity: '1,500', notes: 'comma' },
  { ...lot, lot: 'P-005', received: '03/04/2026', notes: 'a date of two meanings' },
  { ...lot, lot: 'P-006', useBy: '2026-02-30', notes: 'no such day' },
  { ...lot, lot: 'P-001', notes: 'lot named twice' },
  { ...lot, lot: 'P-008', material: 'rye starch', notes: 'unknown material' },
  { ...lot, lot: 'P-009', material: 'mystery powder', notes: "a material that can't be read" },
  { ...lot, lot: 'P-010', supplier: 'Supplier Nobody', notes: 'unknown supplier' },
  { ...lot, lot: 'P-011', storedAt: 'Attic', notes: 'unknown place' },
  { ...lot, lot: 'P-012', recipe: 'old paste', notes: 'unknown recipe' },
  { ...lot, lot: 'P-013', order: 'O-909', notes: 'unknown order' },
  { ...lot, lot: 'P-014', order: 'O-001', orderLine: 'line 9', notes: 'unknown order line' },
  { ...lot, lot: 'P-015', unit: 'cup', notes: 'unknown unit' },
  { ...lot, lot: 'P-016', unit: 'ml', notes: 'no density leads from ml to g' },
  { ...lot, lot: 'P-017', quantity: null, notes: 'no quantity' },
  { ...lot, lot: 'P-018', quantity: 0, notes: 'a quantity of 0' },
  { ...lot, lot: 'P-019', received: null, notes: 'no day' },
  { ...lot, lot: 'P-020', state: 'Mouldy', notes: 'no such state' },
  { ...lot, lot: 'P-021', cost: -5, notes: 'a negative cost' },
  { ...lot, lot: null, notes: 'fine: the identifier is filled in later' },
];

export const DAMAGED_TISSUE: readonly LotRow[] = [
  { ...lot, lot: 'T-001', material: 'kozo tissue', quantity: 10, unit: 'sheet', notes: 'fine' },
];

const A_DAY: CellWrite = { kind: 'number', number: 46_118 };

/** Quantity is formatted as a date in this table: the spreadsheet made a day of what was typed. */
export const DAMAGED_SUNDRIES: readonly LotRow[] = [
  { ...lot, lot: 'S-001', quantity: A_DAY, notes: 'a date as quantity' },
];

/** Cost is a formula of which the file holds no result. */
export const DAMAGED_RELEASE_PAPER: readonly LotRow[] = [
  { ...lot, lot: 'R-001', notes: 'a formula without result as cost' },
];

/** The column Unit was deleted. */
export const DAMAGED_HOUSING: readonly LotRow[] = [
  { ...lot, lot: 'H-001', notes: 'the column Unit is missing' },
];

const use = { date: '2026-11-02', kind: 'Use', lot: 'P-001', quantity: 5, unit: 'g', job: 'J-001' } as const;

export const DAMAGED_MOVEMENTS: readonly MovementRow[] = [
  { ...use, movement: 'M-001', entry: 'E-001', note: 'fine' },
  { ...use, movement: 'M-001', note: 'movement named twice' },
  { ...use, movement: 'M-003', lot: 'P-909', note: 'unknown lot' },
  { ...use, movement: 'M-004', job: 'J-909', note: 'unknown job' },
  { ...use, movement: 'M-005', item: 'letter Z', note: 'unknown item' },
  { ...use, movement: 'M-006', entry: 'E-909', note: 'unknown entry' },
  { ...use, movement: 'M-007', kind: 'Make', into: 'P-908', note: 'made into an unknown lot' },
  { ...use, movement: 'M-008', offcut: 'C-909', note: 'unknown offcut' },
  { ...use, movement: 'M-009', quantity: -5, reverses: 'M-909', note: 'reverses an unknown row' },
  { ...use, movement: 'M-010', quantity: -5, note: 'negative, reverses nothing' },
  { ...use, movement: 'M-011', note: 'fine' },
  { ...use, movement: 'M-012', date: '2026-11-03', quantity: -5, reverses: 'M-011', note: 'fine' },
  {
    ...use,
    movement: 'M-013',
    date: '2026-11-04',
    quantity: -5,
    reverses: 'M-011',
    note: 'a second reversal',
  },
  { ...use, movement: 'M-014', date: '2026-11-05', reverses: 'M-012', note: 'reverses a reversal' },
  { ...use, movement: 'M-015', date: '2026-11-05', note: 'fine' },
  {
    ...use,
    movement: 'M-016',
    date: '2026-11-04',
    quantity: -5,
    reverses: 'M-015',
    note: 'reverses before it was',
  },
  {
    ...use,
    movement: 'M-017',
    quantity: -4,
    reverses: 'M-015',
    date: '2026-11-06',
    note: 'reverses another quantity',
  },
  {
    ...use,
    movement: 'M-018',
    quantity: -5,
    lot: 'P-010',
    reverses: 'M-015',
    date: '2026-11-06',
    note: 'reverses on another lot',
  },
  { ...use, movement: 'M-019', unit: 'sheet', note: "a unit that doesn't lead to g" },
  { ...use, movement: 'M-020', unit: 'spoon', note: 'unknown unit' },
  { ...use, movement: 'M-021', kind: 'Borrow', note: 'no such kind' },
  { ...use, movement: 'M-022', lotIs: 'perhaps', note: 'no such word' },
  { ...use, movement: 'M-023', date: '2026-01-05', note: 'before the lot was received' },
  { ...use, movement: 'M-024', date: null, note: 'no day' },
  { ...use, movement: 'M-025', date: 'last Monday', note: 'no date' },
  { ...use, movement: 'M-026', lot: 'P-002', note: "on a lot that can't be read: said there once" },
  { ...use, movement: 'M-027', quantity: null, note: 'no quantity' },
  { ...use, movement: 'M-028', posted: '2026-13-01', note: 'posted on no day' },
];

export const DAMAGED_PLACES: readonly SampleRow<typeof placesTable>[] = [
  { storage: 'Room', cold: 'no', walkingOrder: 1 },
  { storage: 'room', cold: 'no', walkingOrder: 2 },
  { storage: 'Cellar', cold: 'sometimes', walkingOrder: 'last' },
];

export const DAMAGED_OFFCUTS: readonly SampleRow<typeof offcutsTable>[] = [
  { offcut: 'C-001', lot: 'T-001', width: 20, height: 30 },
  { offcut: 'C-002', lot: 'T-909', width: 20, height: 30 },
  { offcut: 'C-003', lot: 'T-001', width: 0, height: 30 },
  { offcut: 'C-001', lot: 'T-001', width: 10, height: 30 },
];
