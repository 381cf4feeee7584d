import { describe, expect, test } from 'vitest';
import { bench, bodyOf, STUDIO, settle, valuesOf } from './bench.ts';

describe('what is refused, as the library tells it', () => {
  test("a table that isn't there: an error of the library, with its code", async () => {
    const { a } = bench();
    const caught: unknown = await a.Excel.run(async (context) => {
      context.workbook.tables.getItem('Nothing').load('name');
      await context.sync();
    }).catch((error: unknown) => error);
    expect(caught).toBeInstanceOf(a.OfficeExtension.Error);
    expect(caught).toMatchObject({ code: 'ItemNotFound' });
  });

  test("a property that wasn't loaded can't be read", async () => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        const body = context.workbook.tables.getItem('Lots').getDataBodyRange();
        await context.sync();
        return body.values;
      }),
    ).rejects.toMatchObject({ code: 'PropertyNotLoaded' });
  });

  test.each<[string, (context: Excel.RequestContext) => unknown]>([
    ['Worksheet.Shapes', ({ workbook }) => workbook.worksheets.getItem('Stock').shapes.getCount()],
    [
      'Range.GetSpecialCells',
      ({ workbook }) =>
        workbook.worksheets.getItem('Stock').getRange().getSpecialCells('Blanks').load('address'),
    ],
    [
      'Range.Hyperlink',
      ({ workbook }) => workbook.worksheets.getItem('Stock').getRange('A1').load('hyperlink'),
    ],
    [
      'RangeFormat.IndentLevel',
      ({ workbook }) => {
        workbook.worksheets.getItem('Stock').getRange('A1').format.indentLevel = 2;
      },
    ],
    [
      'TableColumnCollection.add before a column',
      ({ workbook }) => workbook.tables.getItem('Lots').columns.add(0),
    ],
    ['Functions.Sum', ({ workbook }) => workbook.functions.sum(1, 2).load('value')],
    [
      'Range.insert(Right)',
      ({ workbook }) => workbook.worksheets.getItem('Blank').getRange('A1').insert('Right'),
    ],
  ])("a member that this host doesn't know: %s", async (member, use) => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        use(context);
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'NotImplemented', message: expect.stringContaining(member) as string });
  });

  test("a member newer than the library's sets: the library refuses it before it is sent", async () => {
    const { a } = bench({ requirementSets: { ExcelApi: '1.12' } });
    await expect(
      a.Excel.run(async (context) => {
        context.workbook.tables.getItem('Lots').resize('B3:D6');
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'ApiNotFound' });
    expect(a.statistics.requests).toBe(0);
  });

  test("a member newer than the host's sets: the host refuses it, too", async () => {
    const { host, a } = bench({ requirementSets: { ExcelApi: '1.12' } });
    const { loadExcel } = await import('../helpers/office-client.ts');
    const unaware = loadExcel(host.connect('unaware').bridge, { sets: { ExcelApi: '1.17' } });
    await expect(
      unaware.Excel.run(async (context) => {
        context.workbook.tables.getItem('Lots').resize('B3:D6');
        await context.sync();
      }),
    ).rejects.toMatchObject({
      code: 'ApiNotFound',
      message: expect.stringContaining('ExcelApi 1.13') as string,
    });
    expect(await bodyOf(a, 'Lots')).toHaveLength(2);
  });

  test('a document that is read only', async () => {
    const { a } = bench({}, { ...STUDIO, readOnly: true });
    await a.Excel.run(async (context) => {
      const workbook = context.workbook.load('readOnly');
      await context.sync();
      expect(workbook.readOnly).toBe(true);
      workbook.worksheets.getItem('Blank').getRange('A1').values = [['x']];
      await expect(context.sync()).rejects.toMatchObject({ code: 'AccessDenied' });
    });
    expect(await valuesOf(a, 'Blank', 'A1')).toEqual([['']]);
  });
});

