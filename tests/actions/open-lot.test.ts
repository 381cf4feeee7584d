import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { containerOf, openLot } from '../../src/actions/open-lot.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { addDays, isoDay } from '../../src/core/day.ts';
import { dailyDemand } from '../../src/core/demand.ts';
import { exact, ratio, sum } from '../../src/core/exact-number.ts';
import { goodUntilOn, goodUntilReason, isUsableOn, openedOn } from '../../src/core/life.ts';
import { leftOn, worthOn } from '../../src/core/lot-account.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { Bench } from '../helpers/bench.ts';
import { Desk } from '../helpers/desk.ts';
import { date, dayOf, formula, type Literal, type LiteralRow } from '../helpers/literal.ts';

const TODAY = dayOf('2026-04-03');
const BUFFER: LiteralRow = {
  Lot: 'B-1',
  Material: 'borax buffer',
  Received: date('2026-01-10'),
  Quantity: 2500,
  Unit: 'ml',
  Cost: 10,
  Supplier: 'Chemist',
  'Supplier lot': 'C77',
  'Order line': '1',
  Order: 'O-1',
  Place: 'Shelf',
  pH: 9.2,
};

function literal(lot: LiteralRow = {}, more: Literal = {}): Literal {
  return {
    Materials: [
      {
        Material: 'borax buffer',
        Kind: 'Buffer',
        'Stock unit': 'ml',
        'Life sealed days': 730,
        'Life opened days': 90,
      },
    ],
    Buffers: [{ ...BUFFER, ...lot }],
    Movements: [],
    Places: [{ Place: 'Shelf' }],
    Suppliers: [{ Supplier: 'Chemist' }],
    Offers: [],
    Settings: [{ Setting: 'currency', Value: 'EUR' }],
    ...more,
  };
}

function open(quantity: number | null, on = '2026-04-01', lot = 'B-1') {
  return (snapshot: Parameters<typeof openLot>[0], random: Parameters<typeof openLot>[3]) =>
    openLot(
      snapshot,
      {
        lot,
        quantity: quantity === null ? null : exact(quantity),
        unit: null,
        date: dayOf(on),
        by: 'R. L.',
      },
      TODAY,
      random,
    );
}

describe('opening all of a lot', () => {
  test('writes the day, and Good until follows from it', () => {
    const bench = new Bench(literal());
    const opened = bench.do(open(null));
    expect(opened.posting).toBe(null);
    expect(bench.rows('Movements')).toEqual([]);
    const row = bench.rows('Buffers')[0];
    expect(row).toMatchObject({
      Opened: dayOf('2026-04-01') + 25_569,
      'Good until': dayOf('2026-06-30') + 25_569,
    });
    expect(row).toMatchObject({ Lot: 'B-1', Quantity: 2500, pH: 9.2, 'Supplier lot': 'C77' });
  });

  test('says when the lot looks like several containers', () => {
    const offers = [
      { Supplier: 'Chemist', Material: 'borax buffer', 'Pack quantity': 0.5, Unit: 'l', 'Pack price': 3 },
      { Supplier: 'Chemist', Material: 'borax buffer', 'Pack quantity': 0.7, Unit: 'l', 'Pack price': 3 },
    ];
    const desk = new Desk(literal({}, { Offers: offers }));
    const own = desk.account('B-1').lot;
    expect(containerOf(desk.ledger.studio, own)?.toString()).toBe('500');
    expect(desk.do(open(null)).remarks).toEqual([
      'Lot B-1 looks like 5 containers of 500 ml, and all of it counts as open now. To open one of them clear Opened ' +
        'and open it with the quantity of one.',
    ]);
  });

  test('goes by the order line before any offer, and one pack is one container', () => {
    const order = (packs: number, packQuantity: number): Literal => ({
      Offers: [
        { Supplier: 'Chemist', Material: 'borax buffer', 'Pack quantity': 500, Unit: 'ml', 'Pack price': 3 },
      ],
      Orders: [{ Order: 'O-1', Supplier: 'Chemist', 'Ordered on': date('2026-01-01') }],
      OrderLines: [
        {
          Order: 'O-1',
          Line: '1',
          Material: 'borax buffer',
          Packs: packs,
          'Pack quantity': packQuantity,
          Unit: 'ml',
        },
      ],
    });
    const container = (more: Literal) => {
      const desk = new Desk(literal({}, more));
      return containerOf(desk.ledger.studio, desk.account('B-1').lot)?.toString() ?? null;
    };
    expect(container(order(2, 1250))).toBe('1250');
    expect(container(order(1, 2500))).toBe(null);
  });

  test.each<[string, LiteralRow, string, string]>([
    [
      'opened before',
      { Opened: date('2026-02-01') },
      '2026-04-01',
      'has been open since 1 Feb 2026, as Opened says',
    ],
    ['after today', {}, '2026-04-04', 'is 4 Apr 2026, after today'],
    ['before it came', {}, '2026-01-09', 'came in only on 10 Jan 2026'],
    ['set aside', { State: 'Set aside' }, '2026-04-01', 'was set aside on 1 Apr 2026'],
    ['discarded', { State: 'Discarded' }, '2026-04-01', 'was discarded by 1 Apr 2026'],
    ['with a formula in Opened', { Opened: formula(null) }, '2026-04-01', 'A formula stands in Opened'],
    ['with rubbish in Opened', { Opened: 'spring' }, '2026-04-01', "holds what can't be read"],
  ])('is refused for one %s', (_name, lot, on, message) => {
    expect(new Desk(literal(lot)).refusal(open(null, on))).toContain(message);
  });

  test('is refused where a use opened it earlier, without the column, for another name', () => {
    const used = {
      Movements: [
        { Movement: 'M-1', Date: date('2026-03-01'), Kind: 'Use', Lot: 'B-1', Quantity: 5, Unit: 'ml' },
      ],
    };
    expect(new Desk(literal({}, used)).refusal(open(null))).toContain(
      'open since 1 Mar 2026, when it was first used',
    );
    expect(new Desk(literal({}, used)).refusal(open(null, '2026-02-20'))).toBe('not refused');
    const without = { Buffers: { rows: [BUFFER], without: ['Opened'] } };
    expect(new Desk(literal({}, without)).refusal(open(null))).toBe(
      'The table Buffers has no column Opened, where this must be written: add it, or bring the tables up to date with upgrade.',
    );
    expect(new Desk(literal({}, without)).refusal(open(500))).toContain('has no column Opened');
    expect(new Desk(literal()).refusal(open(null, '2026-04-01', 'B-l'))).toContain('Did you mean B-1?');
  });
});

