import { expect } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { CellWrite, Change } from '../../src/workbook/port.ts';
import {
  changedParts,
  type FixtureOptions,
  fixture,
  numberCell,
  SOME_STYLES,
  textCell,
  unpack,
} from './fixture.ts';
import { checkFile } from './well-formed.ts';

export const text = (value: string): CellWrite => ({ kind: 'text', text: value });
export const number = (value: number): CellWrite => ({ kind: 'number', number: value });
export const day = (value: number): CellWrite => ({ kind: 'day', day: value as Day });
export const BLANK: CellWrite = { kind: 'blank' };

export const SHEET = 'xl/worksheets/sheet1.xml';
export const TABLE = 'xl/tables/table1.xml';

/** A workbook with one table of three columns and two rows, in several styles. */
export function lots(options: Partial<FixtureOptions> = {}, after = ''): FixtureOptions {
  return {
    sheets: [
      {
        name: 'Lots',
        before: '<dimension ref="A1:C3"/>',
        rows:
          `<row r="1">${textCell('A1', 'Lot')}${textCell('B1', 'Quantity')}${textCell('C1', 'Day')}</row>` +
          `<row r="2" spans="1:3">${textCell('A2', 'L1', 3)}${numberCell('B2', 5)}${numberCell('C2', 46000, 2)}</row>` +
          `<row r="3" spans="1:2" ht="20" customHeight="1">${textCell('A3', 'L2', 3)}${numberCell('B3', 6, 1)}</row>`,
        after,
        tables: [{ name: 'Lots', ref: 'A1:C3', columns: ['Lot', 'Quantity', 'Day'] }],
      },
    ],
    styles: SOME_STYLES,
    ...options,
  };
}

/** Applies changes, saves, and checks that the file read again shows what the workbook showed. */
export function change(options: FixtureOptions, changes: readonly Change[]) {
  const before = fixture(options);
  const workbook = openXlsx(before);
  workbook.apply(changes);
  const after = workbook.save();
  checkFile(after);
  const reopened = openXlsx(after).snapshot();
  expect(JSON.stringify(reopened)).toBe(JSON.stringify(workbook.snapshot()));
  return { parts: unpack(after), changed: changedParts(before, after), snapshot: reopened };
}

/** Rows for that table. */
export const append = (...rows: Record<string, CellWrite>[]): Change => ({
  kind: 'append',
  table: 'Lots',
  rows,
});
