import { describe, expect, it } from 'vitest';
import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { openOfficeWorkbook } from '../../src/office/office-workbook.ts';
import { createMemoryWorkbook, createOfficeHost } from '../../src/office-host/office-host.ts';
import { addTableColumn } from '../../src/office-host/table-column-edits.ts';
import { describeWorkbook } from '../../src/preview/office/describe-workbook.ts';
import { OfficeSource } from '../../src/preview/office/office-source.ts';
import { writeBack } from '../../src/preview/office/write-back.ts';
import type { TabBlueprint } from '../../src/workbook/blueprint.ts';
import type { CellWrite } from '../../src/workbook/port.ts';
import { checkPackage } from '../files/closed-package.ts';
import { changedParts } from '../files/fixture.ts';
import { checkFile } from '../files/well-formed.ts';
import { chartsIn } from '../helpers/charts-in-file.ts';
import { loadExcel } from '../helpers/office-client.ts';

const text = (value: string): CellWrite => ({ kind: 'text', text: value });
const number = (value: number): CellWrite => ({ kind: 'number', number: value });

const STOCK: TabBlueprint = {
  name: "Stock's tab",
  lines: ['Stock', 'One row is a lot.'],
  table: {
    name: 'Lots',
    columns: [
      { header: 'Lot', width: 10, format: 'text' },
      { header: 'Left', width: 10, format: 'number' },
      { header: 'Received', width: 10, format: 'day' },
      { header: 'Share', width: 10, format: 'percent' },
      { header: 'Twice', width: 10, format: 'number', formula: 'Lots[[#This Row],[Left]]*2' },
    ],
    rows: [
      [text('007'), number(5), { kind: 'day', day: 20_000 as never }, number(0.2)],
      [text('=x'), number(6), null, null],
      [text('L3'), number(7), null, null],
    ],
  },
};
const TAB = STOCK.name;
const FIGURES: TabBlueprint = {
  name: 'Figures',
  lines: ['Figures'],
  table: {
    name: 'Projection_x',
    columns: [
      { header: 'Day', width: 10, format: 'day' },
      { header: 'Usable', width: 10, format: 'number' },
    ],
    rows: [20_000, 20_001].map((day) => [{ kind: 'day', day: day as never }, number(5)]),
    chart: { title: 'Chart of it', kind: 'line', categories: 'Day', series: ['Usable'] },
  },
};
const OTHER: TabBlueprint = { name: 'Other', lines: ['Other', 'A remark'] };

function office(tabs: readonly TabBlueprint[] = [STOCK, OTHER], dateSystem: 1900 | 1904 = 1900) {
  const bytes = createXlsx({ tabs, dateSystem });
  const file = openXlsx(bytes);
  const host = createOfficeHost(createMemoryWorkbook(describeWorkbook(file)));
  host.connect('pane');
  const shapes = new Map(file.tabs().map((tab) => [tab.name, tab]));
  const source = new OfficeSource(host, 'pane', shapes, (each) => writeBack(bytes, each));
  const saved = () => {
    const outcome = source.save();
    if (outcome.kind !== 'saved') throw new Error(outcome.message);
    checkFile(outcome.bytes);
    return {
      bytes: outcome.bytes,
      workbook: openXlsx(outcome.bytes),
      changed: changedParts(bytes, outcome.bytes),
    };
  };
  return { bytes, file, host, source, saved };
}

const SHEET = 'xl/worksheets/sheet1.xml';
const SHARED = 'xl/sharedStrings.xml';

describe.each([1900, 1904] as const)('a file in the host, counting from %i', (dateSystem) => {
  it('shows the same cells, tabs and tables as the file itself', () => {
    const { file, source } = office([STOCK, OTHER], dateSystem);
    expect(source.tabs()).toEqual(file.tabs());
    for (const { name, lastRow } of file.tabs()) {
      for (let row = 1; row <= lastRow; row++) expect(source.row(name, row)).toEqual(file.row(name, row));
    }
    expect(source.dateSystem).toBe(dateSystem);
  });
});

