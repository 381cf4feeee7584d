import type { Converter } from './conversion.ts';
import { keyOf } from './identifier.ts';
import type { Index } from './identities.ts';
import { type Notice, notice } from './notice.ts';
import type { Row } from './records.ts';
import type { Lot, Material, Recipe, RecipePart, UsageRate } from './studio.ts';
import type { Unit } from './unit.ts';
import { unitFor } from './wording.ts';

/** A notice where a row's unit doesn't lead to its material's stock unit, so that totals miss the row. */
export function missingConversion(
  material: Material,
  converter: Converter,
  unit: Unit,
  row: Row,
  subject: string | null,
): Notice[] {
  if (converter.factor(unit, material.unit) !== null) return [];
  return [
    notice(
      'no-conversion',
      subject,
      row,
      'Unit',
      noPath(material, unit, material.unit, 'the totals miss this row'),
    ),
  ];
}

/** The sentence for a unit that leads nowhere: what is missing, and what follows from it. */
export function noPath(material: Material, from: Unit, to: Unit, consequence: string): string {
  return (
    `Unit holds ${from.name}, and nothing says how many ${unitFor('', to)} of ${material.name} one ${from.name} is: ` +
    `give the size of the sheet, the grammage, the density or the uses that link them, or another unit. Until then ${consequence}.`
  );
}

/** Whether anything can be drawn by a rate: its unit leads to the stock unit, or to that of some lot. */
export function isConvertible(rate: UsageRate, lots: readonly Lot[]): boolean {
  return (
    rate.material.converter.factor(rate.record.unit, rate.material.unit) !== null ||
    lots.some((lot) => lot.converter.factor(rate.record.unit, lot.record.unit) !== null)
  );
}

/** A notice for a usage rate by which nothing can be drawn. */
export function rateNotices(rate: UsageRate, lots: readonly Lot[]): Notice[] {
  const { material, record } = rate;
  if (!material.counted || isConvertible(rate, lots)) return [];
  const message = noPath(material, record.unit, material.unit, 'nothing is drawn for it');
  return [notice('no-conversion', null, record, 'Unit', message)];
}

/** Notices for a recipe's yield and parts of which the unit leads nowhere. */
export function recipeNotices(recipe: Recipe, materials: Index<Material>): Notice[] {
  const made = materials.get(keyOf(recipe.record.makes));
  const ofYield =
    made === undefined
      ? []
      : missingConversion(made, made.converter, recipe.record.unit, recipe.record, recipe.record.recipe);
  const ofParts = recipe.parts
    .filter((part: RecipePart) => part.material.counted)
    .flatMap(({ material, record }) =>
      missingConversion(material, material.converter, record.unit, record, null),
    );
  return [...ofYield, ...ofParts];
}
