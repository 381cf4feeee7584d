import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_PATHS } from '../../../src/build/project-paths.ts';
import { type Day, parseDay } from '../../../src/core/day.ts';
import { openXlsx } from '../../../src/files/xlsx-workbook.ts';
import { lookOfCode } from '../../../src/workbook/number-formats.ts';
import type { WorkbookSnapshot } from '../../../src/workbook/port.ts';
import type { TableInPage } from './bench-in-page.ts';

/** The day of the sample studio. */
export const SAMPLE_DAY = '2026-11-16';

/** The day of the sample studio, as the core counts it. */
export const TODAY: Day = dayNamed(SAMPLE_DAY);

function dayNamed(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new Error(`${text} is no day`);
  return day;
}

/** The bytes of a sample workbook. */
export function sampleBytes(name: string): Uint8Array {
  return readFileSync(join(PROJECT_PATHS.root, 'sample-workbooks', name));
}

/** What a sample workbook holds, read from its file. */
export function sampleSnapshot(name: string): WorkbookSnapshot {
  return openXlsx(sampleBytes(name)).snapshot();
}

/** What the core reads of tables as they stand in the page: read here, past all that the pane does. */
export function snapshotOfTables(tables: readonly TableInPage[]): WorkbookSnapshot {
  return {
    dateSystem: 1900,
    tables: tables.map(({ name, tab, firstRow, firstColumn, headers, body }) => ({
      name,
      tab,
      firstRow,
      firstColumn,
      rowCount: body.length,
      columns: headers.map((header, place) => ({
        header,
        values: body.map((row) => {
          const value = row[place]?.value ?? '';
          return value === '' ? null : value;
        }),
        look: (row) => lookOfCode(body[row]?.[place]?.format ?? 'General'),
        hasFormula: (row) => body[row]?.[place]?.hasFormula ?? false,
        calculated: false,
      })),
    })),
  };
}
