import { readFile } from 'node:fs/promises';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { call } from '../helpers/fake-terminal.ts';
import { date, type Literal } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf } from '../helpers/xlsx.ts';

/** Paste is planned for three days; tissue falls short of a job; the starch is there. */
const AHEAD: Literal = {
  ...STUDIO,
  Suppliers: [
    {
      Supplier: 'Paper mill',
      'Lead time days': 10,
      'Minimum order': 60,
      Carriage: 12,
      'Carriage free over': 200,
    },
    { Supplier: 'Corner shop', 'Lead time days': 2, Carriage: 5 },
  ],
  Offers: [
    ...STUDIO.Offers,
    {
      Supplier: 'Corner shop',
      Material: 'Repair tissue 5',
      'Pack quantity': 1,
      Unit: 'sheet',
      'Pack price': 7,
    },
  ],
  Orders: [
    { Order: 'O-1', Supplier: 'Paper mill', 'Ordered on': date('2026-03-20'), Expected: date('2026-03-30') },
  ],
  OrderLines: [
    {
      Order: 'O-1',
      Line: 'line 1',
      Material: 'Wheat starch',
      Packs: 1,
      'Pack quantity': 1,
      Unit: 'kg',
      'Pack price': 14,
    },
  ],
  Recipes: STUDIO.Recipes.map((each) => ({ ...each, Minutes: 30, 'Smallest batch': 50 })),
  Jobs: [...STUDIO.Jobs, { Job: '26-016', Stage: 'Booked', Due: date('2026-04-20') }],
  Plan: [
    { Job: '26-014', Treatment: 'Mend tear', Extent: 20, 'Planned for': date('2026-04-07') },
    { Job: '26-014', Treatment: 'Mend tear', Extent: 4, 'Planned for': date('2026-04-08') },
    { Job: '26-016', Treatment: 'Mend tear', Extent: 10, 'Planned for': date('2026-04-11') },
  ],
};

/** That paste must be made on a day. */
const toMake = (day: string, missing: number) => ({
  material: 'Wheat starch paste',
  unit: 'g',
  day,
  missing,
  how: 'make',
  supplier: null,
  latestBy: day,
  tooLate: false,
  onItsWay: null,
});

async function json(...words: string[]) {
  const { code, out, err } = await call([...words, '--json']);
  return { code, err, answer: JSON.parse(out) };
}

describe('plan', () => {
  test('as JSON, in the shape that is documented', async () => {
    const file = await fileOf(AHEAD);
    const { code, err, answer } = await json('plan', file, '--until', '2026-04-20');
    expect([code, err]).toEqual([1, '']);
    expect({ ...answer, materials: [], notices: [], year: null }).toEqual({
      asOf: '2026-04-03',
      until: '2026-04-20',
      currency: 'EUR',
      materials: [],
      jobs: [
        {
          job: '26-014',
          due: null,
          readyOn: '2026-04-08',
          canBeDone: true,
          wants: [toMake('2026-04-07', 100), toMake('2026-04-08', 20)],
          obstacles: [],
        },
        {
          job: '26-016',
          due: '2026-04-20',
          readyOn: '2026-04-11',
          canBeDone: true,
          wants: [
            {
              material: 'Repair tissue 5',
              unit: 'sheet',
              day: '2026-04-11',
              missing: 5,
              how: 'buy',
              supplier: 'Corner shop',
              latestBy: '2026-04-09',
              tooLate: false,
              onItsWay: null,
            },
            toMake('2026-04-11', 50),
          ],
          obstacles: [],
        },
      ],
      year: null,
      notices: [],
    });
    const tissue = answer.materials.find((each: { material: string }) => each.material === 'Repair tissue 5');
    expect(tissue).toMatchObject({
      unit: 'sheet',
      usable: 12,
      onOrder: 0,
      demand: { class: 'none', method: 'none', perWeek: 0, weight: null },
      orderWhenDownTo: { planned: 17, servicePercent: null, serviceMeans: 'chance of no shortage' },
      firstShort: { day: '2026-04-11', missing: 5, job: '26-016' },
      goesOff: [],
      make: null,
    });
    expect(tissue.days).toHaveLength(18);
    expect(tissue.days[4]).toEqual({
      day: '2026-04-07',
      usable: 2,
      planned: 10,
      forecast: 0,
      arrived: 0,
      made: 0,
      wentOff: 0,
      short: 0,
    });
    expect(answer.notices.map(({ code: notice }: { code: string }) => notice)).toContain('order-overdue');
  });

  test('one material day by day, one job alone, and what is none', async () => {
    const file = await fileOf(AHEAD);
    const paste = await call(['plan', file, '--material', 'wheat starch paste']);
    expect(paste.out).toContain('Wheat starch paste from 3 Apr 2026 to 2 Jul 2026, in g');
    expect(paste.out).toMatch(/^7 Apr 2026 +100 +170 +200 +70$/m);
    const job = await call(['plan', file, '--job', '26-016']);
    expect(job).toMatchObject({ code: 0, err: '' });
    expect(job.out.split('\n')).toEqual([
      expect.stringContaining('Jobs on their days'),
      '26-016: what is missing can still be got in time, ready on 11 Apr 2026, due on 20 Apr 2026.',
      '  Repair tissue 5: 5 sheets missing on 11 Apr 2026; order it from Corner shop by 9 Apr 2026.',
      '  Wheat starch paste: 50 g missing on 11 Apr 2026; make it on that day.',
    ]);
    expect(await call(['plan', file, '--material', 'paste'])).toMatchObject({
      code: 2,
      err: 'There is no material called paste in Materials. Did you mean Wheat starch paste?',
    });
    expect((await call(['plan', file, '--job', '26-015'])).code).toBe(2);
    expect((await call(['plan', file, '--until', '2026-04-02'])).err).toBe(
      '--until must be a day from today on, at most 730 days ahead.',
    );
  });

  test('fits the width of the terminal', async () => {
    const file = await fileOf(AHEAD);
    for (const width of [60, 80, 120]) {
      const { out } = await call(['plan', file], { width });
      expect(Math.max(...out.split('\n').map((line) => stringWidth(line)))).toBeLessThanOrEqual(width);
    }
  });
});

