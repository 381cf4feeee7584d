import { READ_THE_SHEET, sentenceWords } from '../core/hazard-wording.ts';
import { cautionsForRecipe } from '../core/recipe-cautions.ts';
import type { Recipe } from '../core/studio.ts';
import { heading, listed, type Terminal, wrapped } from './terminal.ts';

/** What to know before making a recipe: its cautions, the hazards of its parts, what to wear, where to read on. */
export function cautionsText(recipe: Recipe, terminal: Terminal): string[] {
  const { own, parts, protection, notClassified } = cautionsForRecipe(recipe);
  if (own === null && parts.length === 0) return [];
  const paragraph = (text: string): string[] => wrapped(text, terminal.width, 0);
  return [
    heading('Cautions', terminal),
    ...(own === null ? [] : paragraph(own)),
    ...parts.flatMap(({ material, statements, words }) =>
      [...statements.map((statement) => `${statement.code} ${sentenceWords(statement)}`), ...words].flatMap(
        (text) => listed(`${material}: ${text}`, terminal),
      ),
    ),
    ...protection.flatMap(({ code, sentence, calledForBy }) =>
      listed(`${code} ${sentence} (${calledForBy.join(', ')})`, terminal),
    ),
    ...(notClassified === null ? [] : paragraph(notClassified)),
    ...paragraph(READ_THE_SHEET),
  ];
}
