import { describe, expect, test } from 'vitest';
import { scaledParts } from '../../src/core/batch.ts';
import { decimal, type Exact } from '../../src/core/exact-number.ts';
import { keyOf } from '../../src/core/identifier.ts';
import { material, qty, recipe, recipePart, unit } from './helpers/stock-records.ts';
import { ledgerOf } from './helpers/studio-of.ts';

/**
 * Recipes as others print them, scaled by us. How each source was read stands beside it; of web pages “read” means the
 * opening part with the figures.
 */

interface Printed {
  readonly yields: readonly [number | string, string];
  readonly parts: readonly (readonly [name: string, quantity: number | string, unit: string])[];
  /** g/ml of a part, where it is printed. */
  readonly densities?: Readonly<Record<string, string>>;
}

/** The parts of a printed recipe for an amount, as `quantity unit name`, and each quantity by name. */
function scaled({ yields, parts, densities = {} }: Printed, amount: number | string, unitName: string) {
  const { studio } = ledgerOf({
    materials: [
      material('product', yields[1]),
      ...[...new Set(parts.map(([name]) => name))].map((name) => {
        const density = densities[name];
        return material(name, 'g', density === undefined ? {} : { density: qty(density) });
      }),
    ],
    recipes: [recipe('printed', 'product', yields[0], { unit: yields[1] })],
    recipeParts: parts.map(([name, quantity, of]) => recipePart('printed', name, quantity, of)),
  });
  const printed = studio.recipesByKey.get(keyOf('printed'));
  const product = studio.materialsByKey.get(keyOf('product'));
  if (printed === undefined || product === undefined) throw new Error('the recipe is not there');
  const needs = scaledParts(printed, product, qty(amount), unit(unitName));
  if (needs === null) throw new Error(`${unitName} leads nowhere`);
  return {
    words: needs.map((need) => `${need.quantity.toString()} ${need.unit.name} ${need.material.name}`),
    of: (name: string, inUnit: string): Exact => {
      const need = needs.find((each) => each.material.name === name);
      const factor = need?.material.converter.factor(need.unit, unit(inUnit));
      if (need === undefined || factor == null) throw new Error(`no ${name} in ${inUnit}`);
      return need.quantity.mul(factor);
    },
  };
}

const rounded = (value: Exact, decimals: number): string => value.round(decimals).toString();

describe('pastes and gels', () => {
  // 65 g starch and 500 ml water: Abbey Newsletter 19(5), 1995; read.
  const FIRST: Printed = {
    yields: [500, 'ml'],
    parts: [
      ['starch', 65, 'g'],
      ['water', 500, 'ml'],
    ],
    densities: { water: '1' },
  };
  // 57 g and 400 ml: a national library's recipe of 2015, Book and Paper Group wiki, Adhesive Recipes and Tips; read.
  const SECOND: Printed = {
    yields: [400, 'ml'],
    parts: [
      ['starch', 57, 'g'],
      ['water', 400, 'ml'],
    ],
    densities: { water: '1' },
  };

  test('wheat starch paste for other amounts', () => {
    expect(scaled(FIRST, 500, 'ml').words).toEqual(['65 g starch', '500 ml water']);
    expect(scaled(FIRST, '0.1', 'l').words).toEqual(['13 g starch', '100 ml water']);
    expect(scaled(FIRST, 1, 'l').words).toEqual(['130 g starch', '1 l water']);
    expect(scaled(SECOND, 100, 'ml').words).toEqual(['14.25 g starch', '100 ml water']);
    expect(scaled(SECOND, 1, 'l').words).toEqual(['142.5 g starch', '1 l water']);
  });

  test('a tenth of starch in water stays a tenth', () => {
    // 10 g to 100 ml, "standard batch": a workshop's page; read.
    const printed: Printed = {
      yields: [100, 'ml'],
      parts: [
        ['starch', 10, 'g'],
        ['water', 100, 'ml'],
      ],
    };
    expect(scaled(printed, 35, 'ml').words).toEqual(['3.5 g starch', '35 ml water']);
    expect(scaled(printed, '0.5', 'ml').words).toEqual(['50 mg starch', '0.5 ml water']);
  });

  test('the share of starch by mass is the same in any batch: 11.5 % and 12.5 % before anything boils off', () => {
    // 65 ÷ 565 and 57 ÷ 457, worked out from the printed figures.
    for (const [printed, percent] of [
      [FIRST, '11.5'],
      [SECOND, '12.5'],
    ] as const) {
      for (const amount of [50, 333, 1000]) {
        const { of } = scaled(printed, amount, 'ml');
        const starch = of('starch', 'g');
        expect(rounded(starch.mul(100).div(starch.add(of('water', 'g'))), 1)).toBe(percent);
      }
    }
  });

  test('methylcellulose: its hot and its cold water are one material, taken together', () => {
    // 5 % = 5 g, 75 ml hot and 25 ml cold water: a national museum's recipe as a web page gives it; read second-hand.
    const printed: Printed = {
      yields: [100, 'ml'],
      parts: [
        ['powder', 5, 'g'],
        ['water', 75, 'ml'],
        ['water', 25, 'ml'],
      ],
    };
    expect(scaled(printed, 250, 'ml').words).toEqual(['12.5 g powder', '250 ml water']);
    expect(scaled(printed, '0.04', 'l').words).toEqual(['2 g powder', '40 ml water']);
  });

  test('gellan: 20 g and 0.4 g calcium acetate in a litre', () => {
    // University libraries, 2017; the same 0.4 g to a litre, 2 to 4 %, in a research institute's book of 2017, p. 74; read.
    const printed: Printed = {
      yields: [1, 'l'],
      parts: [
        ['gellan', 20, 'g'],
        ['calcium acetate', '0.4', 'g'],
        ['water', 1, 'l'],
      ],
    };
    expect(scaled(printed, 1, 'l').words).toEqual(['20 g gellan', '0.4 g calcium acetate', '1 l water']);
    expect(scaled(printed, 250, 'ml').words).toEqual(['5 g gellan', '0.1 g calcium acetate', '250 ml water']);
    expect(scaled(printed, 50, 'ml').words).toEqual(['1 g gellan', '20 mg calcium acetate', '50 ml water']);
  });
});

