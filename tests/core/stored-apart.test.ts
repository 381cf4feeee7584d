import { describe, expect, test } from 'vitest';
import type { Records } from '../../src/core/records.ts';
import { lot, material, movement, place } from './helpers/stock-records.ts';
import { noticesOn, onlyOf } from './helpers/studio-of.ts';

const buffer = (name: string, more: Parameters<typeof material>[2] = {}) =>
  material(name, 'g', { kind: 'Buffer', ...more });

const acid = buffer('citric acid');
const alkali = buffer('calcium hydroxide');
const at = (where: string | undefined) => (where === undefined ? {} : { place: where });

function together(some: Partial<Records>, day = '2026-04-01') {
  return onlyOf(noticesOn(day, some), 'hazard');
}

/** Whether two materials, a lot of each in one place, give a notice. */
function clash(one: string, other: string): string[] {
  const materials = [buffer(one), buffer(other)];
  const lots = materials.map(({ material: name }, number) =>
    lot(`L${number}`, name ?? '', '2026-03-01', 10, at('Shelf')),
  );
  return together({ materials, lots }).map(({ message }) => message.split('. ')[0] ?? '');
}

describe('materials that must not share a place', () => {
  // By the pairs of the International Chemical Safety Cards 0044 and 1670 and suppliers' sheets; ammonia and
  // hypochlorite by common practice.
  test.each([
    ['citric acid', 'calcium hydroxide', 'an acid and an alkali'],
    ['acetic acid', 'ammonia solution', 'an acid and an alkali'],
    ['hydrogen peroxide', 'ethanol', 'an oxidiser and a solvent or other flammable liquid'],
    ['acetone', 'hydrogen peroxide', 'an oxidiser and a solvent or other flammable liquid'],
    ['sodium borohydride', 'deionised water', 'something that reacts with water, and water'],
    ['sodium borohydride', 'acetic acid', 'a borohydride and an acid'],
    ['sodium borohydride', 'ethanol', 'a borohydride and an alcohol'],
    ['sodium borohydride', 'hydrogen peroxide', 'a borohydride and an oxidiser'],
    ['ammonia', 'calcium hypochlorite', 'ammonia and a hypochlorite'],
    ['calcium hypochlorite', 'citric acid', 'something that gives off toxic gas with acids, and an acid'],
  ])('%s and %s', (one, other, words) => {
    expect(clash(one, other)).toEqual([`Shelf: ${words} must not stand together`]);
    expect(clash(other, one)).toEqual([`Shelf: ${words} must not stand together`]);
  });

  test.each([
    ['citric acid', 'ethanol'],
    ['calcium hydroxide', 'magnesium hydroxide'],
    ['ethanol', 'acetone'],
    ['wheat starch', 'hydrogen peroxide'],
    ['sodium borohydride', 'acetone'],
    ['ammonia', 'ethanol'],
    ['acid-free glue', 'calcium hydroxide'],
    ['pH buffer 4.01', 'pH buffer 10.01'],
    ['pH buffer 4.01', 'calcium hydroxide'],
  ])('not %s and %s', (one, other) => {
    expect(clash(one, other)).toEqual([]);
  });

  test('a mixture that is both by its own row does not stand beside itself', () => {
    const wash = buffer('wash', { composition: 'acetic acid, calcium hydroxide' });
    const lots = [lot('W1', 'wash', '2026-03-01', 5, at('A')), lot('W2', 'wash', '2026-03-02', 5, at('A'))];
    expect(together({ materials: [wash], lots })).toEqual([]);
  });
});

describe('the notice', () => {
  const materials = [acid, alkali, buffer('acetic acid', { hazards: 'H226' })];
  const lots = [
    lot('K1', 'calcium hydroxide', '2026-03-01', 10, at('cupboard')),
    lot('C1', 'citric acid', '2026-03-01', 10, at('Cupboard ')),
    lot('C2', 'citric acid', '2026-03-05', 10, at('Cupboard')),
    lot('A1', 'acetic acid', '2026-03-10', 10, at('Cupboard')),
  ];

  test('stands once for a place and pair, says which words made it so, and defers', () => {
    const found = together({ materials, lots, places: [place('Cupboard')] });
    expect(found.map(({ severity, subject, message }) => ({ severity, subject, message }))).toEqual([
      {
        severity: 'warn',
        subject: 'Cupboard',
        message:
          'Cupboard: an acid and an alkali must not stand together. Here: acetic acid (lot A1; Material says ' +
          '“acetic acid”), citric acid (lots C1, C2; Material says “citric acid”) beside calcium hydroxide (lot K1; ' +
          'Material says “hydroxide”). That goes by these words and classifies nothing: read the suppliers’ safety ' +
          'data sheets, and store them by these, your local codes and licensed practice.',
      },
    ]);
  });

  test('is about the row of the place, or else the Place of a lot', () => {
    const cells = (places: Records['places']) =>
      together({ materials, lots, places }).map(({ at: { place: row, column } }) => `${row.table} ${column}`);
    expect(cells([place('Cupboard')])).toEqual(['Places Place']);
    expect(cells([])).toEqual(['Paste Place']);
  });

  test('stands for each place, and not for lots that stand apart or nowhere', () => {
    const where = (acidAt: string | undefined, alkaliAt: string | undefined) =>
      together({
        materials,
        lots: [
          lot('K', 'calcium hydroxide', '2026-03-01', 10, at(alkaliAt)),
          lot('C', 'citric acid', '2026-03-01', 10, at(acidAt)),
        ],
      }).map(({ subject }) => subject);
    expect(where('A', 'A')).toEqual(['A']);
    expect(where('A', 'B')).toEqual([]);
    expect(where(undefined, undefined)).toEqual([]);
    const both = [...lots, ...lots.map((each) => ({ ...each, lot: `${each.lot}b`, storedAt: 'Bench' }))];
    expect(together({ materials, lots: both }).map(({ subject }) => subject)).toEqual(['Bench', 'Cupboard']);
  });
});

describe('on a day', () => {
  const some = (more: Parameters<typeof lot>[4], movements: Records['movements'] = []) => ({
    materials: [acid, alkali],
    lots: [
      lot('K', 'calcium hydroxide', '2026-03-01', 10, at('A')),
      lot('C', 'citric acid', '2026-03-10', 10, { ...at('A'), ...more }),
    ],
    movements,
  });
  const on = (day: string, records: Partial<Records>) => together(records, day).length;

  test('from when both are there until one is used up', () => {
    const used = some({}, [movement('M', '2026-03-20', 'Use', 'C', 10)]);
    expect(['2026-03-09', '2026-03-10', '2026-03-19', '2026-03-20'].map((day) => on(day, used))).toEqual([
      0, 1, 1, 0,
    ]);
  });

  test('also while expired or set aside, not once thrown away', () => {
    expect(on('2026-04-01', some({ useBy: '2026-03-15' }))).toBe(1);
    expect(on('2026-04-01', some({ state: 'Set aside' }))).toBe(1);
    const discarded = some({ state: 'Discarded', since: '2026-03-25' });
    expect(['2026-03-24', '2026-03-25'].map((day) => on(day, discarded))).toEqual([1, 0]);
  });
});
