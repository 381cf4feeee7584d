import { describe, expect, test } from 'vitest';
import { createNews } from '../../src/pane/news.ts';
import type { Done } from '../../src/session/session-state.ts';

const done: Done = { kind: 'done', sentence: 'Drawn.', posting: 'X-1', drawing: null, remarks: ['part'] };

describe('what the pane says', () => {
  test('what was done can be taken back by its posting, where that is offered', () => {
    const news = createNews();
    news.take(done, true);
    expect(news.done.value).toMatchObject({ sentence: 'Drawn.', posting: 'X-1', remarks: ['part'] });
    news.take(done, false);
    expect(news.done.value).toMatchObject({ sentence: 'Drawn.', posting: null });
  });

  test('the same sentence twice is news twice, so that it is read out again', () => {
    const news = createNews();
    news.take(done, true);
    const first = news.done.value;
    news.take(done, true);
    expect(news.done.value?.id).not.toBe(first?.id);
  });

  test.each(['refused', 'look again'] as const)('"%s" stays until it is dismissed', (kind) => {
    const news = createNews();
    news.take({ kind, message: 'No.' }, true);
    news.take(done, true);
    expect(news.failures.value.map(({ message }) => message)).toEqual(['No.']);
    const [failure] = news.failures.value;
    if (failure === undefined) throw new Error('the failure is gone');
    news.dismiss(failure);
    expect(news.failures.value).toEqual([]);
    expect(news.done.value).not.toBeNull();
  });

  test('a failure takes the place of what was done before it, and of the same failure', () => {
    const news = createNews();
    news.take(done, true);
    news.fail('One.');
    news.fail('Two.');
    news.fail('One.');
    expect(news.done.value).toBeNull();
    expect(news.failures.value.map(({ message }) => message)).toEqual(['Two.', 'One.']);
  });
});
