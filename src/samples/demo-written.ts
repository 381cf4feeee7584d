import { isoDay } from '../core/day.ts';
import { quantityNumber } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { totalCost } from '../core/lot-account.ts';
import { type Coins, type Currency, fromCoins } from '../core/money.ts';
import { lotFigures } from '../core/stock.ts';
import type { movementsTable } from '../workbook/tables-stock.ts';
import type { quoteLinesTable, quotesTable } from '../workbook/tables-trade.ts';
import type { treatmentLogTable } from '../workbook/tables-work.ts';
import type { DemoBench, Written } from './demo-bench.ts';
import { TODAY } from './demo-history.ts';
import { type DemoEntry, entryRow } from './demo-log.ts';
import type { DemoLot } from './demo-lots.ts';
import type { SampleRow } from './sample-table.ts';

/** The rows of the tables that grow with the work. */
export interface Rows {
  readonly entries: readonly SampleRow<typeof treatmentLogTable>[];
  readonly lots: readonly DemoLot[];
  readonly movements: readonly SampleRow<typeof movementsTable>[];
  readonly quotes: readonly SampleRow<typeof quotesTable>[];
  readonly quoteLines: readonly SampleRow<typeof quoteLinesTable>[];
}

/** Enough for what is made from what was made. */
const COST_PASSES = 3;
/** She laid the sheets on the table and counted one less than the books say. */
const MISCOUNTED_BY = 0.6;
const EXTENT_ADDED = 6;

/**
 * The rows with the movements of the history, what made lots cost, and all that Jarleaf writes itself; then what a
 * person typed over afterwards: a Left, and an Extent.
 */
export function withBooksKept(
  rows: Rows,
  entries: readonly DemoEntry[],
  bench: DemoBench,
  books: (rows: Rows) => Ledger,
): Rows {
  let kept: Rows = { ...rows, movements: bench.written.map((each) => movementRow(each)) };
  for (let pass = 0; pass < COST_PASSES; pass += 1)
    kept = { ...kept, lots: withMakingCosts(kept.lots, bench, books(kept)) };
  const ledger = books(kept);
  const { currency } = ledger.studio.settings;
  const costs = costsOf(ledger);
  return {
    ...kept,
    movements: bench.written.map((each) => ({
      ...movementRow(each),
      cost: money(costs.get(each.movement.name) ?? null, currency),
    })),
    lots: kept.lots.map((lot) => withFigures(lot, ledger)),
    entries: entries.map((entry) => drawnRow(entry, bench)),
  };
}

function movementRow({ movement, posted, posting, into }: Written): SampleRow<typeof movementsTable> {
  const { name, date, kind, lot, quantity, unit, job, item, entry, lotIs, reverses, note } = movement;
  return {
    movement: name,
    date: isoDay(date),
    kind,
    lot: lot.name,
    quantity: quantityNumber(quantity),
    unit: unit.name,
    job,
    item,
    entry,
    lotIs,
    into: into?.name,
    reverses: reverses?.name,
    by: 'L.',
    posted: isoDay(posted),
    posting,
    note,
  };
}

/** A made lot costs what its ingredients did. */
function withMakingCosts(lots: readonly DemoLot[], bench: DemoBench, ledger: Ledger): DemoLot[] {
  const { currency } = ledger.studio.settings;
  const costs = costsOf(ledger);
  return lots.map((lot) => {
    if (lot.times === null) return lot;
    const parts = bench.written.filter(({ into }) => into?.name === lot.lot);
    const cost = totalCost(parts.map(({ movement }) => costs.get(movement.name) ?? null));
    return { ...lot, row: { ...lot.row, cost: money(cost, currency) } };
  });
}

/** What each movement costs, by its identifier. */
function costsOf(ledger: Ledger): Map<string | null, Coins | null> {
  return new Map(
    [...ledger.accounts.values()].flatMap(({ postings }) =>
      postings.map(({ movement, cost }) => [movement.name, cost] as const),
    ),
  );
}

function withFigures(lot: DemoLot, ledger: Ledger): DemoLot {
  const known = ledger.studio.lotsByKey.get(keyOf(lot.lot));
  if (known === undefined) throw new Error(`there is no lot ${lot.lot}`);
  const { left, goodUntil, worth } = lotFigures(accountIn(ledger, known), TODAY);
  const written = quantityNumber(left);
  const row = {
    ...lot.row,
    left: lot.role === 'miscounted tissue' ? Math.round((written - MISCOUNTED_BY) * 10) / 10 : written,
    leftAsWritten: written,
    goodUntil: goodUntil === null ? null : isoDay(goodUntil),
    worth: money(worth, ledger.studio.settings.currency),
  };
  return { ...lot, row };
}

function drawnRow(entry: DemoEntry, bench: DemoBench): SampleRow<typeof treatmentLogTable> {
  const row = entryRow(entry);
  const how = bench.drawn.get(entry.entry);
  if (how === undefined) return row;
  const extent = entry.extent + (entry.role === 'changed after drawing' ? EXTENT_ADDED : 0);
  return { ...row, extent, drawn: how.drawn, drawnFor: quantityNumber(how.extent) };
}

function money(coins: Coins | null, currency: Currency): number | null {
  return coins === null ? null : fromCoins(coins, currency).valueOf();
}
