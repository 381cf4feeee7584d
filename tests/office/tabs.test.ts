import { describe, expect, it } from 'vitest';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import { starterBlueprint } from '../../src/samples/starter-blueprint.ts';
import type { TabBlueprint } from '../../src/workbook/blueprint.ts';
import { number, opened, plain, readSnapshot, text, valuesOf, writtenSnapshot } from './office-bench.ts';

const HERS: WorkbookDescription = {
  sheets: [
    {
      name: 'Paste',
      cells: { A1: [['her own tab', 5]] },
      tables: [{ name: 'Materials', at: 'D1', columns: ['Material'], rows: [['Tissue']] }],
    },
    { name: 'Second' },
  ],
  activeSheet: 'Second',
};

const LOTS: TabBlueprint = {
  name: 'Paste',
  lines: ['Paste', '=not a formula'],
  colour: '4F6D5E',
  table: {
    name: 'Lots',
    columns: [
      { header: 'Lot', width: 12, format: 'text', note: 'What is written on the jar.' },
      {
        header: 'Material',
        width: 20,
        format: 'text',
        choices: { table: 'Materials', column: 'Material' },
        strict: true,
      },
      { header: 'State', width: 10, format: 'text', choices: ['Usable', 'Set aside'] },
      { header: 'Quantity', width: 10, format: 'number' },
      { header: 'Used', width: 10, format: 'percent', muted: true },
      { header: 'Twice', width: 10, format: 'number', formula: 'Lots[[#This Row],[Quantity]]*2' },
      { header: 'Method', width: 60, format: 'long text', choices: { table: 'Nowhere', column: 'X' } },
    ],
    rows: [
      [text('007'), text('Tissue'), null, number(5), number(0.5)],
      [text('L-2'), null, null, text('plenty'), null, number(9), text('=boil')],
    ],
    totals: { label: 'All', sums: ['Quantity'] },
  },
};

describe('adding tabs', () => {
  it('makes tabs with their tables, and touches nothing else', async () => {
    const { live, host, statistics } = opened(HERS);
    await readSnapshot(live);
    const before = JSON.stringify(host.workbook.sheets.slice(0, 2));
    const requests = statistics.requests;
    const snapshot = writtenSnapshot(await live.addTabs([LOTS, { name: 'Read me', lines: ['Words'] }]));
    expect(statistics.requests - requests).toBeLessThanOrEqual(6);
    expect(plain(snapshot)).toEqual(plain(await readSnapshot(live)));
    expect(JSON.stringify(host.workbook.sheets.slice(0, 2))).toBe(before);
    expect(host.workbook.sheets.map(({ name }) => name)).toEqual(['Paste', 'Second', 'Paste 2', 'Read me']);
    const lots = snapshot.tables.find(({ name }) => name === 'Lots');
    expect(lots).toMatchObject({ tab: 'Paste 2', firstRow: 5, firstColumn: 1, rowCount: 2 });
    expect(valuesOf(snapshot, 'Lots', 'Lot')).toEqual(['007', 'L-2']);
    expect(valuesOf(snapshot, 'Lots', 'Quantity')).toEqual([5, 'plenty']);
    expect(valuesOf(snapshot, 'Lots', 'Method')).toEqual([null, '=boil']);
    const twice = lots?.columns[5];
    expect([0, 1].map((row) => twice?.hasFormula(row))).toEqual([true, false]);
    expect(twice?.values[1]).toBe(9);
    expect(lots?.columns[4]?.look(0)).toBe('percent');
    const sheet = host.workbook.sheets[2];
    expect(sheet).toMatchObject({ tabColor: '#4F6D5E', frozenRows: 4, showGridlines: false });
    expect(sheet?.rows[1]?.[0]?.value).toBe('=not a formula');
    expect(sheet?.rows[6]?.[3]?.formula).toBe('=SUBTOTAL(109,Lots[Quantity])');
    expect(sheet?.columnWidths.get(0)).toBeCloseTo(66.75);
    const rules = sheet?.validations.map(({ area, rule, prompt, errorAlert }) => [
      area.column,
      JSON.stringify(rule),
      prompt?.message,
      errorAlert?.showAlert,
    ]);
    expect(rules?.map(([column]) => column)).toEqual([0, 1, 2]);
    expect(JSON.stringify(rules)).toContain('What is written on the jar.');
    expect(rules?.[1]?.[1]).toContain('list_Materials_Material');
    expect(rules?.map((rule) => rule[3])).toEqual([false, true, false]);
    expect(rules?.[2]?.[1]).toContain('Usable,Set aside');
    expect(host.workbook.names.map(({ name, formula }) => [name, formula])).toEqual([
      ['list_Materials_Material', '=Materials[Material]'],
    ]);
  });

  it('leaves the tab that is shown before the person', async () => {
    const { live, excel } = opened(HERS);
    await live.addTabs([LOTS]);
    const shown = await excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getActiveWorksheet().load('name');
      await context.sync();
      return sheet.name;
    });
    expect(shown).toBe('Second');
  });

  it('leaves out a table that is there, with its tab', async () => {
    const { live, host } = opened(HERS);
    const first = writtenSnapshot(await live.addTabs([LOTS]));
    const again = writtenSnapshot(await live.addTabs([LOTS, { name: 'Other', lines: ['x'] }]));
    expect(plain(again)).toEqual(plain(first));
    expect(host.workbook.sheets.map(({ name }) => name)).toEqual(['Paste', 'Second', 'Paste 2', 'Other']);
  });

  it('adds the whole starter in as many round trips as one tab', async () => {
    const one = opened({ sheets: [{ name: 'First' }] });
    const all = opened({ sheets: [{ name: 'First' }] });
    const { tabs } = starterBlueprint();
    const counts = [];
    for (const [add, wanted] of [
      [one, tabs.slice(0, 2)],
      [all, tabs],
    ] as const) {
      const snapshot = writtenSnapshot(await add.live.addTabs(wanted));
      counts.push(add.statistics.requests);
      const names = wanted.flatMap(({ table }) => (table ? [table.name] : []));
      expect(snapshot.tables.map(({ name }) => name)).toEqual(names);
      for (const { table } of wanted) {
        expect(snapshot.tables.find(({ name }) => name === table?.name)?.rowCount).toBe(
          table ? Math.max(1, table.rows.length) : undefined,
        );
      }
    }
    expect(counts[1]).toBe(counts[0]);
    expect(Math.max(...all.statistics.requestBytes, ...all.statistics.responseBytes)).toBeLessThan(5_000_000);
  });

  it('takes everything away again where an action fails, whichever', async () => {
    let failing = 0;
    for (let done = false; !done; failing += 7) {
      const { live, host } = opened(HERS);
      const before = plain(await readSnapshot(live));
      const sheets = JSON.stringify(host.workbook.sheets);
      let edits = 0;
      let failed = false;
      host.setFailure(({ edits: isEdit }) => {
        if (!isEdit || failed || edits++ < failing) return undefined;
        failed = true;
        return { code: 'GeneralException', message: 'It broke.' };
      });
      const outcome = await live.addTabs([LOTS, { name: 'Read me', lines: ['Words'] }]);
      host.setFailure(undefined);
      done = !failed;
      expect(outcome.kind).toBe(failed ? 'failed' : 'written');
      if (!failed) continue;
      expect(plain(await readSnapshot(live))).toEqual(before);
      expect(JSON.stringify(host.workbook.sheets)).toBe(sheets);
      expect(host.workbook.names).toEqual([]);
    }
    expect(failing).toBeGreaterThan(20);
  });
});