describe('make without a recipe', () => {
  test('says when to make how much, beside two other ways', async () => {
    const file = await fileOf(AHEAD);
    const before = await readFile(file);
    const { code, answer } = await json('make', file);
    expect(code).toBe(0);
    expect({ ...answer, notices: [] }).toEqual({
      asOf: '2026-04-03',
      until: '2026-07-02',
      currency: 'EUR',
      materials: [
        {
          unit: 'g',
          material: 'Wheat starch paste',
          recipe: 'Paste, thick',
          batches: [
            {
              makeOn: '2026-04-07',
              readyOn: '2026-04-07',
              goodUntil: '2026-04-12',
              quantity: 170,
              waste: 0,
              for: [
                { day: '2026-04-07', job: '26-014', treatment: 'Mend tear', quantity: 100 },
                { day: '2026-04-08', job: '26-014', treatment: 'Mend tear', quantity: 20 },
                { day: '2026-04-11', job: '26-016', treatment: 'Mend tear', quantity: 50 },
              ],
            },
          ],
          cost: { batches: 1, minutes: 30, effort: '30.00', waste: 0, wasteCost: '0.00' },
          forEachJob: {
            batches: 3,
            minutes: 90,
            effort: '90.00',
            waste: 30,
            wasteCost: '0.08',
            unserved: [],
          },
          weekly: { batches: 2, minutes: 60, effort: '60.00', waste: 0, wasteCost: '0.00', unserved: [] },
          late: [],
        },
      ],
      notices: [],
    });
    expect(await readFile(file)).toEqual(before);
  });

  test('asks for the recipe where only a batch’s options are given', async () => {
    const file = await fileOf(AHEAD);
    expect(await call(['make', file, '--amount', '5 g'])).toMatchObject({
      code: 2,
      err: 'jarleaf make needs --recipe. See jarleaf make --help.',
    });
  });
});

