import type { Day } from '../core/day.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { hasOpenCount } from '../core/lot-notices.ts';
import type { Row } from '../core/records.ts';
import { lotFigures } from '../core/stock.ts';
import type { Entry, Lot } from '../core/studio.ts';
import { dayCell, moneyCell, quantityCell, setCell, textCell } from './cell-write.ts';
import type { LocatedTable } from './located-table.ts';
import type { CellWrite, Change } from './port.ts';

/** The tables of a workbook by name in lower case. */
export type Tables = ReadonlyMap<string, LocatedTable>;

/** Sets a written cell; one that holds what can't be read stays for a person to look at. */
function setIn(tables: Tables, row: Row, header: string, cell: CellWrite): Change[] {
  const table = tables.get(row.place.table.toLowerCase());
  // A row that is about to be appended brings its written cells along.
  if (table === undefined || row.place.row < 0 || row.unreadable.has(header)) return [];
  return setCell(table, row.place.row, header, cell);
}

/**
 * The changes that bring the written cells of lots up to date: what is left, good until, worth, and the costs of
 * their movements that have a row already. A Left that somebody has typed over and not posted yet is left alone.
 */
export function lotCells(tables: Tables, ledger: Ledger, lots: Iterable<Lot>, today: Day): Change[] {
  const { currency } = ledger.studio.settings;
  return [...lots].flatMap((lot) => {
    const account = accountIn(ledger, lot);
    const figures = lotFigures(account, today);
    const left = quantityCell(figures.left);
    const count = hasOpenCount(account, today)
      ? []
      : [...setIn(tables, lot.record, 'Left', left), ...setIn(tables, lot.record, 'Left as written', left)];
    const costs = account.postings.flatMap(({ movement, cost }) =>
      movement.record === null ? [] : setIn(tables, movement.record, 'Cost', moneyCell(cost, currency)),
    );
    return [
      ...count,
      ...setIn(tables, lot.record, 'Good until', dayCell(figures.goodUntil)),
      ...setIn(tables, lot.record, 'Worth', moneyCell(figures.worth, currency)),
      ...costs,
    ];
  });
}

/** The changes that say of a log entry how far it is drawn; null for not at all. */
export function drawnCells(
  tables: Tables,
  entry: Entry,
  drawn: 'yes' | 'part' | null,
  extent: CellWrite,
): Change[] {
  return [
    ...setIn(tables, entry.record, 'Drawn', textCell(drawn)),
    ...setIn(tables, entry.record, 'Drawn for', extent),
  ];
}
