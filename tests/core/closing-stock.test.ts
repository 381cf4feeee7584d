import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closingStock } from '../../src/core/closing-stock.ts';
import { stateOn } from '../../src/core/lot-account.ts';
import { stockOn } from '../../src/core/stock.ts';
import { isSame, plainOf, plainStock } from './helpers/plain-simulation.ts';
import { dayAfter, runs, SEED, SPAN, someStudio } from './helpers/random-studio.ts';
import { lot, material, movement } from './helpers/stock-records.ts';
import { euro, ledgerOf, on } from './helpers/studio-of.ts';

const someDay = fc.integer({ min: 0, max: SPAN + 6 });

describe(`against a plain simulation, day by day (seed ${SEED})`, () => {
  test('what is listed is what was received, is not discarded and left, with the figures of that day', () => {
    let listed = 0;
    let absent = 0;
    fc.assert(
      fc.property(someStudio, someDay, (records, offset) => {
        const day = dayAfter(offset);
        const ledger = ledgerOf(records);
        const stock = closingStock(ledger, day);
        const lots = new Map(stock.materials.flatMap((each) => each.lots.map((one) => [one.lot.name, one])));
        plainStock(records, day).forEach((plain, place) => {
          const record = records.lots[place];
          if (record === undefined) throw new Error('a lot is missing');
          const isDiscarded =
            record.state === 'Discarded' && (record.stateSince === null || record.stateSince <= day);
          const isHere = record.received <= day && !isDiscarded;
          const found = lots.get(plain.lot);
          if (isHere && plain.left[0] !== 0n) {
            expect(found, `lot ${plain.lot}`).toBeDefined();
            listed += 1;
          }
          if (!isHere) {
            expect(found, `lot ${plain.lot}`).toBeUndefined();
            absent += 1;
          }
          if (found === undefined) return;
          expect(isSame(plainOf(found.left), plain.left), `left of ${plain.lot}`).toBe(true);
          expect(found.goodUntil).toBe(plain.goodUntil);
          expect(found.expired).toBe(plain.goodUntil !== null && plain.goodUntil < day);
          if (plain.left[0] === 0n) expect(found.worth).not.toBe(0n);
        });
      }),
      runs(2000),
    );
    expect(listed).toBeGreaterThan(2000);
    expect(absent).toBeGreaterThan(300);
  });

  test('the total is what the lots cost less what they charged, and the materials are worth what check says', () => {
    let known = 0;
    fc.assert(
      fc.property(someStudio, someDay, (records, offset) => {
        const day = dayAfter(offset);
        const ledger = ledgerOf(records);
        const stock = closingStock(ledger, day);
        let sum = 0n;
        for (const account of ledger.accounts.values()) {
          const { cost, lot: of, postings } = account;
          if (cost === null || of.record.received > day || stateOn(account, day) === 'Discarded') continue;
          const charged = postings
            .filter(({ movement: each }) => each.day <= day)
            .reduce((total, posting) => total + (posting.cost ?? 0n), 0n);
          sum += cost - charged;
        }
        expect(stock.known).toBe(sum);
        expect(stock.total).toBe(stock.unknown === 0 ? sum : null);
        if (stock.total !== null) known += 1;
        for (const figures of stockOn(ledger, day).materials) {
          const found = stock.materials.find((each) => each.material === figures.material);
          expect(found?.left.toFraction() ?? '0').toBe(figures.left?.toFraction());
          expect(found === undefined ? 0n : found.worth).toBe(figures.worth);
        }
      }),
      runs(2000),
    );
    expect(known).toBeGreaterThan(300);
  });
});

/**
 * IAS 2.23 prescribes specific identification where items are not interchangeable: each keeps its own cost. IAS 2.6
 * counts "materials or supplies to be consumed in … the rendering of services" among inventories, IAS 2.9 measures them at
 * the lower of cost and net realisable value, IAS 2.16 keeps abnormal waste out of cost (the standard's text, as
 * read second-hand, on a page that quotes these paragraphs; not checked against the printed standard).
 */
