import { describe, expect, test } from 'vitest';
import { cautionsForRecipe } from '../../src/core/recipe-cautions.ts';
import { material, recipe, recipePart } from './helpers/stock-records.ts';
import { ledgerOf } from './helpers/studio-of.ts';

const ledger = ledgerOf({
  materials: [
    material('limewater', 'l', { kind: 'Buffer' }),
    material('calcium hydroxide', 'g', { kind: 'Buffer', hazards: 'H315 H318 H335; raises dust' }),
    material('peroxide', 'ml', { kind: 'Buffer', hazards: 'H271 H330' }),
    material('water', 'l', { counted: false }),
    material('wash', 'l'),
    material('paste', 'g'),
    material('starch', 'g'),
  ],
  recipes: [
    recipe('Limewater', 'limewater', 1, { unit: 'l', cautions: 'Eye protection and gloves.' }),
    recipe('Wash', 'wash', 1, { unit: 'l' }),
    recipe('Paste', 'paste', 100),
  ],
  recipeParts: [
    recipePart('Limewater', 'calcium hydroxide', 2),
    recipePart('Limewater', 'water', 1, 'l'),
    recipePart('Wash', 'limewater', 1, 'l'),
    recipePart('Wash', 'calcium hydroxide', 1),
    recipePart('Wash', 'calcium hydroxide', 1),
    recipePart('Wash', 'peroxide', 1, 'ml'),
    recipePart('Paste', 'starch', 20),
  ],
});

function cautions(name: string) {
  const found = ledger.studio.recipes.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no recipe ${name}`);
  return cautionsForRecipe(found);
}

describe('the cautions of a recipe', () => {
  test('are its own, its parts’ statements, and what to wear in the words of the table', () => {
    const { own, parts, protection, notClassified } = cautions('Limewater');
    expect(own).toBe('Eye protection and gloves.');
    expect(parts.map((part) => [part.material, part.statements.map(({ code }) => code), part.words])).toEqual(
      [['calcium hydroxide', ['H315', 'H318', 'H335'], ['raises dust']]],
    );
    // The sentence of P280, retyped from the published table (see hazard-table.test.ts).
    expect(protection).toEqual([
      {
        code: 'P280',
        sentence:
          'Wear protective gloves/protective clothing/eye protection/face protection/hearing protection/...',
        calledForBy: ['calcium hydroxide'],
      },
    ]);
    expect(notClassified).toMatch(/^What is made here is not classified: /);
  });

  test('name each part once, each equipment once, and the cautions of a part that is made here', () => {
    const { own, parts, protection } = cautions('Wash');
    expect(own).toBeNull();
    expect(parts.map((part) => [part.material, part.words])).toEqual([
      ['limewater', ['Eye protection and gloves.']],
      ['calcium hydroxide', ['raises dust']],
      ['peroxide', []],
    ]);
    expect(protection.map(({ code, calledForBy }) => [code, calledForBy])).toEqual([
      ['P280', ['calcium hydroxide', 'peroxide']],
      ['P283', ['peroxide']],
      ['P284', ['peroxide']],
    ]);
  });

  test('are nothing where nothing is said', () => {
    expect(cautions('Paste')).toEqual({ own: null, parts: [], protection: [], notClassified: null });
  });
});
