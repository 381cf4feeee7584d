import type { BatchToMake } from '../../actions/make-batch.ts';
import { noSuchName } from '../../actions/nearest-name.ts';
import { type Day, parseDay } from '../../core/day.ts';
import { keyOf } from '../../core/identifier.ts';
import type { Material, Recipe, Studio, Treatment } from '../../core/studio.ts';
import { findUnit, type Unit } from '../../core/unit.ts';
import { extentMissing, nameProblems, numberIn, type Problem } from '../log/log-request.ts';
import { isPoured, type MakeDraft } from './make-draft.ts';
import { madeBy, takesMaterial, usualPlace } from './make-options.ts';

/** A field of the form besides those of the ingredients' lines. */
export type MakeField =
  | 'recipe'
  | 'amount'
  | 'date'
  | 'place'
  | 'yielded'
  | 'pour-job'
  | 'pour-item'
  | 'pour-treatment'
  | 'pour-extent'
  | 'pour-amount';

/** The form but for its lines. */
export interface ReadMake {
  readonly recipe: Recipe | null;
  readonly material: Material | null;
  readonly unit: Unit | null;
  /** The batch by its recipe; null until recipe, amount, day and place are told. */
  readonly request: BatchToMake | null;
  readonly problems: readonly Problem<MakeField>[];
}

/** Reads the form but for its lines: what is to be made by the recipe, and what is wrong. */
export function readMake(draft: MakeDraft, studio: Studio, today: Day): ReadMake {
  const recipe = studio.recipesByKey.get(keyOf(draft.recipe)) ?? null;
  if (recipe === null) {
    return { recipe, material: null, unit: null, request: null, problems: [noRecipe(draft.recipe, studio)] };
  }
  const material = madeBy(recipe, studio);
  const unit = (draft.unit === null ? null : findUnit(draft.unit)) ?? recipe.record.unit;
  const amountAsked = `Say how much is to be made: a number, in ${unit.name}.`;
  const amount =
    draft.amount === null
      ? { number: recipe.record.yield, problems: [] }
      : numberIn('amount', draft.amount, amountAsked, false);
  const yielded = numberIn('yielded', draft.yielded, null, false);
  const date = draft.date === null ? today : parseDay(draft.date);
  const place = (draft.place ?? usualPlace(studio, recipe)).trim();
  const pour = readPour(draft, studio, material, date ?? today);
  const headProblems: Problem<MakeField>[] = [
    ...amount.problems,
    ...(date === null ? [noDay(draft.date ?? '')] : []),
    ...placeProblems(place, studio),
  ];
  const problems = [...headProblems, ...yielded.problems, ...pour.problems];
  const isTold = headProblems.length === 0 && amount.number !== null && date !== null;
  const request: BatchToMake | null = isTold
    ? {
        recipe: recipe.name,
        amount: amount.number,
        unit,
        yielded: yielded.number,
        date,
        storedAt: orNull(place),
        asUsed: [],
        by: orNull(draft.by),
        notes: orNull(draft.notes),
        pour: pour.pour,
      }
    : null;
  return { recipe, material, unit, request, problems };
}

function orNull(text: string): string | null {
  return text.trim() === '' ? null : text.trim();
}

function noRecipe(name: string, studio: Studio): Problem<MakeField> {
  if (name.trim() === '') return { field: 'recipe', message: 'Say what is to be made.', isBlank: true };
  const names = studio.recipes.map((recipe) => recipe.name);
  const { message } = noSuchName('recipe', name.trim(), 'Recipes', names);
  return { field: 'recipe', message, isBlank: false };
}

function noDay(date: string): Problem<MakeField> {
  return {
    field: 'date',
    message: 'Say on which day it is made: this is no day that can be read.',
    isBlank: date === '',
  };
}

/** A place that Places doesn't name says nothing about how long what is kept there is good. */
function placeProblems(place: string, studio: Studio): Problem<MakeField>[] {
  if (place === '' || studio.placesByKey.has(keyOf(place))) return [];
  const names = studio.places.map(({ storage }) => storage ?? '');
  return [{ field: 'place', message: noSuchName('place', place, 'Places', names).message, isBlank: false }];
}

interface ReadPour {
  /** Null where nothing is poured, or it isn't told yet what for. */
  readonly pour: BatchToMake['pour'];
  readonly problems: readonly Problem<MakeField>[];
}

function readPour(draft: MakeDraft, studio: Studio, material: Material | null, date: Day): ReadPour {
  if (!isPoured(draft)) return { pour: null, problems: [] };
  const { job, item, treatment, extent, amount } = draft.pour;
  const treated = studio.treatmentsByKey.get(keyOf(treatment)) ?? null;
  const read = numberIn('pour-extent', extent, extentMissing(treated), false);
  const poured = numberIn('pour-amount', amount, null, false);
  const names = { job: job.trim(), item: orNull(item), treatment: treatment.trim() };
  const problems: Problem<MakeField>[] = [
    ...nameProblems(names, studio, date).map((problem) => ({
      ...problem,
      field: `pour-${problem.field}` as const,
    })),
    ...(treated === null || material === null || takesMaterial(treated, material)
      ? []
      : [notTaken(treated, material)]),
    ...read.problems,
    ...poured.problems,
  ];
  if (problems.length > 0 || read.number === null) return { pour: null, problems };
  return { pour: { ...names, extent: read.number, amount: poured.number }, problems };
}

function notTaken(treatment: Treatment, material: Material): Problem<MakeField> {
  return {
    field: 'pour-treatment',
    message: `${treatment.name} takes no ${material.name} by its usage rates: a treatment that does is right.`,
    isBlank: false,
  };
}
