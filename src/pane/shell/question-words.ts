import { counted } from '../../core/wording.ts';
import type { Question } from '../../session/session-state.ts';

/** What is gone since somebody else's change, and what writing it again would do. */
export function rowsGoneWords({
  movements,
  entries,
}: Pick<Extract<Question, { kind: 'rows gone' }>, 'movements' | 'entries'>): string {
  const parts = [
    ...(movements > 0 ? [counted(movements, 'movement')] : []),
    ...(entries > 0 ? [counted(entries, 'log entry', 'log entries')] : []),
  ].join(' and ');
  const one = movements + entries === 1;
  return (
    `${parts} that stood here ${one ? 'is' : 'are'} no longer in the workbook since somebody else changed it. ` +
    `Writing ${one ? 'it' : 'them'} again adds the same ${one ? 'row' : 'rows'} at the end of the table.`
  );
}
