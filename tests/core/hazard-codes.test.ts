import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PUBLISHED_STATEMENTS } from '../../src/core/ghs/statement-table.ts';
import { readHazards } from '../../src/core/hazard-codes.ts';
import { statementsIn } from '../../src/core/hazard-statements.ts';
import { sentenceWords } from '../../src/core/hazard-wording.ts';

describe('a Hazards cell', () => {
  test.each([
    ['H315 H318 H335', ['H315', 'H318', 'H335'], []],
    ['H225,H319;H336/EUH066 | H302', ['H225', 'H319', 'H336', 'EUH066', 'H302'], []],
    ['h225 – euh066', ['H225', 'EUH066'], []],
    ['H302+H332', ['H302+H332'], []],
    ['h302 + 332, EUH 071', ['H302+H332', 'EUH071'], []],
    ['H 225, H-319', ['H225', 'H319'], []],
    ['H225 H225\nH225', ['H225'], []],
    ['H360FD, H350i', ['H360FD', 'H350i'], []],
    ['Danger: H225 (Cat. 2). Keep cool.', ['H225'], ['Danger', '(Cat. 2). Keep cool.']],
    ['Danger (H225, H319)', ['H225', 'H319'], ['Danger']],
    ['irritating to eyes (dust).', [], ['irritating to eyes (dust).']],
    ['P280, P305+P351+P338', ['P280', 'P305+P351+P338'], []],
    // No codes: a pH, a longer number, a word.
    ['pH 300, H1234, PH225x, CH302', [], ['pH 300, H1234, PH225x, CH302']],
    ['', [], []],
  ])('%j', (text, codes, words) => {
    expect(readHazards(text)).toEqual({ codes, words });
  });

  test('loses no letter and no digit, whatever stands in it', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        'H225',
        'h302+h332',
        'EUH066',
        'P280',
        ' ',
        ', ',
        '; ',
        '(',
        ')',
        '+',
        '.',
        'Cat 2',
        'H99',
        'é',
      ),
      fc.string({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const text = pieces.join('');
        const { codes, words } = readHazards(text);
        // Which occur, not how often: a code that stands twice is named once, 302+332 gets its second H.
        const letters = (from: string) => new Set(from.toUpperCase().match(/[\p{L}\p{N}]/gu));
        expect(letters([...codes, ...words].join(' '))).toEqual(letters(text));
      }),
    );
  });

  test('finds every published code again between any separators, in any order', () => {
    const codes = PUBLISHED_STATEMENTS.map(({ code }) => code).filter((code) => !code.includes('['));
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...codes), { maxLength: 12 }),
        fc.constantFrom(' ', ', ', ';', ' / ', '\n', ' | ', ' and '),
        (chosen, separator) => {
          const text = chosen.join(separator);
          expect(readHazards(text).codes).toEqual(chosen);
          expect(statementsIn(text).map(({ code }) => code)).toEqual(chosen);
          expect(statementsIn(text).every(({ sentence }) => sentence !== null)).toBe(true);
        },
      ),
    );
  });
});

describe('the statements of a cell', () => {
  const found = (text: string) => statementsIn(text).map((each) => `${each.code} ${sentenceWords(each)}`);

  test('a code that the table does not have is said, not dropped', () => {
    expect(found('H000 H225')).toEqual([
      'H000 not in the table; look it up in the safety data sheet.',
      'H225 Highly Flammable liquid and vapor',
    ]);
  });

  test('letters in other capitals are found where that leaves no doubt', () => {
    expect(found('h350I h361FD euh201a h360df')).toEqual([
      'H350i May cause cancer by inhalation',
      'H361fd Suspected of damaging fertility; Suspected of damaging the unborn child',
      'EUH201A Warning! Contains lead.',
      'H360Df May damage the unborn child; Suspected of damaging fertility',
    ]);
    expect(found('h360fd')).toEqual([
      'H360fd not in the table as it is written: H360FD or H360Fd? Capitals tell them apart; look it up in the safety data sheet.',
    ]);
  });

  test('combinations are found in any order, and taken apart where the table has none', () => {
    expect(found('H332+H302')).toEqual(['H302+H332 Harmful if swallowed or if inhaled']);
    expect(found('H315+H318')).toEqual(['H315 Causes skin irritation', 'H318 Causes serious eye damage']);
    expect(statementsIn('H302+H312')[0]?.protection).toEqual(['P280']);
  });
});
