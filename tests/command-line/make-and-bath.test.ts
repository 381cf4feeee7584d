import { readFile } from 'node:fs/promises';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { call } from '../helpers/fake-terminal.ts';
import type { Literal } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf } from '../helpers/xlsx.ts';

const BENCH: Literal = {
  ...STUDIO,
  Materials: [
    ...STUDIO.Materials,
    { Material: 'Lime', Kind: 'Buffer', 'Stock unit': 'g', Hazards: 'H318 H315', 'SDS checked': null },
    { Material: 'Limewater', Kind: 'Buffer', 'Stock unit': 'ml' },
  ],
  Buffers: [{ Lot: 'C-1', Material: 'Lime', Received: '2026-01-05', Quantity: 20, Unit: 'g', Cost: 4 }],
  Treatments: [...STUDIO.Treatments, { Treatment: 'Deacidify', 'Extent unit': 'leaf' }],
  UsageRates: [
    ...STUDIO.UsageRates,
    { Treatment: 'Deacidify', Material: 'Limewater', 'Quantity per extent': 100, Unit: 'ml' },
  ],
  Recipes: [
    ...STUDIO.Recipes,
    {
      Recipe: 'Limewater',
      Makes: 'Limewater',
      Yield: 1,
      Unit: 'l',
      'Life days': 30,
      'Ready after hours': 12,
      Cautions: 'Alkali: eye protection and gloves.',
    },
  ],
  RecipeParts: [
    ...STUDIO.RecipeParts,
    { Recipe: 'Limewater', Material: 'Lime', Quantity: 2, Unit: 'g' },
    { Recipe: 'Limewater', Material: 'Deionised water', Quantity: 1, Unit: 'l' },
  ],
};
const LIMEWATER = ['--recipe', 'limewater', '--amount', '500 ml'];
const POUR = ['--job', '26-014', '--treatment', 'Deacidify', '--extent', '3', '--pour', '0.4l'];

async function json(...words: string[]) {
  const { code, out, err } = await call([...words, '--json']);
  return { code, err, answer: JSON.parse(out) };
}

