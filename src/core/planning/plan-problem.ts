import type { Day } from '../day.ts';

/**
 * All that planning needs of a studio, as plain values that can be handed to another thread.
 * Quantities are numbers in the material's stock unit, money is in coins (see money.ts), times in days.
 * Nothing here is the truth: every figure comes from the ledger, and what is planned is written through it.
 */
export interface PlanProblem {
  readonly today: Day;
  /** The last day that is looked at. */
  readonly until: Day;
  readonly reviewDays: number;
  readonly coverDays: number;
  /** What a minute at the bench costs; null where bench time isn't charged. */
  readonly minuteCost: number | null;
  /** What a service level of a material means. */
  readonly serviceMeans: ServiceMeasure;
  /** What holding stock costs in a year, in % of what it is worth. */
  readonly holdingPercent: number;
  /** The materials that are counted, in the order of their rows. */
  readonly materials: readonly MaterialProblem[];
  readonly suppliers: readonly SupplierProblem[];
  /** The jobs booked or on the bench that have something planned. */
  readonly jobs: readonly JobProblem[];
}

export const SERVICE_MEASURES = ['chance of no shortage', 'share served'] as const;
/** The chance that nothing runs out before what was ordered arrives, or the share of what is needed that is there. */
export type ServiceMeasure = (typeof SERVICE_MEASURES)[number];

export interface MaterialProblem {
  readonly material: string;
  /** The name of the stock unit. */
  readonly unit: string;
  /** It comes in whole pieces: sheets, rolls, each. */
  readonly inPieces: boolean;
  /** What was used on each day up to and with today, the earliest first; see dailyDemand. */
  readonly daily: readonly number[];
  /** The lots that may be used today, in draw order, and those that are received later. */
  readonly lots: readonly LotSupply[];
  readonly arrivals: readonly Arrival[];
  /** What is known to be needed: log entries not drawn first, then plan rows by day. */
  readonly demands: readonly KnownDemand[];
  /** How long what comes from a supplier keeps sealed; null where it keeps. */
  readonly lifeSealedDays: number | null;
  /** How long it keeps once it is opened; null where that doesn't matter. */
  readonly lifeOpenedDays: number | null;
  readonly keepAtLeast: number;
  /** null where nothing is said */
  readonly keepAtMost: number | null;
  /** In %, above 0 and below 100; null where none is asked for. */
  readonly servicePercent: number | null;
  /** The supplier of the Materials row; null where none is named or known. */
  readonly supplier: string | null;
  readonly leadDays: number;
  /** The standard deviation of the lead time. */
  readonly leadSpreadDays: number;
  /** Where it is made here. */
  readonly recipe: RecipeProblem | null;
  readonly offers: readonly OfferProblem[];
  /** What one stock unit costs to get again; null where nothing gives a figure. See replacementPrice. */
  readonly unitCost: number | null;
  /** What the plain formula of reorder.ts says. */
  readonly plain: PlainReorder;
}

/** The plain formula's answer, as `check` gives it. */
export interface PlainReorder {
  readonly level: number;
  readonly suggestedOrder: number;
  readonly onOrder: number;
  readonly usable: number;
}

export interface LotSupply {
  readonly lot: string;
  /** What is left of it and may still be drawn. */
  readonly quantity: number;
  /** From when it can be used: today, or the day on which it is received. */
  readonly from: Day;
  /** The last day on which it may be used, as it stands today; null where it keeps. */
  readonly goodUntil: Day | null;
  /** How many days it keeps from the day on which it is first drawn; null where it is open already, or that doesn't matter. */
  readonly lifeOpenedDays: number | null;
  /** What one stock unit of it is worth; null for a lot without a cost. */
  readonly unitWorth: number | null;
}

/** What is on its way. */
export interface Arrival {
  readonly order: string;
  readonly line: string | null;
  readonly supplier: string;
  /** When it should be here; null where nobody knows, and it isn't counted on. A day that has passed counts as today's next. */
  readonly day: Day | null;
  readonly quantity: number;
}

export interface KnownDemand {
  /** Never before today: what is overdue or undated counts as today. */
  readonly day: Day;
  readonly quantity: number;
  readonly kind: 'planned' | 'not drawn';
  /** The identifier of the job; a log entry's too. */
  readonly job: string;
  /** The treatment. */
  readonly what: string;
}

/** How a material is made here, for one stock unit of it. */
export interface RecipeProblem {
  readonly recipe: string;
  /** How many days it keeps: 0 means the day itself only. null where it keeps. The material's own sealed life counts too. */
  readonly lifeDays: number | null;
  /** It keeps no longer than its parts made here. */
  readonly limitedByParts: boolean;
  /** The least that is made at a time, in the stock unit; 0 where there is no least. */
  readonly smallestBatch: number;
  /** Of bench work for one batch, whatever its size. */
  readonly minutes: number;
  /** How many days before its use it must be made: 0 where it is ready on the same day. See readyDaysOf. */
  readonly readyDays: number;
  readonly parts: readonly { readonly material: string; readonly perUnit: number }[];
}

/** One row of Offers. */
export interface OfferProblem {
  /** By which the row is found again: `table row`, such as `Offers 7`. */
  readonly offer: string;
  readonly supplier: string;
  /** In the material's stock unit. */
  readonly packQuantity: number;
  /** The pack as the row says it: `10 sheets`. */
  readonly packWords: string;
  /** In coins, whole. */
  readonly packPrice: number;
  /** The least number of packs for which this price holds, of all packs of this row; at least 1. */
  readonly fromPacks: number;
}

export interface SupplierProblem {
  readonly supplier: string;
  readonly leadDays: number;
  /** Coins; 0 where there is none. */
  readonly minimumOrder: number;
  /** Coins; 0 where there is none. */
  readonly carriage: number;
  /** The value of goods, in coins, from which on carriage isn't charged; null where it always is. */
  readonly carriageFreeOver: number | null;
}

export interface JobProblem {
  readonly job: string;
  readonly due: Day | null;
  /** What is still to be done, by day. */
  readonly rows: readonly JobRow[];
}

export interface JobRow {
  readonly item: string | null;
  readonly treatment: string;
  /** Planned for; null where no day is given. */
  readonly plannedFor: Day | null;
  /** Drying, pressing: after it nothing else is done to the item. */
  readonly standingHours: number;
  readonly minutes: number;
}
