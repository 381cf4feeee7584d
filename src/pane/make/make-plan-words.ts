import { spokenDay } from '../../core/day.ts';
import { exactWords, plannedWords } from '../../core/forecast/planned-words.ts';
import type { LateServing, MakePlan, OtherWay, PlannedBatch } from '../../core/make-plan/make-plan.ts';
import { counted } from '../../core/wording.ts';
import { isSome } from '../planning/planned-words.ts';

/** For which jobs a batch is, each with its treatment, day and quantity. */
export function servingsInWords({ servings }: PlannedBatch, unit: string): string[] {
  return servings.map(
    ({ job, what, day, quantity }) =>
      `${exactWords(quantity, unit)} for ${job}, ${what}, on ${spokenDay(day)}`,
  );
}

/** When a batch is ready where that is later, until when it is good, and what of it nobody needs. */
export function batchInWords({ makeOn, readyOn, goodUntil, waste }: PlannedBatch, unit: string): string {
  const ready = readyOn > makeOn ? `Ready on ${spokenDay(readyOn)}. ` : '';
  const good = goodUntil === null ? 'It keeps' : `Good until ${spokenDay(goodUntil)}`;
  return `${ready}${good}${isSome(waste) ? `; ${plannedWords(waste, unit)} of it nobody needs` : ''}.`;
}

/** That something can't be ready on its day any more. */
export function lateInWords({ job, what, day, quantity, readyOn }: LateServing, unit: string): string {
  return `${job}, ${what}, needs ${exactWords(quantity, unit)} on ${spokenDay(day)}: it can be ready on ${spokenDay(readyOn)} at the earliest.`;
}

/** That nothing can be planned, as what is made goes off before it is ready. */
export function unservedInWords({ recipe }: MakePlan): string {
  return `By ${recipe} a batch goes off before it is ready: look at its lives and at Ready after hours in Recipes.`;
}

/** A way of making a material, with what it comes to. */
export interface WayInWords {
  readonly name: string;
  readonly batches: string;
  readonly minutes: string;
  /** In coins; null where bench time isn't charged. */
  readonly effort: number | null;
  readonly waste: string;
  /** In coins; null where the ingredients have no price, or nothing is thrown away. */
  readonly wasteCost: number | null;
  /** What speaks against it; null where nothing does. */
  readonly against: string | null;
}

/** The plan beside the two other ways. */
export function waysInWords(plan: MakePlan, unit: string): WayInWords[] {
  return [
    wayInWords('As planned here', { cost: plan.cost, unserved: [] }, unit),
    wayInWords('A batch for each job', plan.forEachJob, unit),
    wayInWords('Once a week', plan.weekly, unit),
  ];
}

function wayInWords(name: string, { cost, unserved }: OtherWay, unit: string): WayInWords {
  const { batches, minutes, effort, waste, wasteCost } = cost;
  return {
    name,
    batches: counted(batches, 'batch', 'batches'),
    minutes: `${Math.round(minutes)} min`,
    effort,
    waste: isSome(waste) ? plannedWords(waste, unit) : 'nothing',
    wasteCost: isSome(waste) ? wasteCost : null,
    against: unserved.length === 0 ? null : `nothing fresh on ${counted(unserved.length, 'day')}`,
  };
}
