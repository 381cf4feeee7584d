import type { AmountUsed } from '../core/as-used.ts';
import type { BatchPart } from '../core/batch.ts';
import type { Day } from '../core/day.ts';
import type { Exact } from '../core/exact-number.ts';
import type { Coins } from '../core/money.ts';
import type { Recipe } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';

/** A batch to be made by a recipe, in a person's words. */
export interface BatchToMake {
  readonly recipe: string;
  /** What is meant to be made, in `unit`: the ingredients are scaled to it. */
  readonly amount: Exact;
  readonly unit: Unit;
  /** What was weighed or measured in the end, in `unit`; null where it is as meant. */
  readonly yielded: Exact | null;
  /** The day of making. */
  readonly date: Day;
  /** A place of Places, by which it keeps longer or shorter. */
  readonly storedAt: string | null;
  /** What was really taken of an ingredient, instead of what the recipe says. */
  readonly asUsed: readonly AmountUsed[];
  readonly by: string | null;
  readonly notes: string | null;
  /** The treatment for which it is poured out at once; null where it is only made. */
  readonly pour: BatchPour | null;
}

/** A treatment that uses a batch on the day it is made. */
export interface BatchPour {
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
  readonly extent: Exact;
  /** In the unit of the batch; null for the whole yield. */
  readonly amount: Exact | null;
}

/** What making a batch would take and come to, before anything is written. */
export interface BatchPlan {
  readonly ok: true;
  readonly recipe: Recipe;
  readonly date: Day;
  readonly amount: Exact;
  readonly unit: Unit;
  /** What the new lot would hold, in `unit`. */
  readonly yielded: Exact;
  readonly parts: readonly BatchPart[];
  /** Of all that would be taken; null as soon as a lot without a cost is among it. */
  readonly cost: Coins | null;
  /** Null where nothing limits it. */
  readonly goodUntil: Day | null;
  /** In words: why it is good until then, or that nothing says that it goes off. */
  readonly goodUntilBecause: string;
  readonly readyAfterHours: Exact | null;
  readonly remarks: readonly string[];
}
