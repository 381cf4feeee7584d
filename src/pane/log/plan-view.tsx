import type { Ref } from 'preact';
import { spokenDay } from '../../core/day.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Cautions } from '../parts/cautions.tsx';
import { Money } from '../parts/figures.tsx';
import { hazardsOf } from '../parts/hazard-words.ts';
import { Banner, Heading } from '../parts/layout.tsx';
import { AddMaterial } from './add-material.tsx';
import type { LogDraft } from './draft.ts';
import { LineView } from './line-view.tsx';
import type { LogWork } from './log-work.ts';
import { useFor } from './material-lines.ts';

export interface PlanViewProps {
  readonly books: Books;
  readonly work: LogWork;
  /** The workbook changed before it was logged: the figures are other ones now. */
  readonly isMoved: boolean;
  readonly change: (changed: (now: LogDraft) => LogDraft) => void;
  readonly errorOf: (field: string) => string | null;
  readonly fieldId: (field: string) => string;
  readonly sendRef: Ref<HTMLButtonElement> & { readonly current: HTMLButtonElement | null };
}

/** What a treatment takes from stock, material by material, and the button that takes it. */
export function PlanView(props: PlanViewProps) {
  const { books, work, isMoved, change, errorOf, fieldId, sendRef } = props;
  const busy = usePane().view.value.busy !== null;
  const { asked, lines, refusal } = work;
  const waits = asked?.plan.waits === true;
  const plan = asked?.plan ?? null;
  const { currency } = books.settings;
  return (
    <>
      {isMoved && (
        <Banner tone="warn" title="The figures below are new">
          The workbook changed in between, so nothing was logged. Look at what would be taken now, and log
          again.
        </Banner>
      )}
      {refusal !== null && <Banner tone="warn" title={refusal} />}
      {waits && (
        <Banner tone="note">
          {`Dated ${spokenDay(asked.request.date)}, after today: the entry is kept, and taken from stock on that day.`}
        </Banner>
      )}
      {lines.length > 0 && (
        <div class="log-plan">
          <Heading level={3}>What is taken from stock</Heading>
          <ul class="log-lines">
            {lines.map((line) => (
              <LineView
                key={line.draft.of}
                line={line}
                use={plan === null ? null : useFor(plan, line)}
                currency={currency}
                change={change}
                errorOf={errorOf}
                fieldId={fieldId}
                onScanned={() => sendRef.current?.focus()}
              />
            ))}
          </ul>
        </div>
      )}
      {plan !== null && !waits && (
        <>
          {lines.length === 0 && (
            <p class="muted">
              By its usage rates this treatment takes nothing from stock: the entry is kept all the same.
            </p>
          )}
          <AddMaterial lines={lines} studio={books.ledger.studio} change={change} />
          {lines.length > 0 && (
            <p class="log-total">
              <span>In all</span>
              <Money coins={plan.cost} currency={currency} withCode />
            </p>
          )}
          <Cautions hazards={hazardsOf(plan.uses.map(({ material }) => material))} />
        </>
      )}
      {books.readingOnly === null && (
        <Button type="submit" look="main" unavailable={busy} class="log-send" buttonRef={sendRef}>
          {waits || (plan !== null && lines.length === 0) ? 'Log it' : 'Take from stock and log'}
        </Button>
      )}
    </>
  );
}
