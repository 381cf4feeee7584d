import * as fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { FileRefused, openXlsx } from '../../src/files/xlsx-workbook.ts';
import { fixture, fixtureParts, numberCell, pack, textCell, unpack } from './fixture.ts';

const OPTIONS = {
  sheets: [
    {
      name: 'S',
      rows: `<row r="1">${textCell('A1', 'N')}</row><row r="2">${numberCell('A2', 1)}<c r="B2" t="s"><v>0</v></c></row>`,
      tables: [{ name: 'T', ref: 'A1:B2', columns: ['N', 'M'] }],
    },
  ],
  strings: ['Wheat paste'],
  parts: { 'customXml/item1.xml': '<a/>' },
};

/** The sentence by which a file is refused. */
function refusal(bytes: Uint8Array): string {
  try {
    openXlsx(bytes);
  } catch (error) {
    expect(error).toBeInstanceOf(FileRefused);
    return (error as FileRefused).message;
  }
  return 'opened';
}

function withPart(name: string, text: string): Uint8Array {
  return pack({ ...fixtureParts(OPTIONS), [name]: text });
}

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);

const compound = (stream: string): Uint8Array => {
  const name = [...stream].flatMap((character) => [character.charCodeAt(0), 0]);
  return new Uint8Array([
    0xd0,
    0xcf,
    0x11,
    0xe0,
    0xa1,
    0xb1,
    0x1a,
    0xe1,
    ...Array.from({ length: 600 }, () => 0),
    ...name,
    0,
    0,
  ]);
};

describe('files that are no workbook', () => {
  it.each([
    ['nothing at all', new Uint8Array(), /empty/],
    ['plain text', ascii('Lot;Quantity\n'), /no \.xlsx workbook/],
    ['a workbook with a password', compound('EncryptedPackage'), /password/],
    ['an old workbook', compound('Workbook'), /\(\.xls\)/],
    ['some compound file', compound('Contents'), /either protected by a password or of an older kind/],
    ['the start of a zip file alone', ascii('PK\u0003\u0004'), /damaged/],
    ['a zip file of something else', zipSync({ 'a.txt': ascii('x') }), /holds no workbook/],
    [
      'an OpenDocument file',
      pack({ mimetype: 'application/vnd.oasis.opendocument.spreadsheet', 'content.xml': '<a/>' }),
      /\.ods/,
    ],
  ])('refuses %s', (_, bytes, sentence) => {
    expect(refusal(bytes)).toMatch(sentence);
  });

  it.each([
    ['application/vnd.ms-excel.sheet.binary.macroEnabled.main', /\.xlsb/],
    ['application/vnd.openxmlformats-officedocument.spreadsheetml.template.main+xml', /template/],
    ['application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml', /holds no workbook/],
  ])('refuses a package that declares %s', (type, sentence) => {
    expect(refusal(fixture({ ...OPTIONS, types: { 'xl/workbook.xml': type } }))).toMatch(sentence);
  });

  it('opens a workbook with macros', () => {
    const type = 'application/vnd.ms-excel.sheet.macroEnabled.main+xml';
    const workbook = openXlsx(fixture({ ...OPTIONS, types: { 'xl/workbook.xml': type } }));
    expect(workbook.macroEnabled).toBe(true);
    expect(openXlsx(fixture(OPTIONS)).macroEnabled).toBe(false);
  });
});

