import { describe, expect, test } from 'vitest';
import { bench } from './bench.ts';

describe('sheets and their looks', () => {
  test('a new sheet, its place, colour, gridlines, frozen rows', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const sheet = worksheets.add('More');
      sheet.position = 0;
      sheet.tabColor = '#1a2b3c';
      sheet.showGridlines = false;
      sheet.freezePanes.freezeRows(1);
      worksheets.getItem('Blank').visibility = 'Hidden';
      sheet.load('position,tabColor,showGridlines,visibility');
      const frozen = sheet.freezePanes.getLocationOrNullObject().load('address');
      const all = worksheets.getCount();
      const visible = worksheets.getCount(true);
      const first = worksheets.getFirst().load('name');
      const last = worksheets.getLast(true).load('name');
      await context.sync();
      return [
        [sheet.position, sheet.tabColor, sheet.showGridlines, sheet.visibility, frozen.address],
        [all.value, visible.value, first.name, last.name],
      ];
    });
    expect(seen).toEqual([
      [0, '#1A2B3C', false, 'Visible', 'More!1:1'],
      [4, 3, 'More', 'My sums'],
    ]);
  });

  test.each<[string, string, (worksheets: Excel.WorksheetCollection) => unknown]>([
    ['a name that is taken', 'ItemAlreadyExists', (worksheets) => worksheets.add('stock')],
    ['a name with a slash', 'InvalidArgument', (worksheets) => worksheets.add('a/b')],
    ['a name of 32 letters', 'InvalidArgument', (worksheets) => worksheets.add('x'.repeat(32))],
    [
      'a place beyond the last',
      'InvalidArgument',
      (worksheets) => {
        worksheets.getItem('Stock').position = 9;
      },
    ],
  ])('%s: refused', async (_, code, use) => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        use(context.workbook.worksheets);
        await context.sync();
      }),
    ).rejects.toMatchObject({ code });
  });

  test("the last visible sheet can't be hidden or deleted; others can", async () => {
    const { a } = bench();
    const act = async (work: (sheets: Excel.WorksheetCollection) => void): Promise<void> =>
      a.Excel.run(async (context) => {
        work(context.workbook.worksheets);
        await context.sync();
      });
    await act((sheets) => {
      sheets.getItem('Stock').delete();
      sheets.getItem('Blank').visibility = 'VeryHidden';
      // What isn't there is left alone.
      sheets.getItemOrNullObject('Nothing').delete();
    });
    await expect(act((sheets) => sheets.getItem('My sums').delete())).rejects.toMatchObject({
      code: 'InvalidOperation',
    });
    await expect(
      act((sheets) => {
        sheets.getItem('My sums').visibility = 'Hidden';
      }),
    ).rejects.toMatchObject({ code: 'InvalidOperation' });
    await expect(act((sheets) => sheets.getItem('Blank').activate())).rejects.toMatchObject({
      code: 'InvalidOperation',
    });
  });

  test('formats: set for a range, null where its cells differ', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Stock');
      const { format } = sheet.getRange('B4:D4');
      format.fill.color = '#ffeeaa';
      format.font.color = '#111111';
      format.font.bold = true;
      format.wrapText = true;
      format.verticalAlignment = 'Top';
      format.horizontalAlignment = 'Right';
      format.columnWidth = 90;
      const one = sheet
        .getRange('B4')
        .format.load('wrapText,verticalAlignment,horizontalAlignment,columnWidth');
      one.fill.load('color');
      one.font.load('bold,color');
      const both = sheet.getRange('B4:B5').format.load('wrapText');
      const widths = sheet.getRange('A1:B1').format.load('columnWidth');
      await context.sync();
      return [
        [one.wrapText, one.verticalAlignment, one.horizontalAlignment, one.columnWidth],
        [one.fill.color, one.font.bold, one.font.color, both.wrapText, widths.columnWidth],
      ];
    });
    expect(seen).toEqual([
      [true, 'Top', 'Right', 90],
      ['#FFEEAA', true, '#111111', null, null],
    ]);
  });

  test('autofit makes a column as wide as its longest text asks', async () => {
    const { a } = bench();
    const widths = await a.Excel.run(async (context) => {
      const { format } = context.workbook.worksheets.getItem('Stock').getRange('B:D');
      format.autofitColumns();
      format.autofitRows();
      const each = ['B1', 'C1'].map((address) =>
        context.workbook.worksheets.getItem('Stock').getRange(address).format.load('columnWidth'),
      );
      await context.sync();
      return each.map(({ columnWidth }) => columnWidth);
    });
    expect(widths[1]).toBeGreaterThan(widths[0] ?? Number.NaN);
  });

  test('data validation: rule, prompt, alert; one rule at a time; several in a range; cleared', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Stock');
      const { dataValidation } = sheet.getRange('C4:C5');
      dataValidation.rule = { list: { inCellDropDown: true, source: 'Tissue,Starch' } };
      dataValidation.prompt = { message: 'Choose', showPrompt: true, title: 'Material' };
      dataValidation.errorAlert = { message: 'No', showAlert: true, style: 'Stop', title: 'Material' };
      dataValidation.ignoreBlanks = false;
      dataValidation.load('type,rule,prompt,errorAlert,ignoreBlanks');
      const wider = sheet.getRange('C4:D5').dataValidation.load('type,rule');
      await context.sync();
      dataValidation.clear();
      const after = sheet.getRange('C4').dataValidation.load('type');
      const { type, rule, prompt, errorAlert, ignoreBlanks } = dataValidation;
      await context.sync();
      return [type, rule, prompt.title, errorAlert.style, ignoreBlanks, wider.type, after.type];
    });
    expect(seen).toEqual([
      'List',
      { list: { inCellDropDown: true, source: 'Tissue,Starch' } },
      'Material',
      'Stop',
      false,
      'Inconsistent',
      'None',
    ]);
    await expect(
      a.Excel.run(async (context) => {
        context.workbook.worksheets.getItem('Stock').getRange('C4').dataValidation.rule = {
          list: { inCellDropDown: true, source: 'x,'.repeat(200) },
        };
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'InvalidArgument' });
  });

  test('clearing contents, formats, both', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem('Stock');
      sheet.getRange('D4').clear('Contents');
      sheet.getRange('D5').clear('Formats');
      const column = sheet.getRange('D4:D5').load('values,numberFormat');
      await context.sync();
      return [column.values, column.numberFormat];
    });
    expect(seen).toEqual([
      [[''], [3]],
      [['0.00'], ['General']],
    ]);
  });

  test('names, settings, and the calculation mode', async () => {
    const { a } = bench();
    const seen = await a.Excel.run(async (context) => {
      const { names, settings, application } = context.workbook;
      names.add('FirstLot', context.workbook.worksheets.getItem('My sums').getRange('A2:B2'));
      const name = names.getItem('firstlot').load('name,formula,type');
      const range = name.getRange().load('address');
      const none = names.getItemOrNullObject('Nothing');
      settings.add('place', { shelf: 2 });
      const setting = settings.getItem('place').load('value');
      const missing = settings.getItemOrNullObject('nowhere');
      application.suspendApiCalculationUntilNextSync();
      application.calculationMode = 'Manual';
      application.calculate('Full');
      application.load('calculationMode');
      await context.sync();
      return [
        [name.name, name.formula, name.type, range.address, none.isNullObject],
        [setting.value, missing.isNullObject, application.calculationMode],
      ];
    });
    expect(seen).toEqual([
      ['FirstLot', "='My sums'!$A$2:$B$2", 'Range', "'My sums'!A2:B2", true],
      [{ shelf: 2 }, true, 'Manual'],
    ]);
  });
});
