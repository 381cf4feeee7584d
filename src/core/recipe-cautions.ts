import { readHazards } from './hazard-codes.ts';
import { type HazardStatement, hazardStatements, statementOf } from './hazard-statements.ts';
import type { Material, Recipe } from './studio.ts';

/** A part of a recipe with what the workbook says of its dangers. */
export interface PartDangers {
  readonly material: string;
  readonly statements: readonly HazardStatement[];
  /** What its Hazards cell says besides codes; for a part that is made here and has no Hazards, its recipe's Cautions. */
  readonly words: readonly string[];
}

/** A statement about protective equipment, and the parts whose hazards call for it. */
export interface Protection {
  readonly code: string;
  readonly sentence: string;
  readonly calledForBy: readonly string[];
}

/** What to know before making a recipe. */
export interface RecipeCautions {
  /** The recipe's own Cautions. */
  readonly own: string | null;
  readonly parts: readonly PartDangers[];
  readonly protection: readonly Protection[];
  /** Null where no part has hazards: then there is nothing to take for a classification. */
  readonly notClassified: string | null;
}

/**
 * The cautions of a recipe: its own, the statements of its parts' hazard codes, and the published sentences about
 * protective equipment that go with these codes. What is made is never classified from its parts.
 */
export function cautionsForRecipe(recipe: Recipe): RecipeCautions {
  const parts = [...new Set(recipe.parts.map(({ material }) => material))]
    .map(dangersOf)
    .filter(({ statements, words }) => statements.length > 0 || words.length > 0);
  const coded = parts.some(({ statements }) => statements.length > 0);
  return {
    own: recipe.record.cautions,
    parts,
    protection: protectionOf(parts),
    notClassified: coded
      ? 'What is made here is not classified: the codes are those of its parts, each by itself; the mixture may be more or less dangerous than they are.'
      : null,
  };
}

function dangersOf(material: Material): PartDangers {
  const { hazards } = material.record;
  const cautions = material.recipe?.record.cautions ?? null;
  return {
    material: material.name,
    statements: hazardStatements(material),
    words: hazards !== null ? readHazards(hazards).words : cautions === null ? [] : [cautions],
  };
}

function protectionOf(parts: readonly PartDangers[]): Protection[] {
  const callers = new Map<string, Set<string>>();
  for (const { material, statements } of parts) {
    for (const code of statements.flatMap((statement) => [statement.code, ...statement.protection])) {
      if (!PROTECTION.has(code)) continue;
      callers.set(code, (callers.get(code) ?? new Set()).add(material));
    }
  }
  return [...callers]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([code, materials]) => {
      const { sentence } = statementOf(code);
      return sentence === null ? [] : [{ code, sentence, calledForBy: [...materials] }];
    });
}

/** The statements about protective equipment: what to wear. */
const PROTECTION: ReadonlySet<string> = new Set(['P280', 'P281', 'P282', 'P283', 'P284', 'P285']);
