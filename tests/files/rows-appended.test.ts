import { describe, expect, it } from 'vitest';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { Change } from '../../src/workbook/port.ts';
import {
  type FixtureOptions,
  fixture,
  fixtureParts,
  numberCell,
  pack,
  SOME_STYLES,
  textCell,
  unpack,
} from './fixture.ts';
import { append, change, lots, number, SHEET, TABLE, text } from './lots.ts';
import { checkFile } from './well-formed.ts';

describe('appending', () => {
  const CALCULATED: FixtureOptions = {
    sheets: [
      {
        name: 'Lots',
        rows:
          '<row r="2"><c r="A2"><v>1</v></c><c r="B2"><f>Lots[[#This Row],[Lot]]*2</f><v>2</v></c></row>' +
          '<row r="3"><c r="A3" s="0"/><c r="B3"><f>Lots[[#This Row],[Lot]]*2</f><v>0</v></c></row><row r="4"/>',
        tables: [
          {
            name: 'Lots',
            ref: 'A1:C4',
            columns: ['Lot', 'Twice', 'Note'],
            formulas: { Twice: 'Lots[[#This Row],[Lot]]*2' },
          },
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
    const options = {
      ...CALCULATED,
      definedNames: '<definedName name="n">1</definedName>',
      workbookTail: '<oleSize ref="A1"/>',
    };
    const { parts } = change(options, [append({ Lot: number(4) })]);
    expect(parts['xl/workbook.xml']).toContain(
      '</definedNames><calcPr fullCalcOnLoad="1"/><oleSize ref="A1"/>',
    );
  });

  it('carries a column formula with plain references down row by row', () => {
    const sheet = {
      name: 'Lots',
      rows:
        '<row r="2"><c r="A2"><v>1</v></c><c r="B2"><f>A2*$D$1</f></c></row><row r="3"><c r="A3"><v>1</v></c><c r="B3"><f t="shared" si="4" ref="B3:B4">A3*$D$1</f></c></row>' +
        '<row r="4"><c r="A4"><v>1</v></c><c r="B4"><f t="shared" si="4"/></c></row>',
      tables: [{ name: 'Lots', ref: 'A1:B4', columns: ['Lot', 'Twice'], formulas: { Twice: 'A2*$D$1' } }],
    };
    const { snapshot } = change({ sheets: [sheet] }, [append({ Lot: number(1) }, { Lot: number(2) })]);
    expect(snapshot.tables[0]?.columns[1]?.values.slice(3)).toEqual([
      { shown: '=A5*$D$1' },
      { shown: '=A6*$D$1' },
    ]);
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
    const bytes = fixture({
      sheets: [{ name: 'Lots', rows: '', tables: [{ name: 'Lots', ref: 'A1:A2', columns: ['Lot'] }] }],
    });
    const workbook = openXlsx(bytes);
    workbook.apply([append({ Lot: text('L1') })]);
    expect(workbook.snapshot().tables[0]).toMatchObject({ rowCount: 1 });
    expect(unpack(workbook.save())[TABLE]).toContain('ref="A1:A2"');
    expect(unpack(workbook.save())[SHEET]).toContain('<sheetData><row r="2"><c r="A2" t="inlineStr">');
  });

  it('writes into a sheet without any row', () => {
    const parts = fixtureParts({
      sheets: [{ name: 'Lots', rows: '', tables: [{ name: 'Lots', ref: 'B2:B3', columns: ['Lot'] }] }],
    });
    const bytes = pack({
      ...parts,
      [SHEET]: (parts[SHEET] ?? '').replace('<sheetData></sheetData>', '<sheetData />'),
    });
    const workbook = openXlsx(bytes);
    workbook.apply([append({ Lot: number(1) }, { Lot: number(2) })]);
    checkFile(workbook.save());
    expect(unpack(workbook.save())[SHEET]).toContain(
      '<sheetData><row r="3"><c r="B3"><v>1</v></c></row><row r="4"><c r="B4"><v>2</v></c></row></sheetData>',
    );
  });

  it('grows a table that has only a header, in the style of the columns', () => {
    const sheet = {
      name: 'Lots',
      before: '<cols><col min="1" max="1" width="9" style="3"/></cols>',
      rows: `<row r="1">${textCell('A1', 'Lot', 1)}${textCell('B1', 'Day', 1)}</row>`,
      tables: [{ name: 'Lots', ref: 'A1:B1', columns: ['Lot', 'Day'] }],
    };
    const { parts, snapshot } = change({ sheets: [sheet], styles: SOME_STYLES }, [
      append({ Lot: text('L1') }, {}),
    ]);
    expect(snapshot.tables[0]).toMatchObject({ firstRow: 2, rowCount: 2 });
    expect(parts[SHEET]).toContain('<row r="2"><c r="A2" s="3" t="inlineStr"><is><t>L1</t></is></c></row>');
    expect(parts[SHEET]).toContain('<row r="3"><c r="A3" s="3"/></row>');
  });

  it('goes on with a formula that all rows hold, where the table names none', () => {
    const rows = [2, 3].map(
      (r) =>
        `<row r="${r}">${numberCell(`A${r}`, r)}<c r="B${r}"><f>A${r}*2</f></c><c r="C${r}"><f>A${r}+${r}</f></c></row>`,
    );
    const sheet = {
      name: 'Lots',
      rows: rows.join(''),
      tables: [{ name: 'Lots', ref: 'A1:C3', columns: ['Lot', 'Twice', 'Odd'] }],
    };
    const { snapshot } = change({ sheets: [sheet] }, [append({ Lot: number(1) }, { Lot: number(2) })]);
    expect(snapshot.tables[0]?.columns.map((column) => column.values.slice(2))).toEqual([
      [1, 2],
      [{ shown: '=A4*2' }, { shown: '=A5*2' }],
      [null, null],
    ]);
    expect(snapshot.tables[0]?.columns.map((column) => column.calculated)).toEqual([false, true, false]);
  });

  it('refuses to overwrite one cell of an array formula over several', () => {
    const rows = '<row r="2"><c r="A2"><f t="array" ref="A2:A3">B2:B3</f><v>1</v></c></row>';
    const sheet = { name: 'Lots', rows, tables: [{ name: 'Lots', ref: 'A1:A3', columns: ['Lot'] }] };
    const overwrite: Change = { kind: 'set', table: 'Lots', row: 0, column: 'Lot', cell: number(1) };
    expect(() => openXlsx(fixture({ sheets: [sheet] })).apply([overwrite])).toThrow(
      /A2 on the tab Lots holds an array formula/,
    );
  });

  it('tells what stands right below a table, which stays there when the table grows', () => {
    const row =
      `<row r="4">${textCell('A4', 'L3')}${numberCell('B4', 7)}</row>` +
      `<row r="5">${textCell('A5', 'a remark')}</row>`;
    const [sheet] = lots().sheets;
    if (sheet === undefined) throw new Error('the fixture has no sheet');
    const options = { ...lots(), sheets: [{ ...sheet, rows: `${sheet.rows}${row}` }] };
    expect(openXlsx(fixture(options)).snapshot().tables[0]?.below).toEqual(['L3', 7, null]);
    const { snapshot } = change(options, [append({ Lot: text('L9') })]);
    expect(snapshot.tables[0]).toMatchObject({ rowCount: 3, below: ['L3', 7, null] });
    expect(openXlsx(fixture(lots())).snapshot().tables[0]?.below).toEqual([null, null, null]);
  });
});
