import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { type BatchToMake, makeBatch, planBatch } from '../../src/actions/make-batch.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { isoDay } from '../../src/core/day.ts';
import { decimal } from '../../src/core/exact-number.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { Bench, randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal, type LiteralRow } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';

const today = dayOf('2026-04-03');

const MATERIALS: LiteralRow[] = [
  { Material: 'Starch', Kind: 'Paste', 'Stock unit': 'g' },
  { Material: 'Paste', Kind: 'Paste', 'Stock unit': 'g' },
  { Material: 'Thin paste', Kind: 'Paste', 'Stock unit': 'g' },
  { Material: 'Water', Kind: 'Buffer', 'Stock unit': 'ml', Counted: 'no' },
  { Material: 'Film', Kind: 'Release paper', 'Stock unit': 'sheet', 'Uses per unit': 4 },
];
const STARCH: LiteralRow[] = [
  { Lot: 'S-1', Material: 'Starch', Received: date('2026-01-05'), Quantity: 100, Unit: 'g', Cost: 3 },
  { Lot: 'S-2', Material: 'Starch', Received: date('2026-02-05'), Quantity: 1, Unit: 'kg', Cost: 20 },
];
const BENCH = {
  Materials: MATERIALS,
  Paste: STARCH,
  ReleasePaper: [
    { Lot: 'F-1', Material: 'Film', Received: date('2026-01-05'), Quantity: 2, Unit: 'sheet', Cost: 4 },
  ],
  Movements: [],
  TreatmentLog: [],
  Treatments: [
    { Treatment: 'Line', 'Extent unit': 'leaf' },
    { Treatment: 'Examine', 'Extent unit': 'leaf' },
  ],
  UsageRates: [
    { Treatment: 'Line', Material: 'Thin paste', 'Quantity per extent': 10, Unit: 'g' },
    { Treatment: 'Line', Material: 'Film', 'Quantity per extent': 1, Unit: 'use' },
  ],
  Recipes: [
    {
      Recipe: 'Thick',
      Makes: 'Paste',
      Yield: 500,
      Unit: 'g',
      'Life days': 3,
      'Life cold days': 7,
      'Life dark days': 5,
      'Smallest batch': 100,
      'Ready after hours': 2,
      Cautions: 'Hot.',
    },
    {
      Recipe: 'Thin',
      Makes: 'Thin paste',
      Yield: 200,
      Unit: 'g',
      'Life days': 10,
      'Limited by parts': 'yes',
      'Ready after hours': 1,
    },
  ],
  RecipeParts: [
    { Recipe: 'Thick', Material: 'Starch', Quantity: 60, Unit: 'g' },
    { Recipe: 'Thick', Material: 'Water', Quantity: 0.5, Unit: 'l' },
    { Recipe: 'Thin', Material: 'Paste', Quantity: 100, Unit: 'g' },
    { Recipe: 'Thin', Material: 'Water', Quantity: 100, Unit: 'ml' },
  ],
  Jobs: [{ Job: 'J-1', Stage: 'On the bench' }],
  Places: [
    { Place: 'Fridge', Cold: 'yes' },
    { Place: 'Cupboard', Dark: 'yes' },
    { Place: 'Cellar', Cold: 'yes', Dark: 'yes' },
    { Place: 'Shelf' },
  ],
  Settings: [{ Setting: 'currency', Value: 'EUR' }],
} satisfies Literal;

function request(recipe: string, amount: string, more: Partial<BatchToMake> = {}): BatchToMake {
  return {
    recipe,
    amount: decimal(amount),
    unit: unitNamed('g'),
    yielded: null,
    date: today,
    storedAt: null,
    asUsed: [],
    by: null,
    notes: null,
    pour: null,
    ...more,
  };
}

function make(bench: Bench, asked: BatchToMake) {
  return bench.do((snapshot, random) => makeBatch(snapshot, asked, today, random));
}

function plan(literal: Literal, asked: BatchToMake) {
  const answer = planBatch(snapshotOf(literal), asked, today);
  if (!answer.ok) throw new Error(answer.message);
  return answer;
}

