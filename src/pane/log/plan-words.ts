import type { PlannedTake, PlannedUse } from '../../actions/plan-treatment.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { doubtWords, keepsUntil } from './log-options.ts';
import type { MaterialLine } from './material-lines.ts';

/** What is missing of a material, in plain words; null where all of it is there. */
export function missingWords(use: PlannedUse, line: MaterialLine): string | null {
  if (use.missing.compare(0) <= 0) return null;
  const { unit, quantity } = use;
  const wanted = spokenQuantity(quantity, unit);
  const there = quantity.sub(use.missing);
  const { lot, second } = line.draft;
  const lots = second === null ? [lot] : [lot, second.lot];
  const isNamed = lots.every((each) => each.trim() !== '');
  const where = isNamed ? `is in ${new Intl.ListFormat('en-GB').format(lots)}` : 'is there';
  const until = 'stays noticed until a lot is received, made or counted';
  return there.compare(0) <= 0
    ? `None of the ${wanted} ${where}: it ${until}.`
    : `Only ${spokenQuantity(there, unit)} of ${wanted} ${where}: the rest ${until}.`;
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
