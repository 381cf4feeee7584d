import { accountIn } from '../../core/ledger.ts';
import { openedOn } from '../../core/life.ts';
import type { LotFigures } from '../../core/stock.ts';
import type { Material } from '../../core/studio.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { DayText, Money, Quantity } from '../parts/figures.tsx';
import { Disclosure } from '../parts/layout.tsx';
import { LongTable } from '../parts/long-table.tsx';
import type { TableColumn, TableRow } from '../parts/table.tsx';
import { openLot } from '../route.ts';
import { lotsOf, standingOf } from './lot-list.ts';

const COLUMNS: readonly TableColumn[] = [
  { header: 'Lot', wide: true },
  { header: 'Left', align: 'end' },
  { header: 'Good until', align: 'end' },
];

interface MaterialLotTablesProps {
  readonly books: Books;
  readonly material: Material;
}

/** A material's lots: as they are drawn, then what else is on the shelf, then what is done with. */
export function MaterialLotTables({ books, material }: MaterialLotTablesProps) {
  const { drawn, others, past } = lotsOf(books.ledger, books.stock, material);
  const rows = (lots: readonly LotFigures[]): TableRow[] => lots.map((figures) => lotRow(figures, books));
  if (drawn.length + others.length + past.length === 0) {
    return (
      <div class="empty">
        <p class="empty-title">No lots yet</p>
        <p>
          {material.counted
            ? 'Give what is on the shelf of it a row in a stock tab.'
            : 'It is not counted, so it needs none.'}
        </p>
      </div>
    );
  }
  return (
    <>
      {drawn.length > 0 && <LongTable caption="Lots in draw order" columns={COLUMNS} rows={rows(drawn)} />}
      {others.length > 0 && (
        <LongTable caption="Not drawn on by rule" columns={COLUMNS} rows={rows(others)} />
      )}
      {past.length > 0 && (
        <Disclosure summary={`Empty and discarded (${past.length})`}>
          <LongTable caption="Empty and discarded" captionHidden columns={COLUMNS} rows={rows(past)} />
        </Disclosure>
      )}
    </>
  );
}

function lotRow(figures: LotFigures, { ledger, stock, settings }: Books): TableRow {
  const { lot, left, goodUntil, worth } = figures;
  const opened = openedOn(accountIn(ledger, lot), stock.today);
  const standing = [lot.record.storedAt, standingOf(figures, stock.today)].filter((each) => each !== null);
  return {
    key: `${lot.record.place.table} ${lot.record.place.sheetRow}`,
    cells: [
      <>
        <Button look="link" onPress={() => openLot(lot)}>
          {lot.name}
        </Button>
        <span class="cell-second">{standing.join('\u00a0· ')}</span>
      </>,
      <>
        <Quantity quantity={left} unit={lot.record.unit} />
        <span class="cell-second">
          worth <Money coins={worth} currency={settings.currency} />
        </span>
      </>,
      <>
        <DayText day={goodUntil} none={lot.doubtful ? 'can’t be told' : 'keeps'} />
        <span class="cell-second">
          {opened === null ? 'sealed' : 'opened '}
          {opened !== null && <DayText day={opened} />}
        </span>
      </>,
    ],
  };
}
