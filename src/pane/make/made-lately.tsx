import { useRef, useState } from 'preact/hooks';
import { spokenDay } from '../../core/day.ts';
import type { LotFigures } from '../../core/stock.ts';
import type { Books } from '../../session/session-state.ts';
import { FOCUS_ROW } from '../focus.ts';
import { Button } from '../parts/button.tsx';
import { Quantity } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { ShowMore } from '../parts/show-more.tsx';
import { openLot } from '../route.ts';
import { EmptyBath } from './empty-bath.tsx';
import { KeepBath } from './keep-bath.tsx';
import { hasGoneOff, isBath, madeLots } from './made-lots.ts';

const SHOWN_AT_ONCE = 8;

/** What was made here and is not used up, the latest first, with what can be done with it. */
export function MadeLately({ books }: { readonly books: Books }) {
  const [most, setMost] = useState(SHOWN_AT_ONCE);
  const made = madeLots(books.stock);
  return (
    <div class="stack">
      <Heading level={3}>Made lately and not used up</Heading>
      {made.length === 0 ? (
        <p class="muted">Nothing that was made here is left.</p>
      ) : (
        <ul class="log-recent">
          {made.slice(0, most).map((figures) => (
            <MadeLot key={figures.lot.name} figures={figures} books={books} />
          ))}
        </ul>
      )}
      {made.length > SHOWN_AT_ONCE && (
        <ShowMore hidden={Math.max(made.length - most, 0)} onPress={() => setMost(most + SHOWN_AT_ONCE)} />
      )}
    </div>
  );
}

interface MadeLotProps {
  readonly figures: LotFigures;
  readonly books: Books;
}

/** What is being done with a lot: nothing, or one of two things that ask first. */
type Doing = 'nothing' | 'emptying' | 'keeping';

function MadeLot({ figures, books }: MadeLotProps) {
  const { lot, left, goodUntil } = figures;
  const [doing, setDoing] = useState<Doing>('nothing');
  const isGone = hasGoneOff(figures, books.stock);
  const bath = isBath(lot);
  const row = useRef<HTMLLIElement>(null);
  /** What had the focus goes with the question: it goes back to what asked it. */
  const back = (): void => {
    setDoing('nothing');
    requestAnimationFrame(() => row.current?.querySelector<HTMLElement>('.actions button')?.focus());
  };
  return (
    <li class="log-posting" ref={row} {...{ [FOCUS_ROW]: '' }}>
      <div class="log-line-head">
        <span>
          <Button
            look="link"
            class="make-lot"
            label={`${lot.name}, show in stock`}
            onPress={() => openLot(lot)}
          >
            {lot.name}
          </Button>{' '}
          {lot.material.name}
        </span>
        <Quantity quantity={left} unit={lot.record.unit} />
      </div>
      {isGone && goodUntil !== null ? (
        <p class="log-missing">{`gone off after ${spokenDay(goodUntil)}`}</p>
      ) : (
        <p class="muted">{goodUntil === null ? 'keeps' : `good until ${spokenDay(goodUntil)}`}</p>
      )}
      {books.readingOnly === null && (
        <>
          {doing === 'nothing' && (
            <div class="actions make-actions">
              <Button
                look="quiet"
                label={`${bath ? 'Empty the bath…' : 'Throw away the rest…'} ${lot.name}`}
                onPress={() => setDoing('emptying')}
              >
                {bath ? 'Empty the bath…' : 'Throw away the rest…'}
              </Button>
              {bath && (
                <Button look="quiet" label={`Keep it… ${lot.name}`} onPress={() => setDoing('keeping')}>
                  Keep it…
                </Button>
              )}
            </div>
          )}
          {doing === 'emptying' && <EmptyBath lot={lot} books={books} onDone={back} />}
          {doing === 'keeping' && <KeepBath lot={lot} onDone={back} />}
        </>
      )}
    </li>
  );
}