describe('make', () => {
  test('as JSON, in the shape that is documented', async () => {
    const file = await fileOf(BENCH);
    const { code, err, answer } = await json('make', file, ...LIMEWATER, '--yield', '0.48 l', ...POUR);
    expect([code, err]).toEqual([0, '']);
    const lot = answer.lot;
    expect({ ...answer, notices: [] }).toEqual({
      lot: expect.stringMatching(/^L\w{8}$/),
      material: 'Limewater',
      recipe: 'Limewater',
      quantity: 480,
      unit: 'ml',
      cost: '0.20',
      goodUntil: '2026-05-03',
      goodUntilBecause: 'made 3 Apr 2026, keeps 30 days',
      readyAfterHours: 12,
      posting: expect.stringMatching(/^P\w{8}$/),
      parts: [
        {
          material: 'Lime',
          needed: 1,
          unit: 'g',
          missing: 0,
          makeFirst: null,
          takes: [{ lot: 'C-1', lotIs: 'assumed', quantity: 1, unit: 'g', cost: '0.20' }],
        },
        { material: 'Deionised water', needed: 500, unit: 'ml', missing: 0, makeFirst: null, takes: [] },
      ],
      movements: [
        {
          movement: expect.stringMatching(/^M/),
          date: '2026-04-03',
          kind: 'Make',
          lot: 'C-1',
          quantity: 1,
          unit: 'g',
          job: null,
          item: null,
          entry: null,
          cost: '0.20',
        },
        {
          movement: expect.stringMatching(/^M/),
          date: '2026-04-03',
          kind: 'Use',
          lot,
          quantity: 400,
          unit: 'ml',
          job: '26-014',
          item: null,
          entry: answer.entries[0].entry,
          cost: '0.17',
        },
      ],
      shortfalls: [],
      entries: [
        {
          entry: expect.stringMatching(/^E/),
          job: '26-014',
          item: null,
          treatment: 'Deacidify',
          extent: 3,
          drawn: 'yes',
        },
      ],
      notices: [],
    });
    const { answer: checked } = await json('check', file);
    expect(checked.lots.find((each: { lot: string }) => each.lot === lot)).toEqual({
      lot,
      material: 'Limewater',
      table: 'Buffers',
      unit: 'ml',
      left: 80,
      goodUntil: '2026-05-03',
      state: 'Usable',
      usable: true,
      worth: '0.03',
    });
  });

  test('with --plan nothing is saved, and there is no lot', async () => {
    const file = await fileOf(BENCH);
    const before = await readFile(file);
    const { code, answer } = await json('make', file, ...LIMEWATER, ...POUR, '--plan');
    expect(code).toBe(0);
    expect(answer).toMatchObject({ lot: null, posting: null, cost: '0.20', movements: [], entries: [] });
    const { out } = await call(['make', file, ...LIMEWATER, '--plan']);
    expect(out).toMatch(/^To make 500 ml of Limewater:/);
    expect(await readFile(file)).toEqual(before);
    const made = await json('make', file, ...LIMEWATER);
    expect(Object.keys(answer).toSorted()).toEqual(Object.keys(made.answer).toSorted());
  });

  test('ends with 1 after a shortfall, planned or made', async () => {
    const file = await fileOf(BENCH);
    const words = ['make', file, '--recipe', 'Limewater', '--amount', '12 l'];
    const planned = await json(...words, '--plan');
    const made = await json(...words);
    expect([planned.code, made.code]).toEqual([1, 1]);
    for (const { answer } of [planned, made]) {
      expect(answer.shortfalls).toEqual([{ material: 'Lime', missing: 4, unit: 'g' }]);
    }
  });

  test.each([
    [60, []],
    [100, POUR],
  ])(
    'as text %i columns wide: ingredients, life, cautions, and to whom all this defers',
    async (width, pour) => {
      const { code, out } = await call(['make', await fileOf(BENCH), ...LIMEWATER, ...pour], { width });
      const flat = out.replace(/\s+/g, ' ');
      expect(code).toBe(0);
      expect(flat).toMatch(/^Made 500 ml of Limewater, 3 Apr 2026: lot L\w{8}, cost EUR 0\.20\./);
      expect(flat).toMatch(/Deionised water not counted 500 ml/);
      expect(flat).toMatch(/Good until 3 May 2026: made 3 Apr 2026, keeps 30 days\. Ready after 12 hours\./);
      expect(flat).toMatch(/Cautions Alkali: eye protection and gloves\./);
      expect(flat).toMatch(/Lime: H318 Causes serious eye damage/);
      expect(flat).toMatch(/What is made here is not classified/);
      expect(flat).toMatch(/Read the supplier’s safety data sheet before use/);
      expect(/Entry E\w{8}: Deacidify, 3 leaf, job 26-014, 3 Apr 2026: drawn\./.test(flat)).toBe(
        pour.length > 0,
      );
      expect(flat).toMatch(/Posting P\w{8}\. .*Saved to /);
      for (const line of out.split('\n')) {
        if (!line.startsWith('Saved to')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      }
    },
  );

  test('its undo says what is put back, and that nothing is left of the lot', async () => {
    const file = await fileOf(BENCH);
    const { answer } = await json('make', file, ...LIMEWATER);
    const { code, out } = await call(['undo', file, '--posting', answer.posting]);
    expect(code).toBe(0);
    expect(out).toMatch(/Taken back, amounts in EUR\n/);
    expect(out).toMatch(/In all 0\.20\./);
    expect(out).toMatch(
      new RegExp(`The row of lot ${answer.lot} stays where it is; nothing is left of it\\.`),
    );
    const { answer: checked } = await json('check', file);
    const left = checked.lots.map((each: { lot: string; left: number; worth: string }) => [
      each.lot,
      each.left,
      each.worth,
    ]);
    expect(left).toContainEqual([answer.lot, 0, '0.00']);
    expect(left).toContainEqual(['C-1', 20, '4.00']);
  });

  test.each([
    [['--amount', '5 g'], 'jarleaf make needs --recipe. See jarleaf make --help.'],
    [['--recipe', 'Limewater'], 'jarleaf make needs --amount. See jarleaf make --help.'],
    [
      ['--recipe', 'Limewater', '--amount', 'a lot'],
      '--amount holds “a lot”: a number above 0 and a unit are right, such as "500 ml".',
    ],
    [
      ['--recipe', 'Limewater', '--amount', '0 ml'],
      '--amount holds “0 ml”: a number above 0 and a unit are right, such as "500 ml".',
    ],
    [
      ['--recipe', 'Limewater', '--amount', '5 jars'],
      /^--amount holds the unit “jars”: a unit is right, one of mg, g/,
    ],
    [
      [...LIMEWATER, '--yield', '480 g'],
      '--yield is given in g and --amount in ml: give both in g, or both in ml.',
    ],
    [[...LIMEWATER, '--job', '26-014'], 'jarleaf make needs --treatment. See jarleaf make --help.'],
    [[...LIMEWATER, '--pour', '5 ml'], 'jarleaf make needs --job. See jarleaf make --help.'],
    [
      [...LIMEWATER, '--job', '26-014', '--treatment', 'Deacidify'],
      'jarleaf make needs --extent. See jarleaf make --help.',
    ],
    [[...LIMEWATER, '--plan', '--out', 'x.xlsx'], '--out goes without --plan: a plan saves nothing.'],
    [
      [...LIMEWATER, '--use', 'Lime=1 g@C-9'],
      'There is no lot of Lime called C-9 in the stock tables. Did you mean C-1?',
    ],
    [
      [...LIMEWATER, '--date', '2026-04-04'],
      'The making is dated 4 Apr 2026, after today: give the day on which it was made.',
    ],
  ])('%j ends with 2 and changes nothing', async (words, message) => {
    const file = await fileOf(BENCH);
    const before = await readFile(file);
    const { code, out, err } = await call(['make', file, ...words]);
    expect([code, out]).toEqual([2, '']);
    if (typeof message === 'string') expect(err).toBe(message);
    else expect(err).toMatch(message);
    expect(await readFile(file)).toEqual(before);
  });
});

describe('bath', () => {
  async function bathed() {
    const file = await fileOf(BENCH);
    const { answer } = await json('make', file, ...LIMEWATER, ...POUR);
    return { file, lot: String(answer.lot) };
  }

  test('emptied, the rest is waste of the job', async () => {
    const { file, lot } = await bathed();
    const { code, answer } = await json('bath', file, '--lot', lot, '--empty');
    expect(code).toBe(0);
    expect(answer.movements).toMatchObject([
      { kind: 'Waste', lot, quantity: 100, unit: 'ml', job: '26-014', cost: '0.04' },
    ]);
    expect(answer).toMatchObject({ entries: [], shortfalls: [], posting: expect.stringMatching(/^P/) });
    const again = await call(['bath', file, '--lot', lot, '--empty']);
    expect([again.code, again.err]).toEqual([2, `Nothing is left of lot ${lot}.`]);
  });

  test('kept, it has its pH', async () => {
    const { file, lot } = await bathed();
    const { code, out } = await call(['bath', file, '--lot', lot, '--keep', '--ph', '11.9']);
    expect(code).toBe(0);
    expect(out).toMatch(new RegExp(`100 ml of lot ${lot} are kept, at pH 11\\.9\\.`));
    const { answer } = await json('bath', file, '--lot', lot, '--keep');
    expect(answer).toMatchObject({ posting: null, movements: [] });
  });

  test.each([
    [['--lot', 'L'], 'jarleaf bath needs either --empty or --keep. See jarleaf bath --help.'],
    [
      ['--lot', 'L', '--empty', '--keep'],
      'jarleaf bath needs either --empty or --keep. See jarleaf bath --help.',
    ],
    [['--empty'], 'jarleaf bath needs --lot. See jarleaf bath --help.'],
    [['--lot', 'L', '--empty', '--ph', '7'], '--ph goes with --keep.'],
    [['--lot', 'L', '--keep', '--date', '2026-04-01'], '--date goes with --empty.'],
    [['--lot', 'C-1', '--keep', '--ph', '70'], "A pH of 70 can't be: 0 to 14 is right."],
  ])('%j ends with 2', async (words, message) => {
    const { code, out, err } = await call(['bath', await fileOf(BENCH), ...words]);
    expect([code, out, err]).toEqual([2, '', message]);
  });
});
