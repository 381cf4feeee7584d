import { describe, expect, it } from 'vitest';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { TabBlueprint } from '../../src/workbook/blueprint.ts';
import type { CellWrite, Change } from '../../src/workbook/port.ts';
import { type ChartWorkbook, chartContract } from '../contract/chart-contract.ts';
import { type ContractWorkbook, workbookContract } from '../contract/workbook-contract.ts';
import { chartsIn } from '../helpers/charts-in-file.ts';
import { contractBlueprint } from '../helpers/contract-blueprint.ts';
import { preview, previewOf, snapshotOf } from './preview-file.ts';

const text = (value: string): CellWrite => ({ kind: 'text', text: value });

function contractWorkbook({ file, gate }: ReturnType<typeof previewOf>): ContractWorkbook {
  return {
    snapshot: () => snapshotOf(gate),
    apply: async (changes) => {
      const outcome = await gate.write(changes, await snapshotOf(gate));
      expect(outcome.kind).toBe('written');
    },
    reopen: () => {
      const saved = file.save();
      if (saved.kind !== 'saved') throw new Error(saved.message);
      return contractWorkbook(previewOf(saved.bytes));
    },
  };
}

workbookContract('a file open in the preview', (tables) =>
  contractWorkbook(preview(contractBlueprint(tables, 1900))),
);

function chartWorkbook({ file, gate }: ReturnType<typeof previewOf>): ChartWorkbook {
  const saved = (): Uint8Array => {
    const outcome = file.save();
    if (outcome.kind !== 'saved') throw new Error(outcome.message);
    return outcome.bytes;
  };
  return {
    snapshot: () => snapshotOf(gate),
    addTabs: async (tabs) => {
      const outcome = await gate.addTabs(tabs);
      expect(outcome.kind).toBe('written');
    },
    charts: () => chartsIn(saved()),
    reopen: () => chartWorkbook(previewOf(saved())),
  };
}

chartContract('a file open in the preview', (tables) =>
  chartWorkbook(preview(contractBlueprint(tables, 1900))),
);

const LOTS: TabBlueprint = {
  name: 'Stock',
  table: {
    name: 'Lots',
    columns: ['Lot', 'Left', 'Twice'].map((header) => ({
      header,
      width: 10,
      format: 'text' as const,
      ...(header === 'Twice' ? { formula: 'Lots[[#This Row],[Left]]*2' } : {}),
    })),
    rows: [
      [text('L1'), text('5')],
      [text('L2'), text('6')],
    ],
  },
};
const lots = () => preview({ tabs: [LOTS] });
const set = (row: number, column: string, value: string): Change => ({
  kind: 'set',
  table: 'Lots',
  row,
  column,
  cell: text(value),
});
const append = (...names: string[]): Change => ({
  kind: 'append',
  table: 'Lots',
  rows: names.map((name) => ({ Lot: text(name) })),
});
const namesIn = async (gate: ReturnType<typeof lots>['gate']) =>
  (await snapshotOf(gate)).tables[0]?.columns[0]?.values;

describe('writing from what was read before', () => {
  it('is stale where a row that it touches was changed, and nothing is written', async () => {
    const { file, gate } = lots();
    const basis = await snapshotOf(gate);
    file.type('Stock', [{ row: 2, column: 2, cell: text('4') }]);
    const outcome = await gate.write([append('L3'), set(0, 'Lot', 'X')], basis);
    expect(outcome.kind).toBe('stale');
    expect(await namesIn(gate)).toEqual(['L1', 'L2']);
    if (outcome.kind !== 'stale') return;
    expect((await gate.write([set(0, 'Lot', 'X')], outcome.snapshot)).kind).toBe('written');
  });

  it('is written where only other rows were changed, and where rows were put below', async () => {
    const { file, gate } = lots();
    const basis = await snapshotOf(gate);
    file.type('Stock', [{ row: 3, column: 2, cell: text('9') }]);
    file.type('Stock', [{ row: 4, column: 1, cell: text('L3') }]);
    expect((await gate.write([append('L4'), set(0, 'Lot', 'X')], basis)).kind).toBe('written');
    expect(await namesIn(gate)).toEqual(['X', 'L2', 'L3', 'L4']);
  });

  it('is stale where a row that it appends and sets would no longer stand there', async () => {
    const { file, gate } = lots();
    const basis = await snapshotOf(gate);
    file.type('Stock', [{ row: 4, column: 1, cell: text('L3') }]);
    expect((await gate.write([append('L4'), set(2, 'Left', '1')], basis)).kind).toBe('stale');
  });

  it('is stale where a row was deleted above, and where the table has gone', async () => {
    const { file, gate } = lots();
    const basis = await snapshotOf(gate);
    file.removeRows('Lots', 0, 1);
    expect((await gate.write([set(1, 'Left', '1')], basis)).kind).toBe('stale');
    const other = preview({ tabs: [{ name: 'Other', lines: ['x'] }] });
    expect((await other.gate.write([append('L9')], basis)).kind).toBe('stale');
  });

  it('says what is in the way, and writes nothing', async () => {
    const { gate } = lots();
    const basis = await snapshotOf(gate);
    const outcome = await gate.write([append('L3'), set(0, 'Lot', 'x'.repeat(40_000))], basis);
    expect(outcome).toMatchObject({
      kind: 'failed',
      message: expect.stringContaining('has 40000 characters'),
    });
    expect(await namesIn(gate)).toEqual(['L1', 'L2']);
  });
});

