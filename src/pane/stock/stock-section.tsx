import '../styles/log.css';
import '../styles/stock.css';
import { useMemo } from 'preact/hooks';
import { keyOf } from '../../core/identifier.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { Heading } from '../parts/layout.tsx';
import { openedStock, openStock, type StockPage } from '../route.ts';
import { CountPage } from '../stocktake/count-page.tsx';
import { asOfDay, booksAsOf } from './as-of.ts';
import { CarryPage } from './carry-page.tsx';
import { ClosingPage } from './closing-page.tsx';
import { OtherDayBanner } from './day-chooser.tsx';
import { DisposalsPage } from './disposals-page.tsx';
import { findLot } from './lot-list.ts';
import { LotPage } from './lot-page.tsx';
import { MaterialPage } from './material-page.tsx';
import { StockListPage } from './stock-list-page.tsx';

/** The stock, today's or another day's: a list by kind, a material, a lot, the closing stock; and a stocktake. */
export function StockSection({ books }: { readonly books: Books }) {
  const page = openedStock.value;
  const day = asOfDay.value;
  const shown = useMemo(() => (day === null ? books : booksAsOf(books, day)), [books, day]);
  // What is counted, thrown away in a year or carried over are no figures of the day that is shown.
  if (page.kind === 'count') return <CountPage books={books} />;
  if (page.kind === 'disposals') return <DisposalsPage books={books} />;
  if (page.kind === 'carry') return <CarryPage books={books} />;
  return (
    <>
      <OtherDayBanner />
      <DayPage page={page} books={shown} />
    </>
  );
}

interface DayPageProps {
  readonly page: Exclude<StockPage, { readonly kind: 'count' | 'disposals' | 'carry' }>;
  readonly books: Books;
}

function DayPage({ page, books }: DayPageProps) {
  switch (page.kind) {
    case 'closing':
      return <ClosingPage books={books} />;
    case 'list':
      return <StockListPage books={books} />;
    case 'material': {
      const key = keyOf(page.material);
      const figures = books.stock.materials.find(({ material }) => keyOf(material.name) === key);
      return figures === undefined ? (
        <Gone what={`The material ${page.material}`} />
      ) : (
        <MaterialPage key={key} books={books} figures={figures} />
      );
    }
    case 'lot': {
      const { lots } = books.ledger.studio;
      const lot = findLot(lots, page.lot);
      const figures = books.stock.lots.find((each) => each.lot === lot);
      return figures === undefined ? (
        <Gone what={`Lot ${page.lot.name}`} />
      ) : (
        <LotPage key={keyOf(page.lot.name)} books={books} figures={figures} />
      );
    }
  }
}

function Gone({ what }: { readonly what: string }) {
  return (
    <>
      <Heading focusHome>{`${what} is not in the workbook any more`}</Heading>
      <p>Its row was taken out, or its name was changed.</p>
      <div class="actions">
        <Button onPress={() => openStock({ kind: 'list' })}>All stock</Button>
      </div>
    </>
  );
}
