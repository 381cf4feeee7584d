import fc from 'fast-check';
import { readXlsx } from 'hucre';
import { describe, expect, it } from 'vitest';
import { FileRefused } from '../../src/files/file-refused.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import {
  changedParts,
  type FixtureOptions,
  fixture,
  numberCell,
  SOME_STYLES,
  textCell,
  unpack,
} from './fixture.ts';
import { checkFile } from './well-formed.ts';

const TWICE = 'Q[[#This Row],[Quantity]]*2';

interface Extra {
  readonly after?: string;
  readonly formula?: string;
  readonly below?: string;
  readonly totals?: boolean;
}

/** Five lots beside a column of remarks; each doubles its quantity by a formula on cells; another tab refers to them. */
function options({
  after = '',
  formula = 'SUM(Lots!B2:B6)',
  below = '',
  totals = false,
}: Extra = {}): FixtureOptions {
  const body = [2, 3, 4, 5, 6].map(
    (r) =>
      `<row r="${r}" ht="${20 + r}" customHeight="1"><c r="A${r}" t="s"><v>${r - 2}</v></c>${numberCell(`B${r}`, r * 10)}` +
      `<c r="C${r}"><f>B${r}*2</f><v>${r * 20}</v></c>${textCell(`E${r}`, `beside ${r}`)}</row>`,
  );
  const last = totals ? '<row r="7"><c r="B7"><f>SUBTOTAL(109,Lots[Quantity])</f><v>1</v></c></row>' : '';
  return {
    strings: ['L2', '<r><t>L</t></r><r><rPr><b/></rPr><t>3</t></r>', 'L4', 'L5', 'L6'],
    styles: SOME_STYLES,
    definedNames: '<definedName name="quantities">Lots!$B$2:$B$6</definedName>',
    sheets: [
      {
        name: 'Lots',
        before: '<dimension ref="A1:E6"/>',
        rows: `<row r="1">${textCell('A1', 'Lot')}${textCell('B1', 'Quantity')}${textCell('C1', 'Twice')}</row>${body.join('')}${last}${below}`,
        after,
        tables: [
          {
            name: 'Lots',
            ref: totals ? 'A1:C7' : 'A1:C6',
            columns: ['Lot', 'Quantity', 'Twice'],
            formulas: { Twice: TWICE },
            totalsRow: totals,
          },
        ],
      },
      { name: 'Sums', rows: `<row r="1"><c r="A1"><f>${formula}</f><v>1</v></c></row>` },
    ],
  };
}

function remove(from: FixtureOptions, first: number, count: number) {
  const before = fixture(from);
  const workbook = openXlsx(before);
  workbook.removeRows('Lots', first, count);
  const after = workbook.save();
  checkFile(after);
  const reopened = openXlsx(after);
  expect(JSON.stringify(reopened.snapshot())).toBe(JSON.stringify(workbook.snapshot()));
  return { workbook, after, parts: unpack(after), changed: changedParts(before, after) };
}

