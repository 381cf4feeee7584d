import { describe, expect, test } from 'vitest';
import { NO_SCAN, scanStep } from '../../src/pane/shell/scan.ts';
import { tabAfterKey } from '../../src/pane/shell/tab-keys.ts';

describe('keys on the row of tabs', () => {
  const labels = ['Today', 'Log', 'Stock', 'Quote', 'Trace'];

  test.each([
    ['ArrowRight', 0, 1],
    ['ArrowRight', 4, 0],
    ['ArrowLeft', 0, 4],
    ['Home', 3, 0],
    ['End', 1, 4],
    ['s', 0, 2],
    ['Q', 0, 3],
    ['t', 0, 4],
    ['t', 4, 0],
  ])('%s goes from tab %i to tab %i', (key, from, to) => {
    expect(tabAfterKey(labels, from, key)).toBe(to);
  });

  test.each(['x', ' ', 'Enter', 'Tab', 'ArrowDown', 'Escape'])('%s means nothing there', (key) => {
    expect(tabAfterKey(labels, 0, key)).toBeNull();
  });
});

describe('keys outside of fields', () => {
  /** Keys pressed one after the other, with so many milliseconds between them. */
  function typed(keys: readonly string[], milliseconds: number) {
    let scanning = NO_SCAN;
    return keys.map((key, place) => {
      const step = scanStep(scanning, key, 1000 + place * milliseconds);
      scanning = step.scanning;
      return step;
    });
  }

  test('a code that comes as fast as from a scanner is taken with its Enter', () => {
    const steps = typed(['Shift', 'P', '-', '0', '1', 'Enter'], 8);
    expect(steps.at(-1)).toEqual({ scanning: NO_SCAN, code: 'P-01', belongs: true });
    expect(steps.map(({ belongs }) => belongs)).toEqual([false, false, true, true, true, true]);
  });

  test('what a hand types is left alone', () => {
    const steps = typed(['P', '-', '0', '1', 'Enter'], 90);
    expect(steps.every(({ code, belongs }) => code === null && !belongs)).toBe(true);
  });

  test('an Enter by itself, or after one or two keys hit at once, presses what has the focus', () => {
    expect(typed(['Enter'], 5).at(-1)).toMatchObject({ code: null, belongs: false });
    expect(typed(['a', 'b', 'Enter'], 5).at(-1)).toMatchObject({ code: null, belongs: false });
  });

  test('a code does not reach into the next', () => {
    const steps = typed(['a', 'b', 'c', 'Enter', 'd', 'e', 'f', 'Enter'], 5);
    expect(steps.flatMap(({ code }) => (code === null ? [] : [code]))).toEqual(['abc', 'def']);
  });
});
