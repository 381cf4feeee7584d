import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { call } from '../helpers/fake-terminal.ts';
import { date, type Literal, type LiteralRow } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf } from '../helpers/xlsx.ts';

const MEND = ['--job', '26-014', '--treatment', 'Mend tear', '--extent', '6'];
const ENTRY = { Entry: 'E-1', Date: date('2026-04-02'), Job: '26-014', Treatment: 'Mend tear', Extent: 60 };

/** A studio in which something is wrong, short, unknown or gone off in most of the ways there are. */
const TROUBLED: Literal = {
  ...STUDIO,
  Tissue: [
    ...STUDIO.Tissue,
    { Material: 'Repair tissue 5', Received: date('2026-05-01'), Quantity: 3, Unit: 'sheet' },
    { Lot: 'T-4', Material: 'nothing', Received: date('2026-01-01'), Quantity: 3, Unit: 'sheet' },
    { Lot: 'T-5', Material: 'Repair tissue 5', Received: '3/4/26', Quantity: 3, Unit: 'sheet' },
  ] as LiteralRow[],
  Buffers: [
    {
      Lot: 'B-1',
      Material: 'Wheat starch',
      Received: date('2025-01-01'),
      Quantity: 50,
      Unit: 'g',
      'Use by': date('2025-06-01'),
    },
    {
      Lot: 'B-2',
      Material: 'Wheat starch',
      Received: date('2025-01-01'),
      Quantity: 50,
      Unit: 'g',
      State: 'Discarded',
    },
  ],
  TreatmentLog: [ENTRY],
};

const money = z.string().regex(/^-?\d+\.\d{2}$/);
const day = z.iso.date();
const NOTICE = z.strictObject({
  code: z.string().regex(/^[a-z-]+$/),
  severity: z.enum(['stop', 'warn', 'note']),
  subject: z.string().min(1),
  message: z.string().regex(/[.:]/),
  table: z.string().min(1),
  row: z.int(),
  column: z.string().min(1),
  address: z.string().regex(/![A-Z]+\d+$/),
});
const CHECK = z.strictObject({
  asOf: day,
  currency: z.string().nullable(),
  materials: z.array(
    z.strictObject({
      material: z.string(),
      unit: z.string(),
      left: z.number().nullable(),
      usable: z.number().nullable(),
      onOrder: z.number(),
      planned: z.number(),
      reorderPoint: z.number(),
      suggestedOrder: z.number(),
      goodUntil: day.nullable(),
      worth: money.nullable(),
    }),
  ),
  lots: z.array(
    z.strictObject({
      lot: z.string().nullable(),
      material: z.string(),
      table: z.string(),
      unit: z.string(),
      left: z.number(),
      goodUntil: day.nullable(),
      state: z.enum(['Usable', 'Set aside', 'Discarded']),
      usable: z.boolean(),
      worth: money.nullable(),
    }),
  ),
  notices: z.array(NOTICE),
});
const SHORTFALL = z.strictObject({
  entry: z.string(),
  material: z.string(),
  missing: z.number().positive(),
  unit: z.string(),
});
const WRITTEN = z.strictObject({
  posting: z.string().nullable(),
  entries: z.array(
    z.strictObject({
      entry: z.string(),
      job: z.string(),
      item: z.string().nullable(),
      treatment: z.string(),
      extent: z.number(),
      drawn: z.enum(['yes', 'part']).nullable(),
    }),
  ),
  movements: z.array(
    z.strictObject({
      movement: z.string(),
      date: day,
      kind: z.string(),
      lot: z.string(),
      quantity: z.number(),
      unit: z.string(),
      job: z.string().nullable(),
      item: z.string().nullable(),
      entry: z.string().nullable(),
      cost: money.nullable(),
    }),
  ),
  shortfalls: z.array(SHORTFALL),
  notices: z.array(NOTICE),
});
const QUOTE = z.strictObject({
  job: z.string(),
  asOf: day,
  currency: z.string().nullable(),
  lines: z.array(
    z.strictObject({
      what: z.string(),
      item: z.string().nullable(),
      material: z.string(),
      quantity: z.number(),
      unit: z.string(),
      each: money.nullable(),
      amount: money.nullable(),
      basis: z.enum(['lots', 'replacement']).nullable(),
      lots: z.array(z.string()),
    }),
  ),
  consumables: money,
  markup: money,
  benchTime: money,
  other: money,
  tax: money,
  total: money,
  shortfalls: z.array(SHORTFALL.omit({ entry: true })),
  notices: z.array(NOTICE),
});

