import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { expiredLots } from '../../src/actions/discard-expired.ts';
import { exact } from '../../src/core/exact-number.ts';
import { newInTables } from '../../src/pane/shell/upgrade-words.ts';
import { asOfDay, booksAsOf, showDay } from '../../src/pane/stock/as-of.ts';
import { otherDayWords } from '../../src/pane/stock/as-of-words.ts';
import { isPhOutside, phRangeWords } from '../../src/pane/stock/ph-words.ts';
import { yearsToChoose } from '../../src/pane/stock/years.ts';
import { disposalRules } from '../../src/pane/today/disposal-rules.ts';
import { dayOf } from '../helpers/literal.ts';
import { booksIn, opened, today } from '../helpers/opened-session.ts';
import { figuresOf, SHELVES } from './helpers.ts';

describe('figures of another day', () => {
  test('are those of that day, and nothing can be posted from them', async () => {
    const { session } = await opened(SHELVES);
    const books = booksIn(session);
    const day = dayOf('2026-03-01');
    const past = booksAsOf(books, day);
    expect(past.stock).toEqual(checkWorkbook(books.snapshot, day).stock);
    expect(past.stock).not.toEqual(books.stock);
    expect(past.readingOnly).toMatch(/^These are the figures of 1 Mar 2026: nothing can be posted/);
    const barred = booksAsOf({ ...books, readingOnly: 'It is only read.' }, day);
    expect(barred.readingOnly).toBe('It is only read.');
  });

  test('today is no other day', () => {
    showDay(dayOf('2026-03-01'), today);
    expect(asOfDay.value).toBe(dayOf('2026-03-01'));
    showDay(today, today);
    expect(asOfDay.value).toBeNull();
    expect(otherDayWords(dayOf('2026-03-01'), today).title).toBe('Figures of 1 Mar 2026');
    expect(otherDayWords(dayOf('2026-05-01'), today).title).toBe('Figures for 1 May 2026');
  });
});

test('a pH is judged by the limits of its material', async () => {
  const { session } = await opened(SHELVES);
  const { material } = figuresOf(session, 'B-1').lot;
  expect(phRangeWords(material)).toBe('7.5 to 9');
  expect([7.4, 7.5, 9, 9.1].map((ph) => isPhOutside(material, exact(ph)))).toEqual([
    true,
    false,
    false,
    true,
  ]);
  const { material: paste } = figuresOf(session, 'P-1').lot;
  expect([phRangeWords(paste), isPhOutside(paste, exact(1))]).toEqual([null, false]);
});

test('the years go back to the first lot, and rules of disposal are told once', async () => {
  const { session } = await opened(SHELVES);
  const { ledger } = booksIn(session);
  expect(yearsToChoose(ledger.studio, dayOf('2028-01-01'))).toEqual([2028, 2027, 2026]);
  const expired = expiredLots(ledger, today);
  expect(disposalRules([...expired, ...expired])).toEqual([
    { material: 'Wheat starch paste', rule: 'Materials says nothing about its disposal' },
  ]);
});

test('what the newer tables add is told by table, those that get the same together', () => {
  const columns = ['Retested', 'Retested until'];
  expect(
    newInTables({
      tables: ['Counts'],
      columns: [
        { table: 'Places', columns: ['Dark'] },
        { table: 'Paste', columns },
        { table: 'Tissue', columns },
      ],
    }),
  ).toEqual([
    'The table Counts, on a tab of its own',
    'In Places: the column Dark',
    'In Paste and Tissue: the columns Retested and Retested until',
  ]);
});
