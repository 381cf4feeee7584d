import type { Row, RowPlace } from './records.ts';

/** How pressing a notice is: stop before anything is counted on, a warning, or for knowledge. */
export type Severity = 'stop' | 'warn' | 'note';

const SEVERITIES = {
  unreadable: 'stop',
  'unknown-reference': 'stop',
  'duplicate-id': 'stop',
  'no-conversion': 'stop',
  overdrawn: 'stop',
  'set-aside-used': 'stop',
  expired: 'warn',
  'expired-used': 'warn',
  'too-early': 'warn',
  low: 'warn',
  'short-for-job': 'warn',
  'order-overdue': 'warn',
  'not-drawn': 'warn',
  'entry-changed': 'warn',
  'count-differs': 'warn',
  hazard: 'warn',
  'ph-outside': 'warn',
  expiring: 'note',
  'sds-old': 'note',
  'offer-old': 'note',
} as const satisfies Record<string, Severity>;

export type NoticeCode = keyof typeof SEVERITIES;

/** The cell that a notice is about: a row and the header of a column. */
export interface CellPlace {
  readonly place: RowPlace;
  readonly column: string;
}

/** Something that a person should know or mend. */
export interface Notice {
  readonly code: NoticeCode;
  readonly severity: Severity;
  /** The identifier of the row that it is about, or its sheet row number where it has none. */
  readonly subject: string;
  /** A sentence for a person. */
  readonly message: string;
  readonly at: CellPlace;
}

/** A notice about a cell of a row; the severity follows from the code. */
export function notice(
  code: NoticeCode,
  subject: string | null,
  row: Row,
  column: string,
  message: string,
): Notice {
  return {
    code,
    severity: SEVERITIES[code],
    subject: subject ?? String(row.place.sheetRow),
    message,
    at: { place: row.place, column },
  };
}

const PRESSING: Readonly<Record<Severity, number>> = { stop: 0, warn: 1, note: 2 };

/** Notices in the order in which they press; those that press alike by code, subject and message. */
export function mostPressingFirst(notices: readonly Notice[]): Notice[] {
  const codes = Object.keys(SEVERITIES);
  return notices.toSorted(
    (a, b) =>
      PRESSING[a.severity] - PRESSING[b.severity] ||
      codes.indexOf(a.code) - codes.indexOf(b.code) ||
      compareText(a.subject, b.subject) ||
      a.at.place.sheetRow - b.at.place.sheetRow ||
      compareText(a.message, b.message),
  );
}

/** Plain character order. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
