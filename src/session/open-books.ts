import { booksOf, readingOnly } from '../actions/books.ts';
import { checkWorkbook } from '../actions/check-workbook.ts';
import { upgradableOf } from '../actions/upgrade-tables.ts';
import type { Day } from '../core/day.ts';
import { RECORD_TABLES, SETTINGS_TABLE, STOCK_TABLES } from '../workbook/known-tables.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import type { Books, SessionState } from './session-state.ts';

const { materials, movements, entries, treatments, usageRates, jobs } = RECORD_TABLES;

/** The tables without which nothing can be logged and drawn; a stock table comes besides. */
const NEEDED = [materials, movements, entries, treatments, usageRates, jobs].map(({ name }) => name);

/** What a workbook says on a day; or that none of the tables is here. */
export function stateOf(snapshot: WorkbookSnapshot, today: Day): SessionState {
  const names = new Set(snapshot.tables.map(({ name }) => name.toLowerCase()));
  const known = [...Object.values(RECORD_TABLES), ...STOCK_TABLES, SETTINGS_TABLE];
  const check = checkWorkbook(snapshot, today);
  if (check.tables.length === 0 && !known.some(({ name }) => names.has(name.toLowerCase()))) {
    return { kind: 'no tables' };
  }
  const { reading, ledger } = booksOf(snapshot);
  const hasStock = [...reading.tables.values()].some(({ definition }) => 'left' in definition.columns);
  const books: Books = {
    snapshot,
    today,
    reading,
    ledger,
    settings: check.settings,
    stock: check.stock,
    notices: check.notices,
    readingOnly: readingOnly(reading),
    absent: [
      ...NEEDED.filter((name) => !names.has(name.toLowerCase())),
      ...(hasStock || STOCK_TABLES.some(({ name }) => names.has(name.toLowerCase()))
        ? []
        : STOCK_TABLES.map(({ name }) => name)),
    ],
    upgradable: upgradableOf(snapshot),
  };
  return { kind: 'open', books };
}