describe('rows taken out of a table', () => {
  it('move up what stands below them in the table, and nothing beside it', async () => {
    const { workbook, after, parts } = remove(options(), 1, 2);
    const [table] = workbook.snapshot().tables;
    expect(table?.columns.map(({ values }) => values)).toEqual([
      ['L2', 'L5', 'L6'],
      [20, 50, 60],
      [40, 100, 120],
    ]);
    expect(parts['xl/tables/table1.xml']).toContain('ref="A1:C4"');
    expect(parts['xl/tables/table1.xml']).toContain('<autoFilter ref="A1:C4"/>');
    const read = await readXlsx(after);
    const rows = read.sheets[0]?.rows ?? [];
    expect(rows.slice(1, 6).map((row) => row[4])).toEqual([2, 3, 4, 5, 6].map((r) => `beside ${r}`));
    expect(rows.slice(1, 6).map((row) => row[0] ?? null)).toEqual(['L2', 'L5', 'L6', null, null]);
    expect(parts['xl/worksheets/sheet1.xml']).toContain('<row r="3" ht="23" customHeight="1">');
  });

  it('let formulas and names follow their cells', () => {
    const { workbook, parts } = remove(options(), 1, 2);
    expect(workbook.row('Lots', 3)[2]?.formula).toBe('B3*2');
    expect(parts['xl/worksheets/sheet2.xml']).toContain('<f>SUM(Lots!B2:B4)</f>');
    expect(parts['xl/workbook.xml']).toContain('Lots!$B$2:$B$4</definedName>');
  });

  it('keep a text with formatting of its own, and cells typed before', () => {
    const workbook = openXlsx(fixture(options()));
    workbook.type('Lots', [{ row: 6, column: 1, cell: { kind: 'text', text: 'typed' } }]);
    workbook.removeRows('Lots', 0, 1);
    const after = workbook.save();
    checkFile(after);
    expect(openXlsx(after).snapshot().tables[0]?.columns[0]?.values).toEqual(['L3', 'L4', 'L5', 'typed']);
    expect(unpack(after)['xl/worksheets/sheet1.xml']).toContain('<c r="A2" t="s"><v>1</v></c>');
  });

  it('shorten a range that begins with them', () => {
    const { parts } = remove(options(), 0, 2);
    expect(parts['xl/worksheets/sheet2.xml']).toContain('<f>SUM(Lots!B2:B4)</f>');
  });

  it('shorten a range that ends with them, and move a totals row up', () => {
    const { parts, workbook } = remove(options({ totals: true }), 4, 1);
    expect(parts['xl/worksheets/sheet2.xml']).toContain('<f>SUM(Lots!B2:B5)</f>');
    expect(parts['xl/worksheets/sheet1.xml']).toContain('<c r="B6"><f>SUBTOTAL(109,Lots[Quantity])</f>');
    expect(workbook.tabs()[0]?.tables[0]?.area.lastRow).toBe(6);
  });

  it('leave what stands below the table where it is', () => {
    const { workbook } = remove(options({ below: `<row r="9">${textCell('A9', 'below')}</row>` }), 0, 3);
    expect(workbook.row('Lots', 9)[0]?.value).toBe('below');
  });

  it('leave one blank row of a table, with its formula', () => {
    const { workbook } = remove(options({ formula: '1' }), 0, 5);
    const [table] = workbook.snapshot().tables;
    expect(table?.rowCount).toBe(1);
    expect(table?.columns.slice(0, 2).map(({ values }) => values)).toEqual([[null], [null]]);
    expect(table?.columns[2]?.hasFormula(0)).toBe(true);
  });

  it('grow back where rows are appended again', () => {
    const { workbook } = remove(options(), 3, 2);
    workbook.apply([{ kind: 'append', table: 'Lots', rows: [{ Lot: { kind: 'text', text: 'new' } }] }]);
    expect(openXlsx(workbook.save()).snapshot().tables[0]?.columns[0]?.values).toEqual([
      'L2',
      'L3',
      'L4',
      'new',
    ]);
  });

  it('stay where something could not follow, or a formula names one of them', () => {
    const comment = '<comments><commentList><comment ref="B4" authorId="0"/></commentList></comments>';
    const commented = options();
    const [lots, sums] = commented.sheets;
    if (!lots || !sums) throw new Error('no sheets');
    const refused: [FixtureOptions, RegExp][] = [
      [
        options({ formula: 'Lots!B3' }),
        /Row 3 of the tab Lots can't be deleted: the formula =Lots!B3 refers to it/,
      ],
      [options({ after: '<mergeCells><mergeCell ref="A5:B5"/></mergeCells>' }), /the joined cells at A5/],
      [
        options({
          after: '<conditionalFormatting sqref="B4"><cfRule type="cellIs"/></conditionalFormatting>',
        }),
        /a rule at B4/,
      ],
      [
        {
          ...commented,
          sheets: [{ ...lots, links: [['comments', '../comments1.xml']] }, sums],
          parts: { 'xl/comments1.xml': comment },
        },
        /the comment at B4/,
      ],
    ];
    for (const [from, message] of refused) {
      const bytes = fixture(from);
      const workbook = openXlsx(bytes);
      expect(() => workbook.removeRows('Lots', 1, 1)).toThrow(message);
      expect(() => workbook.removeRows('Lots', 1, 1)).toThrow(FileRefused);
      expect(workbook.save()).toBe(bytes);
    }
  });

  it('leave a rule for the whole column alone', () => {
    const rule =
      '<conditionalFormatting sqref="B2:B6"><cfRule type="expression"><formula>$B2&gt;9</formula></cfRule></conditionalFormatting>';
    expect(remove(options({ after: rule }), 0, 1).parts['xl/worksheets/sheet1.xml']).toContain(rule);
  });
});

describe('rows taken out from several places of a table', () => {
  /** What the file holds afterwards, or the refusal, and whether anything changed then. */
  function outcome(formula: string, act: (workbook: ReturnType<typeof openXlsx>) => void) {
    const workbook = openXlsx(fixture(options({ formula })));
    try {
      act(workbook);
    } catch (error) {
      if (!(error instanceof FileRefused)) throw error;
      return error.message.replace(/^.*: the formula.*$/, 'a formula refers to it');
    }
    const after = workbook.save();
    checkFile(after);
    expect(JSON.stringify(openXlsx(after).snapshot())).toBe(JSON.stringify(workbook.snapshot()));
    return unpack(after);
  }

  it('in one go are what taking them out one by one, from below, would leave', () => {
    const formulas = [
      'SUM(Lots!B2:B6)',
      'SUM(Lots!B3:B5)',
      'Lots!B4',
      'SUM(Lots!$A$1:Lots!$B$4)',
      'SUM(Lots!B4:B5)',
    ];
    let refused = 0;
    fc.assert(
      fc.property(fc.subarray([0, 1, 2, 3, 4]), fc.constantFrom(...formulas), (rows, formula) => {
        const together = outcome(formula, (workbook) => workbook.removeRowsOf([{ table: 'Lots', rows }]));
        const oneByOne = outcome(formula, (workbook) => {
          for (const row of rows.toReversed()) workbook.removeRows('Lots', row, 1);
        });
        expect(together).toEqual(oneByOne);
        if (typeof together === 'string') refused += 1;
      }),
      { seed: 20_260_401, numRuns: 160 },
    );
    expect(refused).toBeGreaterThan(5);
  });

  it('are all there, in their order, or it is a mistake of the caller; nothing is changed then', () => {
    const workbook = openXlsx(fixture(options()));
    for (const rows of [[1, 1], [2, 1], [-1], [5], [0.5, 0]]) {
      expect(() => workbook.removeRowsOf([{ table: 'Lots', rows }])).toThrow('in their order');
    }
    expect(workbook.save()).toBe(workbook.original);
  });
});
