import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { projectionTab } from '../../src/actions/projection-tab.ts';
import { spokenDay } from '../../src/core/day.ts';
import type { ProjectedDay, Projection } from '../../src/core/projection/projection.ts';
import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { readWorkbook } from '../../src/workbook/read-workbook.ts';
import { dayOf } from '../helpers/literal.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';
import { xlsxOf } from '../helpers/xlsx.ts';

const today = dayOf(TODAY);

function projection(...given: Partial<ProjectedDay>[]): Projection {
  const none = { usable: 0, planned: 0, forecast: 0, arrived: 0, made: 0, wentOff: 0, short: 0 };
  const days = given.map((each, place) => ({ ...none, ...each, day: (today + place) as typeof today }));
  return { days, firstShort: null, missed: [], goesOff: [], worthGoingOff: 0 };
}

const WEEK = projection(
  { usable: 5, arrived: 3 },
  { usable: 2, made: 1, wentOff: 4 },
  { usable: 0, planned: 2, forecast: 0.5, short: 0.25 },
);

describe('a tab with what becomes of a material', () => {
  test('says of each day what is there and what happens, in a table', () => {
    const { lines, table } = projectionTab('Tissue', 'sheet', WEEK, 1.23456789);
    expect(lines?.join(' ')).toContain('Tissue');
    expect(lines?.join(' ')).toContain(`sheets, as planned on ${spokenDay(today)}`);
    expect(table.columns.map(({ header }) => header)).toEqual([
      'Day',
      'Usable',
      'Order when down to',
      'Arrives',
      'Made here',
      'Goes off',
      'Missing',
    ]);
    expect(
      table.rows.map((row) => row.map((cell) => (cell?.kind === 'number' ? cell.number : cell))),
    ).toEqual([
      [{ kind: 'day', day: today }, 5, 1.234568, 3, 0, 0, 0],
      [{ kind: 'day', day: today + 1 }, 2, 1.234568, 0, 1, 4, 0],
      [{ kind: 'day', day: today + 2 }, 0, 1.234568, 0, 0, 0, 0.25],
    ]);
  });

  test('draws what is usable and the order level, and what goes off or is missing only where anything does', () => {
    const drawn = (of: Projection, level: number) => projectionTab('Tissue', 'g', of, level).table.chart;
    expect(drawn(WEEK, 2)).toEqual({
      title: 'Tissue, g',
      kind: 'line',
      categories: 'Day',
      series: ['Usable', 'Order when down to', 'Goes off', 'Missing'],
    });
    expect(drawn(projection({ usable: 4, arrived: 1, made: 1 }), 0)?.series).toEqual(['Usable']);
    expect(drawn(projection({ usable: 4, short: 1 }), 0)?.series).toEqual(['Usable', 'Missing']);
  });

  test('has a name that a tab may have, as much of the material’s as fits', () => {
    const named = (material: string) => projectionTab(material, 'g', WEEK, 0).name;
    expect(named('Tissue')).toBe('Tissue outlook');
    expect(named("What's [this]: 5 g/m?")).toBe('What s this 5 g m outlook');
    expect(named('A very long name of a material indeed')).toBe('A very long name of a m outlook');
    expect(named('?*')).toBe('outlook');
    // A character of two halves is not cut in two.
    expect(named(`${'x'.repeat(22)}😀`)).toBe(`${'x'.repeat(22)} outlook`);
  });

  test('of any material goes into a file, and back out of it as it was', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', minLength: 1, maxLength: 50 }),
        fc.nat(20),
        (material, level) => {
          const tab = projectionTab(material, 'g', WEEK, level);
          const [table] = openXlsx(createXlsx({ tabs: [tab] })).snapshot().tables;
          expect(table).toMatchObject({ name: tab.table.name, tab: tab.name, rowCount: 3 });
          expect(tab.table.name).toMatch(/^[\p{L}_][\p{L}\p{N}_.]{0,59}$/u);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('is taken for none of the studio’s own tables', () => {
    const workbook = openXlsx(xlsxOf(STUDIO));
    const before = readWorkbook(workbook.snapshot());
    workbook.addTabs([projectionTab('Tissue', 'sheet', WEEK, 2)]);
    const after = readWorkbook(workbook.snapshot());
    expect(workbook.snapshot().tables.some(({ name }) => name === 'Projection_Tissue')).toBe(true);
    expect([...after.tables.keys()]).toEqual([...before.tables.keys()]);
    expect(after.records).toEqual(before.records);
    expect(after.notices).toEqual(before.notices);
  });
});
