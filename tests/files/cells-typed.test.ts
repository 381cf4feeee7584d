import { readXlsx } from 'hucre';
import { describe, expect, it } from 'vitest';
import { FileRefused } from '../../src/files/file-refused.ts';
import type { TypedCell, TypedCellAt } from '../../src/files/typed-cell.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { changedParts, type FixtureOptions, fixture, numberCell, textCell, unpack } from './fixture.ts';
import { BLANK, day, lots, number, SHEET, TABLE, text } from './lots.ts';
import { checkFile } from './well-formed.ts';

const OTHER = 'xl/worksheets/sheet2.xml';

/** The table of lots, and a tab without tables: texts, a formula with its result, a wide column, a joined cell. */
function withNotes(): FixtureOptions {
  const options = lots();
  return {
    ...options,
    strings: ['kept', 'other'],
    sheets: [
      ...options.sheets,
      {
        name: 'Notes',
        before: '<dimension ref="A1:C4"/><cols><col min="2" max="3" width="30" hidden="1"/></cols>',
        rows:
          `<row r="1"><c r="A1" t="s"><v>0</v></c>${numberCell('B1', 0.25, 1)}<c r="C1" t="b"><v>1</v></c></row>` +
          '<row r="2"><c r="A2"><f>B1*2</f><v>0.5</v></c><c r="B2" t="e"><v>#N/A</v></c></row>' +
          `<row r="4">${textCell('A4', 'joined')}</row>`,
        after: '<mergeCells count="1"><mergeCell ref="A4:B4"/></mergeCells>',
      },
    ],
  };
}

const at = (row: number, column: number, cell: TypedCell): TypedCellAt => ({ row, column, cell });

/** Types on a tab, saves, checks the file and reads it again. */
function typed(options: FixtureOptions, tab: string, ...cells: TypedCellAt[]) {
  const before = fixture(options);
  const workbook = openXlsx(before);
  workbook.type(tab, cells);
  const after = workbook.save();
  checkFile(after);
  const reopened = openXlsx(after);
  expect(JSON.stringify(reopened.snapshot())).toBe(JSON.stringify(workbook.snapshot()));
  for (const { row } of cells) expect(reopened.row(tab, row)).toEqual(workbook.row(tab, row));
  return { workbook, reopened, after, changed: changedParts(before, after), parts: unpack(after) };
}

describe('reading tabs', () => {
  it('tells of every tab: how far it is filled, its tables, its columns', () => {
    expect(openXlsx(fixture(withNotes())).tabs()).toEqual([
      {
        name: 'Lots',
        hidden: false,
        lastRow: 3,
        lastColumn: 3,
        tables: [
          {
            name: 'Lots',
            area: { firstRow: 1, lastRow: 3, firstColumn: 1, lastColumn: 3 },
            headerRows: 1,
            totalsRows: 0,
          },
        ],
        columns: [],
        hasChart: false,
      },
      {
        name: 'Notes',
        hidden: false,
        lastRow: 4,
        lastColumn: 3,
        tables: [],
        columns: [{ first: 2, last: 3, width: 30, hidden: true }],
        hasChart: false,
      },
    ]);
  });

  it('shows values, formulas with their stored results, formats and errors', () => {
    const workbook = openXlsx(fixture(withNotes()));
    expect(workbook.row('Notes', 1)).toEqual([
      { column: 1, value: 'kept', formula: null, format: 'General', look: 'plain' },
      { column: 2, value: 0.25, formula: null, format: '0%', look: 'percent' },
      { column: 3, value: true, formula: null, format: 'General', look: 'plain' },
    ]);
    expect(workbook.row('Notes', 2)).toMatchObject([
      { column: 1, value: 0.5, formula: 'B1*2' },
      { column: 2, value: { shown: '#N/A' }, formula: null },
    ]);
    expect(workbook.row('Notes', 3)).toEqual([]);
    expect(workbook.row('Lots', 2)[2]).toMatchObject({ value: 46000, format: 'yyyy-mm-dd', look: 'date' });
  });

  it('tells filled cells from blank ones, in tables and beside them', () => {
    const workbook = openXlsx(fixture(withNotes()));
    const filled = (tab: string, row: number) =>
      [1, 2, 3].map((column) => workbook.isFilled(tab, row, column));
    expect(filled('Lots', 3)).toEqual([true, true, false]);
    expect(filled('Notes', 2)).toEqual([true, true, false]);
    expect(filled('Lots', 4)).toEqual([false, false, false]);
    workbook.type('Lots', [
      at(3, 1, BLANK),
      at(3, 3, { kind: 'formula', formula: 'B3' }),
      at(9, 2, number(1)),
    ]);
    expect(filled('Lots', 3)).toEqual([false, true, true]);
    expect(filled('Lots', 9)).toEqual([false, true, false]);
  });

  it('reads a formula that cells share as it reads in each of them', () => {
    const rows =
      '<row r="1"><c r="A1"><f t="shared" si="0" ref="A1:A2">B1*2</f><v>2</v></c></row>' +
      '<row r="2"><c r="A2"><f t="shared" si="0"/><v>4</v></c></row>';
    const workbook = openXlsx(fixture({ sheets: [{ name: 'S', rows }] }));
    expect([1, 2].map((row) => workbook.row('S', row)[0]?.formula)).toEqual(['B1*2', 'B2*2']);
  });
});

