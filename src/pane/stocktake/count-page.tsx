import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { keyOf } from '../../core/identifier.ts';
import type { Lot } from '../../core/studio.ts';
import type { Books } from '../../session/session-state.ts';
import { RECORD_TABLES } from '../../workbook/known-tables.ts';
import { usePane } from '../pane-context.ts';
import { SelectField, TextField } from '../parts/fields.tsx';
import { Heading } from '../parts/layout.tsx';
import { openStock } from '../route.ts';
import { BackRow } from '../stock/back-row.tsx';
import { CountRowView } from './count-row.tsx';
import { besidesWords, type CountRow, countSheet, nextToCount, rowsOf } from './count-sheet.ts';
import {
  askedLot,
  type CountedPlace,
  countedPlace,
  foundBesides,
  lotTaken,
  unwritten,
} from './count-state.ts';
import { enteredFor, keepCount, lotCalled, type Way } from './counting.ts';
import { NoCounts } from './no-counts.tsx';
import { PostCounted } from './post-counted.tsx';

const POST = 'post-counted';

/** A stocktake: the list in walking order, and what was counted so far. */
export function CountPage({ books }: { readonly books: Books }) {
  const close = (): void => openStock({ kind: 'list' });
  return (
    <>
      <BackRow to="All stock" onBack={close} />
      <Heading focusHome>Count what is there</Heading>
      {books.reading.tables.has(RECORD_TABLES.counts.name.toLowerCase()) ? (
        <Counting books={books} />
      ) : (
        <NoCounts books={books} />
      )}
    </>
  );
}

function Counting({ books }: { readonly books: Books }) {
  const { act, session } = usePane();
  const place = countedPlace.value;
  const besides = foundBesides.value;
  const sheet = useMemo(() => countSheet(books, place, besides), [books, place, besides]);
  const rows = rowsOf(sheet);
  const [active, setActive] = useState<string | null>(null);
  const [pending, setPending] = useState<ReadonlySet<string>>(new Set());
  const [sought, setSought] = useState('');
  const [notFound, setNotFound] = useState<string | null>(null);
  const search = useRef<HTMLInputElement>(null);
  const asked = askedLot.value;

  const goTo = (lot: Lot): void => {
    setSought('');
    setNotFound(null);
    const listed = rows.find((row) => row.lot === lot);
    if (listed === undefined) foundBesides.value = [...besides, keyOf(lot.name)];
    // The row of a lot that comes in besides is there with the next drawing.
    setActive(listed?.key ?? `besides ${keyOf(lot.name)}`);
  };
  useEffect(() => {
    const lot = asked === null ? null : lotCalled(books.ledger.studio, asked);
    lotTaken();
    if (lot !== null) goTo(lot);
  }, [asked]);
  const isActive = (row: CountRow): boolean =>
    active === row.key || active === `besides ${keyOf(row.lot.name)}`;

  const enter = (row: CountRow, text: string, way: Way): string | null => {
    const entered = enteredFor(row.lot, text, way, place, books);
    if (entered.kind === 'wrong') return entered.message;
    if (entered.kind === 'lot') {
      goTo(entered.lot);
      return null;
    }
    const done = new Set([...pending, row.key]);
    const next = nextToCount(rows, row.key, done);
    setActive(next);
    if (next === null)
      requestAnimationFrame(() =>
        (document.querySelector<HTMLElement>(`#${POST} button`) ?? search.current)?.focus(),
      );
    if (entered.kind === 'blank') return null;
    setPending(done);
    unwritten.value = { ...unwritten.value, [row.key]: text.trim() };
    void act(() => keepCount(session, entered.request, books)).then((outcome) => {
      setPending((before) => new Set([...before].filter((key) => key !== row.key)));
      if (outcome.kind !== 'done') return;
      const { [row.key]: _written, ...others } = unwritten.value;
      unwritten.value = others;
    });
    return null;
  };
  const seek = (text: string): void => {
    const lot = lotCalled(books.ledger.studio, text);
    if (lot !== null) goTo(lot);
    else if (text.trim() !== '') {
      setNotFound(`No lot is called ${text.trim()}.`);
      search.current?.select();
    }
  };
  const closeField = (row: CountRow): void => {
    document.querySelector<HTMLElement>(`[data-count="${CSS.escape(row.key)}"] button`)?.focus();
    setActive(null);
  };

  return (
    <>
      <SelectField
        label="Place"
        value={optionOf(place)}
        options={[
          { value: 'all', label: 'All places' },
          ...sheet.places.map((each) => ({
            value: optionOf({ kind: 'one', place: each }),
            label: each ?? 'No place is known',
          })),
        ]}
        onChange={(value) => {
          countedPlace.value = placeOf(value, sheet.places);
          setActive(null);
        }}
      />
      <PostCounted id={POST} sheet={sheet} books={books} pending={pending.size} />
      <TextField
        label="Type or scan a lot"
        hint="Enter opens its field"
        inputMode="search"
        value={sought}
        error={notFound}
        fieldRef={search}
        onInput={(text) => {
          setSought(text);
          setNotFound(null);
        }}
        onEnter={seek}
      />
      {rows.length === 0 && (
        <div class="empty">
          <p class="empty-title">Nothing is there to be counted</p>
          <p>No lot that is counted is received, not discarded and not empty.</p>
        </div>
      )}
      {sheet.groups.map(({ title, rows: own }) => (
        <div key={title} class="count-group">
          <Heading level={3}>{title}</Heading>
          <ul class="count-list">
            {own.map((row) => (
              <CountRowView
                key={row.key}
                row={row}
                books={books}
                active={isActive(row)}
                pending={pending.has(row.key)}
                unwritten={unwritten.value[row.key] ?? null}
                besides={title === 'Found besides' ? besidesWords(row.lot, books) : null}
                onOpen={() => setActive(row.key)}
                onClose={() => closeField(row)}
                onEnter={(text, way) => enter(row, text, way)}
              />
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}

function optionOf(place: CountedPlace): string {
  return place.kind === 'all' ? 'all' : `one ${place.place ?? ''}`;
}

function placeOf(value: string, places: readonly (string | null)[]): CountedPlace {
  const place = places.find((each) => optionOf({ kind: 'one', place: each }) === value);
  return value === 'all' || place === undefined ? { kind: 'all' } : { kind: 'one', place };
}
