import { type Day, spokenDay } from '../../core/day.ts';
import { exactWords, plannedWords } from '../../core/forecast/planned-words.ts';
import type { MaterialPlan, PlanAnswer } from '../../core/planning/plan-answer.ts';
import type { FirstShort } from '../../core/projection/projection.ts';
import { counted } from '../../core/wording.ts';
import { isSome } from '../planning/planned-words.ts';

/** A material that runs out, or is down to where it should be ordered again. */
export interface Pressing {
  readonly material: string;
  /** The first day on which some is missing; null where it is only down. */
  readonly runsOut: Day | null;
  /** That it runs out, and whom that hits, in a sentence; null where it is only down. */
  readonly hits: string | null;
  /** How much there is beside the order level. */
  readonly standing: string;
}

/** What presses, most pressing first: by the day on which it runs out, then by how far it is down. */
export function pressingIn({ materials }: PlanAnswer): Pressing[] {
  return materials
    .filter((plan) => plan.projection.firstShort !== null || isDown(plan))
    .toSorted((a, b) => dayOf(a) - dayOf(b) || shareOf(a) - shareOf(b))
    .map(pressingOf);
}

function pressingOf(plan: MaterialPlan): Pressing {
  const { material, unit, usable, onOrder, level, projection, make } = plan;
  const { firstShort } = projection;
  const coming = isSome(onOrder) ? ` and ${plannedWords(onOrder, unit)} on order` : '';
  const verb = make === null ? 'order' : 'make some';
  return {
    material,
    runsOut: firstShort?.day ?? null,
    hits: firstShort === null ? null : hitInWords(firstShort, unit),
    standing: `${plannedWords(usable, unit)} usable${coming}${isSome(level.level) ? `; ${verb} when down to ${plannedWords(level.level, unit)}` : ''}.`,
  };
}

function hitInWords({ day, job, missing }: FirstShort, unit: string): string {
  return job === null
    ? `Runs out on ${spokenDay(day)} by its usual use.`
    : `Runs out on ${spokenDay(day)}: ${job} lacks ${exactWords(missing, unit)}.`;
}

function isDown({ usable, onOrder, level }: MaterialPlan): boolean {
  return isSome(level.level) && !isSome(usable + onOrder - level.level);
}

function dayOf({ projection }: MaterialPlan): number {
  return projection.firstShort?.day ?? Number.MAX_SAFE_INTEGER;
}

function shareOf({ usable, onOrder, level }: MaterialPlan): number {
  return isSome(level.level) ? (usable + onOrder) / level.level : Number.MAX_SAFE_INTEGER;
}

/** Something that goes off before anybody needs it. */
export interface GoingOff {
  readonly material: string;
  /** The lot; null for what is still to come. */
  readonly lot: string | null;
  readonly quantity: string;
  readonly goodUntil: Day;
  /** Coins; null where it has no cost. */
  readonly worth: number | null;
}

/** What will go off unused, by its last day. */
export function goingOffIn({ materials }: PlanAnswer): GoingOff[] {
  return materials
    .flatMap(({ material, unit, projection }) =>
      projection.goesOff
        .filter(({ quantity }) => isSome(quantity))
        .map(({ lot, goodUntil, quantity, worth }) => ({
          material,
          lot,
          goodUntil,
          quantity: plannedWords(quantity, unit),
          worth,
        })),
    )
    .toSorted((a, b) => a.goodUntil - b.goodUntil);
}

/** How many of them there are, and what they are worth together, as far as that is known. */
export function goingOffInAll(goingOff: readonly GoingOff[]): {
  readonly lots: string;
  readonly worth: number;
} {
  return {
    lots: counted(goingOff.length, 'lot'),
    worth: goingOff.reduce((total, { worth }) => total + (worth ?? 0), 0),
  };
}

/** The days that a plan looks at, for people. */
export function outlookInWords({ until }: PlanAnswer): string {
  return `Looked at up to ${spokenDay(until)}.`;
}
