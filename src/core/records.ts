import type { Day } from './day.ts';
import type { Exact } from './exact-number.ts';
import type { Unit } from './unit.ts';

/**
 * The rows of the workbook as checked values: one type per table, blank cells as null.
 * Names that point at another row are still text here; the studio (see studio.ts) finds what they mean.
 */

/** Where a row stands. */
export interface RowPlace {
  readonly table: string;
  /** The body row, counted from 0. */
  readonly row: number;
  /** The row number that the spreadsheet shows. */
  readonly sheetRow: number;
}

/** What every record has. */
export interface Row {
  readonly place: RowPlace;
  /** The columns (by header) of which the cell can't be read; the record holds null there. */
  readonly unreadable: ReadonlySet<string>;
}

export const MATERIAL_KINDS = ['Tissue', 'Paste', 'Buffer', 'Release paper', 'Housing', 'Sundry'] as const;
export const LOT_STATES = ['Usable', 'Set aside', 'Discarded'] as const;
export const MOVEMENT_KINDS = ['Use', 'Waste', 'Make', 'Count', 'Put back', 'Carried'] as const;
export const LOT_CERTAINTIES = ['assumed', 'confirmed'] as const;
export const JOB_STAGES = [
  'Enquiry',
  'Quoted',
  'Booked',
  'On the bench',
  'Finished',
  'Handed back',
  'Declined',
] as const;
export const SHARINGS = ['entry', 'day', 'job'] as const;
export const STAYS = ['in object', 'removed again', 'contact only'] as const;

export type MaterialKind = (typeof MATERIAL_KINDS)[number];
export type LotState = (typeof LOT_STATES)[number];
export type MovementKind = (typeof MOVEMENT_KINDS)[number];
export type LotCertainty = (typeof LOT_CERTAINTIES)[number];
export type JobStage = (typeof JOB_STAGES)[number];
/** What a fixed quantity or a set-up is taken once for. */
export type Sharing = (typeof SHARINGS)[number];

export interface MaterialRecord extends Row {
  readonly material: string | null;
  readonly description: string | null;
  readonly composition: string | null;
  readonly kind: MaterialKind;
  readonly stockUnit: Unit;
  readonly counted: boolean | null;
  readonly sheetWidth: Exact | null;
  readonly sheetHeight: Exact | null;
  readonly grammage: Exact | null;
  readonly density: Exact | null;
  readonly usesPerUnit: Exact | null;
  readonly lifeSealedDays: number | null;
  readonly lifeOpenedDays: number | null;
  readonly phLow: Exact | null;
  readonly phHigh: Exact | null;
  readonly keepAtLeast: Exact | null;
  readonly keepAtMost: Exact | null;
  /** % */
  readonly serviceLevel: Exact | null;
  readonly supplier: string | null;
  readonly hazards: string | null;
  readonly sdsChecked: Day | null;
  /** By which rule it is to be thrown away. */
  readonly disposal: string | null;
}

export interface LotRecord extends Row {
  readonly lot: string | null;
  readonly material: string;
  readonly received: Day;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly cost: Exact | null;
  readonly supplier: string | null;
  readonly supplierLot: string | null;
  readonly useBy: Day | null;
  readonly opened: Day | null;
  /** The day on which somebody tested whether it is still good. */
  readonly retested: Day | null;
  /** Until when that test says it is. */
  readonly retestedUntil: Day | null;
  readonly retestedBy: string | null;
  readonly storedAt: string | null;
  readonly state: LotState | null;
  readonly stateSince: Day | null;
  readonly recipe: string | null;
  readonly order: string | null;
  readonly orderLine: string | null;
  readonly ph: Exact | null;
  /** Of the empty jar, in grams. */
  readonly tare: Exact | null;
  readonly sheetWidth: Exact | null;
  readonly sheetHeight: Exact | null;
  readonly grammage: Exact | null;
  readonly usesPerUnit: Exact | null;
  /** With which posting the row was written, where the program made the lot. */
  readonly posting: string | null;
  readonly notes: string | null;
  readonly left: Exact | null;
  readonly leftAsWritten: Exact | null;
}

