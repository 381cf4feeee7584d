import type { AsUsed } from './as-used.ts';
import type { Converter } from './conversion.ts';
import type { Day } from './day.ts';
import type { Exact } from './exact-number.ts';
import type {
  CountRecord,
  EntryRecord,
  ItemRecord,
  JobRecord,
  LotRecord,
  MaterialRecord,
  OfferRecord,
  OrderLineRecord,
  OrderRecord,
  PlaceRecord,
  PlanRecord,
  QuoteRecord,
  RecipePartRecord,
  RecipeRecord,
  Sharing,
  SupplierRecord,
  TreatmentRecord,
  UsageRateRecord,
} from './records.ts';
import type { Settings } from './settings.ts';
import type { Unit } from './unit.ts';

/** The records with their references followed: what the workbook says, as things that know each other. */

/** The job that takes work which is nobody's. */
export const STUDIO_JOB = 'STUDIO';

export interface Material {
  readonly record: MaterialRecord;
  readonly name: string;
  readonly unit: Unit;
  readonly counted: boolean;
  readonly converter: Converter;
  readonly supplier: SupplierRecord | null;
  readonly offers: readonly OfferRecord[];
  /** The recipe by which it is made here: the first that makes it. */
  readonly recipe: Recipe | null;
}

export interface Recipe {
  readonly record: RecipeRecord;
  readonly name: string;
  /** Filled once all materials are known. */
  readonly parts: RecipePart[];
}

export interface RecipePart {
  readonly record: RecipePartRecord;
  readonly material: Material;
}

export interface Lot {
  readonly record: LotRecord;
  /** The identifier, or the sheet row number where the row has none. */
  readonly name: string;
  readonly material: Material;
  readonly converter: Converter;
  readonly recipe: Recipe | null;
  /** The row of the place where it is kept; null where none is named, or the name leads nowhere. */
  readonly place: PlaceRecord | null;
  /** Kept where it is cold. */
  readonly cold: boolean;
  /** Kept where it is dark. */
  readonly dark: boolean;
  /** A date, life, state or recipe that bears on whether it can be used can't be read or found. */
  readonly doubtful: boolean;
}

export interface UsageRate {
  readonly record: UsageRateRecord;
  readonly material: Material;
  readonly fixedPer: Sharing;
}

export interface Treatment {
  readonly record: TreatmentRecord;
  readonly name: string;
  /** In the order of their rows, by which the first of several alternatives is taken. */
  readonly rates: readonly UsageRate[];
}

export interface Entry {
  readonly record: EntryRecord;
  /** The identifier, or the sheet row number where the row has none. */
  readonly name: string;
  /** Null for a row without an identifier, or with one that an earlier row has: nothing can be drawn for it. */
  readonly key: string | null;
  readonly treatment: Treatment;
  /** What a person says was really used; each material's amounts stand in for all its rates. */
  readonly asUsed: readonly AsUsed[];
}

export interface PlanRow {
  readonly record: PlanRecord;
  readonly job: JobRecord | null;
  readonly treatment: Treatment;
}

export interface OrderLine {
  readonly record: OrderLineRecord;
  readonly order: OrderRecord;
  readonly material: Material;
  /** What it brings in all, in the material's stock unit. */
  readonly quantity: Exact;
  readonly expected: Day | null;
}

export interface Studio {
  readonly settings: Settings;
  readonly materials: readonly Material[];
  readonly lots: readonly Lot[];
  readonly treatments: readonly Treatment[];
  readonly entries: readonly Entry[];
  readonly plan: readonly PlanRow[];
  readonly orderLines: readonly OrderLine[];
  readonly suppliers: readonly SupplierRecord[];
  readonly orders: readonly OrderRecord[];
  readonly jobs: readonly JobRecord[];
  readonly items: readonly ItemRecord[];
  readonly places: readonly PlaceRecord[];
  readonly recipes: readonly Recipe[];
  readonly counts: readonly CountRecord[];
  readonly quotes: readonly QuoteRecord[];
  /** By key (see keyOf). */
  readonly materialsByKey: ReadonlyMap<string, Material>;
  readonly lotsByKey: ReadonlyMap<string, Lot>;
  readonly treatmentsByKey: ReadonlyMap<string, Treatment>;
  readonly jobsByKey: ReadonlyMap<string, JobRecord>;
  readonly recipesByKey: ReadonlyMap<string, Recipe>;
  readonly suppliersByKey: ReadonlyMap<string, SupplierRecord>;
  readonly ordersByKey: ReadonlyMap<string, OrderRecord>;
  readonly placesByKey: ReadonlyMap<string, PlaceRecord>;
  readonly lotsOfMaterial: ReadonlyMap<Material, readonly Lot[]>;
  readonly entriesOfTreatment: ReadonlyMap<Treatment, readonly Entry[]>;
}