function refusal(asked: BatchToMake, literal: Literal = BENCH): string {
  const made = makeBatch(snapshotOf(literal), asked, today, randomFrom(3));
  const planned = planBatch(snapshotOf(literal), asked, today);
  if (made.ok || planned.ok) return 'not refused';
  expect(planned.message).toBe(made.message);
  return made.message;
}

describe('making a batch', () => {
  test('takes the ingredients from their lots into the new one, which bears their cost and what was weighed', () => {
    const bench = new Bench(BENCH);
    const made = make(
      bench,
      request('thick', '1000', {
        yielded: decimal('930'),
        storedAt: 'fridge',
        by: 'AK',
        notes: 'a little lumpy',
        date: dayOf('2026-04-02'),
      }),
    );
    const day = serialOfDay(dayOf('2026-04-02'), 1900);
    const common = { Date: day, Kind: 'Make', Into: made.lot.name, By: 'AK', Posting: made.posting };
    // 120 g of starch: 100 g that cost 3.00, and 20 of 1000 g that cost 20.00. In the head: 3.00 and 0.40.
    expect(bench.rows('Movements')).toMatchObject([
      { ...common, Lot: 'S-1', Quantity: 100, Unit: 'g', Cost: 3, 'Lot is': 'assumed' },
      { ...common, Lot: 'S-2', Quantity: 20, Unit: 'g', Cost: 0.4, 'Lot is': 'assumed' },
    ]);
    expect(bench.rows('Paste')[2]).toMatchObject({
      Lot: made.lot.name,
      Material: 'Paste',
      Received: day,
      Quantity: 930,
      Unit: 'g',
      Cost: 3.4,
      Recipe: 'Thick',
      Place: 'Fridge',
      Posting: made.posting,
      Notes: 'a little lumpy',
      Left: 930,
      'Good until': serialOfDay(dayOf('2026-04-09'), 1900),
      Worth: 3.4,
    });
    expect(bench.rows('Paste')).toMatchObject([{ Left: 0, Worth: 0 }, { Left: 0.98, Worth: 19.6 }, {}]);
    expect(made.remarks).toEqual([]);
  });

  test('what was planned is what is made', () => {
    const asked = request('Thick', '1000', { yielded: decimal('930') });
    const planned = plan(BENCH, asked);
    const made = make(new Bench(BENCH), asked);
    const plain = ({ parts, cost, goodUntil, goodUntilBecause, yielded }: typeof planned) => ({
      parts: parts.map(({ material, needed, unit, takes, missing }) => [
        material.name,
        needed.toString(),
        unit.name,
        missing.toString(),
        ...takes.map(
          (take) => `${take.lot.name} ${take.quantity.toString()} ${take.unit.name} ${String(take.cost)}`,
        ),
      ]),
      cost,
      goodUntil,
      goodUntilBecause,
      yielded: yielded.toString(),
    });
    expect(plain(made.plan)).toEqual(plain(planned));
    expect(plain(planned)).toMatchObject({
      cost: 340n,
      parts: [
        ['Starch', '120', 'g', '0', 'S-1 100 g 300', 'S-2 20 g 40'],
        ['Water', '1', 'l', '0'],
      ],
    });
  });

  test.each([
    [null, '2026-04-06', 'made 3 Apr 2026, keeps 3 days'],
    ['Shelf', '2026-04-06', 'made 3 Apr 2026, keeps 3 days'],
    ['Fridge', '2026-04-10', 'made 3 Apr 2026, keeps 7 days (cold)'],
    ['Cupboard', '2026-04-08', 'made 3 Apr 2026, keeps 5 days (dark)'],
    ['Cellar', '2026-04-10', 'made 3 Apr 2026, keeps 7 days (cold)'],
  ])('kept at %s it is good until %s', (storedAt, until, because) => {
    const { goodUntil, goodUntilBecause } = plan(BENCH, request('Thick', '500', { storedAt }));
    expect([goodUntil === null ? null : isoDay(goodUntil), goodUntilBecause]).toEqual([until, because]);
  });

  test('a batch of a batch keeps no longer than what was made here of its parts', () => {
    const bench = new Bench(BENCH);
    make(bench, request('Thick', '500', { date: dayOf('2026-04-01'), storedAt: 'Fridge' }));
    const thin = make(bench, request('Thin', '200'));
    expect(thin.plan.goodUntilBecause).toBe('the earliest of its parts');
    const until = serialOfDay(dayOf('2026-04-08'), 1900);
    expect(bench.rows('Paste').at(-1)).toMatchObject({ 'Use by': until, 'Good until': until, Cost: 0.36 });
  });

  test('unless the recipe doesn’t say so, or it goes off before them anyway', () => {
    const free = BENCH.Recipes.map((row) => ({ ...row, 'Limited by parts': null }));
    const short = BENCH.Recipes.map((row) => (row.Recipe === 'Thin' ? { ...row, 'Life days': 1 } : row));
    for (const [recipes, until] of [
      [free, '2026-04-13'],
      [short, '2026-04-04'],
    ] as const) {
      const bench = new Bench({ ...BENCH, Recipes: recipes });
      make(bench, request('Thick', '500', { storedAt: 'Fridge' }));
      make(bench, request('Thin', '200'));
      const row = bench.rows('Paste').at(-1);
      expect(row).not.toHaveProperty('Use by');
      expect(row).toMatchObject({ 'Good until': serialOfDay(dayOf(until), 1900) });
    }
  });

  test('a printed date of a bought part is no limit', () => {
    const dated = STARCH.map((row) => ({ ...row, 'Use by': date('2026-04-04') }));
    const limited = BENCH.Recipes.map((row) => ({ ...row, 'Limited by parts': 'yes' }));
    const planned = plan({ ...BENCH, Paste: dated, Recipes: limited }, request('Thick', '500'));
    expect(planned.goodUntil).toBe(dayOf('2026-04-06'));
  });

  test('what was really taken stands in for the recipe, of the lots that were named', () => {
    const bench = new Bench(BENCH);
    const used = { material: 'starch', unit: unitNamed('g') };
    make(
      bench,
      request('Thick', '500', {
        asUsed: [
          { ...used, quantity: decimal('50'), lot: 's-2' },
          { ...used, quantity: decimal('8'), lot: null },
          { material: 'Film', quantity: decimal('1'), unit: unitNamed('use'), lot: null },
        ],
      }),
    );
    expect(
      bench.rows('Movements').map((row) => [row['Lot'], row['Quantity'], row['Unit'], row['Lot is']]),
    ).toEqual([
      ['S-2', 50, 'g', 'confirmed'],
      // The jar that was opened just now comes before the sealed one.
      ['S-2', 8, 'g', 'assumed'],
      ['F-1', 1, 'use', 'assumed'],
    ]);
  });

  test('uses are taken whole', () => {
    const withFilm = [...BENCH.RecipeParts, { Recipe: 'Thick', Material: 'Film', Quantity: 1, Unit: 'use' }];
    const planned = plan({ ...BENCH, RecipeParts: withFilm }, request('Thick', '600'));
    expect(planned.parts.at(-1)?.needed.toString()).toBe('2');
  });
});

