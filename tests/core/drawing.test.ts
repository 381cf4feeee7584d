import { describe, expect, test } from 'vitest';
import { entryStatus } from '../../src/core/entry-needs.ts';
import { leftOn } from '../../src/core/lot-account.ts';
import type { Records } from '../../src/core/records.ts';
import { lot, material, movement } from './helpers/stock-records.ts';
import { account, draw, entryNamed, ledgerOf, on, taken } from './helpers/studio-of.ts';
import { entry, job, type PlainRate, rate, treatment } from './helpers/work-records.ts';

const TODAY = '2026-04-01';
const base: Partial<Records> = {
  materials: [
    material('Paste', 'g'),
    material('Glue', 'g'),
    material('Water', 'l', { counted: false }),
    material('Tissue', 'sheet', { kind: 'Tissue' }),
  ],
  treatments: [treatment('Lining'), treatment('Looking')],
  jobs: [job('J1')],
};
const paste = [lot('P', 'Paste', '2026-03-01', 100), lot('Q', 'Paste', '2026-03-02', 100)];
const glue = [lot('G', 'Glue', '2026-03-01', 100)];

/** What is drawn today for entry E1 of 4 leaves, dated 10 March 2026, and others. */
function drawn(some: Partial<Records>): string[] {
  const entries = [entry('E1', '2026-03-10', 'Lining', 4)];
  return taken(draw(ledgerOf({ ...base, lots: [...paste, ...glue], entries, ...some }), TODAY));
}

function byRate(quantity: string, more: PlainRate = {}): string[] {
  return drawn({ usageRates: [rate('Lining', 'Paste', quantity, more)] });
}

describe('what an entry takes by its rates', () => {
  test('is (rate × extent + fixed) × (1 + waste ÷ 100), in the unit of the rate', () => {
    expect(byRate('2.5')).toEqual(['E1 P 10 g']);
    expect(byRate('2.5', { fixed: 5 })).toEqual(['E1 P 15 g']);
    expect(byRate('2.5', { fixed: 5, waste: 10 })).toEqual(['E1 P 16.5 g']);
    expect(byRate('0.0025', { unit: 'kg' })).toEqual(['E1 P 0.01 kg']);
  });

  test('is rounded up to whole units where the rate says so, after the waste', () => {
    expect(byRate('2.5', { whole: true, waste: 1 })).toEqual(['E1 P 11 g']);
    expect(byRate('2.5', { whole: true })).toEqual(['E1 P 10 g']);
    expect(byRate('0.3333333', { whole: true })).toEqual(['E1 P 2 g']);
  });

  test('has 6 decimals', () => {
    expect(byRate('0.33333333')).toEqual(['E1 P 1.333333 g']);
  });

  test('is of each material, split across lots, with what is missing', () => {
    const usageRates = [rate('Lining', 'Paste', 51), rate('Lining', 'Glue', 26)];
    expect(drawn({ usageRates })).toEqual([
      'E1 P 100 g',
      'E1 Q 100 g',
      'E1 G 100 g',
      'E1 - Paste 4 g',
      'E1 - Glue 4 g',
    ]);
  });

  test('names job, item and entry, and that the lots are assumed', () => {
    const entries = [entry('E1', '2026-03-10', 'Lining', 4, { item: 'leaf 3' })];
    const ledger = ledgerOf({ ...base, lots: paste, entries, usageRates: [rate('Lining', 'Paste', 1)] });
    expect(draw(ledger, TODAY).movements[0]).toMatchObject({
      kind: 'Use',
      date: on('2026-03-10'),
      job: 'J1',
      item: 'leaf 3',
      entry: 'E1',
      lotIs: 'assumed',
    });
  });

  test('is the first of its alternatives', () => {
    const usageRates = [
      rate('Lining', 'Glue', 1, { choice: 'a' }),
      rate('Lining', 'Paste', 1, { choice: 'A ' }),
    ];
    expect(drawn({ usageRates })).toEqual(['E1 G 4 g']);
  });

  test('is nothing of what is not counted, and nothing where units do not convert', () => {
    const usageRates = [
      rate('Lining', 'Water', 1, { unit: 'l' }),
      rate('Lining', 'Tissue', 1, { unit: 'g' }),
    ];
    const ledger = ledgerOf({
      ...base,
      usageRates,
      lots: [lot('T', 'Tissue', '2026-03-01', 5, { unit: 'sheet' })],
      entries: [entry('E1', '2026-03-10', 'Lining', 4)],
    });
    expect(taken(draw(ledger, TODAY))).toEqual([]);
    expect(entryStatus(ledger, entryNamed(ledger, 'E1'), on(TODAY))).toBe('drawn');
  });

  test('converts by the facts of the lot that it is drawn from', () => {
    const usageRates = [rate('Lining', 'Tissue', 600, { unit: 'cm2' })];
    const lots = [
      lot('small', 'Tissue', '2026-03-01', 1, { unit: 'sheet', width: 30, height: 40 }),
      lot('large', 'Tissue', '2026-03-02', 1, { unit: 'sheet', width: 60, height: 40 }),
    ];
    expect(drawn({ usageRates, lots })).toEqual(['E1 small 1200 cm2', 'E1 large 1200 cm2']);
  });
});

