import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';

/** Where the table that keeps what was counted is not here yet: it can be brought. */
export function NoCounts({ books }: { readonly books: Books }) {
  const { act, session, view } = usePane();
  const isUpgrade = books.upgradable !== null;
  return (
    <div class="empty">
      <p class="empty-title">The table Counts is not here yet</p>
      <p>
        What you count is kept there until it is posted, so that you can stop and go on whenever you like.
        {isUpgrade && ' It comes with bringing the tables up to date.'}
      </p>
      {books.readingOnly === null && (
        <div class="actions">
          <Button
            unavailable={view.value.busy !== null}
            onPress={() => act(() => (isUpgrade ? session.upgradeTables() : session.setUp()))}
          >
            {isUpgrade ? 'Bring the tables up to date' : 'Set it up'}
          </Button>
        </div>
      )}
      <p>A single lot can be counted without it, on its own page.</p>
    </div>
  );
}
