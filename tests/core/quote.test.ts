import { describe, expect, test } from 'vitest';
import { quoteJob } from '../../src/core/quote.ts';
import type { Records } from '../../src/core/records.ts';
import type { Settings } from '../../src/core/settings.ts';
import { lot, material, movement, recipe, recipePart } from './helpers/stock-records.ts';
import { euro, ledgerOf, on, qty } from './helpers/studio-of.ts';
import { job, offer, type PlainRate, plan, rate, supplier, treatment } from './helpers/work-records.ts';

const base: Partial<Records> = {
  materials: [
    material('Paste', 'g'),
    material('Starch', 'g'),
    material('Water', 'ml', { counted: false }),
    material('Tissue', 'sheet', { sheetWidth: qty(30), sheetHeight: qty(40) }),
  ],
  treatments: [
    treatment('Lining', { minutes: '1.5', setup: 20 }),
    treatment('Mending', { setup: 30, setupPer: 'day' }),
  ],
  jobs: [job('J1')],
  suppliers: [supplier('S1')],
  plan: [plan('L1', 'Lining', 10)],
  usageRates: [rate('Lining', 'Paste', 1)],
};

function quote(some: Partial<Records>, settings: Partial<Settings> = {}) {
  const { lines, shortfalls, ...sums } = quoteJob(
    ledgerOf({ ...base, ...some }, settings),
    'j1',
    on('2026-04-01'),
  );
  return {
    lines: lines.map(({ quantity, unit, each, amount, basis, lots }) =>
      `${quantity.toString()} ${unit.name} × ${euro(each)} = ${euro(amount)} ${basis} ${lots.join('+')}`.trim(),
    ),
    how: lines.map(({ how }) => how),
    shortfalls: shortfalls.map(
      ({ material: of, missing, unit }) => `${of.name} ${missing.toString()} ${unit.name}`,
    ),
    sums: Object.fromEntries(
      Object.entries(sums).flatMap(([name, value]) =>
        typeof value === 'bigint' ? [[name, euro(value)]] : [],
      ),
    ),
  };
}

const replacement = { costBasis: 'replacement' } as const;

describe('a quote on the basis of lots', () => {
  test('costs each line at what it would draw, from what is left after the lines before', () => {
    const lots = [
      lot('A', 'Paste', '2026-03-01', 3, { cost: 1 }),
      lot('B', 'Paste', '2026-03-02', 100, { cost: 200 }),
    ];
    const given = quote({ lots, plan: [plan('L9', 'Lining', 2), plan('L1', 'Lining', 3)] });
    expect(given.lines).toEqual(['2 g × 0.34 = 0.67 lots A', '3 g × 1.44 = 4.33 lots A+B']);
    expect(given.how).toEqual([
      '1 g × 2 leaf = 2 g; at cost, 2 g from lot A',
      '1 g × 3 leaf = 3 g; at cost, 1 g from lot A, 2 g from lot B',
    ]);
    expect(given.sums['consumables']).toBe('5.00');
  });

  test('leaves stock as it is, and comes after what was used today', () => {
    const lots = [lot('A', 'Paste', '2026-03-01', 30, { cost: 1 })];
    const movements = [movement('zz', '2026-04-01', 'Use', 'A', 10)];
    const ledger = ledgerOf({ ...base, lots, movements });
    const amounts = [1, 2].map(() => quoteJob(ledger, 'J1', on('2026-04-01')).lines[0]?.amount);
    expect(amounts).toEqual([34n, 34n]);
  });

  test('takes today’s price for the rest, on a line of its own, and names the shortfall', () => {
    const lots = [lot('A', 'Paste', '2026-03-01', 4, { cost: 8 })];
    const offers = [offer('Paste', 100, 50)];
    const given = quote({ lots, offers });
    expect(given.lines).toEqual(['4 g × 2.00 = 8.00 lots A', '6 g × 0.50 = 3.00 replacement']);
    expect(given.shortfalls).toEqual(['Paste 6 g']);
  });

  test('takes today’s price where a lot has no cost, without a shortfall', () => {
    const lots = [lot('A', 'Paste', '2026-03-01', 40)];
    const given = quote({ lots, offers: [offer('Paste', 100, 50)] });
    expect(given.lines).toEqual(['10 g × 0.50 = 5.00 replacement']);
    expect(given.shortfalls).toEqual([]);
  });

  test('says where nothing tells what it costs', () => {
    expect(quote({}).lines).toEqual(['10 g × null = null null']);
    expect(quote({}).sums['consumables']).toBe('0.00');
  });

  test('leaves out what may not be used today', () => {
    const lots = [lot('A', 'Paste', '2026-03-01', 40, { cost: 4, useBy: '2026-03-31' })];
    expect(quote({ lots }).shortfalls).toEqual(['Paste 10 g']);
  });
});

