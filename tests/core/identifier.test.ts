import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { identifierMaker, keyOf, type Random } from '../../src/core/identifier.ts';

/** The 28 characters: the digits and capitals without 0 O, 1 I, 5's S, 8's B, 2's Z and V's U. */
const LETTERS = 'ACDEFGHJKLMNPQRTVWXY';
const DIGITS = '23456789';
const CHARACTERS = `${DIGITS}${LETTERS}`;

/** Random numbers from a seed: the linear congruential generator of Numerical Recipes (from memory). */
function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A generator that makes the maker spell these characters first, and then others at random. */
function spelling(text: string): Random {
  const rest = seeded(7);
  const queue = [...text].map((character) => (CHARACTERS.indexOf(character) + 0.5) / CHARACTERS.length);
  return () => queue.shift() ?? rest();
}

const aSeed = fc.integer({ min: 0, max: 2 ** 31 });
const aLetter = fc.constantFrom(...'ABCDEFGHIJKLMNOPQRSTUVWXYZ');

describe('properties', () => {
  test('a letter and eight of the 28 characters', () => {
    fc.assert(
      fc.property(aSeed, aLetter, (seed, letter) => {
        const identifier = identifierMaker(seeded(seed), new Set())(letter);
        expect(identifier).toMatch(new RegExp(`^${letter}[${CHARACTERS}]{8}$`));
      }),
    );
  });

  test('all 28 characters come to be used', () => {
    const make = identifierMaker(seeded(1), new Set());
    const used = new Set(Array.from({ length: 200 }, () => make('M').slice(1)).join(''));
    expect([...used].toSorted().join('')).toBe(CHARACTERS);
  });

  test('the same numbers make the same identifiers', () => {
    fc.assert(
      fc.property(aSeed, aLetter, (seed, letter) => {
        const [a, b] = [identifierMaker(seeded(seed), new Set()), identifierMaker(seeded(seed), new Set())];
        expect([a(letter), a(letter)]).toEqual([b(letter), b(letter)]);
      }),
    );
  });

  test('none twice, and none that the workbook has in any case', () => {
    fc.assert(
      fc.property(aSeed, (seed) => {
        const first = identifierMaker(seeded(seed), new Set())('L');
        const make = identifierMaker(seeded(seed), new Set([keyOf(` ${first.toLowerCase()} `)]));
        const made = Array.from({ length: 20 }, () => make('L'));
        expect(made).not.toContain(first);
        expect(new Set(made).size).toBe(20);
      }),
    );
  });

  test('no letters followed by digits alone: no cell and no month in any language', () => {
    const tails = fc
      .integer({ min: 0, max: 8 })
      .chain((letters) =>
        fc
          .tuple(
            fc.array(fc.constantFrom(...LETTERS), { minLength: letters, maxLength: letters }),
            fc.array(fc.constantFrom(...DIGITS), { minLength: 8 - letters, maxLength: 8 - letters }),
          )
          .map(([front, back]) => [...front, ...back].join('')),
      );
    fc.assert(
      fc.property(tails, aLetter, (tail, letter) => {
        fc.pre(/\d$/.test(tail));
        const identifier = identifierMaker(spelling(tail), new Set())(letter);
        expect(identifier).not.toBe(`${letter}${tail}`);
        expect(identifier).not.toMatch(/^[A-Z]+\d+$/);
      }),
    );
  });
});

describe('what a spreadsheet would misread', () => {
  test.each([
    ['M', 'ARCH2345', 'a day in March 2345'],
    ['M', 'AART2345', 'the same in Dutch'],
    ['J', 'AN2A3A4A', 'a month and more'],
    ['D', 'EC234567', 'a month and more'],
    ['L', 'A2345678', 'a cell'],
    ['X', 'FD345678', 'a cell: the last column is XFD, from memory'],
    ['R', '23C45678', 'a cell, by row and column'],
    ['R', 'C2345678', 'a cell, by row and column'],
    ['E', '22345678', 'a cell'],
    ['L', 'AA234E56', 'ends like 4E56'],
    ['L', '2345E678', 'ends like 2345E678'],
    ['e', '23456789', 'the same with a small letter'],
    ['m', 'AR2A3A4A', 'the same with a small letter'],
  ])('%s%s is not given (%s)', (letter, tail) => {
    const identifier = identifierMaker(spelling(tail), new Set())(letter);
    expect(identifier).not.toBe(`${letter}${tail}`);
    expect(identifier).toHaveLength(9);
  });

  test.each([
    ['L', 'A2A3A4A5'],
    ['T', 'EC2EE2EE'],
    ['M', '2MAR2A2A'],
  ])('%s%s is', (letter, tail) => {
    expect(identifierMaker(spelling(tail), new Set())(letter)).toBe(`${letter}${tail}`);
  });
});

describe('edges', () => {
  test('a generator that always gives the same number is an error, not an endless search', () => {
    expect(() => identifierMaker(() => 0, new Set())('L')).toThrow('random');
    const make = identifierMaker(() => 0.99, new Set());
    expect(make('L')).toBe('LYYYYYYYY');
    expect(() => make('L')).toThrow('random');
  });

  test('identifiers compare trimmed, case ignored', () => {
    expect(keyOf(' \tKozo-9\u00a0')).toBe(keyOf('KOZO-9'));
    expect(keyOf('Kozo 9')).not.toBe(keyOf('Kozo  9'));
  });
});
