import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimal, ratio } from '../../src/core/exact-number.ts';
import {
  afterLogging,
  changedLines,
  EMPTY_DRAFT,
  holdsTyping,
  type LogDraft,
  lineOf,
  withDate,
  withJobSettled,
  withLine,
  withoutLine,
  withPreset,
  withText,
} from '../../src/pane/log/draft.ts';

const FILLED: LogDraft = {
  ...EMPTY_DRAFT,
  job: '26-014',
  item: 'A',
  treatment: 'Mend tear',
  extent: '4',
  date: '2026-04-02',
  minutes: '30',
  by: 'M',
  notes: 'thin paper',
};

describe('the fields', () => {
  test('another job takes its item away, another spelling of the same does not', () => {
    expect(withText(FILLED, 'job', '26-015').item).toBe('');
    expect(withText(FILLED, 'job', ' 26-014 ').item).toBe('A');
    expect(withText(FILLED, 'extent', '5')).toEqual({ ...FILLED, extent: '5' });
  });

  test('a date that is not complete yet is no date, not today', () => {
    expect(withDate(FILLED, '').date).toBe('');
    expect(withDate(FILLED, '2026-03-01').date).toBe('2026-03-01');
  });

  test('the job that is offered is meant from the first change on, but a cleared one stays cleared', () => {
    expect(withJobSettled(EMPTY_DRAFT, '26-014').job).toBe('26-014');
    expect(withJobSettled({ ...EMPTY_DRAFT, job: '' }, '26-014').job).toBe('');
    expect(withJobSettled(EMPTY_DRAFT, null).job).toBeNull();
  });

  test('after logging, what the next treatment has in common stays', () => {
    const next = afterLogging(withLine(FILLED, 'Paste', { amount: '3' }));
    expect(next).toEqual({ ...EMPTY_DRAFT, job: '26-014', item: 'A', date: '2026-04-02', by: 'M' });
  });
});

describe('the lines', () => {
  test('what was changed belongs to its treatment, and is there again when she comes back', () => {
    const changed = withLine(FILLED, 'Paste', { amount: '3', lot: 'P-1' });
    const elsewhere = withText(changed, 'treatment', 'Examine');
    expect(lineOf(elsewhere, 'Paste').amount).toBeNull();
    expect(changedLines(elsewhere)).toEqual([]);
    expect(lineOf(withText(elsewhere, 'treatment', 'mend tear'), 'paste')).toMatchObject({
      amount: '3',
      lot: 'P-1',
    });
  });

  test('a line that says nothing any more is no line; one that she added stays until she takes it out', () => {
    const changed = withLine(FILLED, 'Paste', { amount: '3' });
    expect(changedLines(withLine(changed, 'Paste', { amount: null }))).toEqual([]);
    const added = withLine(FILLED, 'Thread', { amount: '' }, true);
    expect(changedLines(withLine(added, 'Thread', { amount: null }, true))).toHaveLength(1);
    expect(changedLines(withoutLine(added, 'thread'))).toEqual([]);
  });

  test('a change of one line leaves the others and the fields alone', () => {
    const name = fc.constantFrom('Paste', 'Tissue', 'Web');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(name, fc.stringMatching(/^[1-9]\d?$/)), { maxLength: 12 }),
        name,
        (changes, taken) => {
          const last = new Map(changes);
          const draft = changes.reduce((now, [of, amount]) => withLine(now, of, { amount }), FILLED);
          for (const [of, amount] of last) expect(lineOf(draft, of).amount).toBe(amount);
          const without = withoutLine(draft, taken);
          expect(changedLines(without).map(({ of }) => of)).not.toContain(taken);
          expect(changedLines(without)).toHaveLength(last.size - Number(last.has(taken)));
          expect({ ...without, lines: {} }).toEqual(FILLED);
        },
      ),
    );
  });
});

describe('a row of the plan', () => {
  const row = { job: '26-015', item: 'B', treatment: 'Examine', extent: decimal('12.5') };

  test('fills in all that it says, and keeps the date and who did it', () => {
    expect(withPreset(FILLED, row)).toEqual({
      ...EMPTY_DRAFT,
      job: '26-015',
      item: 'B',
      treatment: 'Examine',
      extent: '12.5',
      date: '2026-04-02',
      by: 'M',
    });
  });

  test('a job alone leaves the rest as it stands', () => {
    const preset = { job: '26-015', item: null, treatment: null, extent: null };
    expect(withPreset(FILLED, preset)).toEqual({ ...FILLED, job: '26-015', item: '' });
  });

  test('an extent that no decimal number gives is filled in as it would be written', () => {
    expect(withPreset(EMPTY_DRAFT, { ...row, extent: ratio(1, 3) }).extent).toBe('0.333333');
  });

  test('asks first only where something typed would be lost', () => {
    expect(holdsTyping(EMPTY_DRAFT)).toBe(false);
    expect(holdsTyping({ ...EMPTY_DRAFT, job: '26-014', treatment: 'Examine', by: 'M' })).toBe(false);
    expect(holdsTyping({ ...EMPTY_DRAFT, extent: '3' })).toBe(true);
    expect(holdsTyping({ ...EMPTY_DRAFT, notes: 'thin' })).toBe(true);
    expect(holdsTyping(withLine(EMPTY_DRAFT, 'Paste', { lot: 'P-1' }))).toBe(true);
  });
});