/** Runs a call with --json: one JSON value of the shape, and nothing else. */
async function json<S extends z.ZodType>(
  schema: S,
  words: readonly string[],
  code: number,
): Promise<z.output<S>> {
  const answer = await call([...words, '--json']);
  expect({ code: answer.code, err: answer.err }).toEqual({ code, err: '' });
  return schema.parse(JSON.parse(answer.out));
}

describe('check', () => {
  test('ends with 0 where nothing must be mended first, and with 1 else', async () => {
    const answer = await json(CHECK, ['check', await fileOf(STUDIO)], 0);
    expect(answer).toMatchObject({ asOf: '2026-04-03', currency: 'EUR' });
    expect(answer.materials.find(({ material }) => material === 'Repair tissue 5')).toEqual({
      material: 'Repair tissue 5',
      unit: 'sheet',
      left: 12,
      usable: 12,
      onOrder: 0,
      planned: 0,
      reorderPoint: 0,
      suggestedOrder: 0,
      goodUntil: '2026-12-31',
      worth: '49.00',
    });
    expect(answer.materials.find(({ material }) => material === 'Deionised water')).toMatchObject({
      left: null,
      usable: null,
    });
    expect(answer.lots[0]).toEqual({
      lot: 'T-1',
      material: 'Repair tissue 5',
      table: 'Tissue',
      unit: 'sheet',
      left: 2,
      goodUntil: '2026-12-31',
      state: 'Usable',
      usable: true,
      worth: '9.00',
    });
    const troubled = await json(CHECK, ['check', await fileOf(TROUBLED)], 1);
    expect(troubled.lots.map(({ lot }) => lot)).not.toContain('T-4');
    expect(troubled.lots.map(({ lot }) => lot)).not.toContain('T-5');
    expect(troubled.notices.map(({ code, subject, address }) => `${code} ${subject} ${address}`)).toEqual(
      expect.arrayContaining([
        'unknown-reference T-4 Tissue!B5',
        'unreadable T-5 Tissue!C6',
        'expired B-1 Buffers!A2',
        'not-drawn E-1 TreatmentLog!A2',
      ]),
    );
    expect(troubled.notices.find(({ subject }) => subject === 'T-5')).toMatchObject({
      table: 'Tissue',
      row: 6,
      column: 'Received',
    });
  });

  test('--on takes another day as today', async () => {
    const file = await fileOf(STUDIO);
    const later = await json(CHECK, ['check', file, '--on', '2026-04-07'], 0);
    expect(later.asOf).toBe('2026-04-07');
    expect(later.lots.find(({ lot }) => lot === 'P-1')).toMatchObject({
      usable: false,
      left: 200,
      goodUntil: '2026-04-06',
    });
    expect((await json(CHECK, ['check', file, '--on', '2026-01-01'], 0)).lots[0]).toMatchObject({
      left: 0,
      usable: false,
      worth: '9.00',
    });
  });

  test('without a currency it is null, and the coin is as usual', async () => {
    const answer = await json(CHECK, ['check', await fileOf({ ...STUDIO, Settings: [] })], 0);
    expect([answer.currency, answer.lots[0]?.worth]).toEqual([null, '9.00']);
  });

  test('changes nothing', async () => {
    const file = await fileOf(TROUBLED);
    const before = await readFile(file);
    await call(['check', file, '--lots']);
    expect(await readFile(file)).toEqual(before);
  });
});

