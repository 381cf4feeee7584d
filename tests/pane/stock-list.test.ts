import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { type Day, parseDay } from '../../src/core/day.ts';
import { stockOn } from '../../src/core/stock.ts';
import { lotName } from '../../src/pane/route.ts';
import { findLot, lotsOf, standingOf } from '../../src/pane/stock/lot-list.ts';
import { firstGroups, matchOf, type StockGroup, stockGroups } from '../../src/pane/stock/stock-list.ts';
import { date } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const today = parseDay(TODAY) as Day;

function stockOf(tables: object = {}) {
  const { ledger } = booksOf(snapshotOf({ ...STUDIO, ...tables }));
  return { ledger, studio: ledger.studio, stock: stockOn(ledger, today) };
}

function names(groups: readonly StockGroup[]): Record<string, string[]> {
  return Object.fromEntries(
    groups.map(({ kind, materials }) => [kind, materials.map(({ material }) => material.name)]),
  );
}

describe('the list of the stock', () => {
  const { studio, stock } = stockOf();
  const search = (text: string) => stockGroups(stock, studio.lotsOfMaterial, text);

  test('stands by kind, then by name, without kinds that nothing is of', () => {
    expect(names(search(''))).toEqual({
      Tissue: ['Repair tissue 5'],
      Paste: ['Wheat starch', 'Wheat starch paste'],
      Buffer: ['Deionised water'],
      'Release paper': ['Silicone release paper'],
    });
  });

  test.each([
    ['starch', { Paste: ['Wheat starch', 'Wheat starch paste'] }],
    ['  PASTE wheat ', { Paste: ['Wheat starch', 'Wheat starch paste'] }],
    ['t-2', { Tissue: ['Repair tissue 5'] }],
    ['mill', { Tissue: ['Repair tissue 5'], Paste: ['Wheat starch'] }],
    ['starch tissue', {}],
  ])('a search for "%s" finds what has all its words', (text, expected) => {
    expect(names(search(text))).toEqual(expected);
  });

  test('a scanned lot or material opens, whatever its case and the spaces around it', () => {
    expect(matchOf(studio, search('T-2'), ' t-2 ')).toMatchObject({ kind: 'lot', lot: { name: 'T-2' } });
    expect(matchOf(studio, search('x'), 'WHEAT STARCH')).toMatchObject({
      kind: 'material',
      material: { name: 'Wheat starch' },
    });
  });

  test('a search that finds a single material opens it, one that finds several or none opens nothing', () => {
    expect(matchOf(studio, search('silicone'), 'silicone')).toMatchObject({
      material: { name: 'Silicone release paper' },
    });
    expect(matchOf(studio, search('wheat'), 'wheat')).toBeNull();
    expect(matchOf(studio, search('vellum'), 'vellum')).toBeNull();
    expect(matchOf(studio, search(''), ' ')).toBeNull();
  });

  test('its first part ends within a group, and leaves groups after it out', () => {
    expect(names(firstGroups(search(''), 2))).toEqual({
      Tissue: ['Repair tissue 5'],
      Paste: ['Wheat starch'],
    });
    expect(firstGroups(search(''), 100)).toEqual(search(''));
  });
});

describe('the lots of a material', () => {
  const lot = (name: string, more: object) => ({
    Lot: name,
    Material: 'Repair tissue 5',
    Received: date('2026-01-10'),
    Quantity: 2,
    Unit: 'sheet',
    ...more,
  });
  const { ledger, studio, stock } = stockOf({
    Tissue: [
      lot('late', { 'Use by': date('2027-01-01') }),
      lot('soon', { 'Use by': date('2026-05-01') }),
      lot('gone', { 'Use by': date('2026-03-01') }),
      lot('aside', { State: 'Set aside' }),
      lot('thrown', { State: 'Discarded' }),
      lot('used up', {}),
      lot('coming', { Received: date('2026-06-01') }),
      lot('over', {}),
    ],
    Movements: [
      { Movement: 'M-1', Date: date('2026-02-01'), Kind: 'Use', Lot: 'used up', Quantity: 2, Unit: 'sheet' },
      { Movement: 'M-2', Date: date('2026-02-01'), Kind: 'Use', Lot: 'over', Quantity: 3, Unit: 'sheet' },
    ],
  });
  const material = studio.materialsByKey.get('repair tissue 5');
  if (material === undefined) throw new Error('the studio lacks its tissue');
  const lots = lotsOf(ledger, stock, material);
  const namesOf = (part: keyof typeof lots) => lots[part].map((figures) => figures.lot.name);

  test('are told apart: drawn in draw order, others on the shelf or coming, empty and discarded', () => {
    expect(namesOf('drawn')).toEqual(['soon', 'late']);
    expect(namesOf('others')).toEqual(['gone', 'aside', 'coming', 'over']);
    expect(namesOf('past')).toEqual(['thrown', 'used up']);
  });

  test('say why they are not drawn on', () => {
    const standing = new Map(stock.lots.map((each) => [each.lot.name, standingOf(each, today)]));
    expect(standing.get('soon')).toBe('Usable');
    expect(standing.get('gone')).toBe('Gone off');
    expect(standing.get('aside')).toBe('Set aside');
    expect(standing.get('thrown')).toBe('Discarded');
    expect(standing.get('used up')).toBe('Empty');
    expect(standing.get('coming')).toBe('From 1 Jun 2026');
    expect(standing.get('over')).toBe('Overdrawn');
  });

  test('are found again by name and row; by name alone once the row has moved', () => {
    const twice = stockOf({ Tissue: [lot('A', {}), lot('A', { Quantity: 7 })] }).studio.lots.filter(
      ({ name }) => name === 'A',
    );
    const [first, second] = twice;
    if (first === undefined || second === undefined) throw new Error('two lots are called A');
    expect(findLot(twice, lotName(second))).toBe(second);
    expect(findLot(twice, { ...lotName(second), name: ' a', sheetRow: 99 })).toBe(first);
    expect(findLot(twice, { ...lotName(second), name: 'B' })).toBeUndefined();
  });
});
