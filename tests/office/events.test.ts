import { describe, expect, it } from 'vitest';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import type { LiveListener, TabCell } from '../../src/workbook/live-workbook.ts';
import { append, opened, readSnapshot, text, writeAll } from './office-bench.ts';

const STUDIO: WorkbookDescription = {
  sheets: [
    { name: 'My stock', tables: [{ name: 'Lots', at: 'B3', columns: ['Lot', 'Note'], rows: [['L-1', '']] }] },
    { name: 'Other', cells: { A1: [['x']] } },
    { name: 'Away', visibility: 'Hidden' },
  ],
};

function listening(): { listener: LiveListener; changes: string[]; cells: TabCell[] } {
  const changes: string[] = [];
  const cells: TabCell[] = [];
  return {
    changes,
    cells,
    listener: { changed: (by) => changes.push(by), selected: (cell) => cells.push(cell) },
  };
}

const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 10; turn++) await new Promise((resolve) => setTimeout(resolve, 2));
};

describe('listening', () => {
  it('tells what a person does here, and what somebody does elsewhere', async () => {
    const { live, host, open } = opened(STUDIO);
    open('b');
    const { listener, changes } = listening();
    await live.listen(listener);
    host.person('a').type("'My stock'!C4", 'typed');
    await settled();
    host.person('b').paste('Other!A1', [['pasted']]);
    await settled();
    host.person('a').undo();
    await settled();
    expect(changes).toEqual(['person', 'other', 'person']);
  });

  it('is silent about what this gate writes and adds, and about its taking back', async () => {
    const { live, host } = opened(STUDIO);
    const { listener, changes } = listening();
    await live.listen(listener);
    await writeAll(live, [append('Lots', { Lot: text('L-2') }, { Lot: text('=3') })]);
    expect((await live.addTabs([{ name: 'New', lines: ['Title'] }])).kind).toBe('written');
    const basis = await readSnapshot(live);
    let edits = 0;
    host.setFailure(({ edits: isEdit }) =>
      isEdit && edits++ === 1 ? { code: 'GeneralException', message: 'It broke.' } : undefined,
    );
    const failed = await live.write(
      [append('Lots', { Lot: text('L-4') }), append('Lots', { Lot: text('L-5') })],
      basis,
    );
    expect(failed.kind).toBe('failed');
    await settled();
    expect(changes).toEqual([]);
  });

  it('tells others of what this gate writes', async () => {
    const { live, open } = opened(STUDIO);
    const { listener, changes } = listening();
    await open('b').live.listen(listener);
    await writeAll(live, [append('Lots', { Lot: text('L-2') })]);
    await settled();
    expect(new Set(changes)).toEqual(new Set(['other']));
  });

  it('tells own writes by the time where the program does not mark them', async () => {
    const add = opened(STUDIO);
    const deliver = add.bridge.onMessageFromHost;
    add.bridge.onMessageFromHost = (message) => {
      deliver?.(message.replace(/,?\\"triggerSource\\":\\"\w+\\"/g, ''));
    };
    const { listener, changes } = listening();
    await add.live.listen(listener);
    await writeAll(add.live, [append('Lots', { Lot: text('L-2') })]);
    await settled();
    expect(changes).toEqual([]);
    await new Promise((resolve) => setTimeout(resolve, 1100));
    add.host.person('a').type("'My stock'!C4", 'typed');
    await settled();
    expect(changes).toEqual(['person']);
  });

  it('tells the first cell of what is chosen, on the tab by its name of then', async () => {
    const { live, host } = opened(STUDIO);
    const { listener, cells } = listening();
    await live.listen(listener);
    host.person('a').select("'My stock'!C4:D9");
    await settled();
    host.person('a').renameSheet('My stock', 'Stock');
    host.person('a').select('Stock!B:B');
    host.person('a').select('Stock!7:8');
    await settled();
    expect(cells).toEqual([
      { tab: 'My stock', row: 4, column: 3 },
      { tab: 'Stock', row: 1, column: 2 },
      { tab: 'Stock', row: 7, column: 1 },
    ]);
  });

  it('ends when it is told to', async () => {
    const { live, host } = opened(STUDIO);
    const { listener, changes, cells } = listening();
    const outcome = await live.listen(listener);
    if (outcome.kind !== 'listening') throw new Error(outcome.message);
    await outcome.stop();
    host.person('a').type('Other!A1', 'y');
    host.person('a').select('Other!A2');
    await settled();
    expect([changes, cells]).toEqual([[], []]);
  });

  it('tells of a tab that goes, and of one that somebody adds', async () => {
    const { live, open } = opened(STUDIO);
    const { listener, changes } = listening();
    await live.listen(listener);
    const other = open('b');
    await other.live.addTabs([{ name: 'Theirs' }]);
    await other.excel.run(async (context) => {
      context.workbook.worksheets.getItem('Theirs').delete();
      await context.sync();
    });
    await settled();
    expect(changes.length).toBeGreaterThanOrEqual(2);
    expect(new Set(changes)).toEqual(new Set(['other']));
  });
});

describe('going to a cell', () => {
  it('shows its tab and chooses it', async () => {
    const { live, host } = opened(STUDIO);
    const { listener, cells } = listening();
    await live.listen(listener);
    expect(await live.goTo({ tab: 'Other', row: 7, column: 28 })).toEqual({ kind: 'there' });
    await settled();
    expect(cells).toEqual([{ tab: 'Other', row: 7, column: 28 }]);
    expect(host.workbook.sheets).toHaveLength(3);
  });

  it("says why it can't", async () => {
    const { live } = opened(STUDIO);
    expect(await live.goTo({ tab: 'Gone', row: 1, column: 1 })).toMatchObject({
      kind: 'failed',
      message: expect.stringMatching(/no tab Gone/),
    });
    expect(await live.goTo({ tab: 'Away', row: 1, column: 1 })).toMatchObject({
      kind: 'failed',
      message: expect.stringMatching(/Away is hidden: unhide it/),
    });
  });
});
