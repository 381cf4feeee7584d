import '../styles/log.css';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Heading } from '../parts/layout.tsx';
import { EntryCard } from './entry-card.tsx';
import { LogForm } from './log-form.tsx';
import { PresetQuestion } from './preset-question.tsx';
import { RecentWork } from './recent-work.tsx';

/** The section Log: what was done at the bench, what it takes from stock, and what was taken lately. */
export function LogSection({ books }: { readonly books: Books }) {
  const { chosen } = usePane().view.value;
  return (
    <div class="stack">
      {chosen?.kind === 'entry' && <EntryCard books={books} entry={chosen.entry} />}
      <Heading>Log a treatment</Heading>
      <PresetQuestion books={books} />
      {books.absent.length === 0 ? (
        <LogForm books={books} />
      ) : (
        <div class="empty">
          <p class="empty-title">Nothing can be logged yet</p>
          <p>
            {`This workbook has no table ${new Intl.ListFormat('en-GB').format(books.absent)}: set up the tables that are missing, above.`}
          </p>
        </div>
      )}
      <RecentWork books={books} />
    </div>
  );
}