describe('record first', () => {
  test('what no lot covers is said, stands in the lot’s Notes, and the rest is taken', () => {
    const bench = new Bench({ ...BENCH, Paste: STARCH.slice(0, 1) });
    const made = make(bench, request('Thick', '1000', { notes: 'for Monday' }));
    expect(made.plan.parts[0]?.missing.toString()).toBe('20');
    expect(bench.rows('Paste').at(-1)).toMatchObject({
      Quantity: 1000,
      Cost: 3,
      Notes: 'for Monday Not covered by any lot when it was made: 20 g of Starch.',
    });
    expect(made.remarks).toEqual(['Its cost is that of what was taken from stock, without what is missing.']);
  });

  test('a part that is made here and isn’t there: by which recipe to make it first', () => {
    const planned = plan(BENCH, request('Thin', '200'));
    expect(planned.parts[0]?.makeFirst?.name).toBe('Thick');
    expect([planned.cost, planned.remarks]).toEqual([
      null,
      [
        'Paste is made here, by the recipe Thick: make it first.',
        'Its cost can’t be told, as nothing was taken from stock for it.',
      ],
    ]);
  });

  test('a lot without a cost leaves the batch without one, and is named', () => {
    const bench = new Bench({ ...BENCH, Paste: STARCH.map((row) => ({ ...row, Cost: null })) });
    const made = make(bench, request('Thick', '1000'));
    expect(made.remarks).toEqual(["Its cost can't be told, as S-1, S-2 have no Cost."]);
    expect(bench.rows('Paste').at(-1)).not.toHaveProperty('Cost');
  });

  test('less than the smallest batch is made all the same, with a remark', () => {
    expect(plan(BENCH, request('Thick', '50')).remarks).toEqual([
      "The recipe says that less than 100 g can't be made well.",
    ]);
  });

  test('a row of the parts that can’t be worked out is said, as an ingredient may be left out', () => {
    const parts = [
      ...BENCH.RecipeParts,
      { Recipe: 'Thick', Material: 'Strach', Quantity: 1, Unit: 'g' },
      { Recipe: 'Thick', Material: 'Starch', Quantity: 'some', Unit: 'g' },
    ];
    const said =
      "What these rows of RecipeParts say can't be worked out, so an ingredient may be left out: 6, 7. See check.";
    expect(plan({ ...BENCH, RecipeParts: parts }, request('Thick', '500')).remarks).toEqual([said]);
    expect(make(new Bench({ ...BENCH, RecipeParts: parts }), request('Thick', '500')).remarks).toEqual([
      said,
    ]);
  });

  test('a column that the stock table lacks is said', () => {
    const bench = new Bench({ ...BENCH, Paste: { rows: STARCH, without: ['Recipe', 'Notes'] } });
    const made = make(bench, request('Thick', '500', { notes: 'lumpy' }));
    expect(made.remarks.map((remark) => /no column (\w+)/.exec(remark)?.[1])).toEqual(['Recipe', 'Notes']);
  });
});

