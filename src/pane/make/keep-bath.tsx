import { useEffect, useRef, useState } from 'preact/hooks';
import { keepBath } from '../../actions/bath.ts';
import type { Lot } from '../../core/studio.ts';
import { spokenNumber } from '../../core/wording.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { NumberField } from '../parts/fields.tsx';
import { readNumber } from '../parts/number-text.ts';
import { useEscape } from '../parts/use-escape.ts';

interface KeepBathProps {
  readonly lot: Lot;
  readonly onDone: () => void;
}

/** Keeps a bath for later with the pH that was measured. */
export function KeepBath({ lot, onDone }: KeepBathProps) {
  const { act, session, view } = usePane();
  const { ph } = lot.record;
  const [text, setText] = useState(ph === null ? '' : spokenNumber(ph));
  const [error, setError] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  useEscape(true, onDone);
  const keep = async (): Promise<void> => {
    const read = readNumber(text);
    if (read.kind === 'not a number') {
      setError(read.message);
      field.current?.focus();
      return;
    }
    const measured = read.kind === 'number' ? read.number : null;
    const done = await act(() =>
      session.carryOut(
        'Keeping it',
        (snapshot, today, random) =>
          keepBath(snapshot, { lot: lot.name, ph: measured, by: null }, today, random),
        () => `Kept: lot ${lot.name}${measured === null ? '' : `, pH ${spokenNumber(measured)}`}.`,
      ),
    );
    if (done.kind === 'done') onDone();
  };
  return (
    <form
      class="log-line-fields make-question"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <NumberField
        label={`pH of ${lot.name}`}
        value={text}
        onInput={(typed) => {
          setError(null);
          setText(typed);
        }}
        error={error}
        fieldRef={field}
      />
      <div class="actions">
        <Button type="submit" unavailable={view.value.busy !== null}>
          Keep it
        </Button>
        <Button look="quiet" onPress={onDone}>
          Leave it as it is
        </Button>
      </div>
    </form>
  );
}
