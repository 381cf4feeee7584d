import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moneyText } from '../../src/core/money.ts';
import { quoteJob } from '../../src/core/quote.ts';
import { costPerUse, isSiliconeCoated, maxUses, usesLeft, usesOfSheet } from '../../src/core/uses.ts';
import { runs, SEED } from './helpers/random-studio.ts';
import { lot, material, movement, type PlainLot, qty } from './helpers/stock-records.ts';
import { account, draw, ledgerOf, materialNamed, on, settingsOf, taken } from './helpers/studio-of.ts';
import { entry, job, plan, rate, treatment } from './helpers/work-records.ts';

const { currency } = settingsOf({});

function felt(more: PlainLot = {}, movements: Parameters<typeof ledgerOf>[0]['movements'] = []) {
  const felts = material('Felt', 'sheet', { kind: 'Release paper', usesPerUnit: qty(8) });
  const own = lot('F', 'Felt', '2026-03-01', 3, { unit: 'sheet', cost: 30, ...more });
  return account(ledgerOf({ materials: [felts, material('Paste', 'g')], lots: [own], movements }), 'F');
}

describe('what is used again', () => {
  test('has its uses, and what one of them costs', () => {
    const own = felt({}, [movement('M1', '2026-03-02', 'Use', 'F', 5, { unit: 'use' })]);
    expect(maxUses(own.lot)?.toString()).toBe('24');
    expect(usesLeft(own, on('2026-03-01'))?.toString()).toBe('24');
    expect(usesLeft(own, on('2026-03-02'))?.toString()).toBe('19');
    expect(usesLeft(own, on('2026-02-28'))?.toString()).toBe('0');
    // 30.00 over 24 uses is 1.25 each.
    expect(moneyText(costPerUse(own.lot, currency) ?? 0n, currency)).toBe('1.25');
  });

  test('a lot’s own Uses per unit win, also where it is kept in uses', () => {
    expect(maxUses(felt({ uses: 10 }).lot)?.toString()).toBe('30');
    const inUses = felt({ unit: 'use', uses: 10 }).lot;
    expect(maxUses(inUses)?.toString()).toBe('3');
    expect(usesOfSheet(inUses)?.toString()).toBe('10');
  });

  test('what is used once has none, and no cost means no cost per use', () => {
    const own = account(
      ledgerOf({ materials: [material('Paste', 'g')], lots: [lot('P', 'Paste', '2026-03-01', 10)] }),
      'P',
    );
    expect([maxUses(own.lot), usesLeft(own, on('2026-03-02')), usesOfSheet(own.lot)]).toEqual([
      null,
      null,
      null,
    ]);
    const { cost: _, ...free } = { cost: 1, unit: 'sheet' };
    const felts = material('Felt', 'sheet', { usesPerUnit: qty(8) });
    const gift = account(
      ledgerOf({ materials: [felts], lots: [lot('F', 'Felt', '2026-03-01', 3, free)] }),
      'F',
    );
    expect(costPerUse(gift.lot, currency)).toBe(null);
  });

  test.each([
    ['Silicone release paper', null, null, true],
    ['Release paper', 'glassine, siliconised on one side', null, true],
    ['Release paper', null, 'paper, silicone', true],
    ['Polyester web', 'non-woven', 'polyester', false],
    ['Abrasive paper', 'silicon carbide', null, false],
  ])('%s, %s, %s: coated with silicone is %s', (name, description, composition, coated) => {
    const ledger = ledgerOf({ materials: [material(name, 'sheet', { description, composition })] });
    expect(isSiliconeCoated(materialNamed(ledger, name))).toBe(coated);
  });
});

describe('uses are whole per entry', () => {
  const press = (whole: boolean | null) => ({
    materials: [material('Felt', 'sheet', { usesPerUnit: qty(8) })],
    lots: [lot('F', 'Felt', '2026-03-01', 3, { unit: 'sheet', cost: 24 })],
    treatments: [treatment('Press')],
    usageRates: [rate('Press', 'Felt', '0.25', { unit: 'use', ...(whole === null ? {} : { whole }) })],
    jobs: [job('J1')],
  });
  const pressed = (whole: boolean | null) =>
    taken(
      draw(ledgerOf({ ...press(whole), entries: [entry('E1', '2026-03-05', 'Press', 5)] }), '2026-03-06'),
    );

  test('also where Whole is blank; an explicit no stays no', () => {
    expect(pressed(null)).toEqual(['E1 F 2 use']);
    expect(pressed(true)).toEqual(['E1 F 2 use']);
    expect(pressed(false)).toEqual(['E1 F 1.25 use']);
  });

  test('and so they are quoted', () => {
    const ledger = ledgerOf({ ...press(null), plan: [plan('L1', 'Press', 5)] });
    const { lines } = quoteJob(ledger, 'J1', on('2026-03-06'));
    expect(lines.map(({ quantity, amount, how }) => [quantity.toString(), amount, how])).toEqual([
      ['2', 200n, '0.25 uses × 5 leaf in whole units = 2 uses; at cost, 2 uses from lot F'],
    ]);
  });
});

describe(`sheets and uses agree (seed ${SEED})`, () => {
  const step = fc.record({
    kind: fc.constantFrom('Use' as const, 'Waste' as const, 'Put back' as const),
    uses: fc.integer({ min: 1, max: 9 }),
    day: fc.integer({ min: 1, max: 28 }),
  });

  test('after any movements in uses and in sheets, on every day, and cost what is gone costs', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 13 }),
        fc.integer({ min: 1, max: 30 }),
        fc.array(step, { maxLength: 12 }),
        fc.integer({ min: 0, max: 5000 }),
        (perSheet, sheets, steps, cents) => {
          const felts = material('Felt', 'sheet', { usesPerUnit: qty(perSheet) });
          const bought = lot('F', 'Felt', '2026-03-01', sheets, { unit: 'sheet', cost: `${cents}e-2` });
          const movements = steps.map(({ kind, uses, day }, place) =>
            movement(`M${place}`, `2026-03-${String(day).padStart(2, '0')}`, kind, 'F', uses, {
              unit: 'use',
            }),
          );
          const own = account(ledgerOf({ materials: [felts], lots: [bought], movements }), 'F');
          for (const day of [1, 9, 17, 28]) {
            // In whole uses, counted apart.
            const gone = steps
              .filter((each) => each.day <= day)
              .reduce((total, { kind, uses }) => total + (kind === 'Put back' ? -uses : uses), 0);
            const asOf = on(`2026-03-${String(day).padStart(2, '0')}`);
            const left = usesLeft(own, asOf);
            expect(left?.toString()).toBe(String(perSheet * sheets - gone));
            expect(own.postings.findLast(({ movement: each }) => each.day <= asOf)?.charged ?? 0n).toBe(
              halfAway(BigInt(cents) * BigInt(gone), BigInt(perSheet * sheets)),
            );
          }
        },
      ),
      runs(1500),
    );
  });

  /** Rounded to the nearest whole, halves away from zero, in whole numbers only. */
  function halfAway(numerator: bigint, denominator: bigint): bigint {
    const size = numerator < 0n ? -numerator : numerator;
    const rounded = (2n * size + denominator) / (2n * denominator);
    return numerator < 0n ? -rounded : rounded;
  }
});
