import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { givenQuotes, latestQuote } from '../../src/pane/quote/given.ts';
import { basisWords, groupOf, measureWords, usedWords } from '../../src/pane/quote/quote-words.ts';
import { sumsOf } from '../../src/pane/quote/sums.ts';
import { percent } from '../helpers/literal.ts';
import { BENCH, booksOf, openSession } from './helpers.ts';

async function quoted(literal = BENCH, job = '26-015') {
  const { session } = await openSession(literal);
  const answer = session.quote(job);
  if (!answer.ok) throw new Error(answer.message);
  return { session, answer, currency: booksOf(session).settings.currency };
}

describe('the sums', () => {
  test('name what there is, and leave out what is not charged', async () => {
    const { answer } = await quoted();
    expect(sumsOf(answer.quote).map(({ name }) => name)).toEqual([
      'Consumables',
      'Markup',
      'Bench time, 95 minutes',
      'Tax',
      'Total',
    ]);
  });

  test('a line of unknown cost is told in the sums', async () => {
    const { answer } = await quoted({ ...BENCH, ReleasePaper: [], Offers: [] });
    const names = sumsOf(answer.quote).map(({ name }) => name);
    expect(names[0]).toBe('Consumables, without 1 line of unknown cost');
    expect(names.at(-1)).toBe('Total of what is known');
  });

  test('what is shown adds up to the total that is shown', async () => {
    const share = fc.integer({ min: 0, max: 60 });
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 1, maxLength: 4 }),
        share,
        share,
        fc.integer({ min: 0, max: 80 }),
        async (extents, tax, markup, smallest) => {
          const { answer } = await quoted({
            ...BENCH,
            Plan: extents.map((Extent) => ({ Job: '26-015', Treatment: 'Mend tear', Extent })),
            Settings: [
              { Setting: 'currency', Value: 'EUR' },
              { Setting: 'tax %', Value: tax },
              { Setting: 'markup %', Value: percent(markup) },
              { Setting: 'bench rate per hour', Value: 47.5 },
              { Setting: 'smallest consumables charge', Value: smallest },
            ],
          });
          const sums = sumsOf(answer.quote);
          const total = sums.find(({ isTotal }) => isTotal);
          const parts = sums.filter(({ isTotal }) => !isTotal).map(({ coins }) => coins);
          expect(parts.reduce((all, coins) => all + coins, 0n)).toBe(total?.coins);
          const lines = answer.quote.lines.reduce((all, { amount }) => all + (amount ?? 0n), 0n);
          expect(sums[0]?.coins).toBe(lines);
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('a line', () => {
  test('says how much, what one costs, on what basis and for what', async () => {
    const { answer, currency } = await quoted();
    expect(answer.quote.lines.map((line) => [measureWords(line, currency), basisWords(line)])).toEqual([
      ['4 sheets, 4.25 per sheet', 'at cost of lots T-1, T-2'],
      ['40 g, 0.01 per g', 'at cost of lot P-1'],
      ['8 uses, 0.40 per use', 'at cost of lot R-1'],
      ['160 ml', 'at today’s price'],
    ]);
    expect(answer.quote.lines.map(groupOf)).toContain('A: Mend tear');
  });

  test('at today’s price where no lot is there', async () => {
    const { answer } = await quoted({ ...BENCH, Tissue: [] });
    expect(answer.quote.lines.map(basisWords)[0]).toBe('at today’s price');
    const without = await quoted({ ...BENCH, ReleasePaper: [] });
    expect(without.answer.quote.lines.map(basisWords)[2]).toBe('no lot and no offer says what it costs');
  });
});

describe('what was used so far', () => {
  test('in the currency, and what of it has no cost', async () => {
    const { currency } = await quoted();
    expect(usedWords({ cost: 1234n, withoutCost: 0 }, currency)).toBe(
      'Taken from stock for this job so far: 12.34 EUR.',
    );
    expect(usedWords({ cost: 0n, withoutCost: 2 }, currency)).toMatch(
      /0\.00 EUR, and 2 movements of lots without a cost\.$/,
    );
  });
});

describe('quotes written down', () => {
  test('each time as the next version, the latest first, with the total that was shown', async () => {
    const { session, answer } = await quoted();
    const studio = () => booksOf(session).ledger.studio;
    expect(latestQuote(studio(), '26-015')).toBeUndefined();
    for (const version of [1, 2]) {
      const done = await session.freeze('26-015');
      expect(done).toMatchObject({ kind: 'done' });
      expect(latestQuote(studio(), ' 26-015 ')?.version).toBe(version);
    }
    const given = givenQuotes(studio(), '26-015');
    expect(given.map(({ version, state }) => [version, state])).toEqual([
      [2, 'Given'],
      [1, 'Given'],
    ]);
    expect(given[0]?.total?.mul(100).valueOf()).toBe(Number(answer.quote.total));
    expect(givenQuotes(studio(), '26-014')).toEqual([]);
  });
});
