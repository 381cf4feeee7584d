import { describe, expect, it } from 'vitest';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { fixture, fixtureParts, numberCell, pack, SOME_STYLES, textCell } from './fixture.ts';

const HEADERS = '<row r="1"><c r="A1" t="inlineStr"><is><t>Lot</t></is></c></row>';

/** The values of a table of one column, whose body cells are given as XML. */
function valuesOf(cells: readonly string[], strings?: readonly string[]): unknown[] {
  const rows = cells.map((cell, index) => `<row r="${index + 2}">${cell}</row>`).join('');
  const table = { name: 'T', ref: `A1:A${cells.length + 1}`, columns: ['Lot'] };
  const bytes = fixture({
    sheets: [{ name: 'S', rows: HEADERS + rows, tables: [table] }],
    ...(strings ? { strings } : {}),
  });
  return [...(openXlsx(bytes).snapshot().tables[0]?.columns[0]?.values ?? [])];
}

describe('reading cells', () => {
  it('reads every kind of value', () => {
    const values = valuesOf([
      '<c r="A2"><v>1.5E-3</v></c>',
      '<c r="A3" t="b"><v>1</v></c>',
      '<c r="A4" t="e"><v>#N/A</v></c>',
      '<c r="A5" t="str"><f>"a"&amp;"b"</f><v>a&amp;b</v></c>',
      '<c r="A6" t="d"><v>2026-02-03</v></c>',
      '<c r="A7"><f>A2*2</f></c>',
      '<c r="A8"><f>A2*2</f><v>0.003</v></c>',
      '<c r="A9" s="0"/>',
      textCell('A10', ' 007 '),
    ]);
    expect(values).toEqual([
      0.0015,
      true,
      { shown: '#N/A' },
      'a&b',
      '2026-02-03',
      { shown: '=A2*2' },
      0.003,
      null,
      ' 007 ',
    ]);
  });

  it('reads shared strings by their runs, without the phonetic reading, with characters escaped', () => {
    const values = valuesOf(
      ['<c r="A2" t="s"><v>0</v></c>', '<c r="A3" t="s"><v>1</v></c>', '<c r="A4" t="s"><v>2</v></c>'],
      [
        '<r><rPr><b/></rPr><t>Wheat </t></r><r><t>paste</t></r><rPh sb="0" eb="1"><t>x</t></rPh>',
        'a_x000D_b_x005F_x0041_',
        '<t/>',
      ],
    );
    expect(values).toEqual(['Wheat paste', 'a\rb_x0041_', '']);
  });

  it('reads rows and cells without references by counting', () => {
    const rows =
      '<row><c t="inlineStr"><is><t>A</t></is></c></row><row><c><v>1</v></c><c><v>2</v></c></row><row r="5"><c r="B5"><v>9</v></c></row>';
    const table = { name: 'T', ref: 'A1:B5', columns: ['A', 'B'] };
    const columns = openXlsx(fixture({ sheets: [{ name: 'S', rows, tables: [table] }] })).snapshot().tables[0]
      ?.columns;
    expect(columns?.map((column) => column.values)).toEqual([
      [1, null, null, null],
      [2, null, null, 9],
    ]);
  });

  it('shows the formula of a shared group as it reads in the cell', () => {
    const values = valuesOf([
      '<c r="A2"><f t="shared" ref="A2:A4" si="0">$B$1+B2*2</f></c>',
      '<c r="A3"><f t="shared" si="0"/></c>',
      '<c r="A4"><f t="shared" si="0"/><v>7</v></c>',
    ]);
    expect(values).toEqual([{ shown: '=$B$1+B2*2' }, { shown: '=$B$1+B3*2' }, 7]);
  });

  it('tells dates and percentages from plain numbers by the format', () => {
    const rows = [0, 1, 2, 3, 4].map(
      (style) => `<row r="${style + 2}">${numberCell(`A${style + 2}`, 1, style)}</row>`,
    );
    const table = { name: 'T', ref: 'A1:A6', columns: ['Lot'] };
    const bytes = fixture({
      sheets: [{ name: 'S', rows: HEADERS + rows.join(''), tables: [table] }],
      styles: SOME_STYLES,
    });
    const column = openXlsx(bytes).snapshot().tables[0]?.columns[0];
    expect([0, 1, 2, 3, 4].map((row) => column?.look(row))).toEqual([
      'plain',
      'percent',
      'date',
      'plain',
      'date',
    ]);
  });

  it('does not take the number formats of conditional formats and tables for those of cells', () => {
    const differences = '<dxfs count="1"><dxf><numFmt numFmtId="1" formatCode="d/m/yy"/></dxf></dxfs>';
    const formats = '<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="1"/></cellXfs>';
    const rows = `${HEADERS}<row r="2">${numberCell('A2', 1, 1)}</row>`;
    const sheet = { name: 'S', rows, tables: [{ name: 'T', ref: 'A1:A2', columns: ['Lot'] }] };
    const bytes = fixture({ sheets: [sheet], styles: formats + differences });
    expect(openXlsx(bytes).snapshot().tables[0]?.columns[0]?.look(0)).toBe('plain');
  });

  it.each([false, true])('finds tables in transitional and strict files (strict: %s)', (strict) => {
    const table = {
      name: 'Paste',
      ref: 'B3:C5',
      columns: [' Lot', 'Line_x000a_two'],
      formulas: { ' Lot': 'ROW()' },
    };
    const bytes = fixture({
      sheets: [{ name: 'A &amp; B', rows: '', tables: [table] }],
      strict,
      date1904: true,
    });
    const snapshot = openXlsx(bytes).snapshot();
    expect(snapshot.dateSystem).toBe(1904);
    expect(snapshot.tables).toHaveLength(1);
    expect(snapshot.tables[0]).toMatchObject({
      name: 'Paste',
      tab: 'A & B',
      firstRow: 4,
      firstColumn: 2,
      rowCount: 2,
    });
    expect(snapshot.tables[0]?.columns.map(({ header, calculated }) => ({ header, calculated }))).toEqual([
      { header: ' Lot', calculated: true },
      { header: 'Line\ntwo', calculated: false },
    ]);
  });

  it('reads sheets whose elements have a prefix', () => {
    const rows = '<x:row r="1"/><x:row r="2"><x:c r="A2" t="s"><x:v>0</x:v></x:c></x:row>';
    const table = { name: 'T', ref: 'A1:A2', columns: ['Lot'] };
    const bytes = fixture({ sheets: [{ name: 'S', rows, tables: [table], prefix: 'x:' }], strings: ['P1'] });
    expect(openXlsx(bytes).snapshot().tables[0]?.columns[0]?.values).toEqual(['P1']);
  });

  it('finds parts whose names are spelt differently in relationship and file', () => {
    const parts = fixtureParts({
      sheets: [
        {
          name: 'S',
          rows: `${HEADERS}<row r="2"><c r="A2" t="s"><v>0</v></c></row>`,
          tables: [{ name: 'T', ref: 'A1:A2', columns: ['Lot'] }],
        },
      ],
      strings: ['P1'],
    });
    const { 'xl/sharedStrings.xml': strings = '', ...rest } = parts;
    const bytes = pack({ ...rest, 'xl/SharedStrings.xml': strings });
    expect(openXlsx(bytes).snapshot().tables[0]?.columns[0]?.values).toEqual(['P1']);
  });
});
