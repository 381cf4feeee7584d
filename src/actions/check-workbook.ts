import { type Check, check, keepBooks } from '../core/check.ts';
import type { Day } from '../core/day.ts';
import type { Ledger } from '../core/ledger.ts';
import type { Notice } from '../core/notice.ts';
import type { Settings } from '../core/settings.ts';
import { addressOf, type LocatedTable, locate } from '../workbook/located-table.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { readWorkbook, type WorkbookReading } from '../workbook/read-workbook.ts';
import { stockTable } from '../workbook/tables-stock.ts';

/** A notice with the cell that it is about, as the spreadsheet names it. */
export interface PlacedNotice extends Notice {
  /** Such as Paste!D7. */
  readonly address: string;
}

/** What a workbook says on a day. */
export interface WorkbookCheck {
  readonly stock: Check['stock'];
  readonly notices: readonly PlacedNotice[];
  readonly settings: Settings;
  /** The names of the tables that were read. */
  readonly tables: readonly string[];
}

/** The ledger of a workbook as it stands, with what couldn't be read or worked out. */
export function booksOf(snapshot: WorkbookSnapshot): {
  readonly reading: WorkbookReading;
  readonly ledger: Ledger;
  readonly notices: readonly Notice[];
} {
  const reading = readWorkbook(snapshot);
  const { ledger, notices } = keepBooks(reading.records, reading.settings, reading.unreadable);
  return { reading, ledger, notices: [...reading.notices, ...notices] };
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
      return { ...each, address: table === undefined ? '' : addressOf(table, row, each.at.column) };
    }),
  };
}
