import { useMemo, useRef, useState } from 'preact/hooks';
import { DISPOSAL_CAUTION, expiredLots } from '../../actions/discard-expired.ts';
import { spokenDay } from '../../core/day.ts';
import { totalCost } from '../../core/lot-account.ts';
import { counted, spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { throwingAway } from '../lot-deeds/discard-deed.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Money } from '../parts/figures.tsx';
import { Tick } from '../parts/tick.tsx';
import { useEscape } from '../parts/use-escape.ts';
import { disposalRules } from './disposal-rules.ts';

/** A button that lists what has gone off, and throws away what she leaves ticked, in one go. */
export function ThrowAway({ books }: { readonly books: Books }) {
  const [asks, setAsks] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const expired = useMemo(() => expiredLots(books.ledger, books.today), [books]);
  if (expired.length === 0) return null;
  const close = (): void => {
    setAsks(false);
    requestAnimationFrame(() => opener.current?.focus());
  };
  if (asks) return <ThrowAwayList books={books} onClose={close} />;
  return (
    <div class="actions">
      <Button buttonRef={opener} onPress={() => setAsks(true)}>
        Throw away what has expired…
      </Button>
    </div>
  );
}

interface ListProps {
  readonly books: Books;
  readonly onClose: () => void;
}

function ThrowAwayList({ books, onClose }: ListProps) {
  const { act, session, view } = usePane();
  const { currency } = books.settings;
  const [kept, setKept] = useState<ReadonlySet<string>>(new Set());
  const [refusal, setRefusal] = useState<string | null>(null);
  const expired = useMemo(() => expiredLots(books.ledger, books.today), [books]);
  const ticked = expired.filter(({ lot }) => !kept.has(lot.name));
  useEscape(true, onClose);
  const tick = (lot: string, isTicked: boolean): void => {
    setRefusal(null);
    setKept(new Set(isTicked ? [...kept].filter((each) => each !== lot) : [...kept, lot]));
  };
  const throwAway = async (): Promise<void> => {
    const doing = throwingAway(
      ticked.map(({ lot }) => lot.name),
      books,
    );
    const obstacle = doing.refusalIn(books);
    setRefusal(obstacle);
    if (obstacle !== null) return;
    const done = await act(() => doing.carryOut(session));
    if (done.kind === 'done') onClose();
  };
  return (
    <form
      class="deed"
      noValidate
      aria-label="Throw away what has expired"
      ref={(form) => {
        if (form !== null && !form.contains(document.activeElement)) form.querySelector('input')?.focus();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (view.value.busy === null && ticked.length > 0) void throwAway();
      }}
    >
      <ul class="ticks">
        {expired.map(({ lot, left, goodUntil, reason, worth }) => (
          <li key={`${lot.name} ${lot.record.place.table} ${lot.record.place.sheetRow}`}>
            <Tick checked={!kept.has(lot.name)} onChange={(isTicked) => tick(lot.name, isTicked)}>
              <span class="log-take-cost">
                <span>{`${lot.name} ${lot.material.name}`}</span>
                <Money coins={worth} currency={currency} />
              </span>
              <span class="cell-second">
                {`${spokenQuantity(left, lot.record.unit)}, good until ${spokenDay(goodUntil)} (${reason})`}
              </span>
            </Tick>
          </li>
        ))}
      </ul>
      <p class="log-total">
        <span>{`${counted(ticked.length, 'lot')}, the studio’s loss`}</span>
        <Money coins={totalCost(ticked.map(({ worth }) => worth))} currency={currency} withCode />
      </p>
      {disposalRules(ticked).map(({ material, rule }) => (
        <p key={material}>
          <strong>{material}</strong>: {rule}
        </p>
      ))}
      <p>{DISPOSAL_CAUTION}</p>
      <div role="alert" class="field-wrong">
        {refusal !== null && <p class="field-error">{refusal}</p>}
      </div>
      <div class="actions">
        <Button type="submit" unavailable={view.value.busy !== null || ticked.length === 0}>
          {ticked.length === 1 ? 'Throw it away' : 'Throw them away'}
        </Button>
        <Button look="quiet" onPress={onClose}>
          Leave everything
        </Button>
      </div>
    </form>
  );
}