describe('damaged workbooks', () => {
  const whole = fixture(OPTIONS);
  const shown = JSON.stringify(openXlsx(whole).snapshot());

  it('refuses a file that breaks off, wherever', () => {
    for (let length = 0; length < whole.length; length += 7) {
      expect(refusal(whole.slice(0, length))).not.toBe('opened');
    }
    expect(refusal(whole.slice(0, -1))).not.toBe('opened');
  });

  it('never reads a file with a flipped bit as something else', () => {
    fc.assert(
      fc.property(fc.nat(whole.length * 8 - 1), (bit) => {
        const bytes = whole.slice();
        bytes[bit >> 3] = (bytes[bit >> 3] as number) ^ (1 << (bit & 7));
        try {
          expect(JSON.stringify(openXlsx(bytes).snapshot())).toBe(shown);
        } catch (error) {
          if (!(error instanceof FileRefused)) throw error;
        }
      }),
      { numRuns: 3000, seed: 7 },
    );
  });

  it.each([
    'xl/workbook.xml',
    'xl/worksheets/sheet1.xml',
    'xl/tables/table1.xml',
    'xl/sharedStrings.xml',
    '[Content_Types].xml',
    '_rels/.rels',
    'xl/_rels/workbook.xml.rels',
  ])('refuses a workbook without %s', (name) => {
    const { [name]: _, ...rest } = fixtureParts(OPTIONS);
    expect(refusal(pack(rest))).not.toBe('opened');
  });

  const SHEET = 'xl/worksheets/sheet1.xml';
  const start = '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>';
  it.each([
    ['crossed tags', `${start}<row r="1"><c r="A1"></row></c></sheetData></worksheet>`],
    ['an end that is missing', `${start}<row r="1"/></sheetData>`],
    ['no content', ''],
    ['an attribute without quotes', `${start}<row r=1/></sheetData></worksheet>`],
    ['an attribute not closed', `${start}<row r="1/></sheetData></worksheet>`],
    [
      'an entity nobody knows',
      `${start}<row r="2"><c r="A2" t="str"><v>&wheat;</v></c></row></sheetData></worksheet>`,
    ],
    ['rows out of order', `${start}<row r="3"/><row r="2"/></sheetData></worksheet>`],
    ['cells out of order', `${start}<row r="2"><c r="B2"/><c r="A2"/></row></sheetData></worksheet>`],
    ['a cell of another row', `${start}<row r="2"><c r="A3"/></row></sheetData></worksheet>`],
    [
      'a text that is not there',
      `${start}<row r="2"><c r="A2" t="s"><v>7</v></c></row></sheetData></worksheet>`,
    ],
    ['no cells at all', '<worksheet xmlns="x"/>'],
    ['two documents', `${start}</sheetData></worksheet><worksheet/>`],
  ])('refuses a sheet with %s', (_, text) => {
    expect(refusal(withPart(SHEET, text))).toMatch(/^The workbook is damaged: /);
  });

  it('refuses a DOCTYPE, by which a small file can grow without end', () => {
    const bomb =
      '<!DOCTYPE sst [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;">]><sst><si><t>&b;</t></si></sst>';
    expect(refusal(withPart('xl/sharedStrings.xml', bomb))).toMatch(/DOCTYPE/);
  });

  it('refuses a part that is not in UTF-8', () => {
    expect(
      refusal(withPart('xl/workbook.xml', '<?xml version="1.0" encoding="ISO-8859-1"?><workbook/>')),
    ).toMatch(/ISO-8859-1/);
  });

  it('refuses a table that claims other columns than its area has', () => {
    const text = unpack(whole)['xl/tables/table1.xml']?.replaceAll('A1:B2', 'A1:C2') ?? '';
    expect(refusal(withPart('xl/tables/table1.xml', text))).toMatch(/declared as A1:C2/);
    const huge = unpack(whole)['xl/tables/table1.xml']?.replaceAll('A1:B2', 'A1:B9999999') ?? '';
    expect(refusal(withPart('xl/tables/table1.xml', huge))).toMatch(/describes no table/);
  });
});

describe('files made to exhaust the computer', () => {
  it('refuses a part that is compressed far more than a sheet can be', () => {
    const zeros = new Uint8Array(40 * 1024 * 1024);
    const parts = Object.entries(fixtureParts(OPTIONS)).map(([name, text]) => [
      name,
      new TextEncoder().encode(text),
    ]);
    const bytes = zipSync({ ...Object.fromEntries(parts), 'xl/media/image1.bmp': zeros });
    expect(refusal(bytes)).toMatch(/too large to be a bench's workbook/);
  });

  it('refuses a part that holds more than it declares, without unpacking it', () => {
    const parts = Object.entries(fixtureParts(OPTIONS)).map(([name, text]) => [
      name,
      new TextEncoder().encode(text),
    ]);
    const bytes = zipSync(
      { 'aa.xml': new Uint8Array(3_000_000), ...Object.fromEntries(parts) },
      { level: 9 },
    );
    const view = new DataView(bytes.buffer);
    const central = view.getUint32(bytes.length - 22 + 16, true);
    for (const at of [22, central + 24]) view.setUint32(at, 5000, true);
    expect(refusal(bytes)).toMatch(/aa\.xml holds more than it declares/);
  });

  it('refuses parts that overlap', () => {
    const bytes = zipSync({ 'a.xml': new Uint8Array(10), 'b.xml': new Uint8Array(10) });
    const view = new DataView(bytes.buffer);
    const central = view.getUint32(bytes.length - 22 + 16, true);
    const second = central + 46 + 5;
    view.setUint32(second + 42, view.getUint32(central + 42, true), true);
    expect(refusal(bytes)).toMatch(/damaged/);
  });
});
