import { useRef } from 'preact/hooks';
import { unitFor } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { AddMaterial } from '../log/add-material.tsx';
import type { LinesChange } from '../log/draft.ts';
import { LineView } from '../log/line-view.tsx';
import { useFor } from '../log/material-lines.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { NumberField, TextField } from '../parts/fields.tsx';
import { Quantity } from '../parts/figures.tsx';
import { Banner, Disclosure, Heading } from '../parts/layout.tsx';
import { BatchFigures } from './batch-figures.tsx';
import { linesIn, type MakeDraft, type MakeText } from './make-draft.ts';
import { MakeFirst } from './make-first.tsx';
import { BATCH_WORDS } from './make-words.ts';
import type { MakeWork } from './make-work.ts';
import { PourFields } from './pour-fields.tsx';
import { RecipeNotes } from './recipe-notes.tsx';

export interface BatchViewProps {
  readonly books: Books;
  readonly draft: MakeDraft;
  readonly work: MakeWork;
  /** The workbook changed before it was made: the figures are other ones now. */
  readonly isMoved: boolean;
  readonly change: (changed: (now: MakeDraft) => MakeDraft) => void;
  /** What a field needs to be tied to what is wrong with it. */
  readonly field: (name: string) => {
    readonly id: string;
    readonly error: string | null;
    readonly onLeave: () => void;
  };
  /** Takes what is typed into a field. */
  readonly input: (name: MakeText) => (typed: string) => void;
  readonly sendLabel: string;
}

/** What a batch takes from stock, ingredient by ingredient, what comes of it, and the button that makes it. */
export function BatchView(props: BatchViewProps) {
  const { books, draft, work, isMoved, change, field, input, sendLabel } = props;
  const busy = usePane().view.value.busy !== null;
  const send = useRef<HTMLButtonElement>(null);
  // Once open it stays so: it must not close while she clears the last thing in it.
  const moreOpen = useRef(false);
  moreOpen.current ||= draft.by.trim() !== '' || draft.notes.trim() !== '';
  const { asked, lines, refusal, recipe, unit } = work;
  const changeLines = (changed: LinesChange): void =>
    change((now) => ({ ...now, lines: changed(linesIn(now)).lines }));
  return (
    <>
      {isMoved && (
        <Banner tone="warn" title="The figures below are new">
          The workbook changed in between, so nothing was made. Look at what would be taken now, and make it
          again.
        </Banner>
      )}
      {refusal !== null && <Banner tone="warn" title={refusal} />}
      {asked !== null && (
        <div class="log-plan">
          <Heading level={3}>What goes in</Heading>
          <ul class="log-lines">
            {lines.map((line) => {
              const uses = useFor(asked, line);
              return (
                <LineView
                  key={line.draft.of}
                  line={line}
                  use={uses}
                  currency={books.settings.currency}
                  change={changeLines}
                  errorOf={(name) => field(name).error}
                  fieldId={(name) => field(name).id}
                  onScanned={() => send.current?.focus()}
                  words={BATCH_WORDS}
                >
                  <MakeFirst plan={asked.plan} material={line.material} />
                </LineView>
              );
            })}
            {asked.plan.parts
              .filter(({ material }) => !material.counted)
              .map(({ material, needed, unit: inUnit }) => (
                <li key={material.name} class="log-line">
                  <div class="log-line-head">
                    <span class="log-line-name">{material.name}</span>
                    <span class="log-line-figures">
                      <Quantity quantity={needed} unit={inUnit} />
                    </span>
                  </div>
                  <p class="muted">not counted: no lot is drawn on</p>
                </li>
              ))}
          </ul>
          <AddMaterial lines={lines} studio={books.ledger.studio} change={changeLines} />
          <NumberField
            {...field('yielded')}
            label="Weighed or measured in the end"
            optional
            hint="Blank: as much as was meant. The cost per unit follows it."
            value={draft.yielded}
            onInput={input('yielded')}
            suffix={unit === null ? '' : unitFor('2', unit)}
          />
          <BatchFigures plan={asked.plan} currency={books.settings.currency} />
        </div>
      )}
      {recipe !== null && (
        <>
          <RecipeNotes recipe={recipe} />
          <PourFields books={books} draft={draft} work={work} change={change} field={field} />
          <Disclosure summary="More: by, notes" open={moreOpen.current}>
            <div class="stack">
              <TextField {...field('by')} label="By" optional value={draft.by} onInput={input('by')} />
              <TextField
                {...field('notes')}
                label="Notes"
                optional
                value={draft.notes}
                onInput={input('notes')}
              />
            </div>
          </Disclosure>
        </>
      )}
      {books.readingOnly === null && (
        <Button type="submit" look="main" unavailable={busy} class="log-send" buttonRef={send}>
          {sendLabel}
        </Button>
      )}
    </>
  );
}
