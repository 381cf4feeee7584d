import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { call } from '../helpers/fake-terminal.ts';
import type { Literal } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf, folderForTest, rowsByHeader } from '../helpers/xlsx.ts';

const BENCH: Literal = {
  ...STUDIO,
  Places: [
    { Place: 'Fridge', 'Walking order': 1 },
    { Place: 'Drawer', 'Walking order': 2 },
  ],
  Paste: [{ ...STUDIO.Paste[0], Place: 'Fridge', 'Tare g': 80 }, STUDIO.Paste[1]],
  Tissue: STUDIO.Tissue.map((lot) => ({ ...lot, Place: 'Drawer' })),
  Counts: [],
};

async function asJson(...words: string[]) {
  const { code, out, err } = await call([...words, '--json']);
  return { code, err, answer: JSON.parse(out) as Record<string, unknown> };
}

async function rowsIn(file: string, tab: string) {
  return rowsByHeader(new Uint8Array(await readFile(file)), tab);
}

describe('count', () => {
  test('prints the list in walking order, with room to fill in by hand', async () => {
    const file = await fileOf(BENCH);
    const { code, out } = await call(['count', file, '--place', 'fridge']);
    expect({ code, out }).toEqual({
      code: 0,
      out: [
        'To count on 3 Apr 2026, Fridge',
        '',
        'Fridge',
        'lot  material            jar g  expected  unit  counted',
        '───  ──────────────────  ─────  ────────  ────  ──────────────',
        'P-1  Wheat starch paste     80       200  g     ______________',
      ].join('\n'),
    });
    const { answer } = await asJson('count', file);
    expect(answer).toMatchObject({ asOf: '2026-04-03', place: null, stocktake: null, stocktakes: [] });
    expect(
      (answer['places'] as { place: string; lots: { lot: string }[] }[]).map((each) => [
        each.place,
        each.lots.map(({ lot }) => lot),
      ]),
    ).toEqual([
      ['Fridge', ['P-1']],
      ['Drawer', ['T-1', 'T-2']],
      [null, ['R-1', 'W-1']],
    ]);
    expect((answer['places'] as { lots: unknown[] }[])[0]?.lots[0]).toEqual({
      lot: 'P-1',
      material: 'Wheat starch paste',
      expected: 200,
      unit: 'g',
      tare: 80,
      counted: null,
      countedUnit: null,
      countedOn: null,
      posting: null,
      leftTyped: null,
    });
  });

  test('keeps what was counted, goes on another time, and posts the differences', async () => {
    const file = await fileOf(BENCH);
    const first = await asJson(
      'count',
      file,
      '--gross',
      'P-1=230',
      '--counted',
      'T-2=10 sheets',
      '--by',
      'AK',
    );
    expect(first).toMatchObject({ code: 0, err: '' });
    expect(first.answer).toMatchObject({
      stocktake: '2026-04-03',
      posting: null,
      movements: [],
      remarks: [],
      counts: [
        {
          lot: 'T-2',
          countedOn: '2026-04-03',
          counted: 10,
          expected: 10,
          difference: 0,
          unit: 'sheet',
          cost: '0.00',
        },
        {
          lot: 'P-1',
          countedOn: '2026-04-03',
          counted: 150,
          expected: 200,
          difference: -50,
          unit: 'g',
          cost: '0.63',
        },
      ],
    });
    const list = await asJson('count', file);
    expect(list.answer).toMatchObject({
      stocktake: '2026-04-03',
      stocktakes: [
        {
          stocktake: '2026-04-03',
          from: '2026-04-03',
          to: '2026-04-03',
          waiting: 2,
          posted: 0,
          takenBack: false,
        },
      ],
    });
    const posted = await call(['count', file, '--counted', 'T-1=1', '--post']);
    expect(posted.code).toBe(0);
    expect(posted.out).toContain('2 lots with a difference: in all a loss of 5.13.');
    expect(posted.out).toMatch(/\nPosting P\w{8}\.\nSaved to /);
    expect(
      (await rowsIn(file, 'Movements')).map((row) => [row['Lot'], row['Kind'], row['Quantity']]),
    ).toEqual([
      ['P-1', 'Count', -50],
      ['T-1', 'Count', -1],
    ]);
    const before = await readFile(file);
    const again = await call(['count', file, '--post']);
    expect(again).toEqual({ code: 0, out: 'Nothing is counted that is not posted.', err: '' });
    expect(await readFile(file)).toEqual(before);
  });

  test('without the table Counts counts and posts in one go, or says what to do', async () => {
    const { Counts: _, ...without } = BENCH;
    const file = await fileOf(without);
    expect(await call(['count', file, '--counted', 'P-1=150'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('no table Counts'),
    });
    const { code, answer } = await asJson('count', file, '--counted', 'P-1=150', '--post');
    expect({ code, answer }).toMatchObject({
      code: 0,
      answer: { stocktake: '2026-04-03 Fridge', movements: [{ kind: 'Count', lot: 'P-1', quantity: -50 }] },
    });
  });

  test('ends with 1 where a counted row can not be posted', async () => {
    const file = await fileOf({
      ...BENCH,
      Counts: [
        {
          Count: 'G-1',
          Stocktake: 'S',
          Lot: 'P-1',
          'Counted on': { value: 46_115, look: 'date' },
          Quantity: 1,
          Unit: 'ml',
        },
      ],
    });
    const { code, out } = await call(['count', file, '--post']);
    expect(code).toBe(1);
    expect(out).toMatch(/^\nNot posted: Unit holds ml/);
  });

  test.each([
    [['--counted', 'P-1'], '--counted holds “P-1”: write it like "P-014=12.5 g".'],
    [['--counted', 'P-1=-2 g'], '--counted holds “P-1=-2 g”: write it like'],
    [['--counted', 'P-1=2 jars'], '--counted holds the unit “jars”: a unit is right'],
    [['--gross', 'P-1=2 ml'], '--gross holds “P-1=2 ml”: what the balance shows in grams is right.'],
    [['--gross', '=2'], '--gross holds “=2”: write it like "P-014=130".'],
    [['--out', 'x.xlsx'], '--out goes with --counted, --gross or --post'],
    [['--place', 'Fridg'], 'There is no place called Fridg in Places. Did you mean Fridge?'],
    [['--post', '--place', 'Fridge'], '--place goes with a list'],
    [['--counted', 'P-9=2'], 'There is no lot called P-9 in the stock tables.'],
    [['--counted', 'P-1=2', '--date', '2026-04-09'], 'Nothing can be counted on 9 Apr 2026'],
  ])('refuses %j', async (words, message) => {
    const { code, err } = await call(['count', await fileOf(BENCH), ...words]);
    expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining(message) });
  });
});

