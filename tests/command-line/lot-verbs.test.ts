import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { call } from '../helpers/fake-terminal.ts';
import { date, type Literal } from '../helpers/literal.ts';
import { STUDIO } from '../helpers/studio.ts';
import { fileOf, rowsByHeader } from '../helpers/xlsx.ts';

const BENCH: Literal = {
  ...STUDIO,
  Materials: [
    ...STUDIO.Materials,
    {
      Material: 'Borax buffer',
      Kind: 'Buffer',
      'Stock unit': 'ml',
      'pH low': 9,
      'pH high': 9.4,
      'Life opened days': 30,
      Hazards: 'H360FD',
      Disposal: 'collect with aqueous waste',
    },
    { Material: 'Blotter', Kind: 'Release paper', 'Stock unit': 'sheet', 'Uses per unit': 10 },
  ],
  Buffers: [
    {
      Lot: 'B-1',
      Material: 'Borax buffer',
      Received: date('2026-01-10'),
      Quantity: 1500,
      Unit: 'ml',
      Cost: 10,
      'Use by': date('2027-01-10'),
      Place: 'Fridge',
      pH: 9.2,
    },
    {
      Lot: 'B-0',
      Material: 'Borax buffer',
      Received: date('2025-01-10'),
      Quantity: 200,
      Unit: 'ml',
      Cost: 1.5,
      'Use by': date('2026-03-01'),
    },
  ],
  ReleasePaper: [
    ...STUDIO.ReleasePaper,
    {
      Lot: 'F-1',
      Material: 'Blotter',
      Received: date('2026-01-05'),
      Quantity: 4,
      Unit: 'sheet',
      Cost: 20,
    },
  ],
  Movements: [
    {
      Movement: 'M-1',
      Date: date('2026-03-01'),
      Kind: 'Use',
      Lot: 'F-1',
      Quantity: 6,
      Unit: 'use',
      Job: '26-014',
    },
  ],
};

async function json(words: readonly string[], code = 0) {
  const answer = await call([...words, '--json']);
  expect({ code: answer.code, err: answer.err }).toEqual({ code, err: '' });
  return JSON.parse(answer.out);
}

const rows = async (file: string, tab: string) => rowsByHeader(new Uint8Array(await readFile(file)), tab);

describe('open', () => {
  test('splits a container off and saves both lots', async () => {
    const file = await fileOf(BENCH);
    const answer = await json(['open', file, '--lot', 'B-1', '--quantity', '0.5 l', '--by', 'AK']);
    expect(answer).toMatchObject({
      lot: expect.stringMatching(/^L\w{8}$/),
      material: 'Borax buffer',
      left: 500,
      unit: 'ml',
      usesLeft: null,
      state: 'Usable',
      opened: '2026-04-03',
      goodUntil: '2026-05-03',
      goodUntilBecause: 'opened 3 Apr 2026, keeps 30 days',
      from: 'B-1',
      posting: expect.stringMatching(/^P\w{8}$/),
      entries: [],
      movements: [{ kind: 'Count', lot: 'B-1', quantity: -500, unit: 'ml', job: null, cost: '3.33' }],
      shortfalls: [],
    });
    expect(Object.keys(answer)).toContain('notices');
    const saved = await rows(file, 'Buffers');
    expect(saved).toHaveLength(3);
    expect(saved[2]).toMatchObject({ Lot: answer.lot, Quantity: 500, Cost: 3.33 });
    const undone = await call(['undo', file, '--posting', answer.posting]);
    expect(undone.code).toBe(0);
    const check = await json(['check', file]);
    const lots = new Map(
      check.lots.map((each: { lot: string; left: number; worth: string }) => [each.lot, each]),
    );
    expect(lots.get('B-1')).toMatchObject({ left: 1500, worth: '10.00' });
    expect(lots.get(answer.lot)).toMatchObject({ left: 0, worth: '0.00' });
  });

  test('reads well, also for the whole lot', async () => {
    const file = await fileOf(BENCH);
    const part = await call(['open', file, '--lot', 'b-1', '--quantity', '500 ml', '--date', '2026-04-01']);
    expect(part.out.replace(/\n\s*/g, ' ')).toMatch(
      /^Lot L\w{8} \(Borax buffer\), 500 ml from lot B-1, is open since 1 Apr 2026; good until 1 May 2026 \(opened 1 Apr 2026, keeps 30 days\)\. It takes 3\.33 EUR of the cost along\. Left in lot B-1: 1000 ml\./,
    );
    const whole = await call(['open', file, '--lot', 'B-1']);
    expect(whole.out).toContain('Lot B-1 (Borax buffer) is open since 3 Apr 2026; good until 3 May 2026');
    expect(await json(['lot', file, '--lot', 'B-1'])).toMatchObject({ opened: '2026-04-03' });
  });

  test('ends with 2 and saves nothing where it can’t', async () => {
    const file = await fileOf(BENCH);
    const before = await readFile(file);
    for (const [words, message] of [
      [['--lot', 'B-1', '--quantity', '5'], '--quantity holds “5”'],
      [['--lot', 'B-1', '--quantity', '9000 ml'], 'Only 1500 ml are left'],
      [['--lot', 'nil'], 'There is no lot called nil'],
      [[], 'jarleaf open needs --lot'],
    ] as const) {
      const answer = await call(['open', file, ...words]);
      expect([answer.code, answer.out]).toEqual([2, '']);
      expect(answer.err).toContain(message);
    }
    expect((await readFile(file)).equals(before)).toBe(true);
  });
});

