import { spokenDay } from '../../core/day.ts';
import { type EntryStatus, entryStatus } from '../../core/entry-needs.ts';
import { keyOf } from '../../core/identifier.ts';
import { standingFor } from '../../core/ledger.ts';
import { totalCost } from '../../core/lot-account.ts';
import type { Entry } from '../../core/studio.ts';
import { movementsOfPosting } from '../../core/undo.ts';
import { counted } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Money, Quantity } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { entryWords } from './posting-words.ts';
import { UndoButton } from './undo-button.tsx';

const STATUS_WORDS: Readonly<Record<EntryStatus, string>> = {
  waiting: 'Dated after today: it is taken from stock on that day.',
  'not drawn': 'Not drawn yet: nothing has been taken from stock for it.',
  part: 'Drawn in part: some of it is still to be taken from stock.',
  drawn: 'Drawn.',
};

/** The log entry that is chosen in the sheet: what it took from which lots, what that cost, and what can be done. */
export function EntryCard({ books, entry }: { readonly books: Books; readonly entry: Entry }) {
  const { act, session, view } = usePane();
  const { ledger, today, notices, settings, readingOnly } = books;
  const standing = entry.key === null ? [] : standingFor(ledger, entry.key, today);
  const status = entryStatus(ledger, entry, today);
  const isEdited = notices.some(
    ({ code, subject }) => code === 'entry-changed' && keyOf(subject) === keyOf(entry.name),
  );
  const postings = new Set(standing.flatMap(({ movement }) => movement.record?.posting ?? []));
  const busy = view.value.busy !== null;
  const isUndrawn = status === 'not drawn' || status === 'part';
  return (
    <div class="card stack log-entry">
      <div>
        <Heading>{`Entry ${entry.name}`}</Heading>
        <p>{entryWords(entry)}</p>
        <p class="muted">{`${spokenDay(entry.record.date)}. ${statusWords(status, standing.length)}`}</p>
        {isEdited && <p class="log-missing">The extent is another one than it was drawn for.</p>}
      </div>
      {standing.length > 0 && (
        <>
          <ul class="log-takes">
            {standing.map(({ movement, cost }) => (
              <li key={movement.name ?? movement.lot.name} class="log-take-cost">
                <span>
                  <Quantity quantity={movement.quantity} unit={movement.unit} /> of{' '}
                  {movement.lot.material.name} from <strong class="unbroken">{movement.lot.name}</strong>{' '}
                  {movement.lotIs !== null && (
                    <span class={`log-certainty log-${movement.lotIs}`}>{movement.lotIs}</span>
                  )}
                </span>
                <Money coins={cost} currency={settings.currency} />
              </li>
            ))}
          </ul>
          <p class="log-total">
            <span>In all</span>
            <Money
              coins={totalCost(standing.map(({ cost }) => cost))}
              currency={settings.currency}
              withCode
            />
          </p>
        </>
      )}
      {readingOnly === null && entry.key !== null && (
        <div class="actions">
          {isUndrawn && !isEdited && (
            <Button unavailable={busy} onPress={() => act(() => session.draw([entry]))}>
              {status === 'part' ? 'Draw the rest' : 'Draw'}
            </Button>
          )}
          {isEdited && (
            <Button unavailable={busy} onPress={() => act(() => session.redraw(entry))}>
              Draw the difference
            </Button>
          )}
          {[...postings].map((posting) => (
            <UndoButton
              key={posting}
              posting={posting}
              what={`entry ${entry.name}`}
              besides={alsoIn(books, posting, entry)}
            />
          ))}
        </div>
      )}
    </div>
  );
}

function statusWords(status: EntryStatus, movements: number): string {
  if (status === 'drawn' && movements === 0) return 'It takes nothing from stock.';
  return STATUS_WORDS[status];
}

/** What stands in the same posting as an entry. */
function alsoIn({ ledger }: Books, posting: string, entry: Entry): string | null {
  const others = new Set(
    movementsOfPosting(ledger, posting).flatMap((movement) =>
      movement.entry === null || keyOf(movement.entry) === entry.key ? [] : [keyOf(movement.entry)],
    ),
  ).size;
  return others === 0
    ? null
    : `It was drawn together with ${counted(others, 'other entry', 'other entries')}: they are put back too.`;
}
