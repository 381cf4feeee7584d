import type { NoticeCode } from '../../../src/core/notice.ts';
import type { MaterialRecord, Records, Row } from '../../../src/core/records.ts';
import { lot, material, type PlainLot } from './stock-records.ts';
import { noticesOn, onlyOf } from './studio-of.ts';
import { item, job, rate, supplier, treatment } from './work-records.ts';

/** A studio with one lot of one material, on which notices are tried. */
export const TODAY = '2026-04-01';

export const paste = (more: Partial<Omit<MaterialRecord, keyof Row>> = {}) => material('Paste', 'g', more);

export const lotWith = (more: PlainLot) => ({ lots: [lot('A', 'Paste', '2026-03-01', 10, more)] });

export const base: Partial<Records> = {
  materials: [paste()],
  ...lotWith({}),
  treatments: [treatment('Lining')],
  usageRates: [rate('Lining', 'Paste', 2)],
  jobs: [job('J1')],
  items: [item('J1', '2')],
  suppliers: [supplier('S1')],
};

/** The notices of one code: severity, subject, column and sentence. */
export function said(
  code: NoticeCode,
  some: Partial<Records>,
  today = TODAY,
): [string, string, string, string][] {
  return onlyOf(noticesOn(today, { ...base, ...some }), code).map(({ severity, subject, at, message }) => [
    severity,
    subject,
    at.column,
    message,
  ]);
}