describe('log, draw and undo', () => {
  test('log answers what it wrote, and ends with 0', async () => {
    const file = await fileOf(STUDIO);
    const answer = await json(WRITTEN, ['log', file, ...MEND], 0);
    expect(answer.entries).toEqual([
      {
        entry: expect.stringMatching(/^E/),
        job: '26-014',
        item: null,
        treatment: 'Mend tear',
        extent: 6,
        drawn: 'yes',
      },
    ]);
    expect(
      answer.movements.map((each) => [each.lot, each.quantity, each.unit, each.cost, each.date]),
    ).toEqual([
      ['T-1', 2, 'sheet', '9.00', '2026-04-03'],
      ['T-2', 1, 'sheet', '4.00', '2026-04-03'],
      ['P-1', 30, 'g', '0.38', '2026-04-03'],
      ['R-1', 6, 'use', '2.40', '2026-04-03'],
    ]);
    const after = await json(CHECK, ['check', file], 0);
    expect(after.materials.find(({ material }) => material === 'Repair tissue 5')).toMatchObject({
      left: 9,
      worth: '36.00',
    });
  });

  test('log ends with 1 after a shortfall, and keeps the entry', async () => {
    const file = await fileOf(STUDIO);
    const answer = await json(WRITTEN, ['log', file, ...MEND.slice(0, 5), '60'], 1);
    expect(answer.entries[0]?.drawn).toBe('part');
    expect(answer.shortfalls[0]).toEqual({
      entry: answer.entries[0]?.entry,
      material: 'Repair tissue 5',
      missing: 18,
      unit: 'sheet',
    });
    expect(answer.notices.map(({ code }) => code)).toContain('not-drawn');
  });

  test('an entry of a later day, or without usage rates, writes no movement and ends with 0', async () => {
    const file = await fileOf(STUDIO);
    const later = await json(WRITTEN, ['log', file, ...MEND, '--date', '2026-04-04'], 0);
    expect(later).toMatchObject({ posting: null, entries: [{ drawn: null }], movements: [] });
    const examined = await json(
      WRITTEN,
      ['log', file, '--job', '26-014', '--treatment', 'Examine', '--extent', '3'],
      0,
    );
    expect(examined).toMatchObject({ posting: null, entries: [{ drawn: 'yes' }], movements: [] });
  });

  test('draw ends with 1 while something is short, and writes the file once', async () => {
    const file = await fileOf(TROUBLED);
    const first = await json(WRITTEN, ['draw', file], 1);
    expect(first.entries).toMatchObject([{ entry: 'E-1', drawn: 'part', extent: 60 }]);
    const written = await readFile(file);
    const second = await json(WRITTEN, ['draw', file], 1);
    expect(second).toMatchObject({ posting: null, movements: [] });
    expect(await readFile(file)).toEqual(written);
  });

  test('draw with nothing to draw ends with 0 and leaves the file alone', async () => {
    const file = await fileOf({ ...STUDIO, Plan: [] });
    const before = await readFile(file);
    expect(await json(WRITTEN, ['draw', file], 0)).toMatchObject({
      entries: [],
      movements: [],
      shortfalls: [],
    });
    expect(await readFile(file)).toEqual(before);
    expect((await call(['draw', file])).out).toBe('Every entry up to today is drawn.');
  });

  test('undo answers the reversing rows, and ends with 0', async () => {
    const file = await fileOf(STUDIO);
    const { posting, movements } = await json(WRITTEN, ['log', file, ...MEND], 0);
    const undone = await json(WRITTEN, ['undo', file, '--posting', posting ?? ''], 0);
    expect(undone.movements.map(({ lot, quantity, cost }) => [lot, quantity, cost])).toEqual(
      movements.map(({ lot, quantity, cost }) => [lot, -quantity, `-${cost}`]),
    );
    expect(undone.entries).toMatchObject([{ drawn: null, extent: 6 }]);
  });

  test('--out leaves the file as it is, byte for byte, and writes the other', async () => {
    const file = await fileOf({ ...STUDIO, TreatmentLog: [{ ...ENTRY, Extent: 2 }] });
    const before = await readFile(file);
    const other = join(dirname(file), 'other.xlsx');
    for (const words of [
      ['log', file, ...MEND],
      ['draw', file],
      ['quote', file, '--job', '26-015', '--freeze'],
    ]) {
      const { code, out } = await call([...words, '--out', other]);
      expect(code).toBe(0);
      expect(out).toMatch(new RegExp(`Saved to ${other}\\.$`));
      expect(await readFile(file)).toEqual(before);
      expect(await readFile(other)).not.toEqual(before);
    }
    const copy = join(dirname(file), 'copy.xlsx');
    const drawnAlready = await call(['draw', other, '--out', copy]);
    expect(drawnAlready.code).toBe(0);
  });

  test('--out of a draw that has nothing to do is a copy, and said', async () => {
    const file = await fileOf({ ...STUDIO, Plan: [] });
    const copy = join(dirname(file), 'copy.xlsx');
    expect((await call(['draw', file, '--out', copy])).out).toBe(
      `Every entry up to today is drawn.\nSaved to ${copy}.`,
    );
    expect(await readFile(copy)).toEqual(await readFile(file));
  });
});

