import type { Exact } from './exact-number.ts';
import type { Currency } from './money.ts';
import type { ServiceMeasure } from './planning/plan-problem.ts';

/** Which figure a quote takes first for what a material costs. */
export const COST_BASES = ['lots', 'replacement'] as const;
export type CostBasis = (typeof COST_BASES)[number];

/** What the Settings table says, with the usual value where it says nothing. */
export interface Settings {
  /** The version of the tables' layout; null where it isn't said. */
  readonly tablesVersion: number | null;
  readonly currency: Currency;
  /** % */
  readonly tax: Exact;
  /** % */
  readonly markup: Exact;
  /** In the currency's main unit; null where bench time isn't charged. */
  readonly benchRatePerHour: Exact | null;
  /** In the currency's main unit. */
  readonly smallestConsumablesCharge: Exact;
  /** How many days ahead a lot that goes off is noticed. */
  readonly warnDays: number;
  /** After how many years a safety data sheet should be looked at again. */
  readonly sdsYears: number;
  /** After how many years a price should be checked again. */
  readonly offerYears: number;
  readonly quoteValidDays: number | null;
  readonly costBasis: CostBasis;
  readonly reviewDays: number;
  readonly orderCoverDays: number;
  /** What a service level in Materials means. */
  readonly serviceMeans: ServiceMeasure;
  /** What keeping stock costs in a year, in % of what it is worth. */
  readonly holdingPercent: Exact;
}
