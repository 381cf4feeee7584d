import type { PictogramCode } from './ghs/pictograms.ts';
import { PUBLISHED_STATEMENTS, type PublishedStatement } from './ghs/statement-table.ts';
import { groupBy } from './group-by.ts';
import { readHazards } from './hazard-codes.ts';
import type { Material } from './studio.ts';

/** What a code in a Hazards cell means, by the published table. */
export interface HazardStatement {
  readonly code: string;
  /** Word for word; null for a code that isn't in the table. */
  readonly sentence: string | null;
  /** Danger, Warning, or that the category decides; null where the table gives none. */
  readonly signal: string | null;
  readonly pictograms: readonly PictogramCode[];
  /** The pictograms that stand on a label together: one set, or as many as the category may decide; empty for none. */
  readonly pictogramSets: readonly (readonly PictogramCode[])[];
  /** The codes of the statements about protective equipment that the table gives beside it. */
  readonly protection: readonly string[];
  /** For a code that isn't in the table as it is written: those that differ from it in capitals only. */
  readonly mayBe: readonly string[];
}

/** The statements that the Hazards cell of a material names, in their order. */
export function hazardStatements(material: Material): HazardStatement[] {
  const { hazards } = material.record;
  return hazards === null ? [] : statementsIn(hazards);
}

/** The statements that a text names; a combination that the table doesn't have is taken apart. */
export function statementsIn(text: string): HazardStatement[] {
  const codes = readHazards(text).codes.flatMap((code) =>
    code.includes('+') && findStatement(code).length !== 1 ? code.split('+') : [code],
  );
  return [...new Set(codes)].map(statementOf);
}

/** What the table says to a code; capitals count only where they tell two statements apart (H360FD, H360Fd). */
export function statementOf(code: string): HazardStatement {
  const found = findStatement(code);
  const [statement] = found;
  if (statement === undefined || found.length > 1) {
    return {
      code,
      sentence: null,
      signal: null,
      pictograms: [],
      pictogramSets: [],
      protection: [],
      mayBe: found.map((each) => each.code),
    };
  }
  const { categories } = statement;
  const sets = new Map(categories.map(({ pictograms }) => [pictograms.join(), pictograms]));
  return {
    code: statement.code,
    sentence: statement.sentence,
    signal: signalOf(statement),
    pictograms: [...new Set(categories.flatMap(({ pictograms }) => pictograms))],
    pictogramSets: [...sets.values()],
    protection: protectionOf(statement),
    mayBe: [],
  };
}

function signalOf({ categories }: PublishedStatement): string | null {
  const words = [...new Set(categories.map(({ signal }) => signal ?? 'no signal word'))];
  if (words.length > 1) return `${words.join(' or ')}, by category`;
  return categories[0]?.signal ?? null;
}

/** The table gives none beside combined statements: theirs are those of their parts. */
function protectionOf({ code, protection }: PublishedStatement): readonly string[] {
  if (!code.includes('+') || code.startsWith('P')) return protection;
  return [...new Set(code.split('+').flatMap((part) => statementOf(part).protection))].toSorted();
}

/** The one that is written so, else all that differ in capitals or in the order of their parts only. */
function findStatement(code: string): readonly PublishedStatement[] {
  const found = BY_KEY.get(keyOfCode(code)) ?? [];
  const exactly = found.filter((each) => each.code === code);
  return exactly.length === 1 ? exactly : found;
}

function keyOfCode(code: string): string {
  return code.toUpperCase().split('+').toSorted().join('+');
}

const BY_KEY: ReadonlyMap<string, readonly PublishedStatement[]> = groupBy(PUBLISHED_STATEMENTS, ({ code }) =>
  keyOfCode(code),
);
