import { describe, expect, test } from 'vitest';
import { disposalsIn } from '../../src/core/disposals.ts';
import { lot, material, movement } from './helpers/stock-records.ts';
import { euro, ledgerOf } from './helpers/studio-of.ts';

const ledger = ledgerOf({
  materials: [
    material('Solvent', 'ml', { disposal: 'licensed carrier', hazards: 'H225' }),
    material('Release', 'sheet', { kind: 'Release paper', usesPerUnit: null }),
    material('Paste', 'g'),
  ],
  lots: [
    lot('S-1', 'Solvent', '2025-11-01', 1, { unit: 'l', cost: '20.00' }),
    lot('S-2', 'Solvent', '2025-11-01', 500, { unit: 'ml', state: 'Discarded', since: '2026-06-30' }),
    lot('S-3', 'Solvent', '2025-11-01', 200, {
      unit: 'ml',
      cost: '4.00',
      state: 'Discarded',
      since: '2026-07-01',
    }),
    lot('R-1', 'Release', '2026-01-01', 5, { unit: 'sheet', cost: '20.00', uses: 10 }),
    lot('P-1', 'Paste', '2026-01-01', 100, { cost: '1.00', state: 'Discarded' }),
    lot('P-2', 'Paste', '2026-01-01', 100, { cost: '1.00', state: 'Set aside', since: '2026-02-01' }),
    lot('P-3', 'Paste', '2026-02-01', 100, { cost: '1.00' }),
  ],
  movements: [
    movement('M1', '2025-12-31', 'Waste', 'S-1', 100, { unit: 'ml' }),
    movement('M2', '2026-01-01', 'Waste', 'S-1', 50, { unit: 'ml', note: 'gone off', job: ' studio ' }),
    movement('M3', '2026-12-31', 'Waste', 'S-1', 25, { unit: 'ml', job: '26-014' }),
    movement('M4', '2027-01-01', 'Waste', 'S-1', 25, { unit: 'ml' }),
    movement('M5', '2026-05-01', 'Waste', 'S-1', 75, { unit: 'ml' }),
    movement('M6', '2026-05-02', 'Waste', 'S-1', -75, { unit: 'ml', reverses: 'M5' }),
    movement('M7', '2026-05-03', 'Use', 'S-1', 10, { unit: 'ml' }),
    movement('M8', '2026-03-01', 'Waste', 'R-1', 15, { unit: 'use' }),
    movement('M9', '2026-07-01', 'Waste', 'S-3', 150, { unit: 'ml' }),
    movement('M0', '2025-12-20', 'Waste', 'P-3', 10),
  ],
});

/** The rows of a year, tersely. */
function rowsOf(year: number): string[] {
  return disposalsIn(ledger, year).materials.flatMap(({ rows }) =>
    rows.map(({ movement: name, lot: of, quantity, unit, worth, borneBy, by, note }) =>
      [name, of.name, quantity.toString(), unit.name, euro(worth), borneBy, by, note].join(' ').trim(),
    ),
  );
}

describe('what was thrown away in a year', () => {
  test('takes every standing Waste of the year, first and last day included, and lots discarded in it', () => {
    expect(rowsOf(2026)).toEqual([
      'M2 S-1 50 ml 1.00 studio waste gone off',
      ' S-2 500 ml  studio state'.trim(),
      'M9 S-3 150 ml 3.00 studio waste',
      'S-3 50 ml 1.00 studio state',
      'M3 S-1 25 ml 0.50 job waste',
      'M8 R-1 15 use 6.00 studio waste',
      'M0 P-3 10 g 0.10 studio waste',
    ]);
    expect(rowsOf(2025)).toEqual(['M1 S-1 100 ml 2.00 studio waste']);
    expect(rowsOf(2027)).toEqual(['M4 S-1 25 ml 0.50 studio waste']);
    expect(rowsOf(2028)).toEqual([]);
  });

  test('sums each material in its stock unit, with the rule and the hazards that Materials says', () => {
    const brief = disposalsIn(ledger, 2026).materials.map(
      ({ material: of, quantity, unit, worth, withoutCost, rule, hazards }) => [
        of.name,
        quantity.toString(),
        unit.name,
        euro(worth),
        withoutCost,
        rule,
        hazards,
      ],
    );
    expect(brief).toEqual([
      ['Solvent', '775', 'ml', '5.50', 1, 'licensed carrier', 'H225'],
      ['Release', '1.5', 'sheet', '6.00', 0, null, null],
      ['Paste', '10', 'g', '0.10', 0, null, null],
    ]);
  });

  test("tells a job's waste from the studio's loss, and what has no cost or no day", () => {
    const { jobWaste, studioLoss, withoutCost, undated } = disposalsIn(ledger, 2026);
    expect([euro(jobWaste), euro(studioLoss), withoutCost]).toEqual(['0.50', '11.10', 1]);
    expect(undated.map(({ lot: of, quantity, day }) => [of.name, quantity.toString(), day])).toEqual([
      ['P-1', '100', null],
    ]);
    expect(disposalsIn(ledger, 2030).undated).toHaveLength(1);
  });
});
