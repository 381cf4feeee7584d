import { readXlsx } from 'hucre';
import { describe, expect, it } from 'vitest';
import { FileRefused, openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { Change } from '../../src/workbook/port.ts';
import { changedParts, type FixtureOptions, fixture, numberCell, textCell, unpack } from './fixture.ts';
import { day, lots, number, SHEET, TABLE, text } from './lots.ts';
import { checkFile } from './well-formed.ts';

const column = (
  header: string,
  format: 'text' | 'number' | 'day' | 'money' | 'percent' = 'text',
): Change => ({
  kind: 'add column',
  table: 'Lots',
  column: { header, width: 17, format },
});

function added(options: FixtureOptions, changes: readonly Change[]) {
  const before = fixture(options);
  const workbook = openXlsx(before);
  workbook.apply(changes);
  const after = workbook.save();
  checkFile(after);
  const reopened = openXlsx(after);
  expect(JSON.stringify(reopened.snapshot())).toBe(JSON.stringify(workbook.snapshot()));
  return { workbook, after, parts: unpack(after), changed: changedParts(before, after) };
}

function refusal(options: FixtureOptions, ...changes: Change[]): string {
  const before = fixture(options);
  const workbook = openXlsx(before);
  try {
    workbook.apply(changes);
  } catch (error) {
    expect(error).toBeInstanceOf(FileRefused);
    expect(workbook.save()).toEqual(before);
    return error instanceof Error ? error.message : '';
  }
  return 'not refused';
}

const [SHEET_OF_LOTS] = lots().sheets;
/** The table with more cells on its tab, and other things in its parts. */
function withSheet(change: Partial<FixtureOptions['sheets'][number]>, more: Partial<FixtureOptions> = {}) {
  if (SHEET_OF_LOTS === undefined) throw new Error('no sheet');
  return lots({ sheets: [{ ...SHEET_OF_LOTS, ...change }], ...more });
}
const withMoreRows = (rows: string) => withSheet({ rows: `${SHEET_OF_LOTS?.rows ?? ''}${rows}` });

describe('columns added to a table', () => {
  it('change the table, its sheet and the styles alone; all other cells stay byte for byte', async () => {
    const before = unpack(fixture(lots()));
    const { parts, changed, after } = added(lots(), [column('Note'), column('Price', 'money')]);
    expect(changed).toEqual(['xl/styles.xml', TABLE, SHEET].toSorted());
    expect(parts[TABLE]).toContain('ref="A1:E3"><autoFilter ref="A1:E3"/>');
    expect(parts[TABLE]).toContain(
      '<tableColumns count="5"><tableColumn id="1" name="Lot"/><tableColumn id="2" name="Quantity"/>' +
        '<tableColumn id="3" name="Day"/><tableColumn id="4" name="Note"/><tableColumn id="5" name="Price"/></tableColumns>',
    );
    const sheet = parts[SHEET] ?? '';
    expect(sheet).toContain('<dimension ref="A1:E3"/>');
    expect(sheet).toContain('spans="1:5"');
    const cells = (xml: string) =>
      [...xml.matchAll(/<c r="[A-C]\d+".*?(?:\/>|<\/c>)/g)].map(([cell]) => cell);
    expect(cells(sheet)).toEqual(cells(before[SHEET] ?? ''));
    const read = await readXlsx(after);
    expect(read.sheets[0]?.rows[0]).toEqual(['Lot', 'Quantity', 'Day', 'Note', 'Price']);
  });

  it('look like the columns of their format, else get a format of their own', () => {
    const { workbook } = added(lots(), [
      column('Note'),
      column('Opened', 'day'),
      column('Price', 'money'),
      column('Left', 'number'),
    ]);
    // A number needs no more than the plain style, of which a blank cell says nothing.
    const formats = workbook.row('Lots', 2).map(({ format }) => format);
    expect(formats).toEqual(['@', 'General', 'yyyy-mm-dd', '@', 'yyyy-mm-dd', '#,##0.00']);
    const note = unpack(workbook.save())[SHEET] ?? '';
    // Text goes on in the style of the other text, wrapping included.
    expect(note).toContain('<c r="D2" s="3"/>');
    expect(note).toContain('<c r="E2" s="2"/>');
  });

  it('are as wide as asked for, whatever was said of the columns there', () => {
    const own = '<col min="4" max="4" width="17" customWidth="1"/>';
    const cols = (inner: string) => `<dimension ref="A1:C3"/><cols>${inner}</cols>`;
    for (const [before, after] of [
      ['', own],
      ['<col min="1" max="2" width="9"/>', `<col min="1" max="2" width="9"/>${own}`],
      ['<col min="6" max="9" width="9"/>', `${own}<col min="6" max="9" width="9"/>`],
      [
        '<col min="2" max="16384" width="9" style="1" hidden="1"/>',
        '<col min="2" max="3" width="9" style="1" hidden="1"/><col min="4" max="4" width="17" style="1" customWidth="1"/>' +
          '<col min="5" max="16384" width="9" style="1" hidden="1"/>',
      ],
    ] as const) {
      const options = before === '' ? lots() : withSheet({ before: cols(before) });
      expect(added(options, [column('Note')]).parts[SHEET]).toContain(`<cols>${after}</cols><sheetData>`);
    }
  });

  it('stand above nothing of a totals row, whose filter ends above it', () => {
    const totals = withSheet({
      rows: `${SHEET_OF_LOTS?.rows ?? ''}<row r="4">${textCell('A4', 'Total')}${numberCell('B4', 11)}</row>`,
      tables: [{ name: 'Lots', ref: 'A1:C4', columns: ['Lot', 'Quantity', 'Day'], totalsRow: true }],
    });
    const { workbook, parts } = added(totals, [
      column('Note'),
      { kind: 'append', table: 'Lots', rows: [{ Lot: text('L3'), Note: text('n') }] },
    ]);
    expect(parts[TABLE]).toContain('ref="A1:D5" totalsRowCount="1"><autoFilter ref="A1:D4"/>');
    expect(workbook.snapshot().tables[0]?.columns[3]?.values).toEqual([null, null, 'n']);
    expect(workbook.row('Lots', 5)[0]).toMatchObject({ value: 'Total' });
  });

  it('are written into in the same go, in a sheet with a namespace prefix too', () => {
    const prefixed = withSheet({
      prefix: 'x:',
      before: '<x:dimension ref="A1:A2"/>',
      rows:
        '<x:row r="1"><x:c r="A1" t="inlineStr"><x:is><x:t>Lot</x:t></x:is></x:c></x:row>' +
        '<x:row r="2"><x:c r="A2"><x:v>1</x:v></x:c></x:row>',
      tables: [{ name: 'Lots', ref: 'A1:A2', columns: ['Lot'] }],
    });
    const { workbook, parts } = added(prefixed, [
      column('Day', 'day'),
      { kind: 'set', table: 'Lots', row: 0, column: 'Day', cell: day(20_000) },
      { kind: 'append', table: 'Lots', rows: [{ Lot: number(2) }] },
    ]);
    expect(parts[SHEET]).toContain(
      '<x:cols><x:col min="2" max="2" width="17" customWidth="1"/></x:cols><x:sheetData>',
    );
    expect(workbook.snapshot().tables[0]?.columns[1]?.look(0)).toBe('date');
    expect(workbook.snapshot().tables[0]?.columns[1]?.values).toEqual([45_569, null]);
  });

  it('are left to the caller where the table has that column', () => {
    const workbook = openXlsx(fixture(lots()));
    expect(() => workbook.apply([column('quantity')])).toThrow('There is a column quantity in Lots already');
    expect(() => workbook.apply([column('Note'), column('NOTE')])).toThrow(
      'There is a column NOTE in Lots already',
    );
  });
});

describe('columns that have no room', () => {
  const SENTENCE = /^The column Note can't be added to the table Lots: right of it, on the tab Lots, /;

  it('are refused, naming what stands there', () => {
    const filled = withSheet({
      rows: (SHEET_OF_LOTS?.rows ?? '').replace('</row><row r="3"', `${numberCell('D2', 1)}</row><row r="3"`),
    });
    expect(refusal(filled, column('Note'))).toMatch(SENTENCE);
    expect(refusal(filled, column('Note'))).toContain('something stands (D2)');
    const formula = withSheet({
      rows: (SHEET_OF_LOTS?.rows ?? '').replace(
        '</row><row r="3"',
        '<c r="E2"><f>B2*2</f></c></row><row r="3"',
      ),
    });
    // The first of two fits; all or none.
    expect(refusal(formula, column('Note'), column('Other'))).toContain('something stands (E2)');
  });

  it('are refused beside joined cells and beside another table', () => {
    expect(
      refusal(lots({}, '<mergeCells count="1"><mergeCell ref="D3:E3"/></mergeCells>'), column('Note')),
    ).toContain('cells are joined (D3:E3)');
    const beside = withSheet({
      rows: (SHEET_OF_LOTS?.rows ?? '').replace('</row><row r="2"', `${textCell('D1', 'N')}</row><row r="2"`),
      tables: [
        { name: 'Lots', ref: 'A1:C3', columns: ['Lot', 'Quantity', 'Day'] },
        { name: 'Beside', ref: 'D1:D2', columns: ['N'] },
      ],
    });
    expect(refusal(beside, column('Note'))).toContain('the table Beside stands (D1:D2)');
  });

  it('are refused in a table whose rows a query brings', () => {
    const parts = unpack(fixture(lots()));
    const query = (parts[TABLE] ?? '').replace(' ref=', ' tableType="queryTable" ref=');
    expect(refusal(lots({ parts: { [TABLE]: query } }), column('Note'))).toMatch(
      /come from elsewhere \(queryTable\)/,
    );
  });

  it('are added where only formats stand there, or something above and below the table', () => {
    const formats = withSheet({
      rows: (SHEET_OF_LOTS?.rows ?? '').replace('</row><row r="3"', '<c r="D2" s="1"/></row><row r="3"'),
    });
    expect(
      added(formats, [column('Note')])
        .workbook.row('Lots', 2)
        .at(-1)?.format,
    ).toBe('@');
    const below = withMoreRows(`<row r="4">${numberCell('D4', 1)}</row>`);
    expect(added(below, [column('Note')]).workbook.row('Lots', 4)[0]).toMatchObject({ column: 4, value: 1 });
  });
});
