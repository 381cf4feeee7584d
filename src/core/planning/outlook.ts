import { addDays, type Day } from '../day.ts';
import type { Ledger } from '../ledger.ts';
import { openPlanRows } from '../planned-use.ts';

/** How many days ahead is looked at where nothing is planned later. */
const USUAL_DAYS = 90;
/** Nobody can say what is two years ahead. */
export const LONGEST_OUTLOOK_DAYS = 730;

/** The last day that planning looks at: 90 days ahead, or as far as something is planned. */
export function outlookEnd(ledger: Ledger, today: Day): Day {
  const planned = openPlanRows(ledger, today).map(({ day }) => day);
  const last = Math.max(addDays(today, USUAL_DAYS), ...planned);
  return Math.min(last, addDays(today, LONGEST_OUTLOOK_DAYS)) as Day;
}
