import { describe, expect, test } from 'vitest';
import { kindsOf } from '../../src/core/chemical-kinds.ts';
import type { MaterialRecord } from '../../src/core/records.ts';
import { material } from './helpers/stock-records.ts';
import { ledgerOf, materialNamed } from './helpers/studio-of.ts';

type Cells = Partial<Pick<MaterialRecord, 'composition' | 'hazards' | 'description' | 'kind'>>;

/** What a row says that the material is, in plain character order. */
function kinds(name: string, cells: Cells = {}): string {
  const ledger = ledgerOf({ materials: [material(name, 'g', { kind: 'Buffer', ...cells })] });
  return kindsOf(materialNamed(ledger, name))
    .map(({ kind }) => kind)
    .toSorted()
    .join(', ');
}

describe('by its name', () => {
  test.each([
    ['citric acid', 'acid'],
    ['Acetic Acid 10 %', 'acid'],
    ['vinegar', 'acid'],
    ['calcium hydroxide', 'alkali'],
    ['limewater', 'alkali, water'],
    ['caustic soda', 'alkali'],
    ['ammonia solution', 'alkali, ammonia'],
    ['ammonium hydroxide 25 %', 'alkali, ammonia'],
    ['hydrogen peroxide 3 %', 'oxidiser'],
    ['potassium permanganate', 'oxidiser'],
    ['calcium hypochlorite', 'gives off gas with acid, hypochlorite, oxidiser'],
    ['ethanol', 'alcohol, flammable'],
    ['2-propanol', 'alcohol, flammable'],
    ['isopropanol', 'alcohol, flammable'],
    ['pre-wetting alcohol 30 %', 'alcohol, flammable'],
    ['acetone', 'flammable'],
    ['sodium borohydride', 'borohydride, reacts with water'],
    ['deionised water', 'water'],
  ])('%s: %s', (name, said) => {
    expect(kinds(name)).toBe(said);
  });

  test.each([
    'acid-free paper',
    'acid free glue',
    'acid- and lignin-free powder',
    'amino acid',
    'fatty acid soap',
    'polyacrylic acid',
    'copolymer of vinyl acetate and acrylic acid',
    'glue without acid',
    'glue with no alkali or acid',
    'non-flammable cleaner',
    'acid-resistant gloves',
    'acid test pen',
    'peroxide test strips',
    'alkaline buffer powder',
    'aluminium hydroxide',
    'polyvinyl alcohol',
    'poly(vinyl alcohol)',
    'cellulose nitrate',
    'unbleached thread',
    'ethanol bottle',
    'solvent-free varnish',
    'water brush',
    'water colour',
    'waterproof tape',
    'sodium bicarbonate',
    'wheat starch',
    'methylcellulose powder',
    'antioxidant',
    'ammonium citrate',
  ])('%s is none of them', (name) => {
    expect(kinds(name)).toBe('');
  });
});

describe('by its composition', () => {
  test.each([
    ['dilute acetic acid in water', 'acid, water'],
    ['sodium hypochlorite, 4 %', 'gives off gas with acid, hypochlorite, oxidiser'],
    ['ethanol 30 % by mass', 'alcohol, flammable'],
    ['starch, no acid', ''],
    ['cellulose, free of alkali', ''],
  ])('%s: %s', (composition, said) => {
    expect(kinds('bath', { composition })).toBe(said);
  });
});

describe('by Hazards', () => {
  test.each([
    ['H225 H319', 'flammable'],
    ['h272, H302', 'oxidiser'],
    ['H260 H301 H314', 'reacts with water'],
    ['EUH014', 'reacts with water'],
    ['EUH031', 'gives off gas with acid'],
    ['strong alkali', 'alkali'],
    ['Acid; corrosive', 'acid'],
    ['highly flammable solvent', 'flammable'],
    ['oxidising agent', 'oxidiser'],
    // What to keep it from, or what it does with it, is not what it is.
    ['Keep away from acids, oxidisers, ammonia', ''],
    ['Separate from strong acids', ''],
    ['alkali, reacts with acids', 'alkali'],
    ['oxidiser (keep from solvents). Contact with acids liberates gas', 'oxidiser'],
    ['not flammable', ''],
    ['H315 H318 H335', ''],
  ])('%s: %s', (hazards, said) => {
    expect(kinds('bottle', { hazards })).toBe(said);
  });
});

test('a board or tissue is none by its words, but by its hazard codes', () => {
  const board: Cells = { kind: 'Housing', composition: 'cellulose, calcium hydroxide' };
  expect(kinds('board with acid barrier', board)).toBe('');
  expect(kinds('wipes', { kind: 'Release paper', hazards: 'H225' })).toBe('flammable');
});

test('a calibration buffer is neither acid nor alkali, whatever its pH and what is in it', () => {
  expect(kinds('pH buffer 10.01', { composition: 'sodium carbonate, sodium hydroxide' })).toBe('');
  expect(kinds('buffer 4', { description: 'calibration buffer', composition: 'phthalic acid' })).toBe('');
});

test('says by which words of which cell', () => {
  const ledger = ledgerOf({
    materials: [
      material('wash', 'ml', { kind: 'Buffer', hazards: 'H226', composition: 'Acetic acid, ethanol' }),
    ],
  });
  expect(kindsOf(materialNamed(ledger, 'wash'))).toEqual([
    { kind: 'flammable', column: 'Hazards', words: 'H226' },
    { kind: 'acid', column: 'Composition', words: 'Acetic acid' },
    { kind: 'alcohol', column: 'Composition', words: 'ethanol' },
  ]);
});
