import { describe, expect, test } from 'vitest';
import { ask } from '../helpers/ask.ts';
import { call } from '../helpers/fake-terminal.ts';
import { date } from '../helpers/literal.ts';
import { fileOf } from '../helpers/xlsx.ts';
import { YEARS } from '../helpers/years.ts';

const DAY = ['--on', '2026-02-01'];

describe('closing', () => {
  test('prints what is left of each material, lot by lot, at cost, and leaves the rest to the accountant', async () => {
    const file = await fileOf(YEARS);
    const { code, out, err } = await call(['closing', file, ...DAY]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.split('\n').slice(0, 16)).toEqual([
      'Closing stock on 1 Feb 2026, amounts in EUR',
      '',
      'material       lot  received      left  unit    cost of one  worth  good until   state',
      '─────────────  ───  ───────────  ─────  ──────  ───────────  ─────  ───────────  ────────',
      'Repair tissue                    8.125  sheets               32.50',
      '               T-1  10 Jan 2024  8.125  sheets            4  32.50  21 Apr 2032',
      'Wheat starch                       420  g                     8.40',
      '               W-1  10 Jan 2024    420  g              0.02   8.40',
      'Starch paste                       150  g                     0.75',
      '               P-2  1 Aug 2024     150  g             0.005   0.75  6 Aug 2024   Gone off',
      'Ethanol                           1400  ml                       ?',
      '               B-1  10 Jan 2024    0.9  l                 ?      ?',
      '               B-2  1 Dec 2025     500  ml            0.016   8.00  31 Dec 2025  Gone off',
      '',
      'In all 49.65, and 1 lot without a cost, which it misses.',
      '',
    ]);
    expect(out.replaceAll('\n', ' ')).toContain('the lower of cost and what it would fetch');
  });

  test('as JSON: materials, lots, total, what is known of it, and how many lots are unknown', async () => {
    const answer = await ask(['closing', await fileOf(YEARS), ...DAY]);
    expect(answer).toMatchObject({
      asOf: '2026-02-01',
      currency: 'EUR',
      basis: 'cost',
      total: null,
      known: '49.65',
      unknown: 1,
    });
    expect(answer.materials[2]).toEqual({
      material: 'Starch paste',
      unit: 'g',
      left: 150,
      worth: '0.75',
      lots: [
        {
          lot: 'P-2',
          received: '2024-08-01',
          left: 150,
          unit: 'g',
          unitCost: 0.005,
          worth: '0.75',
          goodUntil: '2024-08-06',
          state: 'Usable',
          expired: true,
        },
      ],
    });
    const early = await ask(['closing', await fileOf(YEARS), '--on', '2024-02-03']);
    expect(early.materials.map(({ material, left }: Record<string, unknown>) => [material, left])).toEqual([
      ['Repair tissue', 9.75],
      ['Wheat starch', 460],
      ['Starch paste', 140],
      ['Ethanol', 1000],
    ]);
  });
});

describe('check --on a past day', () => {
  test('answers as the rows dated up to it say, with what was open, set aside and received by then', async () => {
    const file = await fileOf({
      ...YEARS,
      Buffers: [
        { ...YEARS.Buffers[0], State: 'Set aside', 'State since': date('2024-06-01') },
        YEARS.Buffers[1],
      ],
    });
    const at = async (day: string) => {
      const { code, out } = await call(['check', file, '--on', day, '--json']);
      expect(code).toBe(0);
      const { lots } = JSON.parse(out) as { lots: Record<string, unknown>[] };
      return lots.map(({ lot, left, usable, goodUntil, state }) => [lot, left, usable, goodUntil, state]);
    };
    expect(await at('2024-02-02')).toEqual([
      ['T-1', 10, true, null, 'Usable'],
      ['W-1', 460, true, null, 'Usable'],
      ['P-1', 200, true, '2024-02-06', 'Usable'],
      ['P-2', 0, false, '2024-08-06', 'Usable'],
      ['B-1', 1, true, null, 'Usable'],
      ['B-2', 0, false, '2025-12-31', 'Usable'],
    ]);
    expect(await at('2024-03-03')).toEqual([
      ['T-1', 9.5, true, '2032-04-21', 'Usable'],
      ['W-1', 460, true, null, 'Usable'],
      ['P-1', 0, false, '2024-02-06', 'Usable'],
      ['P-2', 0, false, '2024-08-06', 'Usable'],
      ['B-1', 1, true, null, 'Usable'],
      ['B-2', 0, false, '2025-12-31', 'Usable'],
    ]);
    expect((await at('2024-06-01'))[4]).toEqual(['B-1', 1, false, null, 'Set aside']);
    expect((await at('2025-12-31'))[5]).toEqual(['B-2', 500, true, '2025-12-31', 'Usable']);
    expect((await at('2026-01-01'))[5]).toEqual(['B-2', 500, false, '2025-12-31', 'Usable']);
  });
});

describe('disposal', () => {
  test('prints what a year threw away, by which rule, whose it was', async () => {
    const { code, out } = await call(['disposal', await fileOf(YEARS), '--year', '2024']);
    expect(code).toBe(0);
    expect(out.split('\n').slice(0, 17)).toEqual([
      'Thrown away in 2024, amounts in EUR',
      '',
      'Starch paste: 140 g, worth 0.70',
      'Disposal: general waste',
      'day         lot  quantity  unit  worth  for         note',
      '──────────  ───  ────────  ────  ─────  ──────────  ────────',
      '7 Feb 2024  P-1       140  g      0.70  the studio  gone off',
      '',
      'Ethanol: 100 ml, worth ?',
      'Disposal: licensed carrier',
      'Hazards: H225',
      'day         lot  quantity  unit  worth  for',
      '──────────  ───  ────────  ────  ─────  ──────────',
      '1 Sep 2024  B-1       100  ml        ?  job 24-001',
      '',
      "The studio's own loss: 0.70. Normal waste of jobs: 0.00. It misses 1 row of lots without a cost.",
      '',
    ]);
    expect(out).toContain("follow the supplier's safety");
  });

  test('as JSON; without a year the one of today', async () => {
    const file = await fileOf(YEARS);
    const answer = await ask(['disposal', file, '--year', '2024']);
    expect(answer).toMatchObject({
      year: 2024,
      studioLoss: '0.70',
      jobWaste: '0.00',
      withoutCost: 1,
      undated: [],
    });
    expect(answer.materials[1]).toEqual({
      material: 'Ethanol',
      unit: 'ml',
      quantity: 100,
      worth: '0.00',
      withoutCost: 1,
      disposal: 'licensed carrier',
      hazards: 'H225',
      rows: [
        {
          movement: 'M-11',
          date: '2024-09-01',
          lot: 'B-1',
          quantity: 100,
          unit: 'ml',
          worth: null,
          job: '24-001',
          borneBy: 'job',
          by: 'waste',
          note: null,
        },
      ],
    });
    expect(await ask(['disposal', file, '--on', '2025-05-05'])).toMatchObject({ year: 2025, materials: [] });
    const { code, err } = await call(['disposal', file, '--year', '24']);
    expect({ code, err }).toEqual({ code: 2, err: '--year holds “24”: a year is right, such as 2026.' });
  });
});
