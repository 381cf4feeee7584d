import { describe, expect, it } from 'vitest';
import { FileRefused, openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { CellWrite, Change } from '../../src/workbook/port.ts';
import { changedParts, type FixtureOptions, fixture, numberCell, textCell, unpack } from './fixture.ts';
import { checkFile } from './well-formed.ts';

const number = (value: number): CellWrite => ({ kind: 'number', number: value });
const APPEND_TWO: Change = { kind: 'append', table: 'T', rows: [{ N: number(3) }, { N: number(4) }] };
const SHEET = 'xl/worksheets/sheet1.xml';
const OTHER = 'xl/worksheets/sheet2.xml';

/** A table with two body rows and a totals row in A1:B4, and things below and around it. */
function totals(
  changes: { after?: string; below?: string; other?: string; rest?: Partial<FixtureOptions> } = {},
): FixtureOptions {
  return {
    sheets: [
      {
        name: 'My tab',
        before: '<dimension ref="A1:D8"/>',
        rows:
          `<row r="1">${textCell('A1', 'N')}${textCell('B1', 'M')}<c r="D1"><f>SUM(A4:A8)+B2</f></c></row>` +
          `<row r="2">${numberCell('A2', 1)}</row><row r="3">${numberCell('A3', 2)}</row>` +
          '<row r="4" spans="1:2"><c r="A4"><f>SUBTOTAL(109,T[N])</f><v>3</v></c></row>' +
          (changes.below ??
            `<row r="6">${numberCell('A6', 60)}<c r="B6"><f>A6*2+A$2</f><v>120</v></c></row>`),
        after: changes.after ?? '',
        tables: [{ name: 'T', ref: 'A1:B4', columns: ['N', 'M'], totalsRow: true }],
      },
      {
        name: 'Other',
        rows: changes.other ?? '<row r="1"><c r="A1"><f>\'My tab\'!B6+Other!B6+"\'My tab\'!B6"</f></c></row>',
      },
    ],
    ...changes.rest,
  };
}

function grow(options: FixtureOptions): Record<string, string> {
  const workbook = openXlsx(fixture(options));
  workbook.apply([APPEND_TWO]);
  const bytes = workbook.save();
  checkFile(bytes);
  expect(JSON.stringify(openXlsx(bytes).snapshot())).toBe(JSON.stringify(workbook.snapshot()));
  return unpack(bytes);
}

const drawing = (from: number, to: number, edit = ''): string =>
  `<xdr:twoCellAnchor${edit}><xdr:from><xdr:col>1</xdr:col><xdr:row>${from}</xdr:row></xdr:from><xdr:to><xdr:row>${to}</xdr:row></xdr:to></xdr:twoCellAnchor>`;

describe('growing above a totals row', () => {
  it('moves the totals row and what is below, and what refers to it', () => {
    const parts = grow(totals());
    const sheet = parts[SHEET] ?? '';
    expect(parts['xl/tables/table1.xml']).toContain('ref="A1:B6"');
    expect(parts['xl/tables/table1.xml']).toContain('<autoFilter ref="A1:B5"/>');
    expect(sheet).toContain('<dimension ref="A1:D10"/>');
    expect(sheet).toContain('<c r="D1"><f>SUM(A6:A10)+B2</f></c>');
    expect(sheet).toContain('<row r="4"><c r="A4"><v>3</v></c></row><row r="5"><c r="A5"><v>4</v></c></row>');
    expect(sheet).toContain('<row r="6" spans="1:2"><c r="A6"><f>SUBTOTAL(109,T[N])</f><v>3</v></c></row>');
    expect(sheet).toContain(
      '<row r="8"><c r="A8"><v>60</v></c><c r="B8"><f>A8*2+A$2</f><v>120</v></c></row>',
    );
    expect(parts[OTHER]).toContain(`<f>'My tab'!B8+Other!B6+"'My tab'!B6"</f>`);
  });

  it('moves merged cells, links, breaks, validations and formats', () => {
    const parts = grow(
      totals({
        after:
          '<conditionalFormatting sqref="A2:A3 A6"><cfRule type="expression" priority="1"><formula>A2&gt;$A$6+A4</formula></cfRule></conditionalFormatting>' +
          '<conditionalFormatting sqref="D6:D8"><cfRule type="expression" priority="2"><formula>A6&gt;1</formula></cfRule></conditionalFormatting>' +
          '<dataValidations count="1"><dataValidation type="list" sqref="D4"><formula1>$A$6:$A$8</formula1></dataValidation></dataValidations>' +
          `<hyperlinks><hyperlink ref="A6" location="'My tab'!A6"/></hyperlinks>` +
          '<rowBreaks count="1" manualBreakCount="1"><brk id="7" max="16383" man="1"/></rowBreaks>' +
          '<mergeCells count="2"><mergeCell ref="A7:B8"/><mergeCell ref="D2:D3"/></mergeCells>' +
          '<ignoredErrors><ignoredError sqref="C1:C1048576" numberStoredAsText="1"/></ignoredErrors>',
      }),
    );
    const sheet = parts[SHEET] ?? '';
    expect(sheet).toContain('<conditionalFormatting sqref="A2:A5 A8">');
    expect(sheet).toContain('<formula>A2&gt;$A$8+A4</formula>');
    expect(sheet).toContain('<conditionalFormatting sqref="D8:D10">');
    expect(sheet).toContain('<formula>A8&gt;1</formula>');
    expect(sheet).toContain('sqref="D6"><formula1>$A$8:$A$10</formula1>');
    expect(sheet).toContain(`<hyperlink ref="A8" location="'My tab'!A8"/>`);
    expect(sheet).toContain('<brk id="9" max="16383" man="1"/>');
    expect(sheet).toContain('<mergeCell ref="A9:B10"/><mergeCell ref="D2:D3"/>');
    expect(sheet).toContain('<ignoredError sqref="C1:C1048576"');
  });

  it('moves names, comments, drawings and charts', () => {
    const parts = {
      'xl/comments1.xml':
        '<comments><commentList><comment ref="A6" authorId="0"/><comment ref="A2" authorId="0"/></commentList></comments>',
      'xl/drawings/drawing1.xml': `<xdr:wsDr xmlns:xdr="urn:d">${drawing(6, 9)}${drawing(1, 9)}${drawing(1, 9, ' editAs="oneCell"')}${drawing(6, 9, ' editAs="absolute"')}</xdr:wsDr>`,
      'xl/drawings/vml1.vml':
        '<xml xmlns:x="urn:x"><x:Anchor>1, 15, 5, 2, 3, 31, 9, 4</x:Anchor><x:Row>5</x:Row></xml>',
      'xl/charts/chart1.xml': `<c:chart xmlns:c="urn:c"><c:f>'My tab'!$A$2:$A$6</c:f><c:v>'My tab'!A6</c:v></c:chart>`,
    };
    const options = totals({
      rest: {
        parts,
        types: {
          'xl/charts/chart1.xml': 'application/vnd.openxmlformats-officedocument.drawingml.chart+xml',
        },
        definedNames: `<definedName name="_xlnm.Print_Area" localSheetId="0">'My tab'!$A$1:$B$8</definedName><definedName name="r">'My tab'!$6:$6,Other!$6:$6</definedName>`,
      },
    });
    const links = [
      ['comments', '../comments1.xml'],
      ['drawing', '../drawings/drawing1.xml'],
      ['vmlDrawing', '../drawings/vml1.vml'],
    ] as const;
    const [first, ...others] = options.sheets;
    const after = grow({
      ...options,
      sheets: [{ ...(first as (typeof options.sheets)[0]), links }, ...others],
    });
    expect(after['xl/comments1.xml']).toContain(
      '<comment ref="A8" authorId="0"/><comment ref="A2" authorId="0"/>',
    );
    expect(after['xl/drawings/drawing1.xml']).toBe(
      `<xdr:wsDr xmlns:xdr="urn:d">${drawing(8, 11)}${drawing(1, 11)}${drawing(1, 9, ' editAs="oneCell"')}${drawing(6, 9, ' editAs="absolute"')}</xdr:wsDr>`,
    );
    expect(after['xl/drawings/vml1.vml']).toContain(
      '<x:Anchor>1, 15, 7, 2, 3, 31, 11, 4</x:Anchor><x:Row>7</x:Row>',
    );
    expect(after['xl/charts/chart1.xml']).toContain(`<c:f>'My tab'!$A$2:$A$8</c:f><c:v>'My tab'!A6</c:v>`);
    expect(after['xl/workbook.xml']).toContain("'My tab'!$A$1:$B$10");
    expect(after['xl/workbook.xml']).toContain("'My tab'!$8:$8,Other!$6:$6");
  });

  it('writes shared formulas out before their cells part', () => {
    const below =
      '<row r="6"><c r="D6"><f t="shared" ref="D6:D7" si="0">A6+A$2</f></c></row><row r="7"><c r="D7"><f t="shared" si="0"/></c></row>';
    const other = `<row r="1"><c r="A1"><f t="shared" ref="A1:A2" si="0">'My tab'!A3</f></c></row><row r="2"><c r="A2"><f t="shared" si="0"/></c></row>`;
    const parts = grow(totals({ below, other }));
    expect(parts[SHEET]).toContain('<c r="D8"><f>A8+A$2</f></c>');
    expect(parts[SHEET]).toContain('<c r="D9"><f>A9+A$2</f></c>');
    expect(parts[OTHER]).toContain('<c r="A1"><f>\'My tab\'!A3</f></c>');
    expect(parts[OTHER]).toContain('<c r="A2"><f>\'My tab\'!A6</f></c>');
  });

  it('leaves parts alone that refer to nothing that moved', () => {
    const options = totals({ other: '<row r="1"><c r="A1"><f>B6</f></c></row>' });
    const before = fixture(options);
    const workbook = openXlsx(before);
    workbook.apply([APPEND_TWO]);
    expect(changedParts(before, workbook.save())).toEqual(['xl/tables/table1.xml', 'xl/workbook.xml', SHEET]);
  });
});

const BELOW = (extra: Partial<FixtureOptions['sheets'][0]> = {}): FixtureOptions => ({
  sheets: [
    {
      name: 'S',
      rows: `<row r="1">${textCell('A1', 'N')}</row><row r="2">${numberCell('A2', 1)}</row><row r="4">${textCell('A4', 'note')}</row>`,
      tables: [{ name: 'T', ref: 'A1:A2', columns: ['N'] }],
      ...extra,
    },
  ],
});

describe('growing into what stands below', () => {
  it('moves it only where the new rows would reach it', () => {
    const workbook = openXlsx(fixture(BELOW()));
    workbook.apply([{ kind: 'append', table: 'T', rows: [{ N: number(3) }] }]);
    expect(unpack(workbook.save())[SHEET]).toContain(
      '<row r="4"><c r="A4" t="inlineStr"><is><t>note</t></is></c></row>',
    );
    workbook.apply([APPEND_TWO]);
    expect(unpack(workbook.save())[SHEET]).toContain(
      '<row r="6"><c r="A6" t="inlineStr"><is><t>note</t></is></c></row>',
    );
    checkFile(workbook.save());
  });

  it('moves a table that stands below, with changes not saved yet', () => {
    const options = BELOW({
      rows: `<row r="2">${numberCell('A2', 1)}</row><row r="4">${textCell('A4', 'Q')}</row><row r="5">${numberCell('A5', 9)}</row>`,
      tables: [
        { name: 'T', ref: 'A1:A2', columns: ['N'] },
        { name: 'U', ref: 'A4:A5', columns: ['Q'], formulas: { Q: 'A5*2' } },
      ],
    });
    const workbook = openXlsx(fixture(options));
    workbook.apply([{ kind: 'append', table: 'U', rows: [{ Q: number(8) }, {}] }, APPEND_TWO]);
    const snapshot = workbook.snapshot();
    expect(snapshot.tables[1]).toMatchObject({ firstRow: 7, rowCount: 3 });
    expect(snapshot.tables[1]?.columns[0]?.values).toEqual([9, 8, { shown: '=A9*2' }]);
    const bytes = workbook.save();
    checkFile(bytes);
    expect(JSON.stringify(openXlsx(bytes).snapshot())).toBe(JSON.stringify(snapshot));
  });

  it('refuses to tear apart a table beside it', () => {
    const workbook = openXlsx(
      fixture(
        BELOW({
          tables: [
            { name: 'T', ref: 'A1:A2', columns: ['N'] },
            { name: 'U', ref: 'C1:C9', columns: ['Q'] },
          ],
        }),
      ),
    );
    const five: Change = {
      kind: 'append',
      table: 'T',
      rows: Array.from({ length: 5 }, () => ({ N: number(1) })),
    };
    expect(() => workbook.apply([five])).toThrow(/tear apart the table U beside it \(C1:C9\)/);
  });

  it('refuses where an array formula or a pivot table is in the way', () => {
    const array = BELOW({
      rows: `<row r="2">${numberCell('A2', 1)}<c r="C2"><f t="array" ref="C2:C5">A2:A5</f></c></row><row r="4">${textCell('A4', 'x')}</row>`,
    });
    expect(() => openXlsx(fixture(array)).apply([APPEND_TWO])).toThrow(FileRefused);
    const pivot = BELOW({ links: [['pivotTable', '../pivotTables/p1.xml']] });
    const parts = {
      'xl/pivotTables/p1.xml':
        '<pivotTableDefinition><location ref="C3:D9" firstHeaderRow="1"/></pivotTableDefinition>',
    };
    expect(() => openXlsx(fixture({ ...pivot, parts })).apply([APPEND_TWO])).toThrow(
      /pivot table at C3:D9 is in the way/,
    );
  });
});