describe('emptying a lot', () => {
  const emptied = (of: Records['lots'][number], unit: string, movements: Records['movements'] = []) => {
    const usageRates = [rate('Lining', 'Paste', 25, { unit })];
    const entries = [entry('E1', '2026-03-10', 'Lining', 4)];
    const { ledger, movements: taking } = draw(
      ledgerOf({ ...base, lots: [of], usageRates, entries, movements }),
      TODAY,
    );
    return [taking[0]?.quantity.toString(), leftOn(account(ledger, 'P'), on(TODAY)).toString()];
  };

  test('writes 6 decimals and leaves nothing, however few decimals that comes to', () => {
    // 5.66989 g are 0.1999994… oz.
    expect(emptied(lot('P', 'Paste', '2026-03-01', '5.66989'), 'oz')).toEqual(['0.199999', '0']);
    // 0.2 kg less 0.4 mg is 0.1999996 kg, which is written as 0.2.
    expect(emptied(lot('P', 'Paste', '2026-03-01', '199.9996'), 'kg')).toEqual(['0.2', '0']);
  });

  test('leaves nothing of a small lot that had been drawn in another unit before', () => {
    const before = [movement('M1', '2026-03-05', 'Use', 'P', '0.001', { unit: 'oz' })];
    expect(emptied(lot('P', 'Paste', '2026-03-01', '0.3'), 'g', before)).toEqual(['0.27165', '0']);
  });
});

describe('which entries are drawn', () => {
  const usageRates = [rate('Lining', 'Paste', 1)];

  test('they go by date, then by entry, whatever their rows; those after today wait', () => {
    const entries = [
      entry('E9', '2026-03-11', 'Lining', 1),
      entry('E2', '2026-03-12', 'Lining', 2),
      entry('E1', '2026-03-12', 'Lining', 3),
      entry('E0', '2026-04-02', 'Lining', 4),
      entry('E3', TODAY, 'Lining', 5),
    ];
    expect(drawn({ usageRates, entries })).toEqual(['E9 P 1 g', 'E1 P 3 g', 'E2 P 2 g', 'E3 P 5 g']);
  });

  test('an entry is drawn as of its date', () => {
    const lots = [
      lot('gone off since', 'Paste', '2026-03-01', 2, { useBy: '2026-03-10' }),
      lot('come since', 'Paste', '2026-03-11', 9, { useBy: '2026-03-12' }),
      lot('keeps', 'Paste', '2026-03-01', 1),
    ];
    expect(drawn({ usageRates, lots })).toEqual(['E1 gone off since 2 g', 'E1 keeps 1 g', 'E1 - Paste 1 g']);
  });

  test('one with a movement is drawn, whatever Drawn says; one whose movements are all reversed is not', () => {
    const movements = [movement('M1', '2026-03-10', 'Use', 'P', 1, { entry: 'e1 ' })];
    expect(drawn({ usageRates, movements })).toEqual([]);
    const reversed = [
      ...movements,
      movement('M2', '2026-03-12', 'Use', 'P', -1, { entry: 'E1', reverses: 'M1' }),
    ];
    expect(drawn({ usageRates, movements: reversed })).toEqual(['E1 P 4 g']);
  });

  test('one without rates, or with nothing to take, is drawn', () => {
    const entries = [entry('E1', '2026-03-10', 'Looking', 4), entry('E2', '2026-03-10', 'Lining', 0)];
    const ledger = ledgerOf({ ...base, lots: paste, usageRates, entries });
    expect(draw(ledger, TODAY).entries).toEqual([]);
    for (const name of ['E1', 'E2']) {
      expect(entryStatus(ledger, entryNamed(ledger, name), on(TODAY))).toBe('drawn');
    }
  });

  test('of two rows with one identifier the first is drawn, and a row without one is not', () => {
    const entries = [
      entry('E1', '2026-03-12', 'Lining', 1),
      entry('e1', '2026-03-11', 'Lining', 2),
      entry(null, '2026-03-11', 'Lining', 4),
    ];
    expect(drawn({ usageRates, entries })).toEqual(['E1 P 1 g']);
  });
});
