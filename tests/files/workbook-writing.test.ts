import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/core/day.ts';
import { FileRefused, openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { CellWrite, Change } from '../../src/workbook/port.ts';
import { changedParts, fixture, type FixtureOptions, numberCell, SOME_STYLES, textCell, unpack } from './fixture.ts';
import { checkFile } from './well-formed.ts';

const text = (value: string): CellWrite => ({ kind: 'text', text: value });
const number = (value: number): CellWrite => ({ kind: 'number', number: value });
const day = (value: number): CellWrite => ({ kind: 'day', day: value as Day });
const BLANK: CellWrite = { kind: 'blank' };

const SHEET = 'xl/worksheets/sheet1.xml';
const TABLE = 'xl/tables/table1.xml';

function lots(options: Partial<FixtureOptions> = {}, after = '', extra = ''): FixtureOptions {
  return {
    sheets: [
      {
        name: 'Lots',
        before: '<dimension ref="A1:C3"/>',
        rows:
          `<row r="1">${textCell('A1', 'Lot')}${textCell('B1', 'Quantity')}${textCell('C1', 'Day')}</row>` +
          `<row r="2" spans="1:3">${textCell('A2', 'L1', 3)}${numberCell('B2', 5)}${numberCell('C2', 46000, 2)}</row>` +
          `<row r="3" spans="1:2" ht="20" customHeight="1">${textCell('A3', 'L2', 3)}${numberCell('B3', 6, 1)}</row>${extra}`,
        after,
        tables: [{ name: 'Lots', ref: 'A1:C3', columns: ['Lot', 'Quantity', 'Day'] }],
      },
    ],
    styles: SOME_STYLES,
    ...options,
  };
}

/** Applies changes, saves, and checks that the file read again shows what the workbook showed. */
function change(options: FixtureOptions, changes: readonly Change[]) {
  const before = fixture(options);
  const workbook = openXlsx(before);
  workbook.apply(changes);
  const after = workbook.save();
  checkFile(after);
  const reopened = openXlsx(after).snapshot();
  expect(JSON.stringify(reopened)).toBe(JSON.stringify(workbook.snapshot()));
  return { parts: unpack(after), changed: changedParts(before, after), snapshot: reopened };
}

const append = (...rows: Record<string, CellWrite>[]): Change => ({ kind: 'append', table: 'Lots', rows });

describe('saving', () => {
  it('gives the very same bytes where nothing changed', () => {
    const bytes = fixture(lots());
    const workbook = openXlsx(bytes);
    workbook.apply([]);
    workbook.apply([{ kind: 'set', table: 'Lots', row: 0, column: 'Quantity', cell: number(5) }]);
    workbook.apply([{ kind: 'set', table: 'Lots', row: 0, column: 'Lot', cell: text('L1') }]);
    expect(workbook.save()).toBe(bytes);
  });

  it('keeps what an earlier snapshot showed', () => {
    const workbook = openXlsx(fixture(lots()));
    const before = workbook.snapshot();
    workbook.apply([append({ Lot: text('L3') }), { kind: 'set', table: 'Lots', row: 0, column: 'Lot', cell: text('X') }]);
    expect(before.tables[0]?.rowCount).toBe(2);
    expect(before.tables[0]?.columns[0]?.values).toEqual(['L1', 'L2']);
    expect(workbook.snapshot().tables[0]?.columns[0]?.values).toEqual(['X', 'L2', 'L3']);
  });

  it('carries out all changes or none', () => {
    const bytes = fixture(lots());
    const workbook = openXlsx(bytes);
    const tooLong = text('x'.repeat(40_000));
    expect(() => workbook.apply([append({ Lot: text('L3') }), append({ Lot: tooLong })])).toThrow(FileRefused);
    expect(workbook.save()).toBe(bytes);
    expect(workbook.snapshot().tables[0]?.rowCount).toBe(2);
  });

  it('calls an unknown table, column or row a mistake of the caller', () => {
    const workbook = openXlsx(fixture(lots()));
    const set = (table: string, row: number, column: string): Change => ({ kind: 'set', table, row, column, cell: BLANK });
    for (const wrong of [set('Lot', 0, 'Lot'), set('Lots', 2, 'Lot'), set('Lots', -1, 'Lot'), set('Lots', 0, 'lot')]) {
      expect(() => workbook.apply([wrong])).toThrow(/^There is no /);
    }
    expect(() => workbook.apply([append({ Other: BLANK })])).toThrow('There is no column Other in Lots');
  });

  it('rewrites only the sheet and the table', () => {
    const options = lots({ parts: { 'customXml/item1.xml': '<own  a = "1"/>', 'docProps/core.xml': '<c/>' } });
    const { changed, parts } = change(options, [append({ Lot: text('L3'), Day: day(20_000) }, { Quantity: number(1) })]);
    expect(changed).toEqual([TABLE, SHEET]);
    expect(parts[TABLE]).toContain('ref="A1:C5"');
    expect(parts[TABLE]).toContain('<autoFilter ref="A1:C5"/>');
    expect(parts[SHEET]).toContain('<dimension ref="A1:C5"/>');
    expect(parts[SHEET]).toContain('<row r="3" spans="1:2" ht="20" customHeight="1">');
  });

  it('gives new cells the style of the cell above', () => {
    const { parts, snapshot } = change(lots(), [append({ Lot: text('L3'), Quantity: number(2), Day: day(20_000) })]);
    expect(parts[SHEET]).toContain(
      '<row r="4"><c r="A4" s="3" t="inlineStr"><is><t>L3</t></is></c><c r="B4" s="1"><v>2</v></c><c r="C4" s="2"><v>45569</v></c></row>',
    );
    expect(snapshot.tables[0]?.columns[2]?.look(2)).toBe('date');
  });

  it('keeps the style of a cell that shows days already, and what else a derived style has', () => {
    const { parts } = change(lots(), [
      { kind: 'set', table: 'Lots', row: 0, column: 'Day', cell: day(20_001) },
      { kind: 'set', table: 'Lots', row: 1, column: 'Lot', cell: day(20_001) },
    ]);
    expect(parts[SHEET]).toContain('<c r="C2" s="2"><v>45570</v></c>');
    expect(parts[SHEET]).toContain('<c r="A3" s="5"><v>45570</v></c>');
    expect(parts['xl/styles.xml']).toContain('<numFmt numFmtId="171" formatCode="yyyy-mm-dd"/></numFmts>');
    expect(parts['xl/styles.xml']).toContain('<cellXfs count="6">');
    expect(parts['xl/styles.xml']).toContain(
      '<xf numFmtId="171" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"><alignment wrapText="1"/></xf></cellXfs>',
    );
  });

  it('writes days in the date system of the file', () => {
    const { parts } = change(lots({ date1904: true }), [append({ Day: day(20_000) })]);
    expect(parts[SHEET]).toContain(`<v>${45_569 - 1462}</v>`);
  });

  it('makes styles for days where the workbook has none', () => {
    const { styles: _, ...bare } = lots();
    const { changed, snapshot } = change(bare, [{ kind: 'set', table: 'Lots', row: 1, column: 'Day', cell: day(20_000) }]);
    expect(changed).toEqual(['[Content_Types].xml', 'xl/_rels/workbook.xml.rels', 'xl/styles.xml', SHEET]);
    expect(snapshot.tables[0]?.columns[2]?.look(1)).toBe('date');
  });

  it('stores text as text whatever it looks like', () => {
    const awkward = ['=1+1', '007', '1E5', '-', 'a\nb', ' x ', 'a\u0001\rb', '_x0041_', '<&>"\'', '#N/A', 'TRUE', '\ud800', '漢字'];
    for (const strings of [undefined, ['L1']]) {
      const options = strings ? { ...lots(), strings } : lots();
      const { snapshot } = change(options, [append(...awkward.map((each) => ({ Lot: text(each) })))]);
      expect(snapshot.tables[0]?.columns[0]?.values.slice(2)).toEqual(awkward);
    }
  });

  it('adds to the shared strings where the file has them, reusing plain ones only', () => {
    const options = lots({ strings: ['<r><t>Paste</t></r>', 'Rice'] });
    const { parts } = change(options, [append({ Lot: text('Rice') }, { Lot: text('Paste') }, { Lot: text(' Paste') })]);
    expect(parts['xl/sharedStrings.xml']).toContain('count="5" uniqueCount="4"');
    expect(parts['xl/sharedStrings.xml']).toContain('<si><t>Paste</t></si><si><t xml:space="preserve"> Paste</t></si></sst>');
    expect(parts[SHEET]).toContain('<c r="A4" s="3" t="s"><v>1</v></c>');
  });

  it('writes the prefix that the sheet uses', () => {
    const rows = '<x:row r="1"/><x:row r="2"><x:c r="A2"><x:v>1</x:v></x:c></x:row>';
    const sheet = { name: 'Lots', rows, prefix: 'x:', tables: [{ name: 'Lots', ref: 'A1:B2', columns: ['Lot', 'B'] }] };
    const { parts } = change({ sheets: [sheet] }, [append({ B: text('b') })]);
    expect(parts[SHEET]).toContain('<x:row r="3"><x:c r="B3" t="inlineStr"><x:is><x:t>b</x:t></x:is></x:c></x:row>');
  });

  it('blanks a cell without moving the ones that are counted from it', () => {
    const rows = '<row><c t="inlineStr"><is><t>A</t></is></c></row><row><c><v>1</v></c><c><v>2</v></c></row>';
    const sheet = { name: 'Lots', rows, tables: [{ name: 'Lots', ref: 'A1:B2', columns: ['Lot', 'B'] }] };
    const { snapshot } = change({ sheets: [sheet] }, [{ kind: 'set', table: 'Lots', row: 0, column: 'Lot', cell: BLANK }]);
    expect(snapshot.tables[0]?.columns.map((column) => column.values)).toEqual([[null], [2]]);
  });
});

describe('appending', () => {
  const CALCULATED: FixtureOptions = {
    sheets: [
      {
        name: 'Lots',
        rows:
          '<row r="2"><c r="A2"><v>1</v></c><c r="B2"><f>Lots[[#This Row],[Lot]]*2</f><v>2</v></c></row>' +
          '<row r="3"><c r="A3" s="0"/><c r="B3"><f>Lots[[#This Row],[Lot]]*2</f><v>0</v></c></row><row r="4"/>',
        tables: [
          { name: 'Lots', ref: 'A1:C4', columns: ['Lot', 'Twice', 'Note'], formulas: { Twice: 'Lots[[#This Row],[Lot]]*2' } },
        ],
      },
    ],
    workbookTail: '<calcPr calcId="191029"/><extLst/>',
    calculationChain: true,
  };

  it('fills blank rows at the end first, keeping their formulas', () => {
    const rows = [4, 5, 6].map((value) => ({ Lot: number(value) }));
    const { parts, snapshot, changed } = change(CALCULATED, [append(...rows)]);
    expect(snapshot.tables[0]?.rowCount).toBe(4);
    expect(snapshot.tables[0]?.columns[0]?.values).toEqual([1, 4, 5, 6]);
    const formula = { shown: '=Lots[[#This Row],[Lot]]*2' };
    expect(snapshot.tables[0]?.columns[1]?.values).toEqual([2, 0, formula, formula]);
    expect(parts['xl/workbook.xml']).toContain('<calcPr calcId="191029" fullCalcOnLoad="1"/><extLst/>');
    expect(changed).toContain('xl/calcChain.xml');
    expect(parts['xl/calcChain.xml']).toBeUndefined();
    expect(parts['[Content_Types].xml']).not.toContain('calcChain');
    expect(parts['xl/_rels/workbook.xml.rels']).not.toContain('calcChain');
  });

  it('keeps the calculation chain where no formula came or went', () => {
    const { changed } = change(CALCULATED, [append({ Lot: number(4) })]);
    expect(changed).toEqual(['xl/workbook.xml', SHEET]);
  });

  it('puts the mark for recalculation in its place where the workbook has none', () => {
    const options = { ...CALCULATED, definedNames: '<definedName name="n">1</definedName>', workbookTail: '<oleSize ref="A1"/>' };
    const { parts } = change(options, [append({ Lot: number(4) })]);
    expect(parts['xl/workbook.xml']).toContain('</definedNames><calcPr fullCalcOnLoad="1"/><oleSize ref="A1"/>');
  });

  it('carries a column formula with plain references down row by row', () => {
    const sheet = {
      name: 'Lots',
      rows: '<row r="2"><c r="A2"><v>1</v></c><c r="B2"><f>A2*$D$1</f></c></row><row r="3"><c r="A3"><v>1</v></c><c r="B3"><f t="shared" si="4" ref="B3:B4">A3*$D$1</f></c></row>' +
        '<row r="4"><c r="A4"><v>1</v></c><c r="B4"><f t="shared" si="4"/></c></row>',
      tables: [{ name: 'Lots', ref: 'A1:B4', columns: ['Lot', 'Twice'], formulas: { Twice: 'A2*$D$1' } }],
    };
    const { snapshot } = change({ sheets: [sheet] }, [append({ Lot: number(1) }, { Lot: number(2) })]);
    expect(snapshot.tables[0]?.columns[1]?.values.slice(3)).toEqual([{ shown: '=A5*$D$1' }, { shown: '=A6*$D$1' }]);
  });

  it('lets validations and conditional formats that end with the table grow with it', () => {
    const after =
      '<conditionalFormatting sqref="B2:B3"><cfRule type="expression" dxfId="0" priority="1"><formula>B2&lt;0</formula></cfRule></conditionalFormatting>' +
      '<conditionalFormatting sqref="B2:B9"><cfRule type="cellIs" priority="2"/></conditionalFormatting>' +
      '<dataValidations count="2"><dataValidation type="list" sqref="A2 A3 E2:E3"><formula1>"a,b"</formula1></dataValidation>' +
      '<dataValidation type="whole" sqref="C1:D3"><formula1>1</formula1></dataValidation></dataValidations>' +
      '<extLst><ext uri="{u}" xmlns:x14="urn:x14" xmlns:xm="urn:xm"><x14:dataValidations><x14:dataValidation><x14:formula1><xm:f>Other!$A$1:$A$3</xm:f></x14:formula1><xm:sqref>A2:A3</xm:sqref></x14:dataValidation></x14:dataValidations></ext></extLst>';
    const { parts } = change(lots({}, after), [append({ Lot: text('L3') }, { Lot: text('L4') })]);
    const sheet = parts[SHEET] ?? '';
    expect(sheet).toContain('<conditionalFormatting sqref="B2:B5">');
    expect(sheet).toContain('<conditionalFormatting sqref="B2:B9">');
    expect(sheet).toContain('sqref="A2 A3:A5 E2:E3"');
    expect(sheet).toContain('sqref="C1:D3 C4:C5"');
    expect(sheet).toContain('<xm:sqref>A2:A5</xm:sqref>');
    expect(sheet).toContain('<xm:f>Other!$A$1:$A$3</xm:f>');
  });

  it('overwrites the head of a shared formula without harm to the others', () => {
    const rows =
      '<row r="2"><c r="A2"><f t="shared" ref="A2:A4" si="0">B2*2</f><v>1</v></c></row>' +
      '<row r="3"><c r="A3"><f t="shared" si="0"/></c></row><row r="4"><c r="A4"><f t="shared" si="0"/></c></row>';
    const sheet = { name: 'Lots', rows, tables: [{ name: 'Lots', ref: 'A1:A4', columns: ['Lot'] }] };
    const { snapshot, parts } = change({ sheets: [sheet] }, [
      { kind: 'set', table: 'Lots', row: 0, column: 'Lot', cell: number(9) },
    ]);
    expect(snapshot.tables[0]?.columns[0]?.values).toEqual([9, { shown: '=B3*2' }, { shown: '=B4*2' }]);
    expect(parts[SHEET]).toContain('<c r="A3"><f t="shared" si="0" ref="A3:A4">B3*2</f></c>');
  });

  it('fills the row that an empty table shows for new entries', () => {
    const bytes = fixture({ sheets: [{ name: 'Lots', rows: '', tables: [{ name: 'Lots', ref: 'A1:A2', columns: ['Lot'] }] }] });
    const workbook = openXlsx(bytes);
    workbook.apply([append({ Lot: text('L1') })]);
    expect(workbook.snapshot().tables[0]).toMatchObject({ rowCount: 1 });
    expect(unpack(workbook.save())[TABLE]).toContain('ref="A1:A2"');
    expect(unpack(workbook.save())[SHEET]).toContain('<sheetData><row r="2"><c r="A2" t="inlineStr">');
  });
});
