import { describe, expect, test } from 'vitest';
import { checkWorkbook, type PlacedNotice } from '../../src/actions/check-workbook.ts';
import { parseDay } from '../../src/core/day.ts';
import {
  entriesToDraw,
  groupNotices,
  SHOWN_AT_FIRST,
  shownOf,
  summaryOf,
} from '../../src/pane/today/notice-groups.ts';
import { date } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

function noticesOn(day: string, tables: object = {}): readonly PlacedNotice[] {
  const today = parseDay(day);
  if (today === null) throw new Error(`${day} is no day`);
  return checkWorkbook(snapshotOf({ ...STUDIO, ...tables }), today).notices;
}

function entry(name: string, extent: number | string) {
  return { Entry: name, Date: date('2026-04-02'), Job: '26-014', Treatment: 'Mend tear', Extent: extent };
}

describe('the notices of Today', () => {
  const notices = noticesOn(TODAY, {
    TreatmentLog: [entry('E-1', 1), entry('E-2', 'two'), entry('E-3', 100)],
  });

  test('are grouped by severity, most pressing first, then by kind', () => {
    const groups = groupNotices(notices);
    expect(groups.map(({ severity, title }) => [severity, title])).toEqual([
      ['stop', 'To mend first'],
      ['warn', 'Warnings'],
      ['note', 'Notes'],
    ]);
    expect(groups.map(({ kinds }) => kinds.map(({ code, notices: own }) => [code, own.length]))).toEqual([
      [['unreadable', 1]],
      [['not-drawn', 2]],
      [['expiring', 1]],
    ]);
  });

  test('none is lost or shown twice in the groups', () => {
    const grouped = groupNotices(notices).flatMap(({ kinds }) => kinds.flatMap((kind) => kind.notices));
    expect(grouped).toHaveLength(notices.length);
    expect(new Set(grouped)).toEqual(new Set(notices));
  });

  test('are summed up in one line that leaves out what there is none of', () => {
    expect(summaryOf(notices)).toBe('1 to mend first, 2 warnings, 1 note.');
    expect(summaryOf(noticesOn(TODAY))).toBe('1 note.');
    expect(summaryOf([])).toBe('Nothing needs attention.');
  });

  test('offer to draw the entries that are not drawn, and no others', () => {
    expect(entriesToDraw(notices).map(({ name }) => name)).toEqual(['E-1', 'E-3']);
    expect(entriesToDraw(noticesOn(TODAY))).toEqual([]);
  });
});

describe('a long list', () => {
  const items = (count: number) => Array.from({ length: count }, (_, place) => place);

  test('shows its first ones, and all when asked', () => {
    expect(shownOf(items(200), false)).toEqual(items(SHOWN_AT_FIRST));
    expect(shownOf(items(200), true)).toHaveLength(200);
  });

  test('never hides a single one', () => {
    expect(shownOf(items(SHOWN_AT_FIRST + 1), false)).toHaveLength(SHOWN_AT_FIRST + 1);
    expect(shownOf(items(SHOWN_AT_FIRST + 2), false)).toHaveLength(SHOWN_AT_FIRST);
  });
});
