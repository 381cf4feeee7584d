import { describe, expect, test } from 'vitest';
import { type LogDraft, withLine } from '../../src/pane/log/draft.ts';
import { MEND, openSession, PASTE, problemsIn, workIn } from './helpers.ts';

describe('the head of the form', () => {
  test('an empty form asks for all three, and plans nothing', async () => {
    const { session } = await openSession();
    const work = workIn(session, { job: null });
    expect(work.problems.map(({ field, isBlank }) => [field, isBlank])).toEqual([
      ['job', true],
      ['treatment', true],
      ['extent', true],
    ]);
    expect(work.asked).toBeNull();
  });

  test.each<[string, Partial<LogDraft>, string, RegExp]>([
    ['an unknown job', { job: '26-01' }, 'job', /no job called 26-01 in Jobs\. Did you mean/],
    ['an unknown treatment', { treatment: 'Mend tera' }, 'treatment', /Did you mean Mend tear\?/],
    ['an item of another job', { item: 'A' }, 'item', /no item of job 26-014 called A/],
    ['words for a number', { extent: 'six' }, 'extent', /six can’t be read as a number/],
    ['nothing done', { extent: '0' }, 'extent', /0 stands here: a number above 0 is right/],
    ['a decimal comma', { extent: '1,5' }, 'extent', /with a point for the decimals/],
    ['no day', { date: '2026-02-30' }, 'date', /no day that can be read/],
    ['negative minutes', { minutes: '-5' }, 'minutes', /0 or more/],
  ])('%s is told at its field', async (_, change, field, message) => {
    const { session } = await openSession();
    const work = workIn(session, { ...MEND, ...change });
    expect(work.problems).toHaveLength(1);
    expect(work.problems[0]).toMatchObject({ field, isBlank: false });
    expect(work.problems[0]?.message).toMatch(message);
  });

  test('a date that is not complete is told once she wants to log', async () => {
    const { session } = await openSession();
    const work = workIn(session, { ...MEND, date: '' });
    expect(work.problems.map(({ field, isBlank }) => [field, isBlank])).toEqual([['date', true]]);
    expect(work.asked).toBeNull();
  });

  test('wrong minutes don’t hide what would be taken', async () => {
    const { session } = await openSession();
    expect(workIn(session, { ...MEND, minutes: 'ten' }).asked?.plan.uses).toHaveLength(3);
  });

  test('the job that is nobody’s needs no row in Jobs', async () => {
    const { session } = await openSession();
    const work = workIn(session, { ...MEND, job: 'studio' });
    expect(problemsIn(work)).toEqual([]);
    expect(work.asked).not.toBeNull();
  });

  test('a treatment dated after today takes nothing yet, whatever was changed before', async () => {
    const { session } = await openSession();
    const draft = withLine({ ...MEND, date: '2026-04-09' }, PASTE, { amount: '5' });
    const work = workIn(session, draft);
    expect(work.asked?.plan).toMatchObject({ waits: true, uses: [] });
    expect(work.asked?.request.asUsed).toEqual([]);
    expect(work.lines).toEqual([]);
  });
});
