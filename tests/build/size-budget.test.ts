import { expect, test } from 'vitest';
import { weigh } from '../../src/build/size-budget.ts';

const FILES = [
  { name: 'pane.js', gzip: 2048 },
  { name: 'pane.css', gzip: 512 },
];

test('the files of the pane are weighed together against the budget', () => {
  expect(weigh(FILES, 2560)).toEqual({
    withinBudget: true,
    report: [
      'pane.js      2.0 KB gzip',
      'pane.css     0.5 KB gzip',
      'in all       2.5 KB gzip',
      'budget       2.5 KB gzip',
    ].join('\n'),
  });
  expect(weigh(FILES, 2559).withinBudget).toBe(false);
});