describe('retest', () => {
  test('writes the test down and says until when the lot is good', async () => {
    const file = await fileOf(BENCH);
    const words = ['retest', file, '--lot', 'B-0', '--until', '2026-06-30', '--by', 'R. L.', '--ph', '9.6'];
    const answer = await json(words);
    expect(answer).toMatchObject({
      lot: 'B-0',
      goodUntil: '2026-06-30',
      goodUntilBecause: 'retested 3 Apr 2026 by R. L.',
      retested: '2026-04-03',
      retestedUntil: '2026-06-30',
      retestedBy: 'R. L.',
      ph: 9.6,
      posting: null,
      movements: [],
    });
    expect(
      answer.notices.map(({ code, subject }: { code: string; subject: string }) => `${code} ${subject}`),
    ).toContain('ph-outside B-0');
    expect(await rows(file, 'Buffers')).toMatchObject([{}, { 'Retested by': 'R. L.', pH: 9.6 }]);
    const again = await call([...words.slice(0, 8), '--date', '2026-04-02']);
    expect(again.out).toContain(
      'Lot B-0 (Borax buffer) was tested on 2 Apr 2026 by R. L. and found good until 30 Jun 2026.',
    );
    expect(again.out).toContain('is the judgement of the person who tested it');
  });

  test('needs who, until when, and the columns', async () => {
    const file = await fileOf({
      ...BENCH,
      Buffers: { rows: BENCH['Buffers'] as never, without: ['Retested until'] },
    });
    const words = ['retest', file, '--lot', 'B-0', '--until', '2026-06-30'];
    expect(await call(words)).toMatchObject({ code: 2, err: expect.stringContaining('needs --by') });
    expect(await call([...words.slice(0, 4), '--by', 'AK'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('needs --until'),
    });
    expect(await call([...words, '--by', 'AK'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('has no column Retested until'),
    });
  });
});

describe('discard', () => {
  test('throws away what has expired, and undo brings it back', async () => {
    const file = await fileOf(BENCH);
    const before = await readFile(file);
    const plan = await json(['discard', file, '--plan']);
    expect(plan).toMatchObject({
      lots: [
        {
          lot: 'B-0',
          material: 'Borax buffer',
          quantity: 200,
          unit: 'ml',
          goodUntil: '2026-03-01',
          because: 'printed date',
          worth: '1.50',
          disposal: 'collect with aqueous waste',
        },
      ],
      worth: '1.50',
      withoutCost: 0,
      posting: null,
      movements: [],
    });
    expect((await readFile(file)).equals(before)).toBe(true);
    const done = await json(['discard', file]);
    expect(done).toMatchObject({
      lots: plan.lots,
      movements: [{ kind: 'Waste', lot: 'B-0', quantity: 200, job: null, cost: '1.50' }],
    });
    expect((await call(['undo', file, '--posting', done.posting])).code).toBe(0);
    expect(await json(['discard', file, '--plan'])).toMatchObject({ lots: plan.lots, worth: '1.50' });
  });

  test('shows the note on disposal, and defers to those who say how', async () => {
    const file = await fileOf(BENCH);
    const { out, code } = await call(['discard', file, '--lot', 'B-0']);
    expect(code).toBe(0);
    const text = out.replace(/\n\s*/g, ' ');
    expect(text).toContain('Borax buffer: collect with aqueous waste');
    expect(text).toContain('Worth in all 1.50: the studio’s loss, and no job’s cost.');
    expect(text).toContain('Throw it away by your local rules and the supplier’s safety data sheet');
    const again = await call(['discard', file]);
    expect(again).toEqual({ code: 0, out: 'Nothing has gone off with something left in it.', err: '' });
    expect(await call(['discard', file, '--plan'])).toEqual(again);
  });

  test('refuses what has not expired', async () => {
    const file = await fileOf(BENCH);
    const answer = await call(['discard', file, '--lot', 'B-1']);
    expect(answer).toMatchObject({ code: 2, out: '', err: expect.stringContaining('so it has not expired') });
    expect(await call(['discard', file, '--plan', '--out', 'x.xlsx'])).toMatchObject({ code: 2, out: '' });
  });
});

describe('reuse', () => {
  test('retires, sets aside and brings back', async () => {
    const file = await fileOf(BENCH);
    const reuse = (...words: string[]) => json(['reuse', file, '--lot', 'F-1', ...words]);
    expect(await reuse('--retire', '--presses', '6')).toMatchObject({
      lot: 'F-1',
      usesLeft: 30,
      left: 3,
      movements: [{ kind: 'Waste', quantity: 4, unit: 'use', cost: '2.00' }],
    });
    expect(await reuse('--wet', '--date', '2026-04-02')).toMatchObject({ state: 'Set aside', posting: null });
    expect(await reuse('--back', '--how', 'washed', '--uses', '5')).toMatchObject({
      state: 'Usable',
      usesLeft: 35,
      movements: [{ kind: 'Put back', quantity: 5, cost: '-2.50' }],
    });
    const some = await reuse('--wet', '--sheets', '2');
    expect(some).toMatchObject({ lot: expect.stringMatching(/^L/), state: 'Set aside', usesLeft: 20 });
  });

  test('reads well', async () => {
    const file = await fileOf(BENCH);
    const reuse = async (...words: string[]) =>
      (await call(['reuse', file, '--lot', 'F-1', ...words])).out.replace(/\n\s*/g, ' ');
    const retired = await reuse('--retire');
    expect(retired).toMatch(
      /^Lot F-1 \(Blotter\): a sheet is retired, 5 uses are written off\. Uses left: 29 uses\./,
    );
    expect(retired).toContain('Nobody said how many presses the sheet has done');
    expect(await reuse('--wet')).toContain('is set aside since 3 Apr 2026: nothing is drawn from it');
    expect(await reuse('--back', '--how', 'dried')).toContain(
      'is back in use, dried on 3 Apr 2026. Uses left: 29 uses.',
    );
    expect(await reuse('--back', '--how', 'washed', '--uses', '1')).toContain(': 1 use put back.');
  });

  test('takes one deed at a time, with its own options', async () => {
    const file = await fileOf(BENCH);
    for (const [words, message] of [
      [[], 'needs one of --retire, --wet and --back'],
      [['--wet', '--back'], 'needs one of'],
      [['--wet', '--presses', '3'], '--presses goes with --retire.'],
      [['--back', '--how', 'baked'], 'dried or washed is right'],
      [['--back'], 'needs --how'],
    ] as const) {
      const answer = await call(['reuse', file, '--lot', 'F-1', ...words]);
      expect(answer).toMatchObject({ code: 2, out: '', err: expect.stringContaining(message) });
    }
    const silicone = await call(['reuse', file, '--lot', 'R-1', '--back', '--how', 'washed', '--uses', '2']);
    expect(silicone).toMatchObject({ code: 2, err: expect.stringContaining('coated with silicone') });
  });
});

describe('lot', () => {
  test('tells everything about one lot, as of a day', async () => {
    const file = await fileOf(BENCH);
    const now = await json(['lot', file, '--lot', 'F-1']);
    expect(now).toMatchObject({
      lot: 'F-1',
      asOf: '2026-04-03',
      currency: 'EUR',
      table: 'ReleasePaper',
      received: '2026-01-05',
      quantity: 4,
      unit: 'sheet',
      left: 3.4,
      usesLeft: 34,
      uses: 40,
      cost: '20.00',
      costPerUse: '0.50',
      worth: '17.00',
      state: 'Usable',
      usable: true,
      goodUntil: null,
      limits: [],
      retested: null,
      movements: [
        {
          movement: 'M-1',
          date: '2026-03-01',
          kind: 'Use',
          quantity: 6,
          unit: 'use',
          job: '26-014',
          left: 3.4,
          cost: '3.00',
          isReversed: false,
        },
      ],
    });
    expect(await json(['lot', file, '--lot', 'F-1', '--on', '2026-02-28'])).toMatchObject({
      usesLeft: 40,
      worth: '20.00',
      movements: [],
    });
  });

  test('a test that comes later is not reached yet', async () => {
    const file = await fileOf(BENCH);
    await json(['retest', file, '--lot', 'B-0', '--until', '2026-06-30', '--by', 'AK']);
    const before = await json(['lot', file, '--lot', 'B-0', '--on', '2026-04-02']);
    expect(before).toMatchObject({ goodUntil: '2026-03-01', usable: false, retested: null });
    expect(before.limits).toEqual([{ day: '2026-03-01', reason: 'printed date' }]);
    const after = await json(['lot', file, '--lot', 'B-0']);
    expect(after.retested).toEqual({ on: '2026-04-03', until: '2026-06-30', by: 'AK' });
    expect(after.limits).toEqual([{ day: '2026-06-30', reason: 'retested 3 Apr 2026 by AK' }]);
  });

  test('reads well, with hazards and every limit', async () => {
    const file = await fileOf(BENCH);
    const { out, code } = await call(['lot', file, '--lot', 'B-1', '--on', '2026-04-03']);
    expect(code).toBe(0);
    for (const line of [
      'Lot B-1 (Borax buffer) on 3 Apr 2026, amounts in EUR',
      '  Place: Fridge (cold)',
      '  Left: 1500 ml',
      '  pH: 9.2; 9 to 9.4 by Materials',
      '  Good until 10 Jan 2027 (printed date).',
      'Disposal: collect with aqueous waste',
      'None by that day.',
    ]) {
      expect(out.split('\n')).toContain(line);
    }
    expect(out).toContain('H360FD: ');
    expect(await call(['lot', file, '--lot', 'B-9'])).toMatchObject({ code: 2, out: '' });
    const moved = await call(['lot', file, '--lot', 'F-1']);
    expect(moved.out).toMatch(/1 Mar 2026 {2}Use {3}26-014 +6 {2}uses {2}3\.4 sheets +3\.00/);
    expect(moved.out).toContain('  Uses left: 34 of 40 uses');
    expect(moved.out).toContain('  Cost per use: 0.50');
  });
});