describe('solutions', () => {
  // Molar mass from the standard atomic weights: Mg 24.305, O 15.999, H 1.008.
  const MAGNESIUM_HYDROXIDE = decimal('58.319');
  const inGallons = (name: string): Printed => ({
    yields: [8, name],
    parts: [['magnesium hydroxide', '176.3', 'g']],
  });
  const molPerLitre = (printed: Printed): string =>
    rounded(scaled(printed, 1, 'l').of('magnesium hydroxide', 'g').div(MAGNESIUM_HYDROXIDE), 4);

  test('176.3 g of magnesium hydroxide in eight gallons are 0.1 mol/l in US gallons, and not in imperial ones', () => {
    // "In an eight-gallon volume, a minimum of 176.3 grams … to produce a 0.1 M solution": JAIC 21 (1981) no. 1, art. 2 § 4; read.
    expect(molPerLitre(inGallons('gal'))).toBe('0.0998');
    expect(molPerLitre(inGallons('imp gal'))).toBe('0.0831');
  });

  test('an imperial gallon of a recipe in US gallons takes a fifth more, and stays in its own units', () => {
    const { words } = scaled(inGallons('gal'), 1, 'imp gal');
    expect(words).toEqual(['26.465934 g magnesium hydroxide']);
    const imperial: Printed = { yields: [1, 'imp gal'], parts: [['water', 1, 'imp gal']] };
    expect(scaled(imperial, '0.5', 'imp gal').words).toEqual(['80 imp fl oz water']);
    const american: Printed = { yields: [1, 'gal'], parts: [['water', 1, 'gal']] };
    expect(scaled(american, '0.5', 'gal').words).toEqual(['64 fl oz water']);
  });

  test('dilutions keep C1 V1 = C2 V2', () => {
    // OpenStax Chemistry 2e, molarity (m68703): 0.850 l of 5.00 M to 1.80 l is 2.36 M; 25.0 ml of 2.04 M to 500.0 ml is
    // 0.102 M. The data were read there, the answers worked out.
    const first: Printed = { yields: ['1.8', 'l'], parts: [['stock', '0.85', 'l']] };
    const second: Printed = { yields: [500, 'ml'], parts: [['stock', 25, 'ml']] };
    for (const litres of ['0.25', '1', '3.6']) {
      const concentration = (printed: Printed, molar: string): Exact =>
        scaled(printed, litres, 'l').of('stock', 'l').mul(decimal(molar)).div(decimal(litres));
      expect(rounded(concentration(first, '5.00'), 2)).toBe('2.36');
      expect(rounded(concentration(second, '2.04'), 3)).toBe('0.102');
    }
    expect(scaled(second, 2, 'l').words).toEqual(['100 ml stock']);
    expect(scaled(second, 250, 'ml').words).toEqual(['12.5 ml stock']);
  });

  test('what is measured by volume is weighed by its density', () => {
    // Concentrated aqueous ammonia: 0.90 g/ml, 28 %, 14.8 M: OpenStax Chemistry 2e, appendix F (m68864); read.
    const ammonia: Printed = {
      yields: [1, 'l'],
      parts: [['ammonia', 1, 'l']],
      densities: { ammonia: '0.90' },
    };
    const grams = scaled(ammonia, 1, 'l').of('ammonia', 'g').mul(decimal('0.28'));
    expect(rounded(grams.div(decimal('17.031')), 1)).toBe('14.8');
    // Water at 25 °C, 0.9970479 g/ml: the same book, appendix E (m68863); read.
    const water: Printed = {
      yields: [1, 'l'],
      parts: [['water', 1, 'l']],
      densities: { water: '0.9970479' },
    };
    expect(rounded(scaled(water, 250, 'ml').of('water', 'g'), 6)).toBe('249.261975');
    // Ethanol 0.79 g/ml: the same book; read. 30 g of it in 100 g, by volume.
    const spirit: Printed = {
      yields: [100, 'g'],
      parts: [
        ['ethanol', 30, 'g'],
        ['water', 70, 'g'],
      ],
      densities: { ethanol: '0.79' },
    };
    expect(rounded(scaled(spirit, 500, 'g').of('ethanol', 'ml'), 3)).toBe('189.873');
  });
});