describe('what the pane hears', () => {
  it('is what the person changes and undoes, never what it wrote itself', async () => {
    const { file, gate, view } = lots();
    const heard: string[] = [];
    const outcome = await gate.listen({
      changed: (by) => heard.push(by),
      selected: ({ tab, row, column }) => heard.push(`${tab} ${row} ${column}`),
    });
    await gate.write([append('L3')], await snapshotOf(gate));
    expect(heard).toEqual([]);
    file.type('Stock', [{ row: 2, column: 1, cell: text('X') }]);
    expect(heard).toEqual(['person']);
    file.undo();
    file.undo();
    expect(heard).toEqual(['person', 'person', 'person']);
    expect(await namesIn(gate)).toEqual(['L1', 'L2']);
    file.type('Stock', [{ row: 2, column: 1, cell: text('L1') }]);
    view.select({ tab: 'Stock', row: 3, column: 1 });
    expect(heard.slice(3)).toEqual(['Stock 3 1']);
    if (outcome.kind !== 'listening') throw new Error(outcome.message);
    await outcome.stop();
    file.type('Stock', [{ row: 2, column: 1, cell: text('Y') }]);
    expect(heard).toHaveLength(4);
  });
});

describe('tabs and places', () => {
  it('adds tabs, and undoes that as one step', async () => {
    const { file, gate } = lots();
    const outcome = await gate.addTabs([
      { name: 'Stock', table: { name: 'Places', columns: LOTS.table?.columns.slice(0, 1) ?? [], rows: [] } },
    ]);
    expect(outcome).toMatchObject({
      kind: 'written',
      snapshot: { tables: [{ name: 'Lots' }, { name: 'Places', tab: 'Stock 2' }] },
    });
    file.undo();
    expect((await snapshotOf(gate)).tables).toHaveLength(1);
  });

  it('goes to a cell, or says that its tab is not there', async () => {
    const { gate, view } = lots();
    expect(await gate.goTo({ tab: 'Stock', row: 2, column: 1 })).toEqual({ kind: 'there' });
    expect(view.shown).toEqual([{ tab: 'Stock', row: 2, column: 1 }]);
    expect((await gate.goTo({ tab: 'Absent', row: 1, column: 1 })).kind).toBe('failed');
  });
});

describe('the way back', () => {
  it('goes step by step, forward again, and ends where something else is done', () => {
    const { file } = lots();
    const value = () => file.row('Stock', 2)[0]?.value;
    const type = (name: string) => file.type('Stock', [{ row: 2, column: 1, cell: text(name) }]);
    type('A');
    type('B');
    file.undo();
    expect(value()).toBe('A');
    file.redo();
    expect(value()).toBe('B');
    file.undo();
    type('C');
    expect(file.canRedo).toBe(false);
    expect(file.redo()).toMatchObject({ kind: 'refused' });
    file.undo();
    file.undo();
    expect(value()).toBe('L1');
    expect(file.undo()).toEqual({ kind: 'refused', message: 'There is nothing to undo.' });
  });

  it('leads to the very bytes that were opened', () => {
    const { file } = lots();
    const { original } = file.workbook;
    file.type('Stock', [{ row: 9, column: 9, cell: text('x') }]);
    file.undo();
    const saved = file.save();
    expect(saved.kind === 'saved' && saved.bytes === original).toBe(true);
    expect(openXlsx(original).tabs()).toEqual(file.tabs());
  });
});
