import { useEffect, useRef, useState } from 'preact/hooks';
import { isoDay, parseDay } from '../../core/day.ts';
import type { Books } from '../../session/session-state.ts';
import { keepingFocus } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { DateField } from '../parts/fields.tsx';
import { Banner } from '../parts/layout.tsx';
import { useEscape } from '../parts/use-escape.ts';
import { asOfDay, showDay } from './as-of.ts';
import { otherDayWords } from './as-of-words.ts';

/** A button that asks for the day whose figures are shown. */
export function DayChooser({ books }: { readonly books: Books }) {
  const [asks, setAsks] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const close = (): void => {
    setAsks(false);
    requestAnimationFrame(() => opener.current?.focus());
  };
  if (asks) return <DayForm books={books} onClose={close} />;
  return (
    <Button buttonRef={opener} onPress={() => setAsks(true)}>
      As of another day…
    </Button>
  );
}

interface DayFormProps {
  readonly books: Books;
  readonly onClose: () => void;
}

function DayForm({ books, onClose }: DayFormProps) {
  const today = useToday();
  const [text, setText] = useState(isoDay(books.today));
  const [error, setError] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);
  useEscape(true, onClose);
  return (
    <form
      class="deed"
      noValidate
      ref={form}
      aria-label="As of another day"
      onSubmit={(event) => {
        event.preventDefault();
        const day = parseDay(text);
        if (day === null) {
          setError('Give a day of the calendar.');
          form.current?.querySelector('input')?.focus();
          return;
        }
        showDay(day, today ?? day);
        onClose();
      }}
    >
      <DateField
        label="As of"
        hint="What was left at the end of that day"
        value={text}
        error={error}
        onInput={(value) => {
          setText(value);
          setError(null);
        }}
      />
      <div class="actions">
        <Button type="submit">Show that day</Button>
        <Button look="quiet" onPress={onClose}>
          Leave it
        </Button>
      </div>
    </form>
  );
}

/** Says that the figures are another day's, and leads back. */
export function OtherDayBanner() {
  const day = asOfDay.value;
  const today = useToday();
  if (day === null || today === null) return null;
  const { title, text } = otherDayWords(day, today);
  return (
    <div class="no-print">
      <Banner
        tone="note"
        title={title}
        actions={<Button onPress={() => keepingFocus(() => showDay(null, today))}>Back to today</Button>}
      >
        {text}
      </Banner>
    </div>
  );
}

/** The day on the person's calendar; null while no workbook is open. */
function useToday() {
  const { state } = usePane().view.value;
  return state.kind === 'open' ? state.books.today : null;
}
