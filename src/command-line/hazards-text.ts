import type { Day } from '../core/day.ts';
import { TABLE_NAME } from '../core/ghs/source.ts';
import { readHazards } from '../core/hazard-codes.ts';
import { type HazardStatement, hazardStatements } from '../core/hazard-statements.ts';
import {
  labelWords,
  pictogramMeanings,
  READ_THE_SHEET,
  sentenceWords,
  sheetWords,
} from '../core/hazard-wording.ts';
import type { Settings } from '../core/settings.ts';
import type { Material } from '../core/studio.ts';
import { heading, listed, type Terminal, wrapped } from './terminal.ts';

/** What the workbook says of a material's dangers, as text: hazard codes in full, the day of the sheet, disposal. */
export function hazardsText(
  material: Material,
  settings: Settings,
  today: Day,
  terminal: Terminal,
): string[] {
  const { hazards, disposal } = material.record;
  const statements = hazardStatements(material);
  const words = hazards === null ? [] : readHazards(hazards).words;
  const paragraph = (text: string): string[] => wrapped(text, terminal.width, 0);
  return [
    heading('Hazards', terminal),
    ...(hazards === null ? paragraph('None are given, which doesn’t mean that there are none.') : []),
    ...statements.flatMap((statement) => listed(statementLine(statement), terminal)),
    ...words.flatMap((text) => listed(text, terminal)),
    ...pictogramMeanings(statements).flatMap((meaning) => paragraph(`Pictogram ${meaning}.`)),
    ...(statements.length > 0 ? paragraph(`${TABLE_NAME}.`) : []),
    ...(disposal === null ? [] : paragraph(`Disposal: ${disposal}`)),
    ...paragraph(sheetWords(material, settings, today)),
    ...paragraph(READ_THE_SHEET),
  ];
}

function statementLine(statement: HazardStatement): string {
  const label = labelWords(statement);
  return `${statement.code}: ${sentenceWords(statement)}${label === '' ? '' : ` [${label}]`}`;
}

/** The same as JSON: null for the sentence of a code that isn't in the table. */
export function hazardsJson(material: Material): unknown[] {
  return hazardStatements(material).map(({ code, sentence, signal, pictograms }) => ({
    code,
    sentence,
    signal,
    pictograms,
  }));
}