export interface MovementRecord extends Row {
  readonly movement: string | null;
  readonly date: Day;
  readonly kind: MovementKind;
  readonly lot: string;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly job: string | null;
  readonly item: string | null;
  readonly entry: string | null;
  readonly lotIs: LotCertainty | null;
  readonly into: string | null;
  readonly offcut: string | null;
  readonly reverses: string | null;
  readonly by: string | null;
  readonly posted: Day | null;
  readonly posting: string | null;
  readonly note: string | null;
}

export interface EntryRecord extends Row {
  readonly entry: string | null;
  readonly date: Day;
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
  readonly extent: Exact;
  readonly minutes: Exact | null;
  /** May end with the amounts that were really used: see as-used.ts. */
  readonly notes: string | null;
  readonly drawn: string | null;
  readonly drawnFor: Exact | null;
}

export interface TreatmentRecord extends Row {
  readonly treatment: string | null;
  readonly extentUnit: string;
  readonly minutesPerExtent: Exact | null;
  readonly setupMinutes: Exact | null;
  readonly setupPer: Sharing | null;
  /** Drying, pressing: how long nothing else is done afterwards. */
  readonly standingHours: Exact | null;
}

export interface UsageRateRecord extends Row {
  readonly treatment: string;
  readonly material: string;
  readonly quantityPerExtent: Exact;
  readonly unit: Unit;
  readonly fixedQuantity: Exact | null;
  readonly fixedPer: Sharing | null;
  /** % */
  readonly waste: Exact | null;
  readonly whole: boolean | null;
  readonly choice: string | null;
}

export interface RecipeRecord extends Row {
  readonly recipe: string | null;
  readonly makes: string;
  readonly yield: Exact;
  readonly unit: Unit;
  readonly lifeDays: number | null;
  readonly lifeColdDays: number | null;
  readonly lifeDarkDays: number | null;
  /** In the recipe's unit. */
  readonly smallestBatch: Exact | null;
  readonly minutes: Exact | null;
  readonly readyAfterHours: Exact | null;
  /** Whether what is made keeps no longer than what it is made of, as far as that was made here too. */
  readonly limitedByParts: boolean | null;
  readonly method: string | null;
  readonly cautions: string | null;
}

export interface RecipePartRecord extends Row {
  readonly recipe: string;
  readonly material: string;
  readonly quantity: Exact;
  readonly unit: Unit;
}

export interface JobRecord extends Row {
  readonly job: string | null;
  readonly object: string | null;
  readonly stage: JobStage | null;
  readonly due: Day | null;
  readonly storedAt: string | null;
}

export interface ItemRecord extends Row {
  readonly job: string;
  readonly item: string | null;
}

export interface PlanRecord extends Row {
  readonly line: string | null;
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
  readonly extent: Exact;
  readonly plannedFor: Day | null;
  readonly done: boolean | null;
}

export interface RemovedRecord extends Row {
  readonly job: string;
  readonly item: string | null;
}

export interface SupplierRecord extends Row {
  readonly supplier: string | null;
  readonly leadTimeDays: Exact | null;
  readonly leadTimeSpreadDays: Exact | null;
  /** The least value of goods that is delivered, in the main unit of the currency, as are the next two. */
  readonly minimumOrder: Exact | null;
  readonly carriage: Exact | null;
  /** The value of goods from which on carriage isn't charged. */
  readonly carriageFreeOver: Exact | null;
}

export interface OfferRecord extends Row {
  readonly supplier: string;
  readonly material: string;
  readonly packQuantity: Exact;
  readonly unit: Unit;
  readonly packPrice: Exact;
  readonly fromPacks: Exact | null;
  readonly checkedOn: Day | null;
  readonly sdsChecked: Day | null;
}