describe('making it and pouring it out at once', () => {
  const pour = { job: 'j-1', item: null, treatment: 'Line', extent: decimal('4'), amount: decimal('120') };

  function poured() {
    const bench = new Bench(BENCH);
    make(bench, request('Thick', '500'));
    return { bench, made: make(bench, request('Thin', '200', { pour })) };
  }

  test('one posting: the batch, the entry, and what it takes of the new lot, confirmed', () => {
    const { bench, made } = poured();
    const rows = bench.rows('Movements').slice(1);
    expect(rows.map((row) => [row['Kind'], row['Lot'], row['Quantity'], row['Job'], row['Lot is']])).toEqual([
      ['Make', expect.any(String), 100, undefined, 'assumed'],
      ['Use', 'F-1', 4, 'J-1', 'assumed'],
      ['Use', made.lot.name, 120, 'J-1', 'confirmed'],
    ]);
    expect(new Set(rows.map((row) => row['Posting']))).toEqual(new Set([made.posting]));
    expect(bench.rows('TreatmentLog')).toMatchObject([
      {
        Job: 'J-1',
        Treatment: 'Line',
        Extent: 4,
        Drawn: 'yes',
        Notes: `Used: Thin paste=120 g@${made.lot.name}`,
      },
    ]);
    expect(bench.rows('Paste').at(-1)).toMatchObject({ Quantity: 200, Left: 80 });
    expect(made.remarks).toEqual([
      'By its recipe it is ready only 1 hour after it was made, and is poured out at once.',
    ]);
  });

  test('all of it, where no amount is given', () => {
    const bench = new Bench(BENCH);
    make(bench, request('Thick', '500'));
    make(bench, request('Thin', '200', { yielded: decimal('190'), pour: { ...pour, amount: null } }));
    expect(bench.rows('Paste').at(-1)).toMatchObject({ Quantity: 190, Left: 0, Worth: 0 });
  });

  test('taking it back takes back both', () => {
    const { bench, made } = poured();
    bench.do((snapshot, random) => undoPosting(snapshot, made.posting ?? '', today, random));
    expect(bench.rows('Paste')).toMatchObject([
      { Lot: 'S-1', Left: 40 },
      { Lot: 'S-2' },
      { Material: 'Paste', Left: 500, Worth: 1.8 },
      { Material: 'Thin paste', Left: 0, Worth: 0 },
    ]);
    expect(bench.rows('TreatmentLog')[0]).not.toHaveProperty('Drawn');
    const { ledger } = booksOf(bench.workbook.snapshot());
    expect(ledger.studio.entries).toHaveLength(1);
  });

  test.each([
    [
      { treatment: 'Examine' },
      "Examine doesn't use Thin paste by the usage rates, so it can't be poured out for it. Line would.",
    ],
    [{ amount: decimal('201') }, "201 g can't be poured out of 200 g."],
    [{ job: 'J-2' }, 'There is no job called J-2 in Jobs. Did you mean J-1?'],
    [{ treatment: 'Lin' }, 'There is no treatment called Lin in Treatments. Did you mean Line?'],
  ])('refused: %o', (wrong, message) => {
    expect(refusal(request('Thin', '200', { pour: { ...pour, ...wrong } }))).toBe(message);
  });
});

