import type { PlannedTake, PlannedUse } from '../../actions/plan-treatment.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { doubtWords, keepsUntil } from './log-options.ts';
import type { MaterialLine } from './material-lines.ts';

/** How the lines of a treatment or of a batch are spoken of. */
export interface LineWords {
  /** By what a line takes its amount. */
  readonly by: string;
  /** What becomes of what no lot covers, behind "it" or "the rest". */
  readonly missing: string;
}

export const TREATMENT_WORDS: LineWords = {
  by: 'By the rates',
  missing: 'stays noticed until a lot is received, made or counted',
};

/** What is missing of a material, in plain words; null where all of it is there. */
export function missingWords(
  use: PlannedUse,
  line: MaterialLine,
  words: LineWords = TREATMENT_WORDS,
): string | null {
  if (use.missing.compare(0) <= 0) return null;
  const { unit, quantity } = use;
  const wanted = spokenQuantity(quantity, unit);
  const there = quantity.sub(use.missing);
  const { lot, second } = line.draft;
  const lots = second === null ? [lot] : [lot, second.lot];
  const isNamed = lots.every((each) => each.trim() !== '');
  const where = isNamed ? `is in ${new Intl.ListFormat('en-GB').format(lots)}` : 'is there';
  return there.compare(0) <= 0
    ? `None of the ${wanted} ${where}: it ${words.missing}.`
    : `Only ${spokenQuantity(there, unit)} of ${wanted} ${where}: the rest ${words.missing}.`;
}

/** Until when a lot that is taken from is good, and why the rules would not have picked it. */
export function takeWords(
  use: PlannedUse,
  { lot }: PlannedTake,
): { readonly keeps: string; readonly doubt: string | null } {
  const choice = use.lots.find((each) => each.lot === lot);
  if (choice === undefined) return { keeps: '', doubt: null };
  return {
    keeps: keepsUntil(choice),
    doubt: choice.doubt === null ? null : doubtWords(choice.doubt, choice),
  };
}
