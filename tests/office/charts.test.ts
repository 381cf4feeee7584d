import { describe, expect, it } from 'vitest';
import type { WorkbookDescription } from '../../src/office-host/workbook-description.ts';
import type { TabBlueprint } from '../../src/workbook/blueprint.ts';
import { number, opened, plain, readSnapshot, writtenSnapshot } from './office-bench.ts';

const HERS: WorkbookDescription = {
  sheets: [{ name: 'Hers', tables: [{ name: 'Lots', at: 'A1', columns: ['Lot'], rows: [['L1']] }] }],
};

const figures = (name: string, series: readonly string[] = ['Usable', 'Missing']): TabBlueprint => ({
  name,
  lines: ['Figures'],
  table: {
    name: `Projection_${name}`,
    columns: ['Along', 'Usable', 'Missing'].map((header) => ({
      header,
      width: 9,
      format: 'number' as const,
    })),
    rows: [1, 2, 3].map((each) => [number(each), number(each / 2), number(0)]),
    ...(series.length === 0 ? {} : { chart: { title: name, kind: 'line', categories: 'Along', series } }),
  },
});

describe('charts on new tabs', () => {
  it('cost no further round trip, however many', async () => {
    const counts: number[] = [];
    for (const tabs of [
      [figures('One', [])],
      [figures('One')],
      ['One', 'Two', 'Three'].map((name) => figures(name)),
    ]) {
      const { live, statistics } = opened(HERS);
      writtenSnapshot(await live.addTabs(tabs));
      counts.push(statistics.requests);
    }
    expect(new Set(counts).size).toBe(1);
  });

  it('have lines that are told apart without their colour', async () => {
    const { live, host } = opened(HERS);
    writtenSnapshot(await live.addTabs([figures('One')]));
    const [chart] = host.workbook.sheets[1]?.charts ?? [];
    expect(chart?.series.map(({ line }) => [line.lineStyle, line.weight])).toEqual([
      ['Continuous', 2],
      ['Dash', 1.5],
    ]);
  });

  it('are taken away with their tabs where an action fails, whichever', async () => {
    let failing = 0;
    for (let done = false; !done; failing += 1) {
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
      const outcome = await live.addTabs([figures('One')]);
      host.setFailure(undefined);
      done = !failed;
      expect(outcome.kind).toBe(failed ? 'failed' : 'written');
      if (!failed) continue;
      expect(plain(await readSnapshot(live))).toEqual(before);
      expect(JSON.stringify(host.workbook.sheets)).toBe(sheets);
    }
    expect(failing).toBeGreaterThan(20);
  });
});
