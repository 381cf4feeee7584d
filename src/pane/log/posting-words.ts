import type { RecentPosting } from '../../actions/recent-postings.ts';
import type { Entry } from '../../core/studio.ts';
import { counted, spokenNumber } from '../../core/wording.ts';

/** What a log entry says, in short: treatment and extent, then job and item. */
export function entryWords({ record, treatment }: Entry): string {
  const item = record.item === null ? '' : `, ${record.item}`;
  return `${treatment.name}, ${spokenNumber(record.extent)} ${treatment.record.extentUnit}: ${record.job}${item}`;
}

/** What a posting did, in short. */
export function postingWords({ entries, kinds, materials, movements, received }: RecentPosting): string {
  const [only] = entries;
  if (only !== undefined && entries.length === 1) return entryWords(only);
  if (entries.length > 1)
    return `${counted(entries.length, 'log entry', 'log entries')}, ${counted(movements, 'movement')}`;
  const [first, second] = materials;
  const what = [first, second].filter((name) => name !== undefined).join(', ');
  const more = materials.length > 2 ? ` and ${materials.length - 2} more` : '';
  return `${received.length > 0 ? 'Received' : kinds.join(', ')}: ${what}${more}`;
}
