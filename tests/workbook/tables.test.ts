import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { exact } from '../../src/core/exact-number.ts';
import {
  date,
  dayOf,
  formula,
  type Literal,
  type LiteralCell,
  percent,
  problem,
} from '../helpers/literal.ts';
import { reading, snapshotOf } from '../helpers/snapshot.ts';

const LOT = { Lot: 'T-1', Material: 'Tissue 5', Received: date('2026-01-10'), Quantity: 2, Unit: 'sheet' };
const MATERIAL = { Material: 'Tissue 5', Kind: 'Tissue', 'Stock unit': 'sheet' };
const STARRED = ['Lot', 'Material', 'Received', 'Quantity', 'Unit'];

function noticesOf(literal: Literal) {
  return checkWorkbook(snapshotOf(literal), dayOf('2026-04-03')).notices;
}

describe('rows', () => {
  test('wholly blank rows are ignored, also between filled ones and with spaces in them', () => {
    const { records, notices } = reading({ Tissue: [{}, LOT, { Notes: '  ' }, { ...LOT, Lot: 'T-2' }, {}] });
    expect(records.lots.map(({ lot, place }) => [lot, place.sheetRow])).toEqual([
      ['T-1', 3],
      ['T-2', 5],
    ]);
    expect(notices).toEqual([]);
  });

  test('a row that holds only formulas is blank, unless they fill every starred column', () => {
    const only = { Lot: formula('T-7'), Left: formula(0), Worth: problem('=H2*2') };
    expect(reading({ Tissue: [only] })).toMatchObject({ records: { lots: [] }, notices: [] });
    const all = {
      ...only,
      Material: formula('Tissue 5'),
      Received: formula(46000),
      Quantity: formula(3),
      Unit: formula('sheet'),
    };
    expect(reading({ Tissue: [all] }).records.lots).toHaveLength(1);
  });

  test('a row typed right below a table that did not grow is said, a remark there is not', () => {
    const below = {
      Lot: 'T-2',
      Material: 'Tissue 5',
      Received: date('2026-01-10'),
      Quantity: 4,
      Unit: 'sheet',
    };
    const { records, notices } = reading({ Tissue: { rows: [LOT], below } });
    expect(records.lots.map(({ lot }) => lot)).toEqual(['T-1']);
    expect(notices).toMatchObject([{ code: 'unreadable', subject: '3', at: { column: 'Lot' } }]);
    expect(notices[0]?.message).toMatch(/^Row 3 of the tab Tissue stands right below the table Tissue/);
    expect(reading({ Tissue: { rows: [LOT], below: { Lot: 'counted in March' } } }).notices).toEqual([]);
    expect(reading({ Tissue: { rows: [LOT], below: {} } }).notices).toEqual([]);
  });

  test('a row with a bad starred cell is left out, each bad cell with a notice', () => {
    const { records, notices } = reading({ Tissue: [{ ...LOT, Quantity: 'two', Unit: null, Cost: 'dear' }] });
    expect(records.lots).toEqual([]);
    expect(notices.map(({ message }) => message)).toEqual([
      'Tissue!D2 (Quantity) holds “two”: a plain number above 0 is right, such as 12.5.',
      'Tissue!E2 (Unit) holds nothing: this cell must be filled.',
      'Tissue!F2 (Cost) holds “dear”: a plain number is right, 0 or more, such as 12.5.',
    ]);
  });

  test('a percent-formatted waste, service level and tax are read × 100', () => {
    const { records, settings } = reading({
      Materials: [{ ...MATERIAL, 'Service level %': percent(95) }],
      UsageRates: [
        { Treatment: 'A', Material: 'B', 'Quantity per extent': 1, Unit: 'g', 'Waste %': percent(12.5) },
      ],
      Settings: [{ Setting: 'Tax  %', Value: percent(20) }],
    });
    expect(records.materials[0]?.serviceLevel?.toString()).toBe('95');
    expect(records.usageRates[0]?.waste?.toString()).toBe('12.5');
    expect(settings.tax.toString()).toBe('20');
  });
});