describe('what can’t be made is refused, and nothing is written', () => {
  test.each<[string, BatchToMake, string]>([
    [
      'a recipe that isn’t there',
      request('Thik', '5'),
      'There is no recipe called Thik in Recipes. Did you mean Thick or Thin?',
    ],
    [
      'a unit that leads nowhere',
      request('Thick', '5', { unit: unitNamed('ml') }),
      'Nothing says how many g one ml of Paste is: give the amount in g, the unit of the recipe, or add to Materials the fact that links them.',
    ],
    [
      'a day to come',
      request('Thick', '5', { date: dayOf('2026-04-04') }),
      'The making is dated 4 Apr 2026, after today: give the day on which it was made.',
    ],
    [
      'a place that isn’t there',
      request('Thick', '5', { storedAt: 'Frige' }),
      'There is no place called Frige in Places. Did you mean Fridge?',
    ],
    ['nothing', request('Thick', '0'), 'What is made must be more than 0, to 6 decimals.'],
    [
      'a yield of nothing',
      request('Thick', '5', { yielded: decimal('0.0000001') }),
      'What is made must be more than 0, to 6 decimals.',
    ],
    [
      'an amount of what is not counted',
      request('Thick', '5', {
        asUsed: [{ material: 'Water', quantity: decimal('1'), unit: unitNamed('ml'), lot: null }],
      }),
      'Water is not counted, so no amount of it is drawn: leave out what was used of it.',
    ],
    [
      'its own product among what was taken',
      request('Thick', '5', {
        asUsed: [{ material: 'Paste', quantity: decimal('1'), unit: unitNamed('g'), lot: null }],
      }),
      'Paste is what Thick makes, so none of it goes in: give the amounts of its ingredients.',
    ],
  ])('%s', (_, asked, message) => {
    expect(refusal(asked)).toBe(message);
  });

  test('a recipe that has its own product among its parts', () => {
    const parts = [...BENCH.RecipeParts, { Recipe: 'Thick', Material: 'paste', Quantity: 1, Unit: 'g' }];
    expect(refusal(request('Thick', '5'), { ...BENCH, RecipeParts: parts })).toMatch(
      /two names in Materials/,
    );
  });

  test('a product that is not counted, or not in Materials', () => {
    const uncounted = MATERIALS.map((row) => (row['Material'] === 'Paste' ? { ...row, Counted: 'no' } : row));
    expect(refusal(request('Thick', '5'), { ...BENCH, Materials: uncounted })).toMatch(/clear Counted/);
    const without = MATERIALS.filter((row) => row['Material'] !== 'Paste');
    expect(refusal(request('Thick', '5'), { ...BENCH, Materials: without })).toMatch(/not in Materials/);
  });

  test('Movements without Into', () => {
    const literal: Literal = { ...BENCH, Movements: { rows: [], without: ['Into'] } };
    const answer = makeBatch(snapshotOf(literal), request('Thick', '5'), today, randomFrom(1));
    expect(answer).toMatchObject({ ok: false, message: expect.stringMatching(/no column Into/) });
  });
});
