import { describe, expect, it } from 'vitest';
import { type Day, isoDay } from '../../src/core/day.ts';
import { dayOfSerial } from '../../src/core/serial-date.ts';
import type {
  CellValue,
  CellWrite,
  Change,
  TableSnapshot,
  WorkbookSnapshot,
} from '../../src/workbook/port.ts';

/** A workbook as an adapter offers it. */
export interface ContractWorkbook {
  snapshot(): WorkbookSnapshot | Promise<WorkbookSnapshot>;
  apply(changes: readonly Change[]): void | Promise<void>;
  /** The same workbook, stored and read again from nothing. */
  reopen(): ContractWorkbook | Promise<ContractWorkbook>;
}

/** A table that the workbook to be made shall have; each on a tab of its own. */
export interface ContractTable {
  readonly name: string;
  readonly headers: readonly string[];
  /** The headers of columns that show days. */
  readonly days?: readonly string[];
  /** A calculated column by its header: twice the value of another column. */
  readonly twice?: { readonly header: string; readonly of: string };
  readonly rows: readonly (readonly CellWrite[])[];
  readonly totals?: boolean;
}

export type ContractFactory = (
  tables: readonly ContractTable[],
) => ContractWorkbook | Promise<ContractWorkbook>;

const text = (value: string): CellWrite => ({ kind: 'text', text: value });
const number = (value: number): CellWrite => ({ kind: 'number', number: value });
const day = (value: number): CellWrite => ({ kind: 'day', day: value as Day });

const LOTS: ContractTable = {
  name: 'Lots',
  headers: ['Lot', 'Quantity', 'Received'],
  days: ['Received'],
  rows: [
    [text('L1'), number(5), day(20_000)],
    [text('L2'), number(0.1), day(20_001)],
  ],
};

const values = (table: TableSnapshot | undefined, header: string): readonly CellValue[] | undefined =>
  table?.columns.find((column) => column.header === header)?.values;

const set = (row: number, column: string, cell: CellWrite): Change => ({
  kind: 'set',
  table: 'Lots',
  row,
  column,
  cell,
});