describe('buy', () => {
  test('as JSON, in the shape that is documented; it changes nothing', async () => {
    const file = await fileOf(AHEAD);
    const before = await readFile(file);
    const { code, err, answer } = await json('buy', file);
    expect([code, err]).toEqual([0, '']);
    expect({ ...answer, notices: [] }).toEqual({
      asOf: '2026-04-03',
      currency: 'EUR',
      needs: [
        {
          material: 'Repair tissue 5',
          unit: 'sheet',
          by: [{ day: '2026-04-11', quantity: 5, job: '26-016' }],
          most: null,
          because: '26-016 lacks 5 sheets on 11 Apr 2026.',
        },
      ],
      orders: [
        {
          supplier: 'Corner shop',
          expected: '2026-04-05',
          order: null,
          text: null,
          lines: [
            {
              offer: 'Offers 4',
              material: 'Repair tissue 5',
              packs: 5,
              packQuantity: 1,
              unit: 'sheet',
              packPrice: '7.00',
              amount: '35.00',
              byHand: false,
              reasons: expect.arrayContaining([expect.stringContaining('26-016')]),
            },
          ],
          goods: '35.00',
          carriage: '5.00',
          reasons: expect.any(Array),
        },
      ],
      goods: '35.00',
      carriage: '5.00',
      total: '40.00',
      remarks: [],
      notices: [],
    });
    expect(await readFile(file)).toEqual(before);
  });

  test('what is set by hand is kept, and what it lacks is said', async () => {
    const file = await fileOf(AHEAD);
    const { code, answer } = await json('buy', file, '--packs', 'Offers 4=3');
    expect(answer.orders[0].lines[0]).toMatchObject({ packs: 3, byHand: true, amount: '21.00' });
    expect(answer.remarks).toMatchObject([{ kind: 'by hand too little', material: 'Repair tissue 5' }]);
    expect(code).toBe(1);
    expect((await call(['buy', file, '--packs', 'Offers 4=some'])).err).toMatch(
      /^--packs holds “Offers 4=some”/,
    );
    expect((await call(['buy', file, '--supplier', 'Paper mill'])).err).toBe(
      '--supplier goes with --order: without it nothing is saved.',
    );
  });

  test.each(['offers 3', 'wheat starch'])(
    '%s, which nothing asks for, is bought where it is set by hand',
    async (name) => {
      const file = await fileOf(AHEAD);
      const plain = (await json('buy', file)).answer;
      const { code, answer } = await json('buy', file, '--packs', `${name}=5`);
      expect([code, answer.remarks]).toEqual([0, []]);
      expect(answer.needs).toEqual(plain.needs);
      expect(answer.orders).toContainEqual(
        expect.objectContaining({
          supplier: 'Paper mill',
          goods: '70.00',
          lines: [
            expect.objectContaining({
              offer: 'Offers 3',
              material: 'Wheat starch',
              packs: 5,
              amount: '70.00',
              byHand: true,
              reasons: ['Added by hand: the plan does not ask for it now.'],
            }),
          ],
        }),
      );
      expect(answer.goods).toBe('105.00');
    },
  );

  test('what nobody sells, or nobody knows, can’t be set by hand', async () => {
    const file = await fileOf(AHEAD);
    expect((await call(['buy', file, '--packs', 'Wheat starch paste=1'])).err).toMatch(
      /nobody sells Wheat starch paste: add a row to Offers\./,
    );
    expect((await call(['buy', file, '--packs', 'Cloth=1'])).err).toMatch(
      /write an offer or a material and a whole number, such as "Offers \d+=2"; what is needed has Offers /,
    );
  });

  test('an order is written once: what is on its way is not needed any more', async () => {
    const file = await fileOf(AHEAD);
    const ordered = await json('buy', file, '--order');
    expect(ordered.code).toBe(0);
    const [{ order, text }] = ordered.answer.orders;
    expect(text).toContain(`Order ${order} of 3 Apr 2026`);
    expect(text).toContain('Repair tissue 5: 5 packs of 1 sheet, 7.00 each, 35.00');
    const again = await json('buy', file);
    expect(again.answer).toMatchObject({ needs: [], orders: [], total: '0.00' });
    const outlook = await json('plan', file, '--material', 'Repair tissue 5');
    expect(outlook.answer.materials[0]).toMatchObject({ onOrder: 5, firstShort: null });
    const { answer } = await json('check', file);
    const tissue = answer.materials.find((each: { material: string }) => each.material === 'Repair tissue 5');
    expect(tissue.onOrder).toBe(5);
  });

  test('fits the width of the terminal, and says where nothing is needed', async () => {
    const file = await fileOf(AHEAD);
    for (const width of [60, 80, 120]) {
      const { out } = await call(['buy', file], { width });
      expect(Math.max(...out.split('\n').map((line) => stringWidth(line)))).toBeLessThanOrEqual(width);
    }
    expect(await call(['buy', await fileOf(STUDIO)])).toMatchObject({
      code: 0,
      out: 'Nothing has to be bought now.',
    });
  });
});