describe('upgrade', () => {
  const OLD: Literal = {
    ...STUDIO,
    Places: { rows: [{ Place: 'Fridge' }], headers: ['Place', 'Cold'] },
    Tissue: { rows: STUDIO.Tissue, without: ['Tare g', 'pH', 'Retested'] },
  };

  test('adds what is missing, saves, and says what it did; doing it again does nothing', async () => {
    const file = await fileOf(OLD);
    const before = await asJson('check', file);
    const copy = join(await folderForTest(), 'new.xlsx');
    const { code, answer } = await asJson('upgrade', file, '--out', copy);
    expect({ code, answer }).toMatchObject({
      code: 0,
      answer: {
        version: 2,
        added: expect.arrayContaining([
          { table: 'Tissue', columns: ['pH', 'Tare g', 'Retested'] },
          { table: 'Places', columns: ['Dark', 'Walking order'] },
        ]),
        tables: ['Counts'],
      },
    });
    expect((await asJson('check', file)).answer).toEqual(before.answer);
    expect((await asJson('check', copy)).answer).toEqual(before.answer);
    expect(await rowsIn(copy, 'Places')).toMatchObject([
      { Place: 'Fridge', Dark: null, 'Walking order': null },
    ]);
    expect(await call(['upgrade', copy])).toEqual({
      code: 0,
      out: 'The tables are of version 2 already.',
      err: '',
    });
    const text = await call(['upgrade', file]);
    expect(text.out).toContain('  Places: Dark, Walking order.\n');
    expect(text.out).toContain('  New: the table Counts.\nThe tables are of version 2 now.\nSaved to ');
  });

  test('leaves the file as it is where something is in the way', async () => {
    const file = await fileOf({
      ...OLD,
      Settings: { rows: STUDIO.Settings },
      Places: { rows: [{ Place: 'Fridge' }], headers: ['Place'], tab: 'Places' },
    });
    const workbook = openXlsx(new Uint8Array(await readFile(file)));
    workbook.type('Places', [{ row: 2, column: 3, cell: { kind: 'text', text: 'mine' } }]);
    const bytes = workbook.save();
    await writeFile(file, bytes);
    const { code, err } = await call(['upgrade', file]);
    expect({ code, err }).toEqual({
      code: 2,
      err:
        "The column Dark can't be added to the table Places: right of it, on the tab Places, something stands (C2). " +
        'Move it away, and try again.',
    });
    expect(new Uint8Array(await readFile(file))).toEqual(bytes);
  });
});
