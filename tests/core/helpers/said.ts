import { check, keepBooks } from '../../../src/core/check.ts';
import type { Day } from '../../../src/core/day.ts';
import type { NoticeCode } from '../../../src/core/notice.ts';
import type { Records } from '../../../src/core/records.ts';
import { settingsOf } from './studio-of.ts';

/** Everything that a check says on a day, as lines of text that can be compared; notices of some codes may be left out. */
export function saidOn(records: Records, day: Day, without: readonly NoticeCode[] = []): string[] {
  const { ledger, notices } = keepBooks(records, settingsOf({}), {});
  const { stock, notices: all } = check(ledger, day, notices);
  const lots = stock.lots.map(({ lot, left, goodUntil, state, usable, worth }) =>
    [lot.name, left.toFraction(), goodUntil, state, usable, worth].join(' '),
  );
  const materials = stock.materials.map(({ material, left, usable, onOrder, reorder, goodUntil, worth }) =>
    [material.name, left?.toFraction(), usable?.toFraction(), onOrder.toFraction(), goodUntil, worth]
      .concat(Object.values(reorder).map(String))
      .join(' '),
  );
  return [
    ...lots.toSorted(),
    ...materials.toSorted(),
    ...all
      .filter(({ code }) => !without.includes(code))
      .map(({ code, subject, message }) => `${code} ${subject} ${message}`),
  ];
}
