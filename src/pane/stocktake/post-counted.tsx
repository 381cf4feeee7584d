import { counted } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { type CountSheet, isCounted, rowsOf } from './count-sheet.ts';
import { sumWords } from './count-words.ts';
import { postCounted } from './counting.ts';

interface PostCountedProps {
  readonly id: string;
  readonly sheet: CountSheet;
  readonly books: Books;
  /** How many counts are being written. */
  readonly pending: number;
}

/** How far the stocktake has come, and the button that posts what differs. */
export function PostCounted({ id, sheet, books, pending }: PostCountedProps) {
  const { act, session, view } = usePane();
  const { stocktake, differences, obstacles } = sheet;
  const rows = rowsOf(sheet);
  const done = rows.filter(isCounted).length;
  if (books.readingOnly !== null) return <p class="muted">{books.readingOnly}</p>;
  if (stocktake === null) {
    return (
      <p class="muted">
        What is expected shows only once a lot is counted. What you count is kept in the tab Counts: stop and
        go on whenever you like.
      </p>
    );
  }
  return (
    <div class="card stack">
      <p>
        <strong>{`Stocktake ${stocktake}`}</strong>
        {`: ${done} of ${counted(rows.length, 'lot')} here counted. In all ${counted(differences.length, 'count')} to post: ${sumWords(differences, books.settings.currency)}.`}
      </p>
      {obstacles.length > 0 && (
        <ul class="plain-list log-missing">
          {obstacles.map((message) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      )}
      <div class="actions" id={id}>
        <Button
          look="main"
          unavailable={view.value.busy !== null || pending > 0 || differences.length === 0}
          onPress={() => act(() => postCounted(session, stocktake, differences, books))}
        >
          Post the differences
        </Button>
      </div>
      {done < rows.length && <p class="muted">Nothing is posted for what is not counted.</p>}
    </div>
  );
}