describe('typing into cells', () => {
  it('changes a cell of a tab without tables, and only the parts that hold it', async () => {
    const { changed, parts, after } = typed(withNotes(), 'Notes', at(1, 1, text('new')), at(3, 5, number(7)));
    expect(changed).toEqual(['xl/sharedStrings.xml', 'xl/workbook.xml', OTHER]);
    expect(parts[OTHER]).toContain(
      '<row r="2"><c r="A2"><f>B1*2</f><v>0.5</v></c><c r="B2" t="e"><v>#N/A</v></c></row>',
    );
    const read = await readXlsx(after);
    expect(read.sheets[1]?.rows[0]?.[0]).toBe('new');
    expect(read.sheets[1]?.rows[2]?.[4]).toBe(7);
  });

  it('writes percentages, booleans and days so that they are shown as such', () => {
    const { workbook, parts } = typed(
      withNotes(),
      'Notes',
      at(6, 1, { kind: 'percent', number: 0.2 }),
      at(6, 2, { kind: 'percent', number: 0.125 }),
      at(6, 3, { kind: 'boolean', value: false }),
      at(6, 4, day(20_000)),
    );
    expect(workbook.row('Notes', 6).map(({ value, format }) => [value, format])).toEqual([
      [0.2, '0%'],
      [0.125, '0.00%'],
      [false, 'General'],
      [45_569, 'yyyy-mm-dd'],
    ]);
    expect(parts['xl/styles.xml']).toContain('<cellXfs count="8">');
  });

  it('keeps a formula, of which nobody knows the result, and takes out the stored order of calculation', () => {
    const { workbook, parts, changed } = typed(
      { ...withNotes(), calculationChain: true },
      'Notes',
      at(9, 1, { kind: 'formula', formula: 'SUM(Lots[Quantity])&"<"' }),
    );
    expect(parts[OTHER]).toContain('<c r="A9"><f>SUM(Lots[Quantity])&amp;"&lt;"</f></c>');
    expect(workbook.row('Notes', 9)[0]?.value).toEqual({ shown: '=SUM(Lots[Quantity])&"<"' });
    expect(changed).toContain('xl/calcChain.xml');
  });

  it('writes into the body of a table, which the snapshot shows at once', () => {
    const { workbook, changed } = typed(lots(), 'Lots', at(2, 1, text('X')), at(3, 2, BLANK));
    expect(changed).toEqual([SHEET]);
    expect(workbook.snapshot().tables[0]?.columns.map(({ values }) => values)).toEqual([
      ['X', 'L2'],
      [5, null],
      [46000, null],
    ]);
  });

  it('makes a table longer by what is typed right below it', () => {
    const { workbook, changed, parts } = typed(lots(), 'Lots', at(4, 2, number(8)));
    expect(changed).toEqual([TABLE, SHEET]);
    expect(parts[TABLE]).toContain('ref="A1:C4"');
    expect(workbook.snapshot().tables[0]).toMatchObject({ rowCount: 3 });
    expect(workbook.snapshot().tables[0]?.columns[1]?.values).toEqual([5, 6, 8]);
  });

  it('takes in fifty pasted rows, a blank one among them, with the formula of a calculated column', () => {
    const options = lots();
    const [sheet] = options.sheets;
    if (!sheet) throw new Error('no sheet');
    const table = {
      name: 'Lots',
      ref: 'A1:C3',
      columns: ['Lot', 'Quantity', 'Day'],
      formulas: { Day: 'Lots[[#This Row],[Quantity]]*2' },
    };
    const cells = Array.from({ length: 50 }, (_, index) => [
      at(4 + index, 1, index === 20 ? BLANK : text(`P${index}`)),
      at(4 + index, 2, index === 20 ? BLANK : number(index)),
    ]).flat();
    const { workbook } = typed({ ...options, sheets: [{ ...sheet, tables: [table] }] }, 'Lots', ...cells);
    const [shown] = workbook.snapshot().tables;
    expect(shown?.rowCount).toBe(52);
    expect(shown?.columns[0]?.values[51]).toBe('P49');
    expect(shown?.columns[0]?.values[22]).toBe(null);
    expect(shown?.columns[2]?.hasFormula(51)).toBe(true);
  });

  it('leaves a table alone where something stands below it, where the row has its totals, and beside it', () => {
    const below = lots();
    const [sheet] = below.sheets;
    if (!sheet) throw new Error('no sheet');
    const withText = {
      ...below,
      sheets: [{ ...sheet, rows: `${sheet.rows}<row r="4">${textCell('A4', 'Sum')}</row>` }],
    };
    expect(typed(withText, 'Lots', at(4, 2, number(8))).workbook.snapshot().tables[0]?.rowCount).toBe(2);
    expect(typed(lots(), 'Lots', at(4, 4, number(8))).workbook.snapshot().tables[0]?.rowCount).toBe(2);
    expect(typed(lots(), 'Lots', at(5, 1, number(8))).workbook.snapshot().tables[0]?.rowCount).toBe(2);
    const table = { name: 'Lots', ref: 'A1:C3', columns: ['Lot', 'Quantity', 'Day'], totalsRow: true };
    const withTotals = { ...below, sheets: [{ ...sheet, tables: [table] }] };
    expect(typed(withTotals, 'Lots', at(4, 1, number(8))).workbook.snapshot().tables[0]?.rowCount).toBe(1);
  });

  it('does nothing, and keeps the very bytes, where a blank cell is made blank or a value stays', () => {
    const bytes = fixture(withNotes());
    const workbook = openXlsx(bytes);
    workbook.type('Notes', [at(20, 20, BLANK)]);
    workbook.type('Lots', [at(2, 1, text('L1'))]);
    expect(workbook.save()).toBe(bytes);
  });

  it('refuses what would damage the file, all or nothing', () => {
    const array = '<row r="1"><c r="A1"><f t="array" ref="A1:A2">B1:B2</f><v>1</v></c></row>';
    const refused: [FixtureOptions, string, TypedCellAt, RegExp][] = [
      [lots(), 'Lots', at(1, 1, text('Name')), /A1 is a header of the table Lots/],
      [
        withNotes(),
        'Notes',
        at(4, 2, text('x')),
        /B4 is joined with its neighbours to A4:B4\. Type into A4\./,
      ],
      [
        { sheets: [{ name: 'S', rows: array }] },
        'S',
        at(2, 1, text('x')),
        /A2 belongs to a formula that fills A1:A2/,
      ],
      [lots(), 'Lots', at(2, 1, text('x'.repeat(40_000))), /The text for A2 in Lots has 40000 characters/],
    ];
    for (const [options, tab, cell, message] of refused) {
      const bytes = fixture(options);
      const workbook = openXlsx(bytes);
      const type = () => workbook.type(tab, [at(9, 9, number(1)), cell]);
      expect(type).toThrow(FileRefused);
      expect(type).toThrow(message);
      expect(workbook.save()).toBe(bytes);
    }
  });
});

describe('going back', () => {
  it('comes back to an earlier state, to the very bytes that were opened, and forward again', () => {
    const bytes = fixture(lots());
    const workbook = openXlsx(bytes);
    const opened = workbook.mark();
    workbook.type('Lots', [at(4, 1, text('L3'))]);
    const typedOnce = workbook.mark();
    const saved = workbook.save();
    workbook.type('Lots', [at(4, 1, text('L4'))]);
    workbook.restore(opened);
    expect(workbook.snapshot().tables[0]?.rowCount).toBe(2);
    expect(workbook.save()).toBe(bytes);
    workbook.restore(typedOnce);
    expect(workbook.snapshot().tables[0]?.columns[0]?.values).toEqual(['L1', 'L2', 'L3']);
    expect(workbook.save()).toEqual(saved);
  });
});
