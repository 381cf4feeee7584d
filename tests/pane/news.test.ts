import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../src/core/draw.ts';
import { createNews } from '../../src/pane/news.ts';
import type { Done } from '../../src/session/session-state.ts';

function drew(sentence: string, posting: string | null, drawn: 'yes' | 'part'): Done {
  const movements = posting === null ? [] : [{}];
  const drawing = { movements, entries: [{ drawn }], shortfalls: [] } as unknown as Drawing;
  return { kind: 'done', sentence, posting, drawing, remarks: [] };
}

describe('what was done last', () => {
  test('can be taken back where it asks for it', () => {
    const news = createNews();
    news.take(drew('Drawn.', 'P1', 'yes'), true);
    expect(news.done.value).toMatchObject({ sentence: 'Drawn.', posting: 'P1' });
    news.take(drew('Taken back.', 'P2', 'yes'), false);
    expect(news.done.value).toMatchObject({ sentence: 'Taken back.', posting: null });
  });

  test('stays within reach where a second drawing finds nothing more', () => {
    const news = createNews();
    news.take(drew('6 entries: taken from 9 lots.', 'P1', 'part'), true);
    news.take(drew('1 entry: nothing taken from stock.', null, 'part'), true);
    expect(news.done.value).toMatchObject({
      sentence: '6 entries: taken from 9 lots.',
      remarks: ['1 entry: nothing taken from stock.'],
      posting: 'P1',
    });
  });

  test('gives way to a posting that takes nothing: a delivery that came in', () => {
    const news = createNews();
    news.take(drew('Drawn.', 'P1', 'yes'), true);
    const drawing = { movements: [], entries: [], shortfalls: [] } as unknown as Drawing;
    news.take({ kind: 'done', sentence: 'Received.', posting: 'P2', drawing, remarks: [] }, true);
    expect(news.done.value).toMatchObject({ sentence: 'Received.', posting: 'P2' });
  });

  test('gives way to an entry that takes nothing by its nature', () => {
    const news = createNews();
    news.take(drew('Drawn.', 'P1', 'yes'), true);
    news.take(drew('Examining: nothing taken from stock.', null, 'yes'), true);
    expect(news.done.value).toMatchObject({ posting: null });
  });
});

test('a failure stays until it is dismissed, and the same one again replaces it', () => {
  const news = createNews();
  news.fail('No.');
  news.take({ kind: 'refused', message: 'Not that either.' }, true);
  news.fail('No.');
  expect(news.failures.value.map(({ message }) => message)).toEqual(['Not that either.', 'No.']);
  const [first] = news.failures.value;
  if (first !== undefined) news.dismiss(first);
  expect(news.failures.value).toHaveLength(1);
  expect(news.done.value).toBeNull();
});
