import { carryYearOver } from '../actions/carry-over.ts';
import { foldedWords, keepOldWords } from '../actions/carry-words.ts';
import { rowsGone } from '../actions/write-again.ts';
import { type Day, isoDay, spokenDay } from '../core/day.ts';
import type { Random } from '../core/identifier.ts';
import type { CopyWorkbook, HandOverOutcome } from '../workbook/workbook-copy.ts';
import type { Books, Done } from './session-state.ts';

const NO_NAME =
  'This workbook has no name yet. Save it first: each Carried movement of the new workbook names the file it comes from.';
const BEHIND =
  'The file that was handed out does not hold the same log entries and movements as the open workbook. Save the ' +
  'workbook, wait until it is saved, and do it again.';

/**
 * Carries the open workbook over to a new one, which the person gets beside it. The open one stays as it is.
 * @param copyWorkbook gives the copy that becomes the new workbook
 * @param books what the open workbook is known to say; a copy that says something else is not used
 * @param day as of which it is carried over
 */
export async function carryToNewWorkbook(
  copyWorkbook: CopyWorkbook,
  books: Books,
  day: Day,
  random: Random,
): Promise<Done> {
  const copied = await copyWorkbook();
  if (copied.kind === 'failed') return refused(copied.message);
  const { copy } = copied;
  const { fileName, snapshot } = copy;
  if (fileName === null) return refused(NO_NAME);
  if (rowsGone(books.snapshot, snapshot).length > 0 || rowsGone(snapshot, books.snapshot).length > 0) {
    return refused(BEHIND);
  }
  const carried = carryYearOver(snapshot, { from: fileName, day }, random);
  if (!carried.ok) return refused(carried.message);
  const name = `${fileName.replace(/\.[^.]*$/, '')} from ${isoDay(day)}.xlsx`;
  const handed = await copy.handOver(carried.changes, carried.removed, name);
  const where = placeWords(handed);
  if (where.kind === 'refused') return where;
  return {
    kind: 'done',
    sentence: `Carried over to ${spokenDay(day)}: ${where.sentence}`,
    posting: null,
    drawing: null,
    remarks: [foldedWords(carried), keepOldWords(carried, fileName)],
  };
}

type Placed = { readonly kind: 'placed'; readonly sentence: string } | Extract<Done, { kind: 'refused' }>;

function placeWords(handed: HandOverOutcome): Placed {
  switch (handed.kind) {
    case 'opened':
      return {
        kind: 'placed',
        sentence: 'the new workbook is open in a window of its own. Save it there under a new name.',
      };
    case 'saved':
      return { kind: 'placed', sentence: `the new workbook is saved as ${handed.name}.` };
    case 'cancelled':
      return refused('No place was chosen for the new workbook, so nothing was saved.');
    case 'failed':
      return refused(handed.message);
  }
}

function refused(message: string): Extract<Done, { kind: 'refused' }> {
  return { kind: 'refused', message };
}
