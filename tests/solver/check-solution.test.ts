import { expect, test } from 'vitest';
import { checkSolution } from '../../src/solver/check-solution.ts';
import { constraint, programme, whole } from './solver-cases.ts';

const EACH = programme(
  [whole('a', 1, 5, 1), { name: 'b', cost: 1, whole: false, least: 0, most: Infinity }],
  [
    constraint({ a: 2, b: 1 }, '>=', 4),
    constraint({ a: 1, b: 1 }, '<=', 6),
    constraint({ a: 1_000_000, b: -1_000_000 }, '=', 500_000),
  ],
);

test.each([
  [2, 1.5, null],
  [2, 1.5 + 1e-10, null],
  [2, 1.501, 'constraint 3 is not kept'],
  [1, 0.5, 'constraint 1 is not kept'],
  [5, 4.5, 'constraint 2 is not kept'],
  [2.5, 2, 'a is 2.5, not whole'],
  [0, 0, 'a is 0, not between 1 and 5'],
  [6, 0, 'a is 6, not between 1 and 5'],
  [2, -0.5, 'b is -0.5, not between 0 and Infinity'],
  [2, Infinity, 'b has no value'],
])('a %d, b %d: %s', (a, b, why) => {
  expect(
    checkSolution(
      EACH,
      new Map([
        ['a', a],
        ['b', b],
      ]),
    ),
  ).toBe(why);
});

test('a variable without a value is not overlooked', () => {
  expect(checkSolution(EACH, new Map([['a', 2]]))).toBe('b has no value');
});
