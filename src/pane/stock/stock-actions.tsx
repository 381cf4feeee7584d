import { openStocktake } from '../../core/stocktake.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { openStock } from '../route.ts';
import { DayChooser } from './day-chooser.tsx';

/** What is done with the stock as a whole. */
export function StockActions({ books }: { readonly books: Books }) {
  const underWay = openStocktake(books.ledger);
  return (
    <div class="actions">
      <Button onPress={() => openStock({ kind: 'count' })}>
        {underWay === null ? 'Count…' : `Go on counting: ${underWay}`}
      </Button>
      <Button onPress={() => openStock({ kind: 'closing' })}>Closing stock…</Button>
      <DayChooser books={books} />
    </div>
  );
}
