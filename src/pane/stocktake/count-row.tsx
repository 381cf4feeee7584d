import { useEffect, useRef, useState } from 'preact/hooks';
import { unitNamed } from '../../core/unit.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { FOCUS_ROW } from '../focus.ts';
import { isWeighed } from '../lot-deeds/count-deed.ts';
import { Button } from '../parts/button.tsx';
import { NumberField } from '../parts/fields.tsx';
import { useEscape } from '../parts/use-escape.ts';
import { type CountRow, isCounted } from './count-sheet.ts';
import { differenceWords } from './count-words.ts';
import type { Way } from './counting.ts';

const GRAM = unitNamed('g');

export interface CountRowViewProps {
  readonly row: CountRow;
  readonly books: Books;
  readonly active: boolean;
  /** It is being written. */
  readonly pending: boolean;
  /** What was typed and could not be written; null where nothing was. */
  readonly unwritten: string | null;
  /** Why it is not of the list; null where it is. */
  readonly besides: string | null;
  readonly onOpen: () => void;
  readonly onClose: () => void;
  /** Enter was pressed; gives what is wrong with what stands there, or null. */
  readonly onEnter: (text: string, way: Way) => string | null;
}

/** A lot of the list: its name opens its field; once counted, what was found and how it differs. */
export function CountRowView(props: CountRowViewProps) {
  const { row, books, active, pending, unwritten, besides, onOpen } = props;
  const { lot, difference, obstacle, posted } = row;
  const { unit } = lot.record;
  const counted = isCounted(row);
  return (
    <li class="count-row" data-count={row.key} {...{ [FOCUS_ROW]: '' }}>
      <div class="count-head">
        <span>
          <Button
            look="link"
            class="count-lot"
            label={`${lot.name}, ${counted ? 'count it again' : 'count it'}: ${lot.material.name}`}
            unavailable={books.readingOnly !== null}
            onPress={onOpen}
          >
            {lot.name}
          </Button>{' '}
          {lot.material.name}
        </span>
        {difference !== null && <span class="figure">{spokenQuantity(difference.counted, unit)}</span>}
      </div>
      {difference !== null && (
        <p class={difference.difference.equals(0) ? 'muted' : 'log-missing'}>
          {differenceWords(difference, books.settings.currency)}
        </p>
      )}
      {obstacle !== null && <p class="log-missing">{obstacle}</p>}
      {posted && difference === null && <p class="muted">posted</p>}
      {besides !== null && <p class="muted">{besides}</p>}
      {pending && <p class="muted">being written</p>}
      {unwritten !== null && !pending && <p class="log-missing">{`${unwritten} was not written`}</p>}
      {active && <CountField key={row.key} {...props} />}
    </li>
  );
}

function CountField({ row, unwritten, onClose, onEnter }: CountRowViewProps) {
  const { lot, difference } = row;
  const weighable = isWeighed(lot);
  const before = difference?.record ?? null;
  const [way, setWay] = useState<Way>(
    weighable && (before === null || before.gross !== null) ? 'weigh' : 'count',
  );
  const known = way === 'weigh' ? (before?.gross ?? null) : (difference?.counted ?? null);
  const [text, setText] = useState(unwritten ?? (known === null ? '' : spokenNumber(known)));
  const [error, setError] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, [way]);
  useEscape(true, onClose);
  return (
    <div class="count-field">
      <NumberField
        label={way === 'weigh' ? `Weight of ${lot.name} with the jar` : `What is left of ${lot.name}`}
        hint={
          way === 'weigh' && lot.record.tare !== null
            ? `The empty jar weighs ${spokenQuantity(lot.record.tare, GRAM)}; Enter goes on to the next`
            : 'Enter goes on to the next'
        }
        suffix={way === 'weigh' ? GRAM.name : unitFor('', lot.record.unit)}
        value={text}
        fieldRef={field}
        error={error}
        onInput={(typed) => {
          setText(typed);
          setError(null);
        }}
        onEnter={(entered) => {
          const wrong = onEnter(entered, way);
          setError(wrong);
          if (wrong !== null) field.current?.select();
        }}
      />
      {weighable && (
        <Button
          look="quiet"
          onPress={() => {
            setText('');
            setError(null);
            setWay(way === 'weigh' ? 'count' : 'weigh');
          }}
        >
          {way === 'weigh' ? 'Give what is left instead' : 'Weigh it instead'}
        </Button>
      )}
    </div>
  );
}
