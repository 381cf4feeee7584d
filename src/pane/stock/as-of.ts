import { type ReadonlySignal, signal } from '@preact/signals';
import { checkWorkbook } from '../../actions/check-workbook.ts';
import { type Day, spokenDay } from '../../core/day.ts';
import type { Books } from '../../session/session-state.ts';

const chosen = signal<Day | null>(null);

/** The day whose figures Stock shows; null for today's. */
export const asOfDay: ReadonlySignal<Day | null> = chosen;

/** Shows the figures of a day in all of Stock; null, or today itself, goes back to today. */
export function showDay(day: Day | null, today: Day): void {
  chosen.value = day === today ? null : day;
}

/**
 * The same workbook with the figures of another day. Nothing can be posted from them: what is done, is done today, on
 * what is there today.
 */
export function booksAsOf(books: Books, day: Day): Books {
  const { stock, notices } = checkWorkbook(books.snapshot, day);
  const readingOnly =
    books.readingOnly ??
    `These are the figures of ${spokenDay(day)}: nothing can be posted from them. Go back to today first.`;
  return { ...books, today: day, stock, notices, readingOnly };
}
