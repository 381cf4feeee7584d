import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { DateField, NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { Heading } from '../parts/layout.tsx';
import { useEscape } from '../parts/use-escape.ts';
import type { Deed, DeedField, DeedTexts } from './deed.ts';

interface DeedFormProps {
  readonly deed: Deed;
  readonly books: Books;
  readonly onClose: () => void;
}

/** The small form of a deed, in place: it asks, says what is wrong, and does it. */
export function DeedForm({ deed, books, onClose }: DeedFormProps) {
  const { act, session, view } = usePane();
  const base = useId();
  const [texts, setTexts] = useState<DeedTexts>(() =>
    Object.fromEntries(deed.fields.map(({ name, start }) => [name, start])),
  );
  const [problems, setProblems] = useState<DeedTexts>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const busy = view.value.busy !== null;
  useEffect(() => {
    form.current?.querySelector<HTMLElement>('input, select, button')?.focus();
  }, []);
  useEscape(true, onClose);
  const idOf = (name: string): string => `${base}-${name}`;
  const send = async (): Promise<void> => {
    const read = deed.read(texts);
    setProblems(read.ok ? {} : read.problems);
    const obstacle = read.ok ? read.refusalIn(books) : null;
    setRefusal(obstacle);
    if (!read.ok) {
      const first = deed.fields.find(({ name }) => read.problems[name] !== undefined);
      document.getElementById(idOf(first?.name ?? ''))?.focus();
      return;
    }
    if (obstacle !== null) return;
    const done = await act(() => read.carryOut(session));
    if (done.kind === 'done') onClose();
  };
  return (
    <form
      class="deed"
      noValidate
      ref={form}
      aria-label={deed.label.replace('…', '')}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) void send();
      }}
    >
      <Heading level={3}>{deed.label.replace('…', '')}</Heading>
      {deed.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {deed.fields.map((field) => (
        <Field
          key={field.name}
          id={idOf(field.name)}
          field={field}
          value={texts[field.name] ?? ''}
          error={problems[field.name] ?? null}
          onValue={(value) => {
            setTexts((before) => ({ ...before, [field.name]: value }));
            setProblems((before) => ({ ...before, [field.name]: undefined }) as DeedTexts);
          }}
        />
      ))}
      <div role="alert" class="field-wrong">
        {refusal !== null && <p class="field-error">{refusal}</p>}
      </div>
      <div class="actions">
        <Button type="submit" unavailable={busy}>
          {deed.submit}
        </Button>
        <Button look="quiet" onPress={onClose}>
          Leave it
        </Button>
      </div>
    </form>
  );
}

interface FieldProps {
  readonly id: string;
  readonly field: DeedField;
  readonly value: string;
  readonly error: string | null;
  readonly onValue: (value: string) => void;
}

function Field({ id, field, value, error, onValue }: FieldProps) {
  const { label, hint, optional = false, suffix, options = [] } = field;
  const common = { id, label, hint, optional, error, value };
  switch (field.kind) {
    case 'number':
      return <NumberField {...common} {...(suffix === undefined ? {} : { suffix })} onInput={onValue} />;
    case 'text':
      return <TextField {...common} onInput={onValue} />;
    case 'day':
      return <DateField {...common} onInput={onValue} />;
    case 'choice':
      return <SelectField {...common} options={options} onChange={onValue} />;
  }
}
