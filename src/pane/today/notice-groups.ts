import type { PlacedNotice } from '../../actions/check-workbook.ts';
import type { NoticeCode, Severity } from '../../core/notice.ts';
import type { Entry } from '../../core/studio.ts';
import { counted } from '../../core/wording.ts';

/** Notices of one severity, by what they are about. */
export interface NoticeGroup {
  readonly severity: Severity;
  readonly title: string;
  readonly kinds: readonly NoticeKind[];
}

export interface NoticeKind {
  readonly code: NoticeCode;
  readonly title: string;
  readonly notices: readonly PlacedNotice[];
}

const GROUP_TITLES: Readonly<Record<Severity, string>> = {
  stop: 'To mend first',
  warn: 'Warnings',
  note: 'Notes',
};

const KIND_TITLES: Readonly<Record<NoticeCode, string>> = {
  unreadable: 'Can’t be read',
  'unknown-reference': 'Names what is not there',
  'duplicate-id': 'Named twice',
  'no-conversion': 'Units that don’t lead to each other',
  overdrawn: 'More taken than there was',
  'set-aside-used': 'Set aside, but used',
  expired: 'Gone off',
  'expired-used': 'Used after it had gone off',
  'too-early': 'Used before it was received',
  low: 'To order or to make',
  'short-for-job': 'Short for a job',
  'order-overdue': 'Orders that are late',
  'not-drawn': 'Not taken from stock yet',
  'entry-changed': 'Changed since it was taken from stock',
  'count-differs': 'Counted',
  hazard: 'Hazards',
  'ph-outside': 'pH outside its limits',
  expiring: 'Goes off soon',
  'sds-old': 'Safety data sheets to look at again',
  'offer-old': 'Prices to check again',
};

/** Notices by severity and kind, both in the order in which they come: most pressing first. */
export function groupNotices(notices: readonly PlacedNotice[]): NoticeGroup[] {
  const severities = [...new Set(notices.map(({ severity }) => severity))];
  return severities.map((severity) => {
    const own = notices.filter((notice) => notice.severity === severity);
    const codes = [...new Set(own.map(({ code }) => code))];
    return {
      severity,
      title: GROUP_TITLES[severity],
      kinds: codes.map((code) => ({
        code,
        title: KIND_TITLES[code],
        notices: own.filter((notice) => notice.code === code),
      })),
    };
  });
}

/** How many notices of a kind are shown before the rest is asked for. */
export const SHOWN_AT_FIRST = 5;

/** The first notices of a kind; all of them where only one more would be hidden, or all were asked for. */
export function shownOf<Item>(items: readonly Item[], all: boolean): readonly Item[] {
  return all || items.length <= SHOWN_AT_FIRST + 1 ? items : items.slice(0, SHOWN_AT_FIRST);
}

/** What there is, in one line: 3 to mend first, 12 warnings, 1 note. */
export function summaryOf(notices: readonly PlacedNotice[]): string {
  const count = (severity: Severity): number => notices.filter((each) => each.severity === severity).length;
  const parts = [
    ...(count('stop') > 0 ? [`${count('stop')} to mend first`] : []),
    ...(count('warn') > 0 ? [counted(count('warn'), 'warning')] : []),
    ...(count('note') > 0 ? [counted(count('note'), 'note')] : []),
  ];
  return parts.length === 0 ? 'Nothing needs attention.' : `${parts.join(', ')}.`;
}

/** The entries that can be drawn now, as the notices offer it; each once. */
export function entriesToDraw(notices: readonly PlacedNotice[]): Entry[] {
  return [...new Set(notices.flatMap(({ mend }) => (mend?.kind === 'draw' ? [mend.entry] : [])))];
}
