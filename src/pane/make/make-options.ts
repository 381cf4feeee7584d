import { keyOf } from '../../core/identifier.ts';
import type { Lot, Material, Recipe, Studio, Treatment } from '../../core/studio.ts';
import { findUnit, UNIT_NAMES, type Unit } from '../../core/unit.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { treatmentOptions } from '../log/log-options.ts';
import type { ComboboxOption } from '../parts/combobox-model.ts';

/** What a recipe makes; null where that is no material of the workbook. */
export function madeBy(recipe: Recipe, studio: Studio): Material | null {
  return studio.materialsByKey.get(keyOf(recipe.record.makes)) ?? null;
}

/** The recipes, with what each makes and how much of it. */
export function recipeOptions(studio: Studio): ComboboxOption[] {
  return studio.recipes.map(({ name, record }) => {
    const yields = `yields ${spokenQuantity(record.yield, record.unit)}`;
    const isNamedAlike = keyOf(name) === keyOf(record.makes);
    return { value: name, detail: isNamedAlike ? yields : `${yields} of ${record.makes}` };
  });
}

/**
 * The recipe that a text means: by its own name; else, where a jar was scanned or a material typed, the one by which
 * that is made.
 */
export function recipeMeant(studio: Studio, text: string): Recipe | null {
  const key = keyOf(text);
  if (key === '') return null;
  const lot = studio.lotsByKey.get(key);
  return (
    studio.recipesByKey.get(key) ??
    lot?.recipe ??
    lot?.material.recipe ??
    studio.materialsByKey.get(key)?.recipe ??
    null
  );
}

/** The units in which an amount of what a recipe makes can be given: its own first. */
export function unitOptions(recipe: Recipe, made: Material | null): { value: string; label: string }[] {
  const own = recipe.record.unit;
  const others = UNIT_NAMES.flatMap((name) => {
    const unit = findUnit(name);
    return unit === null || unit.name === own.name || !leadsTo(made, own, unit) ? [] : [unit];
  });
  const near = others.toSorted(
    (a, b) => Number(b.dimension === own.dimension) - Number(a.dimension === own.dimension),
  );
  return [own, ...near].map(({ name }) => ({ value: name, label: name }));
}

function leadsTo(made: Material | null, from: Unit, to: Unit): boolean {
  return made !== null && made.converter.factor(from, to) !== null;
}

/** The places, with what they are good for. */
export function placeOptions(studio: Studio): ComboboxOption[] {
  return studio.places.flatMap(({ storage, cold, dark }) => {
    if (storage === null) return [];
    const kinds = [cold === true ? 'cold' : null, dark === true ? 'dark' : null].filter(
      (kind) => kind !== null,
    );
    return [{ value: storage, ...(kinds.length === 0 ? {} : { detail: kinds.join(', ') }) }];
  });
}

/** The place where the last batch of a recipe went; blank where that is not known. */
export function usualPlace(studio: Studio, recipe: Recipe): string {
  const last = studio.lots.reduce<Lot | null>((latest, lot) => {
    if (lot.recipe !== recipe || lot.place === null) return latest;
    return latest === null || lot.record.received >= latest.record.received ? lot : latest;
  }, null);
  return last?.place?.storage ?? '';
}

/** Whether a treatment takes a material by its usage rates. */
export function takesMaterial(treatment: Treatment, material: Material): boolean {
  return treatment.rates.some((rate) => rate.material === material);
}

/** The treatments for which a material can be poured: those that take it, the ones planned for the job first. */
export function pourOptions(studio: Studio, material: Material, job: string): ComboboxOption[] {
  return treatmentOptions(studio, job).filter(({ value }) => {
    const treatment = studio.treatmentsByKey.get(keyOf(value));
    return treatment !== undefined && takesMaterial(treatment, material);
  });
}