describe('columns', () => {
  test('they are found in any order, case and spacing, among others', () => {
    const headers = ['Colour', ' UNIT', 'quan tity', 'MATERIAL', 'Received', 'lot ', 'supplierlot'];
    const { records, notices } = reading({
      Tissue: {
        headers,
        rows: [
          {
            'lot ': 'T-1',
            MATERIAL: 'Tissue 5',
            Received: '2026-01-10',
            'quan tity': 2,
            ' UNIT': 'sheet',
            Colour: problem('#N/A'),
          },
        ],
      },
    });
    expect(notices).toEqual([]);
    expect(records.lots[0]).toMatchObject({ lot: 'T-1', material: 'Tissue 5', left: null });
  });

  test('optional columns may be missing', () => {
    expect(reading({ Tissue: { headers: STARRED, rows: [LOT] } })).toMatchObject({
      records: { lots: [{ lot: 'T-1', cost: null, state: null, left: null }] },
      notices: [],
    });
  });

  test('a table without a starred column is not read, and said, and what names its rows is told so', () => {
    const literal: Literal = {
      Materials: [MATERIAL],
      Tissue: { rows: [LOT], without: ['Received', 'Unit'], tab: 'My tissue' },
      Movements: [
        { Movement: 'M-1', Date: '2026-02-01', Kind: 'Use', Lot: 'T-1', Quantity: 1, Unit: 'sheet' },
      ],
      Offcuts: [{ Offcut: 'C-1', Lot: 'T-1', 'Width cm': 3, 'Height cm': 4 }],
    };
    expect(
      noticesOf(literal).map(({ code, subject, message, address }) => [code, subject, message, address]),
    ).toEqual([
      [
        'unreadable',
        'Tissue',
        'The table Tissue on the tab My tissue lacks the columns Received and Unit, so none of its rows is read: ' +
          'add what is missing, or rename the columns that are meant.',
        "'My tissue'!A1",
      ],
      [
        'unknown-reference',
        'C-1',
        "The row of T-1 in the stock tables can't be read, and Lot names it: mend that row first.",
        'Offcuts!B2',
      ],
    ]);
  });

  test('a table of materials without a starred column is one fault, not one for each lot as well', () => {
    const codes = noticesOf({ Materials: { rows: [MATERIAL], without: ['Kind'] }, Tissue: [LOT] }).map(
      ({ message }) => message,
    );
    expect(codes).toEqual([
      expect.stringMatching(/^The table Materials .* lacks the column Kind, so none/),
      "The row of Tissue 5 in Materials can't be read, and Material names it: mend that row first.",
    ]);
  });

  test('any table with the starred columns of a lot is a stock table; one with fewer is the user’s own', () => {
    const { records, notices, tables } = reading({
      Tissue: [LOT],
      OldTissue: { headers: STARRED, rows: [{ ...LOT, Lot: 'T-0' }] },
      Prices: { headers: ['Material', 'Price'], rows: [{ Material: 'Tissue 5', Price: 4 }] },
    });
    expect(records.lots.map(({ lot, place }) => [lot, place.table])).toEqual([
      ['T-1', 'Tissue'],
      ['T-0', 'OldTissue'],
    ]);
    expect(notices).toEqual([]);
    expect([...tables.keys()]).toEqual(['tissue', 'oldtissue']);
  });

  test('tables are found by name whatever its case, and addresses speak of the tab', () => {
    const { notices } = reading({
      TISSUE: { rows: [{ ...LOT, Quantity: 'x' }], tab: 'Paper, thin', firstRow: 5, firstColumn: 27 },
    });
    expect(notices[0]?.message).toMatch(/^'Paper, thin'!AD5 \(Quantity\)/);
  });
});

describe('what is left, typed over', () => {
  const left = (cell: LiteralCell, without: string[] = []) =>
    reading({
      Tissue: { rows: [{ ...LOT, Left: cell, 'Left as written': 2 }], without },
    }).records.lots[0]?.left?.toString() ?? null;
  test('counts only where it was typed and what was written before is known', () => {
    expect(left(1.5)).toBe('1.5');
    expect(left(1.5, ['Left as written'])).toBeNull();
    expect(left(formula(1.5))).toBeNull();
    expect(left(null)).toBeNull();
  });
});

describe('settings', () => {
  const settings = (rows: Record<string, string | number | null | ReturnType<typeof problem>>[]) =>
    reading({ Settings: rows });
  test('usual values stand in for what is missing, blank or unreadable', () => {
    const { settings: read, notices } = settings([
      { Setting: 'Warn days', Value: 'a fortnight' },
      { Setting: 'sds years', Value: null },
      { Setting: 'my own', Value: 'anything' },
      { Setting: 2026, Value: 'mine as well' },
    ]);
    expect(read).toMatchObject({
      warnDays: 14,
      sdsYears: 3,
      reviewDays: 7,
      orderCoverDays: 30,
      serviceMeans: 'chance of no shortage',
      holdingPercent: exact(20),
      costBasis: 'lots',
    });
    expect(notices.map(({ subject, message }) => [subject, message])).toEqual([
      [
        'warn days',
        'Settings!B2 (warn days) holds “a fortnight”: a whole number is right, 0 or more, such as 14. Until then the usual value is taken.',
      ],
    ]);
  });

  test('a second row of one name, an error for a name and a value without a name are noticed', () => {
    const { settings: read, notices } = settings([
      { Setting: 'warn days', Value: 3 },
      { Setting: 'WARN  days', Value: 4 },
      { Setting: problem('#N/A'), Value: 4 },
      { Setting: null, Value: 4 },
      { Setting: 'tax %', Value: date('2026-03-04') },
      { Setting: 'currency decimals', Value: 9 },
    ]);
    expect(read.warnDays).toBe(3);
    expect(notices.map(({ code, message }) => `${code}: ${message}`)).toEqual([
      'duplicate-id: Setting warn days stands in two rows; the first counts: remove this one.',
      'unreadable: Settings!A4 (Setting) holds the error #N/A: the name of a setting is right.',
      'unreadable: Settings!A5 (Setting) holds nothing: the name of a setting is right.',
      'unreadable: Settings!B6 (tax %) holds the date 2026-03-04: a number is right here: format the cell as a number and type it again. Until then the usual value is taken.',
      'unreadable: Settings!B7 (currency decimals) holds “9”: a whole number is right, from 0 to 6. Until then the usual value is taken.',
    ]);
  });
});
