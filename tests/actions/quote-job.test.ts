import { describe, expect, test } from 'vitest';
import { quotePlan } from '../../src/actions/quote-job.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { Bench, randomFrom } from '../helpers/bench.ts';
import { dayOf, type Literal } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const today = dayOf(TODAY);

function quote(literal: Literal, job = '26-015') {
  const answer = quotePlan(snapshotOf(literal), job, false, today, randomFrom(1));
  if (!answer.ok) throw new Error(answer.message);
  return answer;
}

function freeze(bench: Bench) {
  let frozen: { readonly quote: string; readonly version: number } | null = null;
  bench.do((snapshot, random) => {
    const answer = quotePlan(snapshot, '26-015', true, today, random);
    if (answer.ok) frozen = answer.frozen;
    return answer.ok ? { ok: true as const, changes: answer.frozen?.changes ?? [] } : answer;
  });
  return frozen;
}

describe('a quote', () => {
  test('costs the plan line by line, and adds up', () => {
    const { quote: made } = quote(STUDIO, ' 26-015'.trim());
    expect(made.lines.map(({ what, amount, basis, lots }) => [what, amount, basis, lots])).toEqual([
      ['Mend tear: Repair tissue 5', 1700n, 'lots', ['T-1', 'T-2']],
      ['Mend tear: Wheat starch paste', 50n, 'lots', ['P-1']],
      ['Mend tear: Silicone release paper', 320n, 'lots', ['R-1']],
      ['Mend tear: Deionised water', 0n, 'replacement', []],
    ]);
    // 20.70 + 10 % = 22.77; 15 + 8 × 10 minutes at 60 an hour = 95.00; 20 % of 117.77 = 23.55.
    expect(made).toMatchObject({
      consumables: 2070n,
      markup: 207n,
      benchTime: 9500n,
      other: 0n,
      tax: 2355n,
      total: 14132n,
    });
  });

  test('of a lot without an identifier names its row, as nothing is written', () => {
    const tissue = [{ ...STUDIO.Tissue[0], Lot: null }];
    expect(quote({ ...STUDIO, Tissue: tissue }).quote.lines[0]?.lots).toEqual(['2']);
  });

  test('of an unknown job is refused, and one of a newer workbook is not', () => {
    const answer = quotePlan(snapshotOf(STUDIO), '26-05', false, today, randomFrom(1));
    expect(answer).toEqual({
      ok: false,
      message: 'There is no job called 26-05 in Jobs. Did you mean 26-015 or 26-014?',
    });
    const newer = [...STUDIO.Settings.slice(1), { Setting: 'tables version', Value: 3 }];
    expect(quote({ ...STUDIO, Settings: newer }).quote.total).toBe(14132n);
    expect(
      quotePlan(snapshotOf({ ...STUDIO, Settings: newer }), '26-015', true, today, randomFrom(1)),
    ).toMatchObject({ ok: false });
  });
});

describe('a quote that is kept', () => {
  test('stands in Quotes and QuoteLines with the figures that were answered', () => {
    const bench = new Bench(STUDIO);
    const frozen = freeze(bench);
    expect(frozen).toMatchObject({ version: 1 });
    const [head] = bench.rows('Quotes');
    expect(head).toEqual({
      Quote: expect.stringMatching(/^Q/),
      Version: 1,
      Job: '26-015',
      'Made on': serialOfDay(today, 1900),
      'Valid until': serialOfDay(dayOf('2026-06-02'), 1900),
      State: 'Given',
      Currency: 'EUR',
      Consumables: 20.7,
      Markup: 2.07,
      'Bench time': 95,
      Other: 0,
      Tax: 23.55,
      Total: 141.32,
    });
    const lines = bench.rows('QuoteLines');
    expect(
      lines.map(({ Line, Item, Material, Quantity, Unit, Each, Amount, Basis }) => [
        Line,
        Item,
        Material,
        Quantity,
        Unit,
        Each,
        Amount,
        Basis,
      ]),
    ).toEqual([
      ['1', 'A', 'Repair tissue 5', 4, 'sheet', 4.25, 17, 'lots'],
      ['2', 'A', 'Wheat starch paste', 40, 'g', 0.01, 0.5, 'lots'],
      ['3', 'A', 'Silicone release paper', 8, 'use', 0.4, 3.2, 'lots'],
      ['4', 'A', 'Deionised water', 160, 'ml', 0, 0, 'replacement'],
    ]);
    for (const line of lines) {
      expect(line).toMatchObject({
        Quote: head?.['Quote'],
        Version: 1,
        How: expect.stringMatching(/× 8 tear/),
      });
    }
  });

  test('again is a new version of the same quote, and the first stays as it was', () => {
    const bench = new Bench(STUDIO);
    freeze(bench);
    const first = [bench.rows('Quotes'), bench.rows('QuoteLines')];
    expect(freeze(bench)).toMatchObject({ quote: first[0]?.[0]?.['Quote'], version: 2 });
    expect(bench.rows('Quotes').slice(0, 1)).toEqual(first[0]);
    expect(bench.rows('QuoteLines').slice(0, 4)).toEqual(first[1]);
    expect(bench.rows('Quotes')[1]).toMatchObject({ Version: 2, Replaces: '1' });
  });

  test('of a job without a plan, or in a workbook without Quotes, is refused', () => {
    const kept = (literal: Literal, job: string) =>
      quotePlan(snapshotOf(literal), job, true, today, randomFrom(1));
    expect(kept(STUDIO, '26-014')).toEqual({
      ok: false,
      message: 'Job 26-014 has no row in Plan, so there is nothing to put into a quote.',
    });
    const { QuoteLines: _, ...without } = STUDIO;
    expect(kept(without, '26-015')).toMatchObject({
      ok: false,
      message: expect.stringMatching(/no table QuoteLines/),
    });
  });
});