describe('saving what the host holds', () => {
  it('gives the very bytes that were opened where nothing has changed', () => {
    const { bytes, saved } = office();
    expect(saved().bytes).toEqual(bytes);
  });

  it('brings typed cells back, and changes only the parts that hold them', () => {
    const { source, saved } = office();
    source.type(TAB, [
      { row: 5, column: 1, cell: text('008') },
      { row: 6, column: 3, cell: { kind: 'day', day: 20_001 as never } },
      { row: 6, column: 4, cell: { kind: 'percent', number: 0.125 } },
    ]);
    source.type('Other', [{ row: 9, column: 2, cell: { kind: 'formula', formula: 'SUM(Lots[Left])' } }]);
    const { workbook, changed } = saved();
    expect(changed).toEqual([SHARED, SHEET, 'xl/worksheets/sheet2.xml']);
    expect(workbook.row(TAB, 5)[0]).toMatchObject({ value: '008' });
    expect(workbook.row(TAB, 6).slice(2, 4)).toMatchObject([
      { value: 45_570, look: 'date' },
      { value: 0.125, look: 'percent' },
    ]);
    expect(workbook.row('Other', 9)[0]?.formula).toBe('SUM(Lots[Left])');
  });

  it('brings rows back by which a table has grown, with the formula of its calculated column', () => {
    const { source, saved } = office();
    source.type(TAB, [
      { row: 8, column: 1, cell: text('=new') },
      { row: 8, column: 2, cell: number(9) },
    ]);
    expect(source.tabs()[0]?.tables[0]?.area.lastRow).toBe(8);
    const { workbook } = saved();
    const table = workbook.snapshot().tables[0];
    expect(table?.columns.slice(0, 2).map(({ values }) => values[3])).toEqual(['=new', 9]);
    expect(table?.columns[4]?.hasFormula(3)).toBe(true);
  });

  it('takes out rows that were deleted', () => {
    const { source, saved } = office();
    source.removeRows('Lots', 1, 1);
    const table = saved().workbook.snapshot().tables[0];
    expect(table?.columns[0]?.values).toEqual(['007', 'L3']);
    expect(table?.columns[1]?.values).toEqual([5, 7]);
  });

  it('brings columns back that a table has got behind its last one, as wide as they are there', () => {
    const { host, source, saved } = office();
    const table = host.workbook.tables[0];
    if (table === undefined) throw new Error('no table');
    const editing = {
      workbook: host.workbook,
      rules: {} as never,
      tell: () => undefined,
      moved: () => undefined,
    };
    addTableColumn(editing, table, 'Note');
    const place = table.column + table.columns.length - 1;
    table.sheet.columnWidths.set(place, (7 * 21 + 5) * 0.75);
    source.type(TAB, [{ row: 5, column: place + 1, cell: text('=n') }]);
    const { workbook } = saved();
    const [snapshot] = workbook.snapshot().tables;
    expect(snapshot?.columns.map(({ header }) => header)).toEqual([
      'Lot',
      'Left',
      'Received',
      'Share',
      'Twice',
      'Note',
    ]);
    expect(snapshot?.columns[5]?.values).toEqual(['=n', null, null]);
    expect(workbook.tabs()[0]?.columns.at(-1)).toMatchObject({ first: 6, last: 6, width: 21 });
  });

  it('adds a tab with its table that has come to the host', () => {
    const places = openXlsx(
      createXlsx({
        tabs: [
          {
            name: 'Places',
            lines: ['Places', 'Where things stand'],
            table: {
              name: 'Places',
              columns: [{ header: 'Place', width: 9, format: 'text' }],
              rows: [[text('Shelf')]],
            },
          },
        ],
      }),
    );
    const { host, source, saved } = office();
    const other = createMemoryWorkbook(describeWorkbook(places));
    host.workbook.sheets.push(...other.sheets);
    host.workbook.tables.push(...other.tables);
    expect(source.tabs().map(({ name }) => name)).toEqual([TAB, 'Other', 'Places']);
    const { workbook, changed } = saved();
    expect(workbook.snapshot().tables[1]).toMatchObject({ name: 'Places', tab: 'Places', firstRow: 5 });
    expect(workbook.row('Places', 5)[0]?.value).toBe('Shelf');
    expect(changed).not.toContain(SHEET);
  });

  it('adds a chart with its tab, and refuses one that it can’t bring into the file', async () => {
    const { host, saved, source } = office();
    const { Excel } = loadExcel(host.connect('other').bridge, { sets: host.requirementSets });
    const live = openOfficeWorkbook(Excel);
    expect((await live.addTabs([FIGURES])).kind).toBe('written');
    expect(source.tabs().map(({ hasChart }) => hasChart)).toEqual([false, false, true]);
    const { bytes, workbook, changed } = saved();
    checkPackage(bytes);
    expect(workbook.tabs().map(({ hasChart }) => hasChart)).toEqual([false, false, true]);
    expect(changed).not.toContain(SHEET);
    expect(await chartsIn(bytes)).toMatchObject([
      {
        tab: 'Figures',
        title: 'Chart of it',
        series: [{ name: 'Usable', values: 'Figures!B4:B5', categories: 'Figures!A4:A5' }],
      },
    ]);
    for (const [tab, cells, why] of [
      ['Figures', 'B3:B5', 'more than its table'],
      [TAB, 'B4:B7', 'is new'],
    ] as const) {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem(tab);
        sheet.charts.add('Line', sheet.getRange(cells), 'Columns');
        await context.sync();
      });
      expect(source.save()).toMatchObject({ kind: 'refused', message: expect.stringContaining(why) });
      host.person('other').undo();
      expect(source.save().kind).toBe('saved');
    }
  });

  it('is refused where the file could not be made the same', () => {
    const renamed = office();
    renamed.host.person('pane').renameSheet('Other', 'Another');
    expect(renamed.source.save()).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('The tab Other'),
    });
    const table = office();
    table.host.person('pane').renameTable('Lots', 'Stuff');
    expect(table.source.save()).toMatchObject({ kind: 'refused', message: expect.stringContaining('Stuff') });
    const header = office();
    header.host.person('pane').type(`'Stock''s tab'!A4`, 'Name');
    expect(header.source.save().kind).toBe('refused');
  });
});