describe('a quote on the basis of replacement', () => {
  test('takes the lowest price per quantity among offers of which enough packs are needed', () => {
    const offers = [
      offer('Paste', 4, 8),
      offer('Paste', 4, 4, { from: 3 }),
      offer('Paste', 4, 1, { from: 4 }),
      offer('Paste', '0.01', 30, { unit: 'kg' }),
    ];
    const lots = [lot('A', 'Paste', '2026-03-01', 40, { cost: 4 })];
    expect(quote({ offers, lots }, replacement).lines).toEqual(['10 g × 1.00 = 10.00 replacement']);
    expect(quote({ offers, plan: [plan('L1', 'Lining', 8)] }, replacement).lines).toEqual([
      '8 g × 2.00 = 16.00 replacement',
    ]);
  });

  test('does not round packs up', () => {
    expect(quote({ offers: [offer('Paste', 1000, 100)] }, replacement).lines).toEqual([
      '10 g × 0.10 = 1.00 replacement',
    ]);
  });

  test('costs what is made here at its parts ÷ yield, parts that are not counted at their offers or nothing', () => {
    const recipes = [recipe('R', 'Paste', 100)];
    const recipeParts = [recipePart('R', 'Starch', 20), recipePart('R', 'Water', '0.1', 'l')];
    const offers = [offer('Starch', 500, 10), offer('Paste', 1, '0.01')];
    const given = quote({ recipes, recipeParts, offers }, replacement);
    // 10 g of paste take 2 g of starch at 0.02.
    expect(given.lines).toEqual(['10 g × 0.00 = 0.04 replacement']);
    const bought = [...offers, offer('Water', 1000, 2, { unit: 'ml' })];
    expect(quote({ recipes, recipeParts, offers: bought }, replacement).lines).toEqual([
      '10 g × 0.01 = 0.06 replacement',
    ]);
  });

  test('takes the lots where no offer gives a figure', () => {
    const lots = [lot('A', 'Paste', '2026-03-01', 40, { cost: 4 })];
    expect(quote({ lots }, replacement).lines).toEqual(['10 g × 0.10 = 1.00 lots A']);
  });

  test('costs what is not counted from its offers, in any unit that leads there', () => {
    const usageRates = [rate('Lining', 'Water', '0.25', { unit: 'l' })];
    expect(quote({ usageRates, offers: [offer('Water', 1, 2, { unit: 'l' })] }).lines).toEqual([
      '2.5 l × 2.00 = 5.00 replacement',
    ]);
    expect(quote({ usageRates }).lines).toEqual(['2.5 l × 0.00 = 0.00 replacement']);
  });
});

describe('how much a quote reckons with', () => {
  const lots = [lot('A', 'Paste', '2026-03-01', 1000, { cost: 1000 })];
  const quantities = (more: PlainRate, rows: Records['plan']) =>
    quote({ lots, usageRates: [rate('Lining', 'Paste', 1, more)], plan: rows }).lines.map(
      (line) => line.split(' ')[0],
    );

  test('the fixed quantity is taken per row, per day or per job, in the order of the sheet', () => {
    const rows = [
      plan('L1', 'Lining', 1, { planned: '2026-05-02' }),
      plan('L2', 'Lining', 2, { planned: '2026-05-01' }),
      plan('L3', 'Lining', 3, { planned: '2026-05-02' }),
    ];
    expect(quantities({ fixed: 100 }, rows)).toEqual(['101', '102', '103']);
    expect(quantities({ fixed: 100, per: 'day' }, rows)).toEqual(['101', '102', '3']);
    expect(quantities({ fixed: 100, per: 'job' }, rows)).toEqual(['101', '2', '3']);
  });

  test('waste and whole units count, and only the rows of the job', () => {
    const rows = [plan('L1', 'Lining', 9), plan('L2', 'Lining', 5, { job: 'STUDIO' })];
    expect(quantities({ fixed: 1, waste: 15, whole: true }, rows)).toEqual(['12']);
  });
});

describe('the sums of a quote', () => {
  const lots = [lot('A', 'Paste', '2026-03-01', 30, { cost: '10.01' })];

  test('lines are rounded, then markup on their sum, then tax on all', () => {
    const rows = [plan('L1', 'Lining', 1), plan('L2', 'Lining', 1), plan('L3', 'Lining', 1)];
    const given = quote(
      { lots, plan: rows },
      { markup: qty('12.5'), tax: qty(21), benchRatePerHour: qty(50) },
    );
    expect(given.lines).toEqual([
      '1 g × 0.33 = 0.33 lots A',
      '1 g × 0.34 = 0.34 lots A',
      '1 g × 0.33 = 0.33 lots A',
    ]);
    // Markup 12.5 % of 1.00 = 0.125; bench 3 × (20 + 1.5) min = 64.5 min at 50; tax 21 % of 54.88 = 11.5248.
    expect(given.sums).toEqual({
      consumables: '1.00',
      markup: '0.13',
      benchTime: '53.75',
      other: '0.00',
      tax: '11.52',
      total: '66.40',
    });
  });

  test('the smallest charge lifts consumables and markup once, where there are any', () => {
    const settings = { markup: qty(10), smallestConsumablesCharge: qty(15) };
    expect(quote({ lots }, settings).sums).toMatchObject({
      consumables: '3.34',
      markup: '0.33',
      other: '11.33',
    });
    expect(quote({ lots }, { ...settings, smallestConsumablesCharge: qty('3.67') }).sums['other']).toBe(
      '0.00',
    );
    expect(quote({ lots, plan: [] }, settings).sums).toMatchObject({ other: '0.00', total: '0.00' });
  });

  test('bench time takes the set-up per row, per day or per job', () => {
    const minutes = (setupPer: 'entry' | 'day' | 'job') => {
      const treatments = [treatment('Lining', { minutes: 1, setup: 20, setupPer })];
      const rows = [
        plan('L1', 'Lining', 1),
        plan('L2', 'Lining', 1, { planned: '2026-04-01' }),
        plan('L3', 'Lining', 1, { planned: '2026-04-02' }),
      ];
      const ledger = ledgerOf({ ...base, treatments, plan: rows });
      return quoteJob(ledger, 'J1', on('2026-04-01')).benchMinutes.valueOf();
    };
    expect([minutes('entry'), minutes('day'), minutes('job')]).toEqual([63, 43, 23]);
  });
});
