import { type Check, check } from '../core/check.ts';
import type { Day } from '../core/day.ts';
import { keyOf } from '../core/identifier.ts';
import type { Ledger } from '../core/ledger.ts';
import type { Notice } from '../core/notice.ts';
import type { Settings } from '../core/settings.ts';
import type { Entry, Lot } from '../core/studio.ts';
import type { TabCell } from '../workbook/live-workbook.ts';
import { addressOf, cellOf, type LocatedTable, locate } from '../workbook/located-table.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { stockTable } from '../workbook/tables-stock.ts';
import { booksOf } from './books.ts';

/** A notice with the cell that it is about, as the spreadsheet names it. */
export interface PlacedNotice extends Notice {
  /** Such as Paste!D7. */
  readonly address: string;
  /** The same cell by its tab, row and column; null where it can't be told. */
  readonly cell: TabCell | null;
  /** What mends it; null where only the person can. */
  readonly mend: Mend | null;
}

/** What a program can do about a notice, if the person wants it. */
export type Mend =
  | { readonly kind: 'draw'; readonly entry: Entry }
  /** Reverse what was drawn for the entry and draw it for what it says now. */
  | { readonly kind: 'redraw'; readonly entry: Entry }
  | { readonly kind: 'post count'; readonly lot: Lot };

/** What a workbook says on a day. */
export interface WorkbookCheck {
  readonly stock: Check['stock'];
  readonly notices: readonly PlacedNotice[];
  readonly settings: Settings;
  /** The names of the tables that were read. */
  readonly tables: readonly string[];
}

/** Reads a workbook and answers what there is on a day and what needs attention. It changes nothing. */
export function checkWorkbook(snapshot: WorkbookSnapshot, today: Day): WorkbookCheck {
  const { reading, ledger, notices: found } = booksOf(snapshot);
  const { stock, notices } = check(ledger, today, found);
  const unread = (name: string): LocatedTable | undefined => {
    const table = snapshot.tables.find((each) => each.name === name);
    return table === undefined ? undefined : locate(stockTable(name), table, snapshot.dateSystem);
  };
  return {
    stock,
    settings: reading.settings,
    tables: [...reading.tables.values()].map((table) => table.snapshot.name),
    notices: notices.map((each) => {
      const { table: name, row } = each.at.place;
      const table = reading.tables.get(name.toLowerCase()) ?? unread(name);
      const { column } = each.at;
      return {
        ...each,
        address: table === undefined ? '' : addressOf(table, row, column),
        cell: table === undefined ? null : cellOf(table, row, column),
        mend: mendOf(each, ledger),
      };
    }),
  };
}

function mendOf({ code, at }: Notice, { studio }: Ledger): Mend | null {
  const isThere = ({ place }: { readonly place: Notice['at']['place'] }): boolean =>
    place.row === at.place.row && keyOf(place.table) === keyOf(at.place.table);
  switch (code) {
    case 'not-drawn':
    case 'entry-changed': {
      const entry = studio.entries.find(({ record }) => isThere(record));
      return entry === undefined ? null : { kind: code === 'not-drawn' ? 'draw' : 'redraw', entry };
    }
    case 'count-differs': {
      const lot = studio.lots.find(({ record }) => isThere(record));
      return lot === undefined ? null : { kind: 'post count', lot };
    }
    default:
      return null;
  }
}
