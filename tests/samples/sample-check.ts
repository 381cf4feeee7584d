import { readFileSync } from 'node:fs';
import { checkWorkbook, type WorkbookCheck } from '../../src/actions/check-workbook.ts';
import { type Day, parseDay } from '../../src/core/day.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';

export function dayOf(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
}

/** A sample workbook as it stands in the repository. */
export function sampleSnapshot(name: string): WorkbookSnapshot {
  return openXlsx(readFileSync(new URL(`../../sample-workbooks/${name}`, import.meta.url))).snapshot();
}

/** Notices as "code subject", sorted. */
export function codesAndSubjects({ notices }: WorkbookCheck): string[] {
  return notices.map(({ code, subject }) => `${code} ${subject}`).toSorted();
}

export function checkSample(name: string, on: string): WorkbookCheck {
  return checkWorkbook(sampleSnapshot(name), dayOf(on));
}
