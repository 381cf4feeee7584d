import { keyOf } from '../../core/identifier.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { Heading } from '../parts/layout.tsx';
import { openedStock, openStock } from '../route.ts';
import { findLot } from './lot-list.ts';
import { LotPage } from './lot-page.tsx';
import { MaterialPage } from './material-page.tsx';
import { StockListPage } from './stock-list-page.tsx';

/** The stock: a list by kind, a material, or a lot. */
export function StockSection({ books }: { readonly books: Books }) {
  const page = openedStock.value;
  switch (page.kind) {
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
