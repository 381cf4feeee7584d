import { halfDrawn } from '../actions/half-drawn.ts';
import type { EntryMark, RowToWrite } from '../actions/write-again.ts';
import { clashesIn } from './clashes.ts';
import type { Books, Question } from './session-state.ts';

/** A posting that was meant to be written and of which a part stands. */
export interface HalfWritten {
  /** Blank where it had no name: Movements has no column for it, or no movement was to be written. */
  readonly posting: string;
  readonly message: string;
  readonly rows: readonly RowToWrite[];
  /** What its log entries were to say of how far they are drawn. */
  readonly marks: readonly EntryMark[];
}

/**
 * What needs the person's answer besides the notices.
 * @param own the keys of the postings that were written from here
 * @param gone the rows that somebody else's change took away
 */
export function questionsOf(
  { ledger, reading, today }: Books,
  half: HalfWritten | null,
  own: ReadonlySet<string>,
  gone: readonly RowToWrite[],
): Question[] {
  return [
    ...(half === null ? [] : [{ kind: 'half' as const, posting: half.posting, message: half.message }]),
    ...halfDrawn(ledger, reading.tables, today)
      .filter(({ posting }) => posting !== half?.posting)
      .map(({ posting, entry }) => ({
        kind: 'half' as const,
        posting,
        message: `Drawing entry ${entry.name} (${entry.treatment.name}, ${entry.record.job}) broke off: a part of it is written.`,
      })),
    ...clashesIn(ledger, own, today).map((clash) => ({ kind: 'clash' as const, ...clash })),
    ...(gone.length === 0 ? [] : [goneQuestion(gone)]),
  ];
}

function goneQuestion(rows: readonly RowToWrite[]): Question {
  const movements = rows.filter(({ definition }) => definition.name === 'Movements').length;
  return { kind: 'rows gone', movements, entries: rows.length - movements };
}