describe('opening one container of several', () => {
  test('splits it off: a Count with Into, a lot with its share of the cost, nothing used', () => {
    const bench = new Bench(literal());
    const { posting, opened } = bench.do(open(500));
    const [parent, child] = bench.rows('Buffers');
    const [count] = bench.rows('Movements');
    expect(bench.rows('Movements')).toHaveLength(1);
    expect(count).toMatchObject({
      Kind: 'Count',
      Lot: 'B-1',
      Quantity: -500,
      Unit: 'ml',
      Into: opened.name,
      Cost: 2,
      By: 'R. L.',
      Posting: posting,
      Note: `opened as lot ${opened.name}`,
    });
    expect(count).not.toHaveProperty('Job');
    expect(parent).toMatchObject({ Left: 2000, Worth: 8 });
    expect(parent).not.toHaveProperty('Opened');
    expect(child).toEqual({
      Lot: opened.name,
      Material: 'borax buffer',
      Received: dayOf('2026-04-01') + 25_569,
      Opened: dayOf('2026-04-01') + 25_569,
      Quantity: 500,
      Unit: 'ml',
      Cost: 2,
      Supplier: 'Chemist',
      'Supplier lot': 'C77',
      'Use by': dayOf('2028-01-10') + 25_569,
      Place: 'Shelf',
      pH: 9.2,
      Posting: posting,
      Notes: 'from lot B-1; Use by: sealed, keeps 730 days from receipt',
      Left: 500,
      'Left as written': 500,
      'Good until': dayOf('2026-06-30') + 25_569,
      Worth: 2,
    });
  });

  test('is neither demand nor a sign of use, and the others stay sealed', () => {
    const desk = new Desk(literal());
    const { opened } = desk.do(open(500));
    const parent = desk.account('B-1');
    expect(openedOn(parent, TODAY)).toBe(null);
    expect(goodUntilReason(parent, TODAY)).toBe('sealed, keeps 730 days from receipt');
    expect(goodUntilReason(desk.account(opened.name), TODAY)).toBe('opened 1 Apr 2026, keeps 90 days');
    expect(dailyDemand(desk.ledger, parent.lot.material, TODAY).every((each) => each === 0)).toBe(true);
  });

  test('takes the earliest of what limits it sealed along', () => {
    const printed = new Desk(literal({ 'Use by': date('2026-05-01') }));
    const { opened } = printed.do(open(500));
    expect(goodUntilReason(printed.account(opened.name), TODAY)).toBe('printed date');
    expect(isoDay(goodUntilOn(printed.account(opened.name), TODAY) ?? TODAY)).toBe('2026-05-01');
    const tested = new Desk(
      literal({
        'Use by': date('2026-03-01'),
        Retested: date('2026-03-20'),
        'Retested until': date('2026-05-15'),
      }),
    );
    const { opened: other } = tested.do(open(500));
    expect(isoDay(other.record.useBy ?? TODAY)).toBe('2026-05-15');
  });

  test('converts the quantity, and all that is left opens the lot itself', () => {
    const desk = new Desk(literal());
    const half = desk.do((snapshot, random) =>
      openLot(
        snapshot,
        { lot: 'B-1', quantity: exact(0.5), unit: unitNamed('l'), date: TODAY, by: null },
        TODAY,
        random,
      ),
    );
    expect(half.opened.record.quantity.toString()).toBe('500');
    const rest = desk.do(open(2000, '2026-04-03'));
    expect([rest.opened.name, rest.posting]).toEqual(['B-1', null]);
  });

  test.each<[string, number, string]>([
    ['more than is left', 2501, 'Only 2500 ml are left of lot B-1'],
    ['nothing', 0, 'A quantity above 0 is right.'],
  ])('is refused for %s', (_name, quantity, message) => {
    expect(new Desk(literal()).refusal(open(quantity))).toContain(message);
  });

  test('is refused where nobody could tell what it went into, or until when it is good', () => {
    const without = { Movements: { rows: [], without: ['Into'] } };
    expect(new Desk(literal({}, without)).refusal(open(500))).toContain('no column Into');
    expect(new Desk(literal({ 'Use by': 'next year' })).refusal(open(500))).toContain("can't be read");
    const grams = (snapshot: Parameters<typeof openLot>[0], random: Parameters<typeof openLot>[3]) =>
      openLot(
        snapshot,
        { lot: 'B-1', quantity: exact(5), unit: unitNamed('g'), date: TODAY, by: null },
        TODAY,
        random,
      );
    expect(new Desk(literal()).refusal(grams)).toContain('give the quantity in ml');
  });

  test('a lot without a cost gives none along', () => {
    const desk = new Desk(literal({ Cost: null }));
    expect(desk.do(open(500)).opened.record.cost).toBe(null);
  });
});

