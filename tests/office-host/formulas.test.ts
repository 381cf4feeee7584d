import { describe, expect, test } from 'vitest';
import { area } from '../../src/office-host/cell-area.ts';
import { isFormula } from '../../src/office-host/formula-check.ts';
import { followCells } from '../../src/office-host/formula-references.ts';
import { formulaDown } from '../../src/office-host/formula-rows.ts';
import { movedDown, movedUp } from '../../src/office-host/shift-areas.ts';
import { bench } from './bench.ts';

describe('formulas when cells move', () => {
  const twoIn = movedDown(area(2, 0, 2, 10));
  const oneOut = movedUp(area(2, 0, 1, 10));

  test.each([
    ['=A1+A3', '=A1+A5'],
    ['=$A$3+B$2+$C4', '=$A$5+B$2+$C6'],
    ['=SUM(A1:A3)', '=SUM(A1:A5)'],
    ["=One!A3+'Two'!A3", "=One!A5+'Two'!A3"],
    ['="A3"&A3&LOG10(A4)', '="A3"&A5&LOG10(A6)'],
    ['=Lots[[#This Row],[A3]]*A3', '=Lots[[#This Row],[A3]]*A5'],
    ['=K3', '=K3'],
    ['=a3', '=A5'],
  ])('rows put in: %s becomes %s', (before, after) => {
    expect(followCells(before, 'One', 'one', twoIn)).toBe(after);
  });

  test.each([
    ['=A3+A4', '=#REF!+A3'],
    ['=SUM(A1:A4)', '=SUM(A1:A3)'],
    ['=Two!A4', '=Two!A4'],
  ])('a row taken out: %s becomes %s', (before, after) => {
    expect(followCells(before, 'One', 'One', oneOut)).toBe(after);
  });

  test('filling down moves what is relative only', () => {
    expect(formulaDown('=A2*$B$1+C$1&"A2"&[@A2]', 3)).toBe('=A5*$B$1+C$1&"A2"&[@A2]');
  });

  test('a calculated column that is written with cells goes on after its table has moved', async () => {
    const { host, a } = bench(
      {},
      {
        sheets: [
          {
            name: 'One',
            tables: [
              { name: 'Rows', at: 'A1', columns: ['x', { name: 'y', formula: '=A2*2' }], rows: [[1], [2]] },
            ],
            validations: [{ address: 'D1', rule: { list: { inCellDropDown: true, source: '=$A$2:$A$3' } } }],
          },
          { name: 'Two', cells: { A1: [[{ formula: '=One!A3' }]] } },
        ],
        names: { Last: 'One!$A$3' },
      },
    );
    host.person('a').insertRows('One!1:2');
    const seen = await a.Excel.run(async (context) => {
      const { tables, worksheets, names } = context.workbook;
      const body = tables.getItem('Rows').getDataBodyRange();
      body.getRowsBelow(1).values = [[3, null]];
      const formulas = tables.getItem('Rows').columns.getItem('y').getDataBodyRange().load('formulas');
      const other = worksheets.getItem('Two').getRange('A1').load('formulas');
      const name = names.getItem('Last').load('formula');
      const { dataValidation } = worksheets.getItem('One').getRange('D3');
      dataValidation.load('rule');
      await context.sync();
      return [formulas.formulas, other.formulas, name.formula, dataValidation.rule.list?.source];
    });
    expect(seen).toEqual([[['=A4*2'], ['=A5*2'], ['=A6*2']], [['=One!A5']], '=One!$A$5', '=$A$4:$A$5']);
  });

  test('what a formula looks like', () => {
    expect(
      [
        '=Table1',
        '=Sheet1!A:A',
        "='a b'!$1:$2",
        '=-+-1',
        '=(1)',
        '=F(,)',
        '=1%',
        '=A1#',
        '=#N/A',
        '=@x',
      ].filter((each) => !isFormula(each)),
    ).toEqual([]);
    expect(['=', '=,', '=(1,2', '=1..2', '=}', '={1', '="', '=1 %%x'].filter(isFormula)).toEqual([]);
  });
});