export interface OrderRecord extends Row {
  readonly order: string | null;
  readonly supplier: string;
  readonly orderedOn: Day;
  readonly expected: Day | null;
  readonly state: string | null;
}

export interface OrderLineRecord extends Row {
  readonly order: string;
  readonly line: string | null;
  readonly material: string;
  readonly packs: Exact;
  readonly packQuantity: Exact;
  readonly unit: Unit;
  /** What one pack costs, without carriage. */
  readonly packPrice: Exact | null;
}

export interface QuoteRecord extends Row {
  readonly quote: string | null;
  readonly version: number;
  readonly job: string;
  readonly madeOn: Day;
  readonly state: string | null;
  readonly currency: string | null;
  /** In the main unit of its own currency. */
  readonly total: Exact | null;
}

export interface QuoteLineRecord extends Row {
  readonly quote: string;
  readonly version: number;
  readonly line: string | null;
  readonly item: string | null;
  readonly treatment: string | null;
  readonly material: string | null;
}

export interface PlaceRecord extends Row {
  readonly storage: string | null;
  readonly cold: boolean | null;
  readonly dark: boolean | null;
  readonly walkingOrder: Exact | null;
}

export interface OffcutRecord extends Row {
  readonly offcut: string | null;
  readonly lot: string;
}

/** One lot as it was found in a stocktake; it changes no figure until it is posted. */
export interface CountRecord extends Row {
  readonly count: string | null;
  readonly stocktake: string;
  readonly lot: string;
  readonly countedOn: Day;
  readonly quantity: Exact;
  readonly unit: Unit;
  /** What stood on the balance, jar and all, in grams. */
  readonly gross: Exact | null;
  /** What the ledger gave for that day when it was counted, in the lot's unit. */
  readonly leftThen: Exact | null;
  /** What the ledger gave then for the end of the day before, in the lot's unit. */
  readonly leftDayBefore: Exact | null;
  readonly by: string | null;
  /** The posting that took it into the ledger; null while it waits. */
  readonly posting: string | null;
  readonly note: string | null;
}

/** All rows of the workbook that could be read, table by table, in the order of their rows. */
export interface Records {
  readonly materials: readonly MaterialRecord[];
  readonly lots: readonly LotRecord[];
  readonly movements: readonly MovementRecord[];
  readonly entries: readonly EntryRecord[];
  readonly treatments: readonly TreatmentRecord[];
  readonly usageRates: readonly UsageRateRecord[];
  readonly recipes: readonly RecipeRecord[];
  readonly recipeParts: readonly RecipePartRecord[];
  readonly jobs: readonly JobRecord[];
  readonly items: readonly ItemRecord[];
  readonly plan: readonly PlanRecord[];
  readonly removed: readonly RemovedRecord[];
  readonly suppliers: readonly SupplierRecord[];
  readonly offers: readonly OfferRecord[];
  readonly orders: readonly OrderRecord[];
  readonly orderLines: readonly OrderLineRecord[];
  readonly quotes: readonly QuoteRecord[];
  readonly quoteLines: readonly QuoteLineRecord[];
  readonly places: readonly PlaceRecord[];
  readonly offcuts: readonly OffcutRecord[];
  readonly counts: readonly CountRecord[];
}

/** Rows of which nothing but their identifier could be read, so that what names them is not also noticed. */
export type UnreadableIdentifiers = Readonly<Partial<Record<keyof Records, ReadonlySet<string>>>>;

/** How a row is called: by its identifier, or by its sheet row number where it has none. */
export function nameOf(identifier: string | null, row: Row): string {
  return identifier ?? String(row.place.sheetRow);
}

/** Whether any of some cells of a row can't be read. */
export function isUnreadable(record: Row, headers: readonly string[]): boolean {
  return record.unreadable.size > 0 && headers.some((header) => record.unreadable.has(header));
}
