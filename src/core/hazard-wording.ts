import { type Day, spokenDay } from './day.ts';
import { PICTOGRAMS, type PictogramCode } from './ghs/pictograms.ts';
import type { HazardStatement } from './hazard-statements.ts';
import { sheetLastRead, sheetReadAgainBy } from './safety-data-sheet.ts';
import type { Settings } from './settings.ts';
import type { Material } from './studio.ts';

/** How hazard statements read, in the pane and on the command line. */

/** The sentence; of a code that the table doesn't have, that it hasn't, and which may be meant. */
export function sentenceWords({ sentence, mayBe }: HazardStatement): string {
  if (sentence !== null) return sentence;
  if (mayBe.length === 0) return 'not in the table; look it up in the safety data sheet.';
  return `not in the table as it is written: ${mayBe.join(' or ')}? Capitals tell them apart; look it up in the safety data sheet.`;
}

/** What the label shows beside the sentence: the signal word and the pictograms by name; empty where there is none. */
export function labelWords({ signal, pictogramSets }: HazardStatement): string {
  const sets = pictogramSets.map((set) => (set.length === 0 ? 'none' : set.map(pictogramName).join(' and ')));
  const pictures = sets.length > 1 ? `${sets.join(' or ')}, by category` : (sets[0] ?? 'none');
  return [signal, pictures === 'none' ? null : pictures].filter((part) => part !== null).join('; ');
}

/** A pictogram as it is called: flame (GHS02). */
function pictogramName(code: PictogramCode): string {
  return `${PICTOGRAMS[code].shows} (${code})`;
}

/** What the pictograms of some statements mean, each once: flame (GHS02): flammables, … */
export function pictogramMeanings(statements: readonly HazardStatement[]): string[] {
  const codes = new Set(statements.flatMap(({ pictograms }) => pictograms));
  return [...codes].toSorted().map((code) => `${pictogramName(code)}: ${PICTOGRAMS[code].means}`);
}

/** When the safety data sheet of a material was last read, and by when it should be read again. */
export function sheetWords(material: Material, settings: Settings, today: Day): string {
  const last = sheetLastRead(material);
  if (last === null) return 'No day is given on which the safety data sheet was last read.';
  const again = sheetReadAgainBy(last, settings);
  const due =
    again < today
      ? `it should have been read again by ${spokenDay(again)}`
      : `read it again by ${spokenDay(again)}`;
  return `The safety data sheet was last read on ${spokenDay(last)}; ${due}.`;
}

/** What to do about every hazard: the workbook names hazards, it doesn't judge them. */
export const READ_THE_SHEET =
  'Read the supplier’s safety data sheet before use, and keep to it, to your local codes and to licensed practice.';
