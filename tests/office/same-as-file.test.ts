import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { TabBlueprint } from '../../src/workbook/blueprint.ts';
import type { CellWrite, Change, WorkbookSnapshot } from '../../src/workbook/port.ts';
import { opened, readSnapshot, writtenSnapshot } from './office-bench.ts';

const columns = (table: string) => [
  { header: 'Lot', width: 10, format: 'text' as const },
  { header: 'Quantity', width: 10, format: 'number' as const },
  { header: 'Day', width: 10, format: 'day' as const },
  { header: 'Note', width: 30, format: 'long text' as const },
  { header: 'Twice', width: 10, format: 'number' as const, formula: `${table}[[#This Row],[Quantity]]*2` },
];
const row = (lot: string, quantity: number): CellWrite[] => [
  { kind: 'text', text: lot },
  { kind: 'number', number: quantity },
  { kind: 'day', day: 20_000 as Day },
];
/** A table with a totals row, one with something below it, a blank one, and one that is free to grow. */
const TABS: readonly TabBlueprint[] = [
  {
    name: 'Totals',
    table: {
      name: 'T',
      columns: columns('T'),
      rows: [row('L1', 1), row('L2', 2)],
      totals: { label: 'All', sums: ['Quantity'] },
    },
  },
  {
    name: 'Below',
    lines: ['Title', '=not a formula'],
    table: { name: 'U', columns: columns('U'), rows: [row('L1', 1)] },
  },
  { name: 'Blank', table: { name: 'V', columns: columns('V'), rows: [] } },
  { name: 'Free', table: { name: 'W', columns: columns('W'), rows: [row('L1', 1), row('L2', 2), []] } },
];

const text = fc
  .oneof(
    fc.string({ unit: 'binary', maxLength: 12 }),
    fc.constantFrom(
      '=1',
      "'",
      "'x",
      "''x",
      '007',
      '-',
      '@',
      'TRUE',
      '1E5',
      '3-4',
      'MAR1',
      '#N/A',
      ' ',
      'a\nb',
      '+1',
    ),
  )
  .map((each): CellWrite => ({ kind: 'text', text: each }));
const number = fc
  .double({ noNaN: true, noDefaultInfinity: true })
  .map((each): CellWrite => ({ kind: 'number', number: each }));
const day = fc.integer({ min: 0, max: 60_000 }).map((each): CellWrite => ({ kind: 'day', day: each as Day }));
const blank = fc.constant<CellWrite>({ kind: 'blank' });
const cells: Readonly<Record<string, fc.Arbitrary<CellWrite>>> = {
  Lot: fc.oneof(text, blank),
  Quantity: fc.oneof(number, blank),
  Day: fc.oneof(day, blank),
  Note: fc.oneof(text, blank),
};
const table = fc.constantFrom('T', 'U', 'V', 'W');
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({
    kind: fc.constant('append' as const),
    table,
    rows: fc.array(fc.record(cells, { requiredKeys: [] }) as fc.Arbitrary<Record<string, CellWrite>>, {
      maxLength: 4,
    }),
  }),
  fc.constantFrom(...Object.keys(cells)).chain((column) =>
    fc.record({
      kind: fc.constant('set' as const),
      table,
      row: fc.nat(5),
      column: fc.constant(column),
      cell: cells[column] ?? blank,
    }),
  ),
);

/** What both adapters can say alike: a formula's result is known to neither, and only numbers have a look. */
function comparable({ dateSystem, tables }: WorkbookSnapshot): unknown {
  return {
    dateSystem,
    tables: tables.map((each) => ({
      name: each.name,
      tab: each.tab,
      firstRow: each.firstRow,
      firstColumn: each.firstColumn,
      rowCount: each.rowCount,
      columns: each.columns.map((column) => ({
        header: column.header,
        calculated: column.calculated,
        cells: column.values.map((value, index) => {
          if (column.hasFormula(index)) return 'a formula';
          return typeof value === 'number' ? `${column.look(index)} ${value}` : { value };
        }),
      })),
    })),
  };
}

/** Leaves out what can't be done: cells of rows that aren't there at that point. */
function possible(changes: readonly Change[], snapshot: WorkbookSnapshot): Change[] {
  const rows = new Map(snapshot.tables.map((each) => [each.name, each.rowCount]));
  return changes.filter((each) => each.kind !== 'set' || each.row < (rows.get(each.table) ?? 0));
}

describe('any changes to any tables', () => {
  it('leave the same in an open workbook as in a file', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(1900 as const, 1904 as const),
        fc.constantFrom('dropped' as const, 'kept' as const),
        fc.array(fc.array(change, { maxLength: 5 }), { minLength: 1, maxLength: 3 }),
        async (dateSystem, apostropheInTextCell, calls) => {
          const file = openXlsx(createXlsx({ tabs: TABS, dateSystem }));
          const { live, host } = opened(
            { dateSystem, sheets: [{ name: 'First' }] },
            { apostropheInTextCell },
          );
          let snapshot = writtenSnapshot(await live.addTabs(TABS));
          host.person('a').type('Below!A7', 'stands below');
          expect(comparable(snapshot)).toEqual(comparable(file.snapshot()));
          for (const changes of calls) {
            const doable = possible(changes, file.snapshot());
            file.apply(doable);
            snapshot = writtenSnapshot(await live.write(doable, snapshot));
            expect(comparable(snapshot)).toEqual(comparable(file.snapshot()));
          }
          expect(comparable(await readSnapshot(live))).toEqual(comparable(file.snapshot()));
        },
      ),
      { numRuns: 30 },
    );
  }, 120_000);
});
