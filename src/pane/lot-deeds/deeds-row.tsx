import { useRef, useState } from 'preact/hooks';
import type { LotFigures } from '../../core/stock.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { DeedForm } from './deed-form.tsx';
import { deedsFor } from './lot-deeds.ts';

interface DeedsRowProps {
  readonly books: Books;
  readonly figures: LotFigures;
}

/** What can be done with a lot: a row of buttons, each of which opens its form in their place. */
export function DeedsRow({ books, figures }: DeedsRowProps) {
  const [opened, setOpened] = useState<string | null>(null);
  const row = useRef<HTMLDivElement>(null);
  const deeds = deedsFor(figures, books);
  const deed = deeds.find(({ name }) => name === opened);
  const obstacle = books.readingOnly;
  if (deeds.length === 0) return null;
  const close = (): void => {
    setOpened(null);
    requestAnimationFrame(() => {
      const opener = row.current?.querySelector<HTMLElement>(`[data-deed="${opened}"] button`);
      (opener ?? row.current?.querySelector<HTMLElement>('button'))?.focus();
    });
  };
  if (deed !== undefined && obstacle === null) {
    return (
      <div ref={row}>
        <DeedForm key={deed.name} deed={deed} books={books} onClose={close} />
      </div>
    );
  }
  return (
    <div ref={row} class="stack">
      <fieldset class="actions plain-fieldset" aria-label="What can be done with it">
        {deeds.map(({ name, label }) => (
          <span key={name} data-deed={name}>
            <Button unavailable={obstacle !== null} onPress={() => setOpened(name)}>
              {label}
            </Button>
          </span>
        ))}
      </fieldset>
      {obstacle !== null && <p class="muted">{obstacle}</p>}
    </div>
  );
}
