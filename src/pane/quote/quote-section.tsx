import '../styles/quote.css';
import { useMemo, useRef, useState } from 'preact/hooks';
import { keyOf } from '../../core/identifier.ts';
import type { Studio } from '../../core/studio.ts';
import type { Books } from '../../session/session-state.ts';
import { jobOptions, offeredJob } from '../log/log-options.ts';
import { usePane } from '../pane-context.ts';
import { Combobox } from '../parts/combobox.tsx';
import { exactOption } from '../parts/combobox-model.ts';
import { Heading } from '../parts/layout.tsx';
import { openedQuoteJob } from '../route.ts';
import { QuoteView } from './quote-view.tsx';

/** The section Quote: what a job's plan costs, how each line came about, and what was quoted before. */
export function QuoteSection({ books }: { readonly books: Books }) {
  const { session } = usePane();
  const { studio } = books.ledger;
  const options = useMemo(() => jobOptions(studio), [studio]);
  const opened = openedQuoteJob.value ?? offeredQuoteJob(studio);
  const [typed, setTyped] = useState<string | null>(null);
  const left = useRef(false);
  const text = typed ?? opened ?? '';
  const job = exactOption(options, text)?.value ?? null;
  const quoted = useMemo(() => (job === null ? null : session.quote(job)), [session, job, books]);
  const unknown = text.trim() !== '' && job === null && left.current;
  return (
    <div class="stack quote">
      <Heading>Quote</Heading>
      <Combobox
        id="quote-job"
        class="no-print"
        label="Job"
        listLabel="Jobs"
        text={text}
        options={options}
        focusHome
        error={unknown ? `No job in Jobs is called ${text.trim()}.` : null}
        onText={(next) => {
          left.current = false;
          setTyped(next);
        }}
        onTake={(option) => {
          openedQuoteJob.value = option.value;
          setTyped(null);
        }}
        onLeave={() => {
          if (typed === null) return;
          left.current = true;
          const named = exactOption(options, typed);
          if (named !== null) openedQuoteJob.value = named.value;
          setTyped(named === null ? typed : null);
        }}
      />
      {quoted !== null &&
        (quoted.ok ? (
          <QuoteView books={books} quoted={quoted} />
        ) : (
          <div class="empty">
            <p class="empty-title">{quoted.message}</p>
          </div>
        ))}
      {quoted === null && text.trim() === '' && (
        <div class="empty">
          <p class="empty-title">Which job?</p>
          <p>Type or scan a job: its plan is costed from today’s stock and prices.</p>
        </div>
      )}
    </div>
  );
}

/** The job that is offered for a quote: one with a plan, first the one that was logged last. */
export function offeredQuoteJob(studio: Studio): string | null {
  const last = offeredJob(studio);
  const isPlanned = (job: string | null): boolean =>
    job !== null && studio.plan.some(({ record }) => keyOf(record.job) === keyOf(job));
  return isPlanned(last) ? last : (studio.plan[0]?.record.job ?? last);
}