describe('against worked examples of inventory', () => {
  /** Purchases as lots of one material, then what was issued, naming the purchase each unit came from. */
  function issued(purchases: readonly [number, number][], issues: readonly [number, number][]) {
    return ledgerOf({
      materials: [material('goods', 'each', { kind: 'Sundry' })],
      lots: purchases.map(([quantity, each], place) =>
        lot(`P${place + 1}`, 'goods', `2026-01-0${place + 1}`, quantity, {
          unit: 'each',
          cost: (quantity * each).toFixed(2),
        }),
      ),
      movements: issues.map(([of, quantity], place) =>
        movement(`M${place}`, '2026-02-01', 'Use', `P${of}`, quantity, { unit: 'each' }),
      ),
    });
  }

  // A worked example of first in, first out: 8 at 4.00, 20 at 4.50, 20 at 5.00; 8 then 32 go out. Goods sold 182.00,
  // stock at the end 40.00 (a published course exercise, number 41384, its page read). Where the units that went out
  // are named, specific identification of the oldest first must come to the same.
  test('the oldest named first: 182.00 sold, 40.00 left', () => {
    const ledger = issued(
      [
        [8, 4],
        [20, 4.5],
        [20, 5],
      ],
      [
        [1, 8],
        [2, 20],
        [3, 12],
      ],
    );
    const stock = closingStock(ledger, on('2026-02-01'));
    expect(euro(stock.total)).toBe('40.00');
    expect(stock.materials.map(({ lots }) => lots.map(({ lot: of }) => of.name))).toEqual([['P3']]);
    expect(euro(closingStock(ledger, on('2026-01-31')).total)).toBe('222.00');
  });

  // The data of an average-cost example (4000 at 4.25, 2000 at 4.50, 3000 at 4.75; 4000 go out; a published course
  // document, number 6429890, its page read): its total cost of 40 250 is the same whatever the method. What specific
  // identification leaves is worked out by hand: the first 4000 gone, 2000 × 4.50 + 3000 × 4.75 = 23 250.
  test('the total cost of all that was bought is 40 250.00, and 23 250.00 of it is left', () => {
    const bought: [number, number][] = [
      [4000, 4.25],
      [2000, 4.5],
      [3000, 4.75],
    ];
    expect(euro(closingStock(issued(bought, []), on('2026-02-01')).total)).toBe('40250.00');
    expect(euro(closingStock(issued(bought, [[1, 4000]]), on('2026-02-01')).total)).toBe('23250.00');
  });
});

describe('what is in it', () => {
  const records = {
    materials: [
      material('Paste', 'g', { lifeOpenedDays: 10 }),
      material('Water', 'ml', { counted: false }),
      material('Starch', 'kg'),
    ],
    lots: [
      lot('A', 'Paste', '2026-01-01', 100, { cost: '10.00' }),
      lot('B', 'Paste', '2026-01-05', 50, { cost: '5.00', state: 'Set aside', since: '2026-01-20' }),
      lot('C', 'Paste', '2026-01-05', 50, { cost: '5.00', state: 'Discarded', since: '2026-01-20' }),
      lot('D', 'Water', '2026-01-01', 50, { unit: 'ml', cost: '5.00' }),
      lot('E', 'Starch', '2026-01-01', 500),
      lot('F', 'Paste', '2026-03-01', 50, { cost: '5.00' }),
    ],
    movements: [movement('M1', '2026-01-02', 'Use', 'A', 25), movement('M2', '2026-01-30', 'Use', 'B', 70)],
  };
  const ledger = ledgerOf(records);
  const brief = (day: string) =>
    closingStock(ledger, on(day)).materials.flatMap(({ lots }) =>
      lots.map(({ lot: { name }, left, worth, state, expired }) =>
        [name, left.toString(), euro(worth), state, expired ? 'expired' : ''].join(' ').trim(),
      ),
    );

  test('gone off and set aside are in it at full worth and marked; discarded, uncounted and later ones are not', () => {
    expect(brief('2026-01-10')).toEqual([
      'A 75 7.50 Usable',
      'B 50 5.00 Usable',
      'C 50 5.00 Usable',
      'E 500  Usable',
    ]);
    expect(brief('2026-01-25')).toEqual(['A 75 7.50 Usable expired', 'B 50 5.00 Set aside', 'E 500  Usable']);
    expect(brief('2026-02-25')).toEqual([
      'A 75 7.50 Usable expired',
      'B -20 -2.00 Set aside expired',
      'E 500  Usable',
    ]);
  });

  test('a lot without a cost makes the total unknown, and says so', () => {
    const stock = closingStock(ledger, on('2026-01-25'));
    expect([stock.total, euro(stock.known), stock.unknown]).toEqual([null, '12.50', 1]);
    const [paste, starch] = stock.materials;
    expect([euro(paste?.worth ?? null), paste?.left.toString()]).toEqual(['12.50', '125']);
    expect([starch?.worth, starch?.left.toString(), starch?.lots[0]?.unit.name]).toEqual([null, '0.5', 'g']);
    expect(paste?.lots[0]?.unitCost?.toString()).toBe('0.1');
  });

  test('coins that a reversal leaves on an empty lot are in the total', () => {
    // Half of 1 cent is rounded to 1: the Use costs 1, the Put back −1, the next Use 1, and taking back the Put back
    // costs exactly what it had given.
    const odd = ledgerOf({
      materials: [material('Paste', 'g')],
      lots: [lot('A', 'Paste', '2026-01-01', 2, { cost: '0.01' })],
      movements: [
        movement('M1', '2026-01-02', 'Use', 'A', 1),
        movement('M2', '2026-01-03', 'Put back', 'A', 1),
        movement('M3', '2026-01-04', 'Use', 'A', 1),
        movement('M4', '2026-01-05', 'Put back', 'A', -1, { reverses: 'M2' }),
      ],
    });
    const stock = closingStock(odd, on('2026-01-05'));
    expect(stock.materials[0]?.lots.map(({ left, worth }) => [left.toString(), worth])).toEqual([['0', -1n]]);
    expect(stock.total).toBe(-1n);
    expect(closingStock(odd, on('2026-01-04')).total).toBe(0n);
  });
});