describe('editing in the host', () => {
  it('tells of every change once, and goes back', () => {
    const { source, saved, bytes } = office();
    let told = 0;
    const end = source.onChange(() => {
      told++;
    });
    expect(source.canUndo).toBe(false);
    source.type(TAB, [{ row: 5, column: 2, cell: number(1) }]);
    expect([told, source.canUndo]).toEqual([1, true]);
    expect(source.undo()).toEqual({ kind: 'done' });
    expect([told, source.canUndo]).toEqual([2, false]);
    expect(source.undo()).toMatchObject({ kind: 'refused' });
    source.look();
    expect(told).toBe(2);
    expect(saved().bytes).toEqual(bytes);
    end();
    source.type(TAB, [{ row: 5, column: 2, cell: number(1) }]);
    expect(told).toBe(2);
  });

  it('clears what is made blank, and keeps text as text', () => {
    const { source } = office();
    source.type('Other', [
      { row: 5, column: 1, cell: text('12') },
      { row: 5, column: 2, cell: text('=1+1') },
      { row: 1, column: 1, cell: { kind: 'blank' } },
    ]);
    expect(source.row('Other', 5).map(({ value, formula }) => [value, formula])).toEqual([
      ['12', null],
      ['=1+1', null],
    ]);
    expect(source.isFilled('Other', 1, 1)).toBe(false);
  });
});
