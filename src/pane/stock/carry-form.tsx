import { useMemo, useState } from 'preact/hooks';
import { type CarriedOver, carryYearOver } from '../../actions/carry-over.ts';
import { foldedWords, goneWords, keepOldWords, keptWords } from '../../actions/carry-words.ts';
import { provisionalRandom } from '../../actions/plan-treatment.ts';
import { type Day, isoDay, parseDay } from '../../core/day.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { DateField } from '../parts/fields.tsx';
import { Banner, Disclosure } from '../parts/layout.tsx';

/** What carrying over as of a day does, and the button that does it. */
export function CarryForm({ books }: { readonly books: Books }) {
  const { session, act, view } = usePane();
  const [text, setText] = useState(isoDay(books.today));
  const day = dayFrom(text, books.today);
  const { snapshot } = books;
  // What the pane shows is worked out on what is open; the copy is worked out anew, with identifiers of its own.
  const carried = useMemo(
    () =>
      day === null ? null : carryYearOver(snapshot, { from: 'this workbook', day }, provisionalRandom()),
    [snapshot, day],
  );
  return (
    <form
      class="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (day !== null && carried?.ok === true) void act(() => session.carryOver(day));
      }}
    >
      <DateField
        label="As of"
        hint="No figure of that day or later changes"
        value={text}
        error={day === null ? 'Give a day of the calendar, today or before.' : null}
        onInput={setText}
      />
      {carried !== null &&
        (carried.ok ? (
          <WhatIsCarried carried={carried} />
        ) : (
          <Banner tone="warn" title="It can’t be carried over as of that day">
            {carried.message}
          </Banner>
        ))}
      <div class="actions">
        <Button type="submit" look="main" unavailable={carried?.ok !== true || view.value.busy !== null}>
          Make the new workbook
        </Button>
      </div>
    </form>
  );
}

/** A later day is none to carry over on: what is used until then would count as long past. */
function dayFrom(text: string, today: Day): Day | null {
  const day = parseDay(text);
  return day === null || day > today ? null : day;
}

function WhatIsCarried({ carried }: { readonly carried: CarriedOver }) {
  const kept = keptWords(carried);
  const gone = goneWords(carried);
  return (
    <>
      <p>{foldedWords(carried)}</p>
      {kept.length > 0 && (
        <Disclosure summary="Movements that stay">
          <WordList words={kept} />
        </Disclosure>
      )}
      {gone.length > 0 && (
        <Disclosure summary="Notices that go with what they are about">
          <WordList words={gone} />
        </Disclosure>
      )}
      <p>{keepOldWords(carried, 'this workbook')}</p>
    </>
  );
}

function WordList({ words }: { readonly words: readonly string[] }) {
  return (
    <ul class="plain-list">
      {words.map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  );
}
