import { booksOf } from '../../src/actions/books.ts';
import type { DateSystem } from '../../src/core/serial-date.ts';
import { stockOn } from '../../src/core/stock.ts';
import type { FunctionBooks } from '../../src/functions/evaluate-call.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';
import { dayOf, type Literal } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

/** The books of a snapshot on a day, as whoever keeps them publishes them. */
export function booksOfSnapshot(snapshot: WorkbookSnapshot, today: string): FunctionBooks {
  const { ledger } = booksOf(snapshot);
  return { ledger, stock: stockOn(ledger, dayOf(today)), dateSystem: snapshot.dateSystem };
}

/** The books of the small studio, some tables of it replaced. */
export function studioBooks(
  tables: Literal = {},
  today: string = TODAY,
  dateSystem: DateSystem = 1900,
): FunctionBooks {
  return booksOfSnapshot(snapshotOf({ ...STUDIO, ...tables }, dateSystem), today);
}
