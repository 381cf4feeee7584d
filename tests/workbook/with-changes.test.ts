import { describe, expect, test } from 'vitest';
import { serialOfDay } from '../../src/core/serial-date.ts';
import type { CellValue, CellWrite, ColumnSnapshot, WorkbookSnapshot } from '../../src/workbook/port.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import {
  type ContractTable,
  type ContractWorkbook,
  workbookContract,
} from '../contract/workbook-contract.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO } from '../helpers/studio.ts';

function storedAs(cell: CellWrite | undefined): CellValue {
  if (cell === undefined || cell.kind === 'blank') return null;
  if (cell.kind === 'day') return serialOfDay(cell.day, 1900);
  return cell.kind === 'text' ? cell.text : cell.number;
}

function snapshotOfTables(tables: readonly ContractTable[]): WorkbookSnapshot {
  return {
    dateSystem: 1900,
    tables: tables.map(({ name, headers, days, twice, rows }) => ({
      name,
      tab: name,
      firstRow: 2,
      firstColumn: 1,
      rowCount: Math.max(1, rows.length),
      columns: headers.map((header, index): ColumnSnapshot => {
        const calculated = twice?.header === header;
        return {
          header,
          values: rows.length === 0 ? [null] : rows.map((row) => storedAs(row[index])),
          look: () => (days?.includes(header) ? 'date' : 'plain'),
          hasFormula: () => calculated,
          calculated,
        };
      }),
    })),
  };
}

function inMemory(snapshot: WorkbookSnapshot): ContractWorkbook {
  let now = snapshot;
  return {
    snapshot: () => now,
    apply: (changes) => {
      now = withChanges(now, changes);
    },
    reopen: () => inMemory(now),
  };
}

workbookContract('a snapshot that changes are applied to', (tables) => inMemory(snapshotOfTables(tables)));

describe('a snapshot with changes', () => {
  test('leaves the one that it came from as it was', () => {
    const before = snapshotOf(STUDIO);
    const after = withChanges(before, [
      { kind: 'append', table: 'Jobs', rows: [{ Job: { kind: 'text', text: '26-016' } }] },
      { kind: 'set', table: 'Jobs', row: 0, column: 'Job', cell: { kind: 'text', text: '26-000' } },
    ]);
    const jobs = (snapshot: WorkbookSnapshot) =>
      snapshot.tables.find(({ name }) => name === 'Jobs')?.columns[0]?.values;
    expect([jobs(before), jobs(after)]).toEqual([
      ['26-014', '26-015'],
      ['26-000', '26-015', '26-016'],
    ]);
    expect(after.tables.find(({ name }) => name === 'Tissue')).toBe(
      before.tables.find(({ name }) => name === 'Tissue'),
    );
  });

  test.each([
    ['table', { table: 'Nothing', row: 0, column: 'Job' }],
    ['column', { table: 'Jobs', row: 0, column: 'Nothing' }],
    ['row', { table: 'Jobs', row: 9, column: 'Job' }],
  ])('a %s that is not there is a mistake of the caller', (what, place) => {
    const change = { kind: 'set', cell: { kind: 'blank' }, ...place } as const;
    expect(() => withChanges(snapshotOf(STUDIO), [change])).toThrow(what === 'table' ? 'table' : 'cell');
  });
});