describe('quote', () => {
  test('answers the lines and sums, ends with 0, and writes nothing', async () => {
    const file = await fileOf(STUDIO);
    const before = await readFile(file);
    const answer = await json(QUOTE, ['quote', file, '--job', '26-015'], 0);
    expect(answer.lines[0]).toEqual({
      what: 'Mend tear: Repair tissue 5',
      item: 'A',
      material: 'Repair tissue 5',
      quantity: 4,
      unit: 'sheet',
      each: '4.25',
      amount: '17.00',
      basis: 'lots',
      lots: ['T-1', 'T-2'],
    });
    const { consumables, markup, benchTime, other, tax, total } = answer;
    expect({ consumables, markup, benchTime, other, tax, total }).toEqual({
      consumables: '20.70',
      markup: '2.07',
      benchTime: '95.00',
      other: '0.00',
      tax: '23.55',
      total: '141.32',
    });
    expect(await readFile(file)).toEqual(before);
  });

  test('what is short ends with 0 as well; a line that nothing costs has no amount', async () => {
    const file = await fileOf({ ...STUDIO, Plan: [{ Job: '26-015', Treatment: 'Mend tear', Extent: 60 }] });
    const answer = await json(QUOTE, ['quote', file, '--job', '26-015'], 0);
    expect(answer.shortfalls).toContainEqual({
      material: 'Silicone release paper',
      missing: 10,
      unit: 'use',
    });
    expect(answer.lines.filter(({ amount }) => amount === null)).toMatchObject([
      { each: null, basis: null, lots: [] },
    ]);
  });

  test('of a job without a plan has no lines', async () => {
    const answer = await json(QUOTE, ['quote', await fileOf(STUDIO), '--job', '26-014'], 0);
    expect(answer).toMatchObject({ lines: [], total: '0.00' });
  });
});

