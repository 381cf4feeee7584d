import { useMemo } from 'preact/hooks';
import { type ClosingLot, type ClosingMaterial, closingStock } from '../../core/closing-stock.ts';
import { spokenDay } from '../../core/day.ts';
import { keyOf } from '../../core/identifier.ts';
import { compareText } from '../../core/notice.ts';
import { counted } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { DayText, Money, Quantity } from '../parts/figures.tsx';
import { Banner, Heading } from '../parts/layout.tsx';
import { Table, type TableColumn, type TableRow } from '../parts/table.tsx';
import { openStock } from '../route.ts';
import { BackRow } from './back-row.tsx';
import { DayChooser } from './day-chooser.tsx';

const COLUMNS: readonly TableColumn[] = [
  { header: 'Material and lots', wide: true },
  { header: 'Left', align: 'end' },
  { header: 'Worth', align: 'end' },
];

/** What stands under every closing stock. */
const FOR_THE_ACCOUNTANT =
  'At cost, each lot at what it cost itself. Nothing is written down: what has gone off or is set aside stands at full cost and is marked. Whether stock is carried at the lower of cost and what it would fetch is for the accountant to say.';

/** What is left of each material and lot at the end of a day, and what it is worth at cost; to be printed. */
export function ClosingPage({ books }: { readonly books: Books }) {
  const { ledger, today, settings } = books;
  const stock = useMemo(() => closingStock(ledger, today), [ledger, today]);
  const close = (): void => openStock({ kind: 'list' });
  const { currency } = settings;
  const toMend = books.notices.filter(({ severity }) => severity === 'stop').length;
  const materials = stock.materials.toSorted((a, b) =>
    compareText(keyOf(a.material.name), keyOf(b.material.name)),
  );
  return (
    <>
      <BackRow to="All stock" onBack={close} />
      <Heading focusHome>{`Closing stock, ${spokenDay(today)}`}</Heading>
      <div class="actions no-print">
        <Button look="main" onPress={() => window.print()}>
          Print
        </Button>
        <Button onPress={() => openStock({ kind: 'disposals' })}>Thrown away…</Button>
        <Button onPress={() => openStock({ kind: 'carry' })}>New workbook…</Button>
        <DayChooser books={books} />
      </div>
      {toMend > 0 && (
        <Banner tone="warn" title={`${counted(toMend, 'thing')} to mend first`}>
          What can’t be read or doesn’t agree in the workbook may bear on these figures: Today says what it
          is.
        </Banner>
      )}
      {materials.length === 0 ? (
        <div class="empty">
          <p class="empty-title">Nothing was in stock on that day</p>
          <p>No lot that is counted had been received and not been used up.</p>
        </div>
      ) : (
        <Table
          caption={currency.code === '' ? 'At cost' : `At cost, in ${currency.code}`}
          columns={COLUMNS}
          rows={materials.flatMap((each) => [
            materialRow(each, books),
            ...each.lots.map((lot) => lotRow(lot, books)),
          ])}
          foot={[
            {
              key: 'total',
              cells: [
                stock.unknown === 0
                  ? 'In all'
                  : `In all, without ${counted(stock.unknown, 'lot')} of unknown cost`,
                '',
                <Money coins={stock.known} currency={currency} />,
              ],
            },
          ]}
        />
      )}
      <p>{FOR_THE_ACCOUNTANT}</p>
    </>
  );
}

function materialRow({ material, left, unit, worth }: ClosingMaterial, { settings }: Books): TableRow {
  return {
    key: `${material.record.place.sheetRow}`,
    cells: [
      <strong>{material.name}</strong>,
      <strong>
        <Quantity quantity={left} unit={unit} />
      </strong>,
      <strong>
        <Money coins={worth} currency={settings.currency} />
      </strong>,
    ],
  };
}

function lotRow({ lot, left, unit, worth, goodUntil, state, expired }: ClosingLot, books: Books): TableRow {
  const { table, sheetRow } = lot.record.place;
  const marks = [state === 'Usable' ? null : state.toLowerCase(), expired ? 'gone off' : null].filter(
    (mark) => mark !== null,
  );
  return {
    key: `${table} ${sheetRow}`,
    cells: [
      <span class="closing-lot">
        {lot.name}
        <span class="cell-second">
          received <DayText day={lot.record.received} />
          {goodUntil !== null && ', good until '}
          {goodUntil !== null && <DayText day={goodUntil} />}
        </span>
        {marks.length > 0 && <span class="low-mark">{marks.join(', ')}</span>}
      </span>,
      <Quantity quantity={left} unit={unit} />,
      <Money coins={worth} currency={books.settings.currency} />,
    ],
  };
}
