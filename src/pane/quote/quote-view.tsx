import { useState } from 'preact/hooks';
import type { Quoted } from '../../actions/quote-job.ts';
import { spokenDay } from '../../core/day.ts';
import { keyOf } from '../../core/identifier.ts';
import { spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { jobDetail } from '../log/log-options.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { later } from '../parts/later.tsx';
import { Heading } from '../parts/layout.tsx';
import { latestQuote } from './given.ts';
import { GivenQuotes } from './given-quotes.tsx';
import { NoPlan } from './no-plan.tsx';
import { QuoteLines } from './quote-lines.tsx';
import { QuoteSums } from './quote-sums.tsx';

const OnItsDay = later(async () => (await import('./on-its-day.tsx')).OnItsDay, 'Whether it can be done');

export interface QuoteViewProps {
  readonly books: Books;
  readonly quoted: Quoted;
}

/** A job's quote as it is today, and what can be done with it. */
export function QuoteView({ books, quoted }: QuoteViewProps) {
  const { act, session, view } = usePane();
  const [withHow, setWithHow] = useState(false);
  const { quote } = quoted;
  const { currency } = books.settings;
  const { studio } = books.ledger;
  const record = studio.jobsByKey.get(keyOf(quote.job));
  const next = (latestQuote(studio, quote.job)?.version ?? 0) + 1;
  if (quote.rows.length === 0) {
    return (
      <>
        <NoPlan books={books} quoted={quoted} />
        <GivenQuotes books={books} job={quote.job} />
      </>
    );
  }
  return (
    <>
      <div>
        <Heading level={3}>{`Quote for ${quote.job}`}</Heading>
        {record !== undefined && <p>{jobDetail(record)}</p>}
        <p class="muted">{`As of ${spokenDay(quote.asOf)}${currency.code === '' ? '' : `, in ${currency.code}`}`}</p>
      </div>
      <QuoteLines lines={quote.lines} currency={currency} withHow={withHow} />
      {quote.lines.length > 0 && (
        <div class="actions no-print">
          <Button look="quiet" expanded={withHow} onPress={() => setWithHow(!withHow)}>
            How each line came about
          </Button>
        </div>
      )}
      <QuoteSums quoted={quoted} currency={currency} />
      {quote.shortfalls.length > 0 && (
        <div class="stack">
          <Heading level={3}>Not in stock today</Heading>
          <ul class="plain-list">
            {quote.shortfalls.map(({ material, missing, unit }) => (
              <li
                key={`${material.name} ${unit.name}`}
              >{`${spokenQuantity(missing, unit)} of ${material.name}`}</li>
            ))}
          </ul>
        </div>
      )}
      <div class="actions no-print">
        {books.readingOnly === null && (
          <Button
            look="main"
            unavailable={view.value.busy !== null}
            onPress={() => act(() => session.freeze(quote.job), { undoable: false })}
          >
            {`Write down as version ${next}`}
          </Button>
        )}
        <Button onPress={() => window.print()}>Print</Button>
      </div>
      <OnItsDay books={books} job={quote.job} />
      <GivenQuotes books={books} job={quote.job} />
    </>
  );
}
