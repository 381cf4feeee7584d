import { useMemo } from 'preact/hooks';
import { type RecentPosting, recentPostings } from '../../actions/recent-postings.ts';
import { spokenDay } from '../../core/day.ts';
import type { Ledger } from '../../core/ledger.ts';
import { counted } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { FOCUS_ROW } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { DayText, Money } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { NoticeRow } from '../parts/notice-row.tsx';
import { openSection } from '../route.ts';
import { postingWords } from './posting-words.ts';
import { UndoButton } from './undo-button.tsx';

const MOST_POSTINGS = 6;
const MOST_UNDRAWN = 4;

/** Entries of the log that are still to be drawn, and what was taken from stock lately. */
export function RecentWork({ books }: { readonly books: Books }) {
  const { act, session, view } = usePane();
  const { ledger, notices, readingOnly } = books;
  const postings = useMemo(() => recentPostings(ledger, MOST_POSTINGS), [ledger]);
  const undrawn = notices.filter(({ code }) => code === 'not-drawn' || code === 'entry-changed');
  const mayWrite = readingOnly === null;
  const draws = undrawn.filter(({ mend }) => mend?.kind === 'draw').length;
  const hidden = undrawn.length - MOST_UNDRAWN;
  return (
    <>
      {undrawn.length > 0 && (
        <div class="stack">
          <Heading level={3}>Not drawn yet</Heading>
          <ul class="notices">
            {undrawn.slice(0, MOST_UNDRAWN).map((notice) => (
              <NoticeRow
                key={`${notice.code} ${notice.subject} ${notice.address}`}
                notice={notice}
                mendable={mayWrite}
              />
            ))}
          </ul>
          <div class="actions">
            {mayWrite && draws > 1 && (
              <Button unavailable={view.value.busy !== null} onPress={() => act(() => session.draw('all'))}>
                {`Draw all ${draws}`}
              </Button>
            )}
            {hidden > 0 && (
              <Button look="link" onPress={() => openSection('today')}>
                {`and ${counted(hidden, 'more', 'more')}, in Today`}
              </Button>
            )}
          </div>
        </div>
      )}
      <div class="stack">
        <Heading level={3}>Written lately</Heading>
        {postings.length === 0 ? (
          <p class="muted">
            {hasMovements(ledger)
              ? 'None of the rows in Movements has a Posting by which it could be shown here.'
              : 'Nothing has been taken from stock yet.'}
          </p>
        ) : (
          <ul class="log-recent">
            {postings.map((posting) => (
              <PostingRow key={posting.posting} posting={posting} books={books} mayWrite={mayWrite} />
            ))}
          </ul>
        )}
      </div>
    </>
  );
}

function hasMovements({ accounts }: Ledger): boolean {
  return [...accounts.values()].some(({ postings }) => postings.length > 0);
}

interface PostingRowProps {
  readonly posting: RecentPosting;
  readonly books: Books;
  readonly mayWrite: boolean;
}

function PostingRow({ posting, books, mayWrite }: PostingRowProps) {
  const what = postingWords(posting);
  const { isReversal, isDrawnAgain, received, reversed, cost, posted } = posting;
  return (
    <li class="log-posting" {...{ [FOCUS_ROW]: '' }}>
      <div class="log-posting-head">
        <DayText day={posted} />
        <Money coins={cost} currency={books.settings.currency} withCode />
      </div>
      <p>{isReversal ? `Put back: ${what}` : isDrawnAgain ? `Drawn again: ${what}` : what}</p>
      {reversed && (
        <p class="muted">
          {received.length > 0
            ? 'Taken back since: not received after all.'
            : 'Put back since, by reversing rows.'}
        </p>
      )}
      {mayWrite && !isReversal && !reversed && (
        <UndoButton
          posting={posting.posting}
          what={`${what}, ${spokenDay(posted)}`}
          isDelivery={received.length > 0}
          besides={
            isDrawnAgain ? 'What had been drawn before stays put back, so nothing is drawn then.' : null
          }
        />
      )}
    </li>
  );
}
