import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { createXlsx, type WorkbookBlueprint } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { CellWrite } from '../../src/workbook/port.ts';
import { unpack } from './fixture.ts';
import { checkFile } from './well-formed.ts';

const text = (value: string): CellWrite => ({ kind: 'text', text: value });
const number = (value: number): CellWrite => ({ kind: 'number', number: value });

const BLUEPRINT: WorkbookBlueprint = {
  title: 'Bench & store',
  tabs: [
    { name: 'Start', lines: ['Welcome', 'Second line'] },
    {
      name: 'Materials',
      lines: ['Materials'],
      colour: '4F6D5E',
      table: {
        name: 'Materials',
        columns: [
          { header: 'Material', width: 24, format: 'text', note: 'What it is called.' },
          { header: 'Price', width: 10, format: 'money' },
          { header: 'Share', width: 10, format: 'percent', formula: 'Materials[[#This Row],[Price]]/100' },
        ],
        rows: [
          [text('007'), number(12.5)],
          [text('=1'), null, number(0.5)],
        ],
        totals: { label: 'Total', sums: ['Price'] },
      },
    },
    {
      name: "It's lots",
      table: {
        name: 'Paste',
        columns: [
          { header: 'Lot', width: 12, format: 'text' },
          {
            header: 'Material',
            width: 24,
            format: 'text',
            choices: { table: 'Materials', column: 'Material' },
          },
          { header: 'State', width: 12, format: 'text', choices: ['Usable', 'Set aside'], strict: true },
          { header: 'Received', width: 12, format: 'day' },
        ],
        rows: [],
      },
    },
  ],
};

describe('a made workbook', () => {
  it('is the same bytes every time', () => {
    expect(createXlsx(BLUEPRINT)).toEqual(createXlsx(BLUEPRINT));
  });

  it('reads as it was meant', () => {
    const bytes = createXlsx(BLUEPRINT);
    checkFile(bytes);
    const [materials, paste] = openXlsx(bytes).snapshot().tables;
    expect(materials).toMatchObject({ name: 'Materials', tab: 'Materials', firstRow: 4, rowCount: 2 });
    expect(materials?.columns.map((column) => column.values)).toEqual([
      ['007', '=1'],
      [12.5, null],
      [{ shown: '=Materials[[#This Row],[Price]]/100' }, 0.5],
    ]);
    expect(materials?.columns[2]?.calculated).toBe(true);
    expect(materials?.columns[2]?.look(0)).toBe('percent');
    expect(paste).toMatchObject({ tab: "It's lots", firstRow: 2, rowCount: 1 });
    expect(paste?.columns.map((column) => column.values[0])).toEqual([null, null, null, null]);
    expect(paste?.columns[3]?.look(0)).toBe('date');
  });

  it('offers choices that grow with the table they come from', () => {
    const parts = unpack(createXlsx(BLUEPRINT));
    expect(parts['xl/workbook.xml']).toContain(
      '<definedName name="list_Materials_Material">Materials[Material]</definedName>',
    );
    expect(parts['xl/worksheets/sheet3.xml']).toContain('<formula1>list_Materials_Material</formula1>');
    expect(parts['xl/worksheets/sheet3.xml']).toContain('<formula1>"Usable,Set aside"</formula1>');
  });

  it('takes new rows, above its totals row too', () => {
    const workbook = openXlsx(createXlsx(BLUEPRINT));
    workbook.apply([
      {
        kind: 'append',
        table: 'Paste',
        rows: [{ Lot: text('P1'), Received: { kind: 'day', day: 20_000 as Day } }],
      },
      { kind: 'append', table: 'Materials', rows: [{ Material: text('Wheat'), Price: number(3) }] },
    ]);
    const bytes = workbook.save();
    checkFile(bytes);
    const parts = unpack(bytes);
    expect(parts['xl/styles.xml']).toBe(unpack(createXlsx(BLUEPRINT))['xl/styles.xml']);
    expect(parts['xl/worksheets/sheet2.xml']).toMatch(
      /<row r="7"><c r="A7" s="3" t="s"><v>\d+<\/v><\/c><c r="B7" s="\d+"><f>SUBTOTAL\(109,Materials\[Price\]\)/,
    );
    expect(JSON.stringify(openXlsx(bytes).snapshot())).toBe(JSON.stringify(workbook.snapshot()));
  });

  it('counts days from 1904 where asked to', () => {
    const tabs = [
      {
        name: 'T',
        table: {
          name: 'T',
          columns: [{ header: 'D', width: 9, format: 'day' as const }],
          rows: [[{ kind: 'day' as const, day: 20_000 as Day }]],
        },
      },
    ];
    const snapshot = openXlsx(createXlsx({ tabs, dateSystem: 1904 })).snapshot();
    expect(snapshot.dateSystem).toBe(1904);
    expect(snapshot.tables[0]?.columns[0]?.values).toEqual([45_569 - 1462]);
  });

  it('refuses a blueprint that contradicts itself', () => {
    const column = { header: 'A', width: 9, format: 'text' as const };
    const make = (
      name: string,
      columns: readonly (typeof column & { choices?: { table: string; column: string } })[],
    ) => createXlsx({ tabs: [{ name, table: { name: 'T', columns, rows: [] } }] });
    expect(() => make('a/b', [column])).toThrow(/can't be called "a\/b"/);
    expect(() => make('T', [column, { ...column, header: 'a' }])).toThrow(
      /More than one column of T is called a/,
    );
    expect(() => make('T', [{ ...column, choices: { table: 'U', column: 'A' } }])).toThrow(
      /U\[A\], which isn't there/,
    );
  });
});