describe('text', () => {
  const LONG = 'Mulberry paper, hand-made, very thin, for infills in parchment and for the hinges of maps';
  const wide: Literal = {
    ...TROUBLED,
    Materials: [
      ...STUDIO.Materials,
      { Material: LONG, Kind: 'Tissue', 'Stock unit': 'sheet', 'Keep at least': 9 },
      { Material: '楮紙\n薄\u001b[31m', Kind: 'Tissue', 'Stock unit': 'sheet' },
    ],
    Paste: [
      ...STUDIO.Paste,
      {
        Lot: 'A lot with quite a long name',
        Material: LONG,
        Received: date('2026-01-01'),
        Quantity: 2,
        Unit: 'sheet',
      },
    ],
    UsageRates: [
      ...STUDIO.UsageRates,
      { Treatment: 'Mend tear', Material: LONG, 'Quantity per extent': 1, Unit: 'sheet' },
    ],
  };

  test.each([80, 100, 120])(
    'fits into %d columns, in aligned tables, without signs that a terminal obeys',
    async (width) => {
      const file = await fileOf(wide);
      const texts: string[] = [];
      const see = async (...words: string[]): Promise<string> => {
        const { out, err } = await call(words, { width });
        expect(err).toBe('');
        texts.push(out.replaceAll(file, 'FILE'));
        return out;
      };
      await see('check', file, '--lots');
      const logged = await see('log', file, ...MEND);
      await see('draw', file);
      await see('undo', file, '--posting', /Posting (\S+)\./.exec(logged)?.[1] ?? '');
      await see('quote', file, '--job', '26-015', '--freeze');
      for (const line of texts.flatMap((text) => text.split('\n'))) {
        expect(stringWidth(line), line).toBeLessThanOrEqual(width);
        expect(line).not.toMatch(/\p{Cc}|undefined|null|NaN|\s$/u);
      }
    },
  );

  test('figures stand under each other, wide characters counted as two', async () => {
    const { out } = await call(['check', await fileOf(wide)], { width: 120 });
    const lines = out.split('\n');
    const rule = lines[lines.indexOf('Tissue') + 2] ?? '';
    const left = stringWidth(/^─+ {2}─+/.exec(rule)?.[0] ?? '');
    const rows = lines
      .slice(lines.indexOf('Tissue') + 3, lines.indexOf('Tissue') + 7)
      .filter((line) => /\d/.test(line));
    expect(rows.some((line) => line.startsWith('楮紙 薄'))).toBe(true);
    for (const row of rows.filter((line) => / {2}\d/.test(line))) {
      let seen = '';
      for (const character of row) {
        if (stringWidth(seen) >= left) break;
        seen += character;
      }
      expect(seen).toMatch(/\d$/);
    }
  });

  test('what was taken back is told in the amounts that had been taken', async () => {
    const file = await fileOf(STUDIO);
    const logged = (await call(['log', file, ...MEND])).out;
    expect(logged).toContain('Taken from stock, amounts in EUR');
    expect(logged).toContain('In all 15.78.');
    const { out } = await call(['undo', file, '--posting', /Posting (\S+)\./.exec(logged)?.[1] ?? '']);
    expect(out).toContain('Taken back, amounts in EUR');
    expect(out).toContain('In all 15.78.');
    expect(out).toContain('not drawn.');
  });

  test('a shortfall says what the lots of the material hold all the same', async () => {
    const short = async (literal: Literal, ...words: string[]): Promise<string> => {
      const { code, out } = await call(['log', await fileOf(literal), ...MEND, ...words], { width: 120 });
      expect(code).toBe(1);
      return (
        / sheets? of Repair tissue 5 for entry E\w{8}: ([^\n]*?\.)/.exec(out.replace(/\n +/g, ' '))?.[1] ??
        out
      );
    };
    const [first, second] = STUDIO.Tissue;
    const tissue = (...rows: LiteralRow[]): Literal => ({ ...STUDIO, Tissue: rows });
    expect(await short(tissue(first))).toBe('its lots are empty.');
    expect(await short(tissue())).toBe('there is no lot of it.');
    expect(await short(tissue(first, { ...second, State: 'Discarded' }))).toBe('its lots are empty.');
    expect(await short(tissue(first, { ...second, State: 'Set aside' }))).toBe(
      'lots that have gone off, are set aside, or came later hold 10 sheets.',
    );
    expect(await short(STUDIO, '--use', 'Repair tissue 5=3 sheets@T-1')).toBe(
      'lots that were not named, or rests of less than a whole unit, hold 10 sheets.',
    );
  });

  test('lots say why they are not drawn on', async () => {
    const { out } = await call(['check', await fileOf(TROUBLED), '--lots']);
    expect(out).toMatch(/B-1 .* 1 Jun 2025 {3}Gone off/);
    expect(out).toMatch(/B-2 .* Discarded/);
    expect(out).toMatch(/^4 .* from 1 May 2026/m);
  });
});