describe('splits of splits', () => {
  const FIRST = dayOf('2026-02-01');
  const step = fc.record({
    lot: fc.nat(20),
    /** In thousandths of what is left. */
    share: fc.integer({ min: 1, max: 999 }),
    later: fc.integer({ min: 0, max: 3 }),
  });

  test('conserve mass and cost to the coin, on every day, and undone give every figure back', () => {
    let deepest = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99_999 }),
        fc.integer({ min: 1, max: 40 }),
        fc.array(step, { minLength: 1, maxLength: 7 }),
        fc.nat(1000),
        (cents, quantity, steps, seed) => {
          const lot = { Cost: cents / 100, Quantity: quantity };
          const desk = new Desk(literal(lot), seed);
          const names = ['B-1'];
          const depth = new Map([['B-1', 0]]);
          let day = FIRST;
          const figures = () =>
            names.map((name) => {
              const own = desk.account(name);
              return [0, 2, 9, 40].map((offset) => {
                const on = addDays(FIRST, offset);
                return [
                  leftOn(own, on).toFraction(),
                  worthOn(own, on),
                  goodUntilOn(own, on),
                  isUsableOn(own, on),
                ];
              });
            });
          for (const { lot: place, share, later } of steps) {
            day = addDays(day, later);
            const name = names[place % names.length] ?? 'B-1';
            const part = leftOn(desk.account(name), day).mul(ratio(share, 1000)).round(6);
            const before = figures();
            const known = [...names];
            const split = desk.try((snapshot, random) =>
              openLot(
                snapshot,
                { lot: name, quantity: part, unit: null, date: day, by: null },
                TODAY,
                random,
              ),
            );
            if (!split.ok || split.posting === null) continue;
            const { posting } = split;
            const kept = desk.snapshot;
            desk.do((snapshot, random) => undoPosting(snapshot, posting, TODAY, random));
            expect(figures()).toEqual(before);
            expect(leftOn(desk.account(split.opened.name), TODAY).equals(0)).toBe(true);
            expect(worthOn(desk.account(split.opened.name), TODAY)).toBe(0n);
            desk.snapshot = kept;
            names.splice(0, names.length, ...known, split.opened.name);
            depth.set(split.opened.name, (depth.get(name) ?? 0) + 1);
            deepest = Math.max(deepest, depth.get(split.opened.name) ?? 0);
            // Nothing is lost or won, before, on and after any day of a split.
            for (let on = addDays(FIRST, -1); on <= addDays(day, 2); on = addDays(on, 1)) {
              const here = names
                .map((each) => desk.account(each))
                .filter((own) => own.lot.record.received <= on);
              expect(sum(here.map((own) => leftOn(own, on))).toFraction()).toBe(String(quantity));
              expect(here.reduce((total, own) => total + (worthOn(own, on) ?? 0n), 0n)).toBe(BigInt(cents));
            }
          }
        },
      ),
      { seed: 20_260_403, numRuns: 60 },
    );
    expect(deepest).toBeGreaterThanOrEqual(3);
  });
});
