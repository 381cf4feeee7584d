import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { OpenOrder } from '../../core/open-orders.ts';
import type { Books } from '../../session/session-state.ts';
import { focusField } from '../focus.ts';
import { placeOptions } from '../make/make-options.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Combobox } from '../parts/combobox.tsx';
import { ErrorSummary } from '../parts/error-summary.tsx';
import { DateField, NumberField, TextField } from '../parts/fields.tsx';
import { Heading } from '../parts/layout.tsx';
import { useEscape } from '../parts/use-escape.ts';
import {
  type PartDraft,
  type PartText,
  type ReceiveDraft,
  readReceiving,
  startReceiving,
  withAnotherLot,
  withPart,
} from './receive-draft.ts';
import { receiveIt } from './receiving.ts';

interface ReceiveFormProps {
  readonly books: Books;
  readonly open: OpenOrder;
  readonly onClose: () => void;
}

/** What came of an order: how many packs of each line, with the supplier's lot, the printed date and the place. */
export function ReceiveForm({ books, open, onClose }: ReceiveFormProps) {
  const { act, session, view } = usePane();
  const { studio } = books.ledger;
  const [draft, setDraft] = useState<ReceiveDraft>(() => startReceiving(open, studio, books.today));
  const [attempt, setAttempt] = useState(0);
  const form = useRef<HTMLFormElement>(null);
  const places = useMemo(() => placeOptions(studio), [studio]);
  const busy = view.value.busy !== null;
  const { request, problems } = readReceiving(draft);
  useEffect(() => form.current?.querySelector<HTMLElement>('input')?.focus(), []);
  useEscape(true, onClose);
  const idOf = (field: string): string => `receive-${draft.order}-${field}`.replaceAll(/[^\w-]/g, '-');
  const field = (name: string) => ({
    id: idOf(name),
    error: attempt > 0 ? (problems.find((each) => each.field === name)?.message ?? null) : null,
  });
  const { currency } = books.settings;
  const send = async (): Promise<void> => {
    setAttempt(attempt + 1);
    if (request === null || books.readingOnly !== null) return;
    const done = await act(() => receiveIt(session, request));
    if (done.kind === 'done') onClose();
  };
  const title = `Receive order ${draft.order}`;
  return (
    <form
      class="deed"
      noValidate
      ref={form}
      aria-label={title}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) void send();
      }}
    >
      <Heading level={3}>{title}</Heading>
      <ErrorSummary
        errors={
          attempt > 0 ? problems.map((each) => ({ field: idOf(each.field), message: each.message })) : []
        }
        attempt={attempt}
      />
      {draft.parts.map((part) => (
        <Part
          key={part.key}
          part={part}
          places={places}
          field={field}
          onText={(name, text) => setDraft((now) => withPart(now, part.key, name, text))}
          onAnotherLot={() => {
            const next = withAnotherLot(draft, part.key);
            const added = next.parts.find((each) => !draft.parts.some(({ key }) => key === each.key));
            setDraft(next);
            focusField(idOf(`packs of ${added?.key ?? ''}`));
          }}
        />
      ))}
      <div class="pair">
        <DateField
          {...field('received')}
          label="Came on"
          value={draft.received}
          onInput={(received) => setDraft((now) => ({ ...now, received }))}
        />
        <NumberField
          {...field('carriage')}
          label="Carriage charged"
          optional
          suffix={currency.code}
          value={draft.carriage}
          onInput={(carriage) => setDraft((now) => ({ ...now, carriage }))}
        />
      </div>
      <TextField
        {...field('by')}
        label="By"
        optional
        value={draft.by}
        onInput={(by) => setDraft((now) => ({ ...now, by }))}
      />
      <div class="actions">
        <Button type="submit" look="main" unavailable={busy}>
          Take it into stock
        </Button>
        <Button look="quiet" onPress={onClose}>
          Leave it
        </Button>
      </div>
    </form>
  );
}

interface PartProps {
  readonly part: PartDraft;
  readonly places: ReturnType<typeof placeOptions>;
  readonly field: (name: string) => { readonly id: string; readonly error: string | null };
  readonly onText: (field: PartText, text: string) => void;
  readonly onAnotherLot: () => void;
}

function Part({ part, places, field, onText, onAnotherLot }: PartProps) {
  const { key, material, packWords, expected } = part;
  const isFirst = expected !== '';
  return (
    <fieldset class="plain-fieldset receive-part">
      <legend class="plan-name">{isFirst ? material : `${material}, another lot`}</legend>
      <NumberField
        {...field(`packs of ${key}`)}
        label={`Packs of ${packWords}`}
        hint={isFirst ? `${expected} to come; blank where nothing came` : undefined}
        value={part.packs}
        onInput={(text) => onText('packs', text)}
      />
      <div class="pair">
        <TextField
          {...field(`supplierLot of ${key}`)}
          label="Supplier’s lot"
          optional
          value={part.supplierLot}
          onInput={(text) => onText('supplierLot', text)}
        />
        <DateField
          {...field(`useBy of ${key}`)}
          label="Printed date"
          optional
          value={part.useBy}
          onInput={(text) => onText('useBy', text)}
        />
      </div>
      <Combobox
        {...field(`storedAt of ${key}`)}
        label="Kept at"
        optional
        listLabel="Places"
        text={part.storedAt}
        options={places}
        onText={(text) => onText('storedAt', text)}
      />
      {isFirst && (
        <Button look="quiet" label={`Another lot of it: ${material}`} onPress={onAnotherLot}>
          Another lot of it
        </Button>
      )}
    </fieldset>
  );
}
