import '../styles/log.css';
import '../styles/stock.css';
import { useState } from 'preact/hooks';
import { spokenDay } from '../../core/day.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Cautions } from '../parts/cautions.tsx';
import { hazardsOfEntries } from '../parts/hazard-words.ts';
import { Heading } from '../parts/layout.tsx';
import { FirstSteps } from './first-steps.tsx';
import { KeysDialog } from './keys-dialog.tsx';
import { NoticeGroupList } from './notice-group-list.tsx';
import { entriesToDraw, groupNotices, summaryOf } from './notice-groups.ts';

/** What needs attention today, most pressing first. */
export function TodaySection({ books }: { readonly books: Books }) {
  const { session, view, act, readAgain } = usePane();
  const { notices, today, readingOnly } = books;
  const [keysShown, setKeysShown] = useState(false);
  const busy = view.value.busy !== null;
  const writable = readingOnly === null;
  const toDraw = writable ? entriesToDraw(notices) : [];
  return (
    <>
      <div class="head">
        <Heading focusHome>{spokenDay(today)}</Heading>
        <Button look="quiet" unavailable={busy} onPress={readAgain}>
          Check now
        </Button>
      </div>
      <FirstSteps books={books} />
      {notices.length === 0 ? (
        <div class="empty">
          <p class="empty-title">Nothing needs attention.</p>
          <p>What has gone off, runs low or is not taken from stock yet will stand here.</p>
        </div>
      ) : (
        <p>{summaryOf(notices)}</p>
      )}
      {toDraw.length > 1 && (
        <div class="actions">
          <Button look="main" unavailable={busy} onPress={() => act(() => session.draw('all'))}>
            {`Draw all ${toDraw.length}`}
          </Button>
          <span class="muted">log entries that are not taken from stock yet</span>
        </div>
      )}
      <Cautions hazards={hazardsOfEntries(toDraw)} />
      {groupNotices(notices).map((group) => (
        <NoticeGroupList key={group.severity} group={group} books={books} />
      ))}
      <div class="actions">
        <Button look="quiet" onPress={() => setKeysShown(true)}>
          Keys
        </Button>
      </div>
      <KeysDialog open={keysShown} onClose={() => setKeysShown(false)} />
    </>
  );
}
