import { describe, expect, it } from 'vitest';
import { planWrites, type TablePlan } from '../../src/office/plan-writes.ts';
import { writeSteps, writeTrips } from '../../src/office/write-steps.ts';
import type {
  CellValue,
  CellWrite,
  RowChange,
  TableSnapshot,
  WorkbookSnapshot,
} from '../../src/workbook/port.ts';
import { append, number, set, text } from './office-bench.ts';

/** A table with a header row in row 1; a cell that begins with = is a formula. */
function tableOf(
  name: string,
  headers: readonly string[],
  rows: readonly (readonly CellValue[])[],
): TableSnapshot {
  const isFormula = (value: CellValue | undefined): boolean =>
    typeof value === 'string' && value.startsWith('=');
  return {
    name,
    tab: name,
    firstRow: 2,
    firstColumn: 1,
    rowCount: rows.length,
    columns: headers.map((header, column) => ({
      header,
      values: rows.map((row) => row[column] ?? null),
      look: () => 'plain',
      hasFormula: (row) => isFormula(rows[row]?.[column]),
      calculated: isFormula(rows.at(-1)?.[column]),
    })),
  };
}

const BASIS: WorkbookSnapshot = {
  dateSystem: 1900,
  tables: [
    tableOf('Lots', ['Lot', 'Quantity'], [['L-1', 1], ['L-2', 2], []]),
    tableOf('Log', ['Entry', 'Extent'], [['E-1', 1]]),
    tableOf('Blank', ['Name', 'Value'], [[]]),
  ],
};

function plan(changes: readonly RowChange[], basis: WorkbookSnapshot = BASIS): readonly TablePlan[] {
  const planned = planWrites(changes, basis);
  if (!planned.ok) throw new Error(planned.message);
  return planned.tables;
}

const shown = (cell: CellWrite | undefined): unknown => {
  if (cell === undefined) return '-';
  if (cell.kind === 'text') return cell.text;
  return cell.kind === 'number' ? cell.number : cell.kind;
};
const summary = (plans: readonly TablePlan[]): unknown =>
  plans.map(({ table, body, filled, grown }) => ({
    table: table.name,
    body: Object.fromEntries([...body].map(([row, cells]) => [row, cells.map(shown)])),
    filled: [...filled],
    grown: grown.map((cells) => cells.map(shown)),
  }));

