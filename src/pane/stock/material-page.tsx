import { dailyDemand } from '../../core/demand.ts';
import { exact } from '../../core/exact-number.ts';
import { dailyStatistics } from '../../core/reorder-formula.ts';
import type { MaterialFigures } from '../../core/stock.ts';
import { counted, spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { materialsTable } from '../../workbook/tables-stock.ts';
import { MakeSome } from '../make/make-some.tsx';
import { DayText, Money, Quantity } from '../parts/figures.tsx';
import { later } from '../parts/later.tsx';
import { Heading } from '../parts/layout.tsx';
import { openStock } from '../route.ts';
import { asOfDay } from './as-of.ts';
import { BackRow } from './back-row.tsx';
import { type Fact, Facts } from './facts.tsx';
import { HazardCaution } from './hazard-caution.tsx';
import { MaterialLotTables } from './material-lot-tables.tsx';
import { ShowInTab } from './show-in-tab.tsx';

interface MaterialPageProps {
  readonly books: Books;
  readonly figures: MaterialFigures;
}

const MaterialOutlook = later(
  async () => (await import('./material-outlook.tsx')).MaterialOutlook,
  'What the next weeks will bring',
);

/** A material: its figures today, its lots, and what will become of them. */
export function MaterialPage({ books, figures }: MaterialPageProps) {
  const { material } = figures;
  const close = (): void => openStock({ kind: 'list' });
  return (
    <>
      <BackRow to="All stock" onBack={close}>
        <ShowInTab books={books} row={material.record} header={materialsTable.columns.material.header} />
      </BackRow>
      <Heading focusHome>{material.name}</Heading>
      {figures.reorder.isLow && <p class="low-mark">{lowWords(figures)}</p>}
      <HazardCaution books={books} material={material} />
      <Facts facts={factsOf(figures, books)} />
      {books.readingOnly === null && <MakeSome figures={figures} />}
      <MaterialLotTables books={books} material={material} />
      {material.counted && asOfDay.value === null && <MaterialOutlook books={books} material={material} />}
    </>
  );
}

function lowWords({ material, reorder }: MaterialFigures): string {
  const down = `Down to ${spokenQuantity(reorder.position, material.unit)} with what is on order, less what is planned`;
  if (reorder.suggestedOrder.equals(0)) return `${down}.`;
  const verb = material.recipe !== null && material.offers.length === 0 ? 'make' : 'order';
  return `${down}: ${verb} ${spokenQuantity(reorder.suggestedOrder, material.unit)}.`;
}

function factsOf(figures: MaterialFigures, { ledger, stock, settings }: Books): Fact[] {
  const { material, left, usable, onOrder, reorder, goodUntil, worth } = figures;
  const { unit } = material;
  const order: Fact = ['On order', <Quantity quantity={onOrder} unit={unit} />];
  if (left === null || usable === null) {
    return [['Left', 'Not counted: it needs no lot, and never falls short'], order];
  }
  const daily = dailyDemand(ledger, material, stock.today);
  const { mean } = dailyStatistics(daily);
  // Two digits: it is a mean, and promises no more.
  const use = spokenQuantity(exact(Number((mean * 7).toPrecision(2))), unit);
  const none = 'no order point';
  return [
    ['Left', <Quantity quantity={left} unit={unit} />],
    [asOfDay.value === null ? 'Usable today' : 'Usable that day', <Quantity quantity={usable} unit={unit} />],
    order,
    ['Planned', <Quantity quantity={reorder.planned} unit={unit} />],
    [
      'Order when down to',
      reorder.reorderPoint.equals(0) ? none : <Quantity quantity={reorder.reorderPoint} unit={unit} />,
    ],
    ['Suggested order', <Quantity quantity={reorder.suggestedOrder} unit={unit} />],
    ['Mean use', `about ${use} a week, over the last ${counted(daily.length, 'day')}`],
    ['First goes off', <DayText day={goodUntil} none="keeps" />],
    ['Worth', <Money coins={worth} currency={settings.currency} withCode />],
  ];
}
