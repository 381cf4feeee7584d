import { accountIn } from '../../core/ledger.ts';
import type { Posting } from '../../core/lot-account.ts';
import type { LotFigures } from '../../core/stock.ts';
import type { Unit } from '../../core/unit.ts';
import { unitFor } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { stockTable } from '../../workbook/tables-stock.ts';
import { DeedsRow } from '../lot-deeds/deeds-row.tsx';
import { DayText, Money } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { LongTable } from '../parts/long-table.tsx';
import type { TableColumn, TableRow } from '../parts/table.tsx';
import { openMaterial } from '../route.ts';
import { asOfDay } from './as-of.ts';
import { BackRow } from './back-row.tsx';
import { HazardCaution } from './hazard-caution.tsx';
import { LotFacts } from './lot-facts.tsx';
import { purposeOf, signedNumber, whatOf } from './movement-words.ts';
import { ShowInTab } from './show-in-tab.tsx';

function columnsIn(unit: Unit): TableColumn[] {
  const inUnit = unitFor('', unit);
  return [
    { header: 'Date and what', wide: true },
    { header: `Change, ${inUnit}`, align: 'end' },
    { header: `Left, ${inUnit}`, align: 'end' },
  ];
}

interface LotPageProps {
  readonly books: Books;
  readonly figures: LotFigures;
}

/** A lot: its figures on the day of the books, what can be done with it, and its movements, the latest first. */
export function LotPage({ books, figures }: LotPageProps) {
  const { lot } = figures;
  const { material, record } = lot;
  const all = accountIn(books.ledger, lot).postings;
  const day = asOfDay.value;
  const postings = day === null ? all : all.filter(({ movement }) => movement.day <= day);
  const close = (): void => openMaterial(material);
  return (
    <>
      <BackRow to={material.name} onBack={close}>
        <ShowInTab books={books} row={record} header={stockTable(record.place.table).columns.lot.header} />
      </BackRow>
      <Heading focusHome>{`Lot ${lot.name}`}</Heading>
      <HazardCaution books={books} material={material} />
      <LotFacts books={books} figures={figures} />
      <DeedsRow books={books} figures={figures} />
      {postings.length === 0 ? (
        <div class="empty">
          <p class="empty-title">{day === null ? 'No movements yet' : 'No movements by then'}</p>
          <p>What is taken from it, put back or counted will stand here.</p>
        </div>
      ) : (
        <LongTable
          caption="Movements, the latest first"
          columns={columnsIn(record.unit)}
          rows={postings
            .toReversed()
            .map((posting, place) => movementRow(posting, postings.length - place, books))}
        />
      )}
    </>
  );
}

function movementRow(posting: Posting, number: number, { settings }: Books): TableRow {
  const { movement, left, cost } = posting;
  const purpose = purposeOf(posting);
  return {
    key: String(number),
    muted: movement.reverses !== null || posting.reversedOn !== null,
    cells: [
      <>
        <DayText day={movement.date} />
        <span class="cell-second">{whatOf(posting)}</span>
        {purpose !== '' && <span class="cell-second">{purpose}</span>}
        {movement.note !== null && <span class="cell-second">{movement.note}</span>}
      </>,
      <>
        <span class="figure">{signedNumber(movement.change)}</span>
        {cost !== null && (
          <span class="cell-second">
            cost <Money coins={cost} currency={settings.currency} />
          </span>
        )}
      </>,
      <span class="figure">{signedNumber(left, '')}</span>,
    ],
  };
}