/** What every adapter of the workbook gate does, whatever holds the workbook. */
export function workbookContract(name: string, make: ContractFactory): void {
  /** Makes a workbook, applies changes one call at a time, and gives the first table before and after storing. */
  async function afterwards(
    tables: readonly ContractTable[],
    ...calls: (readonly Change[])[]
  ): Promise<TableSnapshot[][]> {
    const workbook = await make(tables);
    await calls.reduce(async (done, changes) => {
      await done;
      await workbook.apply(changes);
    }, Promise.resolve());
    const shown = await workbook.snapshot();
    const stored = await (await workbook.reopen()).snapshot();
    return [[...shown.tables], [...stored.tables]];
  }

  describe(`workbook contract: ${name}`, () => {
    it('shows tables by name, with their columns and values', async () => {
      for (const [table] of await afterwards([LOTS, { ...LOTS, name: 'Other', rows: [] }])) {
        expect(table).toMatchObject({ name: 'Lots', rowCount: 2 });
        expect(table?.columns.map((column) => column.header)).toEqual(['Lot', 'Quantity', 'Received']);
        expect(values(table, 'Lot')).toEqual(['L1', 'L2']);
        expect(values(table, 'Quantity')).toEqual([5, 0.1]);
      }
    });

    it('shows days by their serial, and says that they are days', async () => {
      const workbook = await make([LOTS]);
      const { tables, dateSystem } = await workbook.snapshot();
      const column = tables[0]?.columns[2];
      expect(column?.look(0)).toBe('date');
      const shown = dayOfSerial(column?.values[1] as number, dateSystem);
      expect(shown === null ? null : isoDay(shown)).toBe(isoDay(20_001 as Day));
    });

    it('appends rows in the order given, columns that are not named staying blank', async () => {
      const rows = [{ Lot: text('L3') }, { Quantity: number(7), Received: day(20_002) }, {}];
      for (const [table] of await afterwards([LOTS], [{ kind: 'append', table: 'Lots', rows }])) {
        expect(table?.rowCount).toBe(5);
        expect(values(table, 'Lot')).toEqual(['L1', 'L2', 'L3', null, null]);
        expect(values(table, 'Quantity')).toEqual([5, 0.1, null, 7, null]);
        expect(table?.columns[2]?.look(3)).toBe('date');
      }
    });

    it('fills the blank row of a fresh table before it grows', async () => {
      const rows = [{ Lot: text('L1') }, { Lot: text('L2') }];
      for (const [table] of await afterwards(
        [{ ...LOTS, rows: [] }],
        [{ kind: 'append', table: 'Lots', rows }],
      )) {
        expect(table?.rowCount).toBe(2);
        expect(values(table, 'Lot')).toEqual(['L1', 'L2']);
      }
    });

    it('grows above a totals row', async () => {
      const rows = [{ Lot: text('L3'), Quantity: number(1) }];
      const append: Change = { kind: 'append', table: 'Lots', rows };
      for (const [table] of await afterwards([{ ...LOTS, totals: true }], [append], [append])) {
        expect(table?.rowCount).toBe(4);
        expect(values(table, 'Lot')).toEqual(['L1', 'L2', 'L3', 'L3']);
      }
    });

    it('gives new rows the formula of a calculated column', async () => {
      const table: ContractTable = {
        ...LOTS,
        headers: [...LOTS.headers, 'Twice'],
        twice: { header: 'Twice', of: 'Quantity' },
      };
      for (const [shown] of await afterwards(
        [table],
        [{ kind: 'append', table: 'Lots', rows: [{ Quantity: number(3) }] }],
      )) {
        const column = shown?.columns[3];
        expect(column?.calculated).toBe(true);
        expect([0, 1, 2].map((row) => column?.hasFormula(row))).toEqual([true, true, true]);
        expect(shown?.columns[1]?.hasFormula(2)).toBe(false);
      }
    });

    it('stores text as text whatever it looks like', async () => {
      const awkward = [
        '=1+1',
        '+1',
        '-',
        '@x',
        '007',
        '1E5',
        '2026-01-01',
        'TRUE',
        ' x ',
        'a\nb',
        '<&>"',
        '_x0041_',
        '漢字',
      ];
      const rows = awkward.map((each) => ({ Lot: text(each) }));
      for (const [table] of await afterwards(
        [{ ...LOTS, rows: [] }],
        [{ kind: 'append', table: 'Lots', rows }],
      )) {
        expect(values(table, 'Lot')).toEqual(awkward);
      }
    });

    it('sets single cells, to blank too', async () => {
      const changes = [
        set(0, 'Lot', text('X')),
        set(1, 'Quantity', number(-2.5)),
        set(1, 'Lot', { kind: 'blank' }),
        set(0, 'Quantity', day(20_005)),
      ];
      for (const [table] of await afterwards([LOTS], changes)) {
        expect(values(table, 'Lot')).toEqual(['X', null]);
        expect(values(table, 'Quantity')?.[1]).toBe(-2.5);
        expect(table?.columns[1]?.look(0)).toBe('date');
      }
    });

    it('carries out changes in their order, on rows just appended too', async () => {
      const changes: Change[] = [
        { kind: 'append', table: 'Lots', rows: [{ Lot: text('L3') }] },
        { kind: 'set', table: 'Lots', row: 2, column: 'Lot', cell: text('L3b') },
        { kind: 'append', table: 'Lots', rows: [{ Lot: text('L4') }] },
        { kind: 'set', table: 'Lots', row: 2, column: 'Quantity', cell: number(1) },
      ];
      for (const [table] of await afterwards([LOTS], changes)) {
        expect(values(table, 'Lot')).toEqual(['L1', 'L2', 'L3b', 'L4']);
        expect(values(table, 'Quantity')).toEqual([5, 0.1, 1, null]);
      }
    });

    it('appends to two tables in turn', async () => {
      const changes = ['L3', 'L4'].flatMap((each): Change[] => [
        { kind: 'append', table: 'Lots', rows: [{ Lot: text(each) }] },
        { kind: 'append', table: 'Other', rows: [{ Lot: text(`other ${each}`) }] },
      ]);
      for (const [lots, other] of await afterwards([LOTS, { ...LOTS, name: 'Other', rows: [] }], changes)) {
        expect(values(lots, 'Lot')).toEqual(['L1', 'L2', 'L3', 'L4']);
        expect(values(other, 'Lot')).toEqual(['other L3', 'other L4']);
      }
    });

    const added = (header: string, format: 'text' | 'day'): Change => ({
      kind: 'add column',
      table: 'Lots',
      column: { header, width: 12, format },
    });

    it('adds blank columns behind the last one, in the order given', async () => {
      const changes = [added('Note', 'text'), added('Checked', 'day')];
      for (const totals of [false, true]) {
        for (const [table, other] of await afterwards(
          [
            { ...LOTS, totals },
            { ...LOTS, name: 'Other' },
          ],
          changes,
          [added('By', 'text')],
        )) {
          expect(table?.columns.map(({ header }) => header)).toEqual([
            ...LOTS.headers,
            'Note',
            'Checked',
            'By',
          ]);
          expect(table?.rowCount).toBe(2);
          expect(values(table, 'Lot')).toEqual(['L1', 'L2']);
          for (const header of ['Note', 'Checked', 'By']) expect(values(table, header)).toEqual([null, null]);
          expect(table?.columns.map(({ calculated }) => calculated)).not.toContain(true);
          expect(other?.columns.map(({ header }) => header)).toEqual(LOTS.headers);
        }
      }
    });

    it('writes into columns that it has just added, in rows that are there and in new ones', async () => {
      const changes: Change[] = [
        set(0, 'Quantity', number(6)),
        added('Note', 'text'),
        added('Checked', 'day'),
        set(1, 'Note', text('007')),
        { kind: 'append', table: 'Lots', rows: [{ Lot: text('L3'), Checked: day(20_003) }] },
      ];
      for (const [table] of await afterwards([{ ...LOTS, totals: true }], changes)) {
        expect(values(table, 'Quantity')).toEqual([6, 0.1, null]);
        expect(values(table, 'Lot')).toEqual(['L1', 'L2', 'L3']);
        expect(values(table, 'Note')).toEqual([null, '007', null]);
        expect(table?.columns[4]?.look(2)).toBe('date');
      }
    });

    it('adds columns to a table that is still to be filled', async () => {
      const append: Change = { kind: 'append', table: 'Lots', rows: [{ Note: text('first') }] };
      for (const [table] of await afterwards([{ ...LOTS, rows: [] }], [added('Note', 'text')], [append])) {
        expect(table?.rowCount).toBe(1);
        expect(values(table, 'Note')).toEqual(['first']);
      }
    });

    it('leaves other tables as they were', async () => {
      const append: Change = { kind: 'append', table: 'Lots', rows: [{ Lot: text('L3') }] };
      for (const tables of await afterwards([{ ...LOTS, name: 'Other' }, LOTS], [append])) {
        expect(tables.find((table) => table.name === 'Other')).toMatchObject({ rowCount: 2 });
      }
    });
  });
}
