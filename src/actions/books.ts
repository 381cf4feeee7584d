import { keepBooks } from '../core/check.ts';
import type { Ledger } from '../core/ledger.ts';
import type { Notice } from '../core/notice.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { type SETTING_NAMES, TABLES_VERSION } from '../workbook/read-settings.ts';
import { readWorkbook, type WorkbookReading } from '../workbook/read-workbook.ts';

/** A workbook's records and its ledger, with what couldn't be read or worked out. */
export interface WorkbookBooks {
  readonly reading: WorkbookReading;
  readonly ledger: Ledger;
  readonly notices: readonly Notice[];
}

/** A snapshot never changes, so its books are kept once: every question about it asks the same ledger. */
const KEPT = new WeakMap<WorkbookSnapshot, WorkbookBooks>();

/** The ledger of a workbook as it stands, with what couldn't be read or worked out. */
export function booksOf(snapshot: WorkbookSnapshot): WorkbookBooks {
  const kept = KEPT.get(snapshot);
  if (kept !== undefined) return kept;
  const reading = readWorkbook(snapshot);
  const { ledger, notices } = keepBooks(reading.records, reading.settings, reading.unreadable);
  const books = { reading, ledger, notices: [...reading.notices, ...notices] };
  KEPT.set(snapshot, books);
  return books;
}

/** The setting that says which version the tables have. */
export const VERSION_SETTING: (typeof SETTING_NAMES)[number] = 'tables version';

/** Why a workbook is only read, never written to; null where it may be written to. */
export function readingOnly({ settings, notices }: WorkbookReading): string | null {
  const version = settings.tablesVersion ?? 0;
  if (version > TABLES_VERSION) {
    return (
      `This workbook has tables of version ${version}; this program knows version ${TABLES_VERSION} and only reads them. ` +
      `Get the newer program to write to it.`
    );
  }
  const doubt = notices.find(({ code, subject }) => code === 'unreadable' && subject === VERSION_SETTING);
  return doubt === undefined
    ? null
    : `Which version the tables of this workbook have can't be told, so nothing is written: ${doubt.message}`;
}
