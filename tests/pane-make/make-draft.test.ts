import { describe, expect, test } from 'vitest';
import { ratio } from '../../src/core/exact-number.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { withLine } from '../../src/pane/log/draft.ts';
import {
  afterMaking,
  EMPTY_MAKE,
  holdsMaking,
  isPoured,
  linesIn,
  type MakeDraft,
  withMakePreset,
  withMakeText,
  withPour,
} from '../../src/pane/make/make-draft.ts';
import {
  backToWaiting,
  changeMake,
  makeDraft,
  makeFirst,
  waitingDrafts,
} from '../../src/pane/make/make-state.ts';

const FILLED: MakeDraft = {
  ...EMPTY_MAKE,
  recipe: 'Paste, thick',
  amount: '100',
  unit: 'kg',
  place: 'Fridge',
  yielded: '95',
  by: 'M',
  pour: { job: '26-014', item: 'A', treatment: 'Bathe', extent: '3', amount: '1' },
};

describe('the fields', () => {
  test('another recipe has its own yield, unit, place and treatment; another spelling is no other recipe', () => {
    expect(withMakeText(FILLED, 'recipe', ' paste, THICK ')).toEqual({ ...FILLED, recipe: ' paste, THICK ' });
    expect(withMakeText(FILLED, 'recipe', 'Size')).toEqual({
      ...FILLED,
      recipe: 'Size',
      amount: null,
      unit: null,
      place: null,
      yielded: '',
      pour: { job: '26-014', item: 'A', treatment: '', extent: '', amount: '' },
    });
  });

  test('another job takes its item away', () => {
    expect(withPour(FILLED, 'job', '26-015').pour.item).toBe('');
    expect(withPour(FILLED, 'extent', '4').pour.item).toBe('A');
  });

  test('it is poured as soon as anything says so', () => {
    expect(isPoured(EMPTY_MAKE)).toBe(false);
    expect(isPoured(withPour(EMPTY_MAKE, 'extent', '2'))).toBe(true);
    expect(isPoured(withPour(EMPTY_MAKE, 'extent', ' '))).toBe(false);
  });

  test('after making, who did it stays', () => {
    expect(afterMaking(FILLED)).toEqual({ ...EMPTY_MAKE, by: 'M' });
  });

  test('what she changed about an ingredient belongs to its recipe', () => {
    const lines = withLine(linesIn(FILLED), 'Wheat starch', { amount: '3' });
    expect(lines).toMatchObject({ treatment: 'Paste, thick' });
    expect(holdsMaking({ ...EMPTY_MAKE, recipe: 'Paste, thick', lines: lines.lines })).toBe(true);
  });
});

describe('what is made first', () => {
  test('a preset fills in at least what is missing, and who did it stays', () => {
    const preset = { recipe: 'Size', amount: ratio(1, 3), unit: unitNamed('g') };
    expect(withMakePreset(FILLED, preset)).toEqual({
      ...EMPTY_MAKE,
      by: 'M',
      recipe: 'Size',
      amount: '0.334',
      unit: 'g',
    });
    expect(withMakePreset(FILLED, { recipe: 'Size', amount: null, unit: null }).amount).toBeNull();
  });

  test('a recipe alone is nothing typed', () => {
    expect(holdsMaking(EMPTY_MAKE)).toBe(false);
    expect(holdsMaking({ ...EMPTY_MAKE, recipe: 'Size', by: 'M' })).toBe(false);
    expect(holdsMaking({ ...EMPTY_MAKE, amount: '3' })).toBe(true);
  });

  test('the form that waits comes back as it was, the last one first', () => {
    changeMake(() => FILLED);
    makeFirst({ ...EMPTY_MAKE, recipe: 'Size' });
    makeFirst({ ...EMPTY_MAKE, recipe: 'Bath' });
    expect(makeDraft.value.recipe).toBe('Bath');
    expect(backToWaiting()).toBe(true);
    expect(makeDraft.value.recipe).toBe('Size');
    expect(backToWaiting()).toBe(true);
    expect(makeDraft.value).toEqual(FILLED);
    expect(waitingDrafts.value).toEqual([]);
    expect(backToWaiting()).toBe(false);
    changeMake(() => EMPTY_MAKE);
  });
});
