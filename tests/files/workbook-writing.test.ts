import { describe, expect, it } from 'vitest';
import { FileRefused, openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { Change } from '../../src/workbook/port.ts';
import { fixture } from './fixture.ts';
import { append, BLANK, change, day, lots, number, SHEET, TABLE, text } from './lots.ts';

const set = (table: string, row: number, column: string): Change => ({
  kind: 'set',
  table,
  row,
  column,
  cell: BLANK,
});

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
    workbook.apply([
      append({ Lot: text('L3') }),
      { kind: 'set', table: 'Lots', row: 0, column: 'Lot', cell: text('X') },
    ]);
    expect(before.tables[0]?.rowCount).toBe(2);
    expect(before.tables[0]?.columns[0]?.values).toEqual(['L1', 'L2']);
    expect(workbook.snapshot().tables[0]?.columns[0]?.values).toEqual(['X', 'L2', 'L3']);
  });

  it('carries out all changes or none', () => {
    const bytes = fixture(lots());
    const workbook = openXlsx(bytes);
    const tooLong = text('x'.repeat(40_000));
    expect(() => workbook.apply([append({ Lot: text('L3') }), append({ Lot: tooLong })])).toThrow(
      FileRefused,
    );
    expect(workbook.save()).toBe(bytes);
    expect(workbook.snapshot().tables[0]?.rowCount).toBe(2);
  });

  it('calls an unknown table, column or row a mistake of the caller', () => {
    const workbook = openXlsx(fixture(lots()));
    for (const wrong of [
      set('Lot', 0, 'Lot'),
      set('Lots', 2, 'Lot'),
      set('Lots', -1, 'Lot'),
      set('Lots', 0, 'lot'),
    ]) {
      expect(() => workbook.apply([wrong])).toThrow(/^There is no /);
    }
    expect(() => workbook.apply([append({ Other: BLANK })])).toThrow('There is no column Other in Lots');
  });

  it('rewrites only the sheet and the table', () => {
    const options = lots({
      parts: { 'customXml/item1.xml': '<own  a = "1"/>', 'docProps/core.xml': '<c/>' },
    });
    const { changed, parts } = change(options, [
      append({ Lot: text('L3'), Day: day(20_000) }, { Quantity: number(1) }),
    ]);
    expect(changed).toEqual([TABLE, SHEET]);
    expect(parts[TABLE]).toContain('ref="A1:C5"');
    expect(parts[TABLE]).toContain('<autoFilter ref="A1:C5"/>');
    expect(parts[SHEET]).toContain('<dimension ref="A1:C5"/>');
    expect(parts[SHEET]).toContain('<row r="3" spans="1:2" ht="20" customHeight="1">');
  });

  it('gives new cells the style of the cell above', () => {
    const { parts, snapshot } = change(lots(), [
      append({ Lot: text('L3'), Quantity: number(2), Day: day(20_000) }),
    ]);
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
    const { changed, snapshot } = change(bare, [
      { kind: 'set', table: 'Lots', row: 1, column: 'Day', cell: day(20_000) },
    ]);
    expect(changed).toEqual(['[Content_Types].xml', 'xl/_rels/workbook.xml.rels', 'xl/styles.xml', SHEET]);
    expect(snapshot.tables[0]?.columns[2]?.look(1)).toBe('date');
  });

  it('stores text as text whatever it looks like', () => {
    const awkward = [
      '=1+1',
      '007',
      '1E5',
      '-',
      'a\nb',
      ' x ',
      'a\u0001\rb',
      '_x0041_',
      '<&>"\'',
      '#N/A',
      'TRUE',
      '\ud800',
      '漢字',
    ];
    for (const strings of [undefined, ['L1']]) {
      const options = strings ? { ...lots(), strings } : lots();
      const { snapshot } = change(options, [append(...awkward.map((each) => ({ Lot: text(each) })))]);
      expect(snapshot.tables[0]?.columns[0]?.values.slice(2)).toEqual(awkward);
    }
  });

  it('adds to the shared strings where the file has them, reusing plain ones only', () => {
    const options = lots({ strings: ['<r><t>Paste</t></r>', 'Rice'] });
    const { parts } = change(options, [
      append({ Lot: text('Rice') }, { Lot: text('Paste') }, { Lot: text(' Paste') }),
    ]);
    expect(parts['xl/sharedStrings.xml']).toContain('count="5" uniqueCount="4"');
    expect(parts['xl/sharedStrings.xml']).toContain(
      '<si><t>Paste</t></si><si><t xml:space="preserve"> Paste</t></si></sst>',
    );
    expect(parts[SHEET]).toContain('<c r="A4" s="3" t="s"><v>1</v></c>');
  });

  it('writes the prefix that the sheet uses', () => {
    const rows = '<x:row r="1"/><x:row r="2"><x:c r="A2"><x:v>1</x:v></x:c></x:row>';
    const sheet = {
      name: 'Lots',
      rows,
      prefix: 'x:',
      tables: [{ name: 'Lots', ref: 'A1:B2', columns: ['Lot', 'B'] }],
    };
    const { parts } = change({ sheets: [sheet] }, [append({ B: text('b') })]);
    expect(parts[SHEET]).toContain(
      '<x:row r="3"><x:c r="B3" t="inlineStr"><x:is><x:t>b</x:t></x:is></x:c></x:row>',
    );
  });

  it('blanks a cell without moving the ones that are counted from it', () => {
    const rows = '<row><c t="inlineStr"><is><t>A</t></is></c></row><row><c><v>1</v></c><c><v>2</v></c></row>';
    const sheet = { name: 'Lots', rows, tables: [{ name: 'Lots', ref: 'A1:B2', columns: ['Lot', 'B'] }] };
    const { snapshot } = change({ sheets: [sheet] }, [
      { kind: 'set', table: 'Lots', row: 0, column: 'Lot', cell: BLANK },
    ]);
    expect(snapshot.tables[0]?.columns.map((column) => column.values)).toEqual([[null], [2]]);
  });
});
