import { describe, expect, test } from 'vitest';
import { offerFor, withWishes } from '../../../src/core/buying/wishes.ts';
import { need, offer } from './basket-cases.ts';

describe('what is bought though nothing asks for it', () => {
  const needed = need('tissue', 3, [offer('Alder', 1, 500)]);
  const starch = need('starch', 0, [offer('Alder', 500, 900), offer('Birch', 250, 400)]);
  const web = need('web', 0, [offer('Birch', 1, 300)]);
  const row = (of: typeof starch, place: number) => of.offers[place]?.offer ?? '';

  test('is what is set by hand, and nothing else', () => {
    const names = (byHand: readonly { offer: string; packs: number }[]) =>
      withWishes([needed], [starch, web], byHand).map(({ material }) => material);
    expect(names([])).toEqual(['tissue']);
    expect(names([{ offer: row(starch, 1), packs: 2 }])).toEqual(['tissue', 'starch']);
    expect(names([{ offer: row(web, 0), packs: 0 }])).toEqual(['tissue']);
    expect(names([{ offer: 'Offers 999', packs: 1 }])).toEqual(['tissue']);
  });
});

describe('by which row of Offers a material is bought', () => {
  const three = [offer('Alder', 10, 500), offer('Birch', 5, 200), offer('Cedar', 1, 45)];
  const supplierOf = (of: Parameters<typeof offerFor>[0], packs = 1, ordering: readonly string[] = []) =>
    offerFor(of, packs, ordering)?.supplier;

  test('the cheapest by quantity; of the preferred supplier; of one from whom something comes anyway', () => {
    expect(supplierOf(need('starch', 0, three))).toBe('Birch');
    expect(supplierOf(need('starch', 0, three, { supplier: 'alder' }))).toBe('Alder');
    expect(supplierOf(need('starch', 0, three, { supplier: 'Alder' }), 1, ['cedar'])).toBe('Cedar');
  });

  test('a price that holds only from more packs on is left, where another one holds', () => {
    const breaks = [offer('Alder', 10, 500), offer('Alder', 10, 300, { fromPacks: 4 })];
    expect(offerFor(need('starch', 0, breaks), 1)).toBe(breaks[0]);
    expect(offerFor(need('starch', 0, breaks), 4)).toBe(breaks[1]);
    expect(offerFor(need('starch', 0, breaks.slice(1)), 1)).toBe(breaks[1]);
  });

  test('none where nobody offers it, or a pack holds nothing', () => {
    expect(offerFor(need('starch', 0, []), 1)).toBeNull();
    expect(offerFor(need('starch', 0, [offer('Alder', 0, 100)]), 1)).toBeNull();
  });
});
