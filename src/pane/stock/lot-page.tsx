import { accountIn } from '../../core/ledger.ts';
import { openedOn, type Posting } from '../../core/lot-account.ts';
import { toCoins } from '../../core/money.ts';
import type { LotFigures } from '../../core/stock.ts';
import type { Unit } from '../../core/unit.ts';
import { unitFor } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { stockTable } from '../../workbook/tables-stock.ts';
import { Button, Icon } from '../parts/button.tsx';
import { DayText, Money, Quantity } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { LongTable } from '../parts/long-table.tsx';
import type { TableColumn, TableRow } from '../parts/table.tsx';
import { useEscape } from '../parts/use-escape.ts';
import { openMaterial } from '../route.ts';
import { type Fact, Facts } from './facts.tsx';
import { HazardCaution } from './hazard-caution.tsx';
import { standingOf } from './lot-list.ts';
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

/** A lot: its figures today, and every movement on it, the latest first. */
export function LotPage({ books, figures }: LotPageProps) {
  const { lot } = figures;
  const { material, record } = lot;
  const { postings } = accountIn(books.ledger, lot);
  const close = (): void => openMaterial(material);
  useEscape(true, close);
  return (
    <>
      <div class="head">
        <Button look="quiet" class="button-back" onPress={close}>
          <Icon icon="back" />
          {material.name}
        </Button>
        <ShowInTab books={books} row={record} header={stockTable(record.place.table).columns.lot.header} />
      </div>
      <Heading focusHome>{`Lot ${lot.name}`}</Heading>
      <HazardCaution hazards={material.record.hazards} checked={material.record.sdsChecked} />
      <Facts facts={factsOf(figures, books)} />
      {postings.length === 0 ? (
        <div class="empty">
          <p class="empty-title">No movements yet</p>
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

function factsOf(figures: LotFigures, { ledger, stock, settings }: Books): Fact[] {
  const { lot, left, goodUntil, worth } = figures;
  const { record } = lot;
  const { currency } = settings;
  const opened = openedOn(accountIn(ledger, lot), stock.today);
  const cost = record.cost === null ? null : toCoins(record.cost, currency);
  return [
    ['Left', <Quantity quantity={left} unit={record.unit} />],
    ['State', standingOf(figures, stock.today)],
    ['Good until', <DayText day={goodUntil} none={lot.doubtful ? 'can’t be told' : 'keeps'} />],
    ['Opened', <DayText day={opened} none="sealed" />],
    ['Place', record.storedAt ?? <span class="muted">not said</span>],
    ['Received', <DayText day={record.received} />],
    ['Quantity', <Quantity quantity={record.quantity} unit={record.unit} />],
    ['Cost', <Money coins={cost} currency={currency} withCode />],
    ['Worth', <Money coins={worth} currency={currency} withCode />],
    ...(record.supplier === null ? [] : [['Supplier', record.supplier] as const]),
    ...(lot.recipe === null ? [] : [['Made by', lot.recipe.name] as const]),
  ];
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