describe('planning writes', () => {
  it('fills blank rows at the end, then grows', () => {
    expect(
      summary(plan([append('Lots', { Lot: text('a') }, { Lot: text('b') }, { Quantity: number(3) })])),
    ).toEqual([
      {
        table: 'Lots',
        body: { 2: ['a', '-'] },
        filled: [2],
        grown: [
          ['b', '-'],
          ['-', 3],
        ],
      },
    ]);
  });

  it('puts what is set in a row just appended into that row', () => {
    const changes = [
      append('Log', { Entry: text('E-2') }),
      set('Log', 1, 'Extent', number(4)),
      append('Log', { Entry: text('E-3') }),
      set('Log', 1, 'Entry', text('E-2b')),
    ];
    expect(summary(plan(changes))).toEqual([
      {
        table: 'Log',
        body: {},
        filled: [],
        grown: [
          ['E-2b', 4],
          ['E-3', '-'],
        ],
      },
    ]);
  });

  it('goes by what is blank at that point: a row emptied is filled, one just set is not', () => {
    const blank: CellWrite = { kind: 'blank' };
    const emptied = [
      set('Lots', 1, 'Lot', blank),
      set('Lots', 1, 'Quantity', blank),
      append('Lots', { Lot: text('a') }),
    ];
    expect(summary(plan(emptied))).toEqual([
      { table: 'Lots', body: { 1: ['a', 'blank'] }, filled: [1], grown: [] },
    ]);
    const taken = [set('Lots', 2, 'Quantity', number(5)), append('Lots', { Lot: text('a') })];
    expect(summary(plan(taken))).toEqual([
      { table: 'Lots', body: { 2: ['-', 5] }, filled: [], grown: [['a', '-']] },
    ]);
  });

  it('keeps blank rows that are appended, and fills them by the next append only', () => {
    expect(summary(plan([append('Log', {}, { Entry: text('a') })]))).toEqual([
      {
        table: 'Log',
        body: {},
        filled: [],
        grown: [
          ['-', '-'],
          ['a', '-'],
        ],
      },
    ]);
    const apart = [
      append('Log', {}),
      set('Log', 0, 'Extent', number(2)),
      append('Log', { Entry: text('a') }),
    ];
    expect(summary(plan(apart))).toEqual([
      { table: 'Log', body: { 0: ['-', 2] }, filled: [], grown: [['a', '-']] },
    ]);
  });

  it('takes tables that grow first, in their order, and then those of which only cells are set', () => {
    const changes = [
      set('Blank', 0, 'Name', text('x')),
      append('Log', { Entry: text('a') }),
      set('Log', 0, 'Extent', number(2)),
      append('Lots', { Lot: text('b') }),
    ];
    const plans = plan(changes);
    expect(plans.map(({ table }) => table.name)).toEqual(['Log', 'Lots', 'Blank']);
    expect(writeSteps(plans).map((step) => `${step.plan.table.name} ${step.place} ${step.row}`)).toEqual([
      'Log below 0',
      'Lots body 2',
      'Log body 0',
      'Blank body 0',
    ]);
  });

  it("leaves formulas out, and refuses what a cell can't hold", () => {
    const basis = { ...BASIS, tables: [tableOf('T', ['A', 'B'], [['x', '=1']])] };
    expect(
      summary(plan([set('T', 0, 'B', number(9)), append('T', { A: text('y'), B: number(9) })], basis)),
    ).toEqual([{ table: 'T', body: {}, filled: [], grown: [['y', '-']] }]);
    expect(planWrites([append('Log', { Entry: text('x'.repeat(40_000)) })], BASIS)).toMatchObject({
      ok: false,
    });
    const long = { ...BASIS, tables: BASIS.tables.map((table) => ({ ...table, firstRow: 1_048_575 })) };
    expect(planWrites([append('Log', { Entry: text('x') })], long)).toMatchObject({
      ok: false,
      message: expect.stringMatching(/beyond the last row/),
    });
  });

  it.each([
    [set('Nothing', 0, 'Lot', number(1)), /no table Nothing/],
    [set('Lots', 3, 'Lot', number(1)), /no row 3 in Lots, which has 3/],
    [set('Lots', 0, 'Colour', number(1)), /no column Colour in Lots/],
    [set('Lots', 0, 'Quantity', number(Number.NaN)), /NaN can't stand/],
  ])('throws for a mistake of the caller', (change, message) => {
    expect(() => planWrites([change], BASIS)).toThrow(message);
  });
});

describe('steps', () => {
  it('join consecutive rows that are written in the same columns', () => {
    const changes = [0, 1, 2].map((row) => set('Lots', row, 'Quantity', number(row)));
    expect(
      writeSteps(plan([...changes, set('Lots', 2, 'Lot', text('z'))])).map(({ row, column, cells }) => [
        row,
        column,
        cells.length,
      ]),
    ).toEqual([
      [0, 1, 2],
      [2, 0, 1],
    ]);
  });

  it('are split into round trips by weight, a table growing once in each, in order', () => {
    const rows = Array.from({ length: 100 }, (_, row) => ({ Entry: text(`E-${row}-${'x'.repeat(200)}`) }));
    const steps = writeSteps(plan([append('Log', ...rows), append('Lots', { Lot: text('a') })]), 10_000);
    const trips = writeTrips(steps, 10_000);
    expect(trips.length).toBeGreaterThan(3);
    for (const trip of trips) {
      expect(trip.filter(({ place }) => place === 'below').length).toBeLessThanOrEqual(1);
      expect(trip.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(10_000);
    }
    const written = steps
      .filter(({ place }) => place === 'below')
      .flatMap(({ cells }) => cells.map(([cell]) => shown(cell)));
    expect(written).toEqual(rows.map(({ Entry }) => shown(Entry)));
  });
});
