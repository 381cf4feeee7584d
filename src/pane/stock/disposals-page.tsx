import { useMemo, useState } from 'preact/hooks';
import { DISPOSAL_CAUTION } from '../../actions/discard-expired.ts';
import { type Disposed, type DisposedMaterial, disposalsIn } from '../../core/disposals.ts';
import { counted } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { SelectField } from '../parts/fields.tsx';
import { DayText, Money, Quantity } from '../parts/figures.tsx';
import { Heading } from '../parts/layout.tsx';
import { Table, type TableColumn, type TableRow } from '../parts/table.tsx';
import { openStock } from '../route.ts';
import { BackRow } from './back-row.tsx';
import { Facts } from './facts.tsx';
import { yearOf, yearsToChoose } from './years.ts';

const COLUMNS: readonly TableColumn[] = [
  { header: 'Day and lot', wide: true },
  { header: 'How much', align: 'end' },
  { header: 'Worth', align: 'end' },
];

/** What was thrown away in a year, how much, and by which rule; to be printed. */
export function DisposalsPage({ books }: { readonly books: Books }) {
  const { ledger, today, settings } = books;
  const [year, setYear] = useState(yearOf(today));
  const disposals = useMemo(() => disposalsIn(ledger, year), [ledger, year]);
  const close = (): void => openStock({ kind: 'closing' });
  const { currency } = settings;
  const { materials, jobWaste, studioLoss, withoutCost, undated } = disposals;
  return (
    <>
      <BackRow to="Closing stock" onBack={close} />
      <Heading focusHome>{`Thrown away in ${year}`}</Heading>
      <div class="no-print stack">
        <SelectField
          label="Year"
          value={String(year)}
          options={yearsToChoose(ledger.studio, today).map((each) => ({
            value: String(each),
            label: String(each),
          }))}
          onChange={(value) => setYear(Number(value))}
        />
        <div class="actions">
          <Button look="main" onPress={() => window.print()}>
            Print
          </Button>
        </div>
      </div>
      {materials.length === 0 ? (
        <div class="empty">
          <p class="empty-title">{`Nothing was thrown away in ${year}`}</p>
          <p>What is posted as waste, and lots that are marked as discarded, will stand here.</p>
        </div>
      ) : (
        <>
          {materials.map((each) => (
            <Material key={each.material.record.place.sheetRow} of={each} books={books} />
          ))}
          <Facts
            facts={[
              ['Waste of jobs', <Money coins={jobWaste} currency={currency} withCode />],
              ['The studio’s loss', <Money coins={studioLoss} currency={currency} withCode />],
            ]}
          />
          {withoutCost > 0 && (
            <p class="muted">{`Not in these sums: ${counted(withoutCost, 'row')} of lots without a cost.`}</p>
          )}
        </>
      )}
      {undated.length > 0 && (
        <p>{`Discarded nobody knows when, so in no year’s list: ${undated.map(({ lot }) => lot.name).join(', ')}. Fill in State since of the lot.`}</p>
      )}
      <p>{DISPOSAL_CAUTION}</p>
    </>
  );
}

function Material({ of, books }: { readonly of: DisposedMaterial; readonly books: Books }) {
  const { material, quantity, unit, worth, withoutCost, rule, rows } = of;
  const isKnown = withoutCost < rows.length;
  return (
    <div class="disposal">
      <Table
        caption={material.name}
        columns={COLUMNS}
        rows={rows.map((row, place) => disposedRow(row, place, books))}
        foot={[
          {
            key: 'sum',
            cells: [
              'Together',
              <Quantity quantity={quantity} unit={unit} />,
              <Money coins={isKnown ? worth : null} currency={books.settings.currency} />,
            ],
          },
        ]}
      />
      <p class={rule === null ? 'muted' : ''}>
        {rule === null ? 'Materials says nothing about its disposal.' : `Disposal: ${rule}`}
      </p>
    </div>
  );
}

function disposedRow(row: Disposed, place: number, { settings }: Books): TableRow {
  const { day, lot, quantity, unit, worth, job, borneBy, by, note } = row;
  return {
    key: `${place}`,
    cells: [
      <>
        <DayText day={day} />
        {`, lot ${lot.name}`}
        <span class="cell-second">{borneBy === 'job' ? job : 'the studio’s loss'}</span>
        {by === 'state' && <span class="cell-second">discarded, with no waste posted</span>}
        {note !== null && <span class="cell-second">{note}</span>}
      </>,
      <Quantity quantity={quantity} unit={unit} />,
      <Money coins={worth} currency={settings.currency} />,
    ],
  };
}