describe('sizes', () => {
  const large = 'x'.repeat(2000);

  test('a request that is too large: nothing of it is done', async () => {
    const { a } = bench({ limits: { requestBytes: 4000 } });
    await expect(
      a.Excel.run(async (context) => {
        const range = context.workbook.worksheets.getItem('Blank').getRange('A1:A3');
        range.values = [[large], [large], ['x']];
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'RequestPayloadSizeLimitExceeded' });
    expect(await valuesOf(a, 'Blank', 'A3')).toEqual([['']]);
    expect(a.statistics.requestBytes[0]).toBeGreaterThan(4000);
  });

  test('an answer that is too large', async () => {
    const { host, a } = bench({ limits: { responseBytes: 2000 } });
    host.person('a').type('Blank!A1', large);
    await expect(valuesOf(a, 'Blank', 'A1')).rejects.toMatchObject({
      code: 'ResponsePayloadSizeLimitExceeded',
    });
  });

  test('5 MB is the limit where none is given', async () => {
    const { a } = bench();
    await expect(
      a.Excel.run(async (context) => {
        const range = context.workbook.worksheets.getItem('Blank').getRange('A1:A2600');
        range.values = Array.from({ length: 2600 }, () => [large]);
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'RequestPayloadSizeLimitExceeded' });
  });

  test('more cells than a read may have', async () => {
    const { a } = bench({ limits: { cells: 100 } });
    expect(await valuesOf(a, 'Blank', 'A1:A100')).toHaveLength(100);
    await expect(valuesOf(a, 'Blank', 'A1:A101')).rejects.toMatchObject({ code: 'RangeExceedsLimit' });
  });

  test("what a client costs is counted; releasing references isn't a round trip", async () => {
    const { a } = bench();
    await bodyOf(a, 'Lots');
    await settle();
    expect(a.statistics.requests).toBe(1);
    expect(a.statistics.actions.length).toBeGreaterThanOrEqual(1);
    expect(a.statistics.responseBytes[0]).toBeGreaterThan(10);
  });
});

describe('while the person types in a cell', () => {
  test('a request is refused', async () => {
    const { host, a } = bench();
    host.person('a').startEditing();
    await expect(bodyOf(a, 'Lots')).rejects.toMatchObject({ code: 'InvalidOperationInCellEditMode' });
    host.person('a').stopEditing();
    expect(await bodyOf(a, 'Lots')).toHaveLength(2);
  });

  test('a request that says so waits', async () => {
    const { host, a, connect } = bench();
    host.person('a').startEditing();
    let done = false;
    const work = a.Excel.run({ delayForCellEdit: true }, async (context) => {
      context.workbook.worksheets.getItem('Blank').getRange('A1').values = [['x']];
      await context.sync();
      done = true;
    });
    await settle();
    expect(done).toBe(false);
    expect(await bodyOf(connect('b'), 'Lots')).toHaveLength(2);
    host.person('a').stopEditing();
    await work;
    expect(done).toBe(true);
  });
});

describe('an action that fails', () => {
  test('those before it stay done, it and those after it are not', async () => {
    const { a } = bench();
    const told: string[] = [];
    await a.Excel.run(async (context) => {
      const { workbook } = context;
      workbook.worksheets.onChanged.add(async ({ address }) => {
        told.push(address);
      });
      await context.sync();
    });
    await expect(
      a.Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem('Blank');
        sheet.getRange('A1').values = [['done']];
        sheet.getRange('A2').values = [['=1+']];
        sheet.getRange('A3').values = [['never']];
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: 'InvalidArgument' });
    await settle();
    expect(await valuesOf(a, 'Blank', 'A1:A3')).toEqual([['done'], [''], ['']]);
    expect(told).toEqual(['A1']);
  });

  test('any action can be made to fail', async () => {
    const { host, a } = bench();
    let writes = 0;
    host.setFailure(({ client, does, name, edits }) => {
      if (client === 'a' && edits && does === 'set' && name === 'Values') writes += 1;
      return writes === 2 ? { code: 'GeneralException', message: 'made up' } : undefined;
    });
    const work = async (): Promise<void> =>
      a.Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem('Blank');
        sheet.getRange('A1').values = [['1']];
        sheet.getRange('A2').values = [['2']];
        await context.sync();
      });
    await expect(work()).rejects.toMatchObject({ code: 'GeneralException', message: 'made up' });
    host.setFailure(undefined);
    expect(await valuesOf(a, 'Blank', 'A1:A2')).toEqual([[1], ['']]);
  });

  test("inserting through two tables, of which one can't move: neither does", async () => {
    const { a } = bench(
      {},
      {
        sheets: [
          {
            name: 'Both',
            tables: [
              { name: 'Left', at: 'A3', columns: ['x'] },
              { name: 'Right', at: 'C3', columns: ['y', 'z'] },
            ],
          },
        ],
      },
    );
    await a.Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Both').getRange('A1:C1').insert('Down');
      await expect(context.sync()).rejects.toMatchObject({ code: 'InsertDeleteConflict' });
      const left = context.workbook.tables.getItem('Left').getRange().load('address');
      await context.sync();
      expect(left.address).toBe('Both!A3:A4');
    });
  });
});

describe('a sheet that is protected', () => {
  test('nothing on it can be written, put in or taken out; other sheets can', async () => {
    const [stock, sums, blank] = STUDIO.sheets;
    const sheets = stock && sums && blank ? [{ ...stock, isProtected: true }, sums, blank] : [];
    const { a } = bench({}, { sheets });
    const use = async (work: (sheet: Excel.Worksheet) => unknown, name = 'Stock'): Promise<void> =>
      a.Excel.run(async (context) => {
        work(context.workbook.worksheets.getItem(name));
        await context.sync();
      });
    const attempts = [
      (sheet: Excel.Worksheet) => {
        sheet.getRange('B4').values = [['x']];
      },
      (sheet: Excel.Worksheet) => sheet.getRange('4:4').insert('Down'),
      (sheet: Excel.Worksheet) => sheet.getRange('B4:D4').delete('Up'),
      (sheet: Excel.Worksheet) => {
        sheet.getRange('B4').format.wrapText = true;
      },
    ];
    for (const attempt of attempts)
      await expect(use(attempt)).rejects.toMatchObject({ code: 'AccessDenied' });
    expect((await bodyOf(a, 'Lots')).map(([lot]) => lot)).toEqual(['L-1', 'L-2']);
    await use((sheet) => sheet.getRange('A1').insert('Down'), 'Blank');
  });
});

describe('a number format that is none', () => {
  test('nothing of the array is set', async () => {
    const { a } = bench();
    await a.Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem('Blank').getRange('A1:B1');
      range.numberFormat = [['0.00', 5]] as never;
      await expect(context.sync()).rejects.toMatchObject({ code: 'InvalidArgument' });
      range.load('numberFormat');
      await context.sync();
      expect(range.numberFormat).toEqual([['General', 'General']]);
    });
  });
});
