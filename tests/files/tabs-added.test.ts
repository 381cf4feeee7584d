import { readXlsx } from 'hucre';
import { describe, expect, it } from 'vitest';
import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { TabBlueprint } from '../../src/workbook/blueprint.ts';
import { changedParts, type FixtureOptions, fixture, unpack } from './fixture.ts';
import { lots, SHEET, text } from './lots.ts';
import { checkFile, parseStrictly } from './well-formed.ts';

const PLACES: TabBlueprint = {
  name: 'Lots',
  lines: ['Where things stand'],
  table: {
    name: 'Places',
    columns: [
      { header: 'Place', width: 20, format: 'text' },
      { header: 'Since', width: 12, format: 'day' },
      { header: 'Lot', width: 12, format: 'text', choices: { table: 'Lots', column: 'Lot' } },
      { header: 'Share', width: 12, format: 'percent', choices: { table: 'Absent', column: 'X' } },
    ],
    rows: [[text('Shelf'), { kind: 'day', day: 20_000 as never }]],
  },
};

function added(options: FixtureOptions, tabs: readonly TabBlueprint[]) {
  const before = fixture(options);
  const workbook = openXlsx(before);
  workbook.addTabs(tabs);
  const after = workbook.save();
  checkFile(after);
  const reopened = openXlsx(after);
  expect(JSON.stringify(reopened.snapshot())).toBe(JSON.stringify(workbook.snapshot()));
  expect(reopened.tabs()).toEqual(workbook.tabs());
  return { workbook, after, parts: unpack(after), changed: changedParts(before, after) };
}

describe('tabs added to a workbook', () => {
  it('stand behind the others with their table, everything else untouched', async () => {
    const { workbook, after, changed } = added(lots(), [PLACES]);
    expect(workbook.tabs().map(({ name }) => name)).toEqual(['Lots', 'Lots 2']);
    expect(changed).not.toContain(SHEET);
    const table = workbook.snapshot().tables[1];
    expect(table).toMatchObject({ name: 'Places', tab: 'Lots 2', firstRow: 4, rowCount: 1 });
    expect(table?.columns[1]?.look(0)).toBe('date');
    expect(table?.columns[3]?.look(0)).toBe('percent');
    const read = await readXlsx(after);
    expect(read.sheets[1]?.rows[3]?.[0]).toBe('Shelf');
    expect(read.sheets[1]?.name).toBe('Lots 2');
  });

  it('get styles of their own, counted, behind those of the workbook', () => {
    const { parts } = added(lots(), [PLACES]);
    const styles = parts['xl/styles.xml'] ?? '';
    const counted: Record<string, [number, number]> = {};
    let list = '';
    parseStrictly(styles, (name, attributes) => {
      if (['fonts', 'fills', 'borders', 'cellXfs', 'dxfs', 'numFmts'].includes(name)) {
        list = name;
        counted[list] = [Number(attributes['count']), 0];
      } else if (
        (list === 'fonts' && name === 'font') ||
        (list === 'cellXfs' && name === 'xf') ||
        (list === 'numFmts' && name === 'numFmt') ||
        (list === 'fills' && name === 'fill') ||
        (list === 'borders' && name === 'border')
      ) {
        const entry = counted[list];
        if (entry) entry[1]++;
      } else if (name === 'cellStyles' || name === 'cellStyleXfs') list = '';
    });
    for (const [name, [written, found]] of Object.entries(counted)) {
      if (name !== 'dxfs') expect([name, written]).toEqual([name, found]);
    }
    expect(styles).toContain('<numFmt numFmtId="171" formatCode="yyyy\\-mm\\-dd"/>');
    expect(styles).toContain('<fonts count="7">');
  });

  it('let a column choose from a table of the workbook, and not from one that it has not got', () => {
    const { parts } = added(lots(), [PLACES]);
    expect(parts['xl/workbook.xml']).toContain(
      '<definedNames><definedName name="list_Lots_Lot">Lots[Lot]</definedName></definedNames>',
    );
    expect(parts['xl/worksheets/sheet2.xml']).toContain('<formula1>list_Lots_Lot</formula1>');
    expect(parts['xl/worksheets/sheet2.xml']).not.toContain('Absent');
  });

  it('are left out where the workbook has their table', () => {
    const bytes = fixture(lots());
    const workbook = openXlsx(bytes);
    workbook.addTabs([{ ...PLACES, table: { ...(PLACES.table as never as object), name: 'LOTS' } as never }]);
    expect(workbook.save()).toBe(bytes);
  });

  it('can be written at once, and days typed before keep their look', () => {
    const workbook = openXlsx(fixture(lots()));
    workbook.type('Lots', [{ row: 3, column: 1, cell: { kind: 'day', day: 20_001 as never } }]);
    workbook.addTabs([PLACES]);
    workbook.apply([{ kind: 'append', table: 'Places', rows: [{ Place: text('Drawer') }] }]);
    const reopened = openXlsx(workbook.save());
    expect(reopened.snapshot().tables[0]?.columns[0]?.look(1)).toBe('date');
    expect(reopened.snapshot().tables[1]?.columns[0]?.values).toEqual(['Shelf', 'Drawer']);
  });

  it('suit a strict file, one without styles, and a made one', () => {
    const { styles: _, ...bare } = lots();
    added({ ...lots(), strict: true }, [PLACES]);
    added(bare, [PLACES]);
    const workbook = openXlsx(createXlsx({ tabs: [{ name: 'First', lines: ['A line'] }] }));
    workbook.addTabs([{ name: 'Second', lines: ['Only a line'] }]);
    expect(
      openXlsx(workbook.save())
        .tabs()
        .map(({ name }) => name),
    ).toEqual(['First', 'Second']);
  });
});
