import { describe, expect, test } from 'vitest';
import type { Basket } from '../../../src/core/buying/basket.ts';
import { basketOf } from '../../../src/core/buying/basket-of.ts';
import type { BasketProblem } from '../../../src/core/buying/basket-problem.ts';
import { currencyOf } from '../../../src/core/money.ts';
import { highsSolver } from '../../../src/solver/highs-solver.ts';
import { loadHighs } from '../../../src/solver/load-highs.ts';
import { basket, day, need, offer, supplier } from './basket-cases.ts';

const EURO = currencyOf('EUR', null);
const solve = highsSolver(loadHighs);
const worked = (problem: BasketProblem): Promise<Basket> => basketOf(problem, solve, EURO);

/** Why the line of a material stands there. */
const reasonsFor = ({ orders }: Basket, material: string): readonly string[] =>
  orders.flatMap(({ lines }) => lines).find((line) => line.material === material)?.reasons ?? [];
const orderReasons = ({ orders }: Basket): readonly (readonly string[])[] =>
  orders.map(({ reasons }) => reasons);
const refill = 'Order when down to 2 sheets.';
const forJob = (days: number, quantity: number, job = 'J-014') => [{ day: day(days), quantity, job }];

describe('why so many', () => {
  test('two more sheets that save the carriage', async () => {
    const answer = await worked(
      basket(
        [need('tissue', 8, [offer('Alder', 1, 500)])],
        [supplier('Alder', { carriage: 1200, carriageFreeOver: 5000 })],
      ),
    );
    expect(answer).toMatchObject({ goods: 5000, carriage: 0, total: 5000 });
    expect(reasonsFor(answer, 'tissue')).toEqual([refill, '2 more sheets save the carriage of 12.00.']);
    expect(orderReasons(answer)).toEqual([['No carriage: it is charged only below 50.00.']]);
  });

  test('not where the carriage is cheaper than they are', async () => {
    const answer = await worked(
      basket(
        [need('tissue', 8, [offer('Alder', 1, 500)])],
        [supplier('Alder', { carriage: 900, carriageFreeOver: 5000 })],
      ),
    );
    expect(answer).toMatchObject({ goods: 4000, carriage: 900 });
    expect(reasonsFor(answer, 'tissue')).toEqual([refill]);
    expect(orderReasons(answer)).toEqual([['Carriage of 9.00: it is charged below 50.00.']]);
  });

  test('one more pack for the smallest order, of what isn’t counted in pieces', async () => {
    const answer = await worked(
      basket(
        [need('paste', 800, [offer('Alder', 500, 1000)], { unit: 'g', inPieces: false })],
        [supplier('Alder', { minimumOrder: 3000 })],
      ),
    );
    expect(answer.total).toBe(3000);
    expect(reasonsFor(answer, 'paste')).toEqual([
      refill,
      '500 g more bring the order to the smallest order of 30.00.',
    ]);
    expect(orderReasons(answer)).toEqual([[]]);
  });

  test('a price from some packs on', async () => {
    const offers = [offer('Alder', 1, 500), offer('Alder', 1, 420, { fromPacks: 5 })];
    const six = await worked(basket([need('tissue', 6, offers)], [supplier('Alder')]));
    expect(six.total).toBe(6 * 420);
    expect(reasonsFor(six, 'tissue')).toEqual([refill, 'From 5 packs 4.20 each instead of 5.00.']);
    const three = await worked(basket([need('tissue', 3, offers)], [supplier('Alder')]));
    expect(three.total).toBe(3 * 500);
    expect(reasonsFor(three, 'tissue')).toEqual([refill]);
  });

  test('more packs that cost less than fewer', async () => {
    const offers = [offer('Alder', 1, 500), offer('Alder', 1, 390, { fromPacks: 5 })];
    const answer = await worked(basket([need('tissue', 4, offers)], [supplier('Alder')]));
    expect(answer.total).toBe(1950);
    expect(reasonsFor(answer, 'tissue')).toEqual([
      refill,
      'From 5 packs 3.90 each instead of 5.00.',
      '5 packs cost no more than 4.',
    ]);
  });

  test('no fewer than are sold', async () => {
    const offers = [offer('Alder', 1, 500, { fromPacks: 5 })];
    const answer = await worked(basket([need('tissue', 2, offers)], [supplier('Alder')]));
    expect(reasonsFor(answer, 'tissue')).toEqual([refill, 'No fewer than 5 packs are sold.']);
  });

  test('no more than can be used, however cheap', async () => {
    const offers = [offer('Alder', 3, 1000), offer('Alder', 3, 500, { fromPacks: 4 })];
    const limited = { most: 10, mostBecause: 'it keeps 90 days' };
    const answer = await worked(basket([need('tissue', 9, offers, limited)], [supplier('Alder')]));
    expect(answer.total).toBe(3000);
    expect(reasonsFor(answer, 'tissue')).toEqual([refill, 'No more than 3 packs, as it keeps 90 days.']);
  });
});

describe('what for', () => {
  test('the first job that waits, its day, and how many more', async () => {
    const by = [
      ...forJob(3, 1),
      ...forJob(5, 2, 'J-015'),
      ...forJob(6, 3, 'J-016'),
      ...forJob(7, 4, 'J-016'),
    ];
    const answer = await worked(
      basket([need('tissue', 0, [offer('Alder', 1, 500)], { by })], [supplier('Alder')]),
    );
    expect(reasonsFor(answer, 'tissue')).toEqual(['Needed for J-014 on 7 Oct 2024, and for 2 more jobs.']);
  });

  test('of two orders each what it is in time for', async () => {
    const by = [...forJob(3, 2), { day: day(30), quantity: 6, job: null }];
    const offers = [offer('Alder', 1, 900), offer('Birch', 1, 500)];
    const answer = await worked(
      basket(
        [need('tissue', 0, offers, { by, supplier: 'Birch' })],
        [supplier('Alder', { leadDays: 2 }), supplier('Birch', { leadDays: 9 })],
      ),
    );
    expect(answer.orders.map(({ supplier: from, lines }) => [from, lines.map(({ packs }) => packs)])).toEqual(
      [
        ['Alder', [2]],
        ['Birch', [4]],
      ],
    );
    expect(answer.orders.map(({ lines }) => lines.map(({ reasons }) => reasons))).toEqual([
      [['Needed for J-014 on 7 Oct 2024.', 'The only one in time for J-014.']],
      [[refill]],
    ]);
  });
});

describe('why from here', () => {
  const tissueFrom = (alder: number, birch: number, preferred: string | null, more = {}) =>
    need('tissue', 2, [offer('Alder', 1, alder), offer('Birch', 1, birch)], { supplier: preferred, ...more });

  test('dearer, but no second carriage', async () => {
    const answer = await worked(
      basket(
        [need('board', 2, [offer('Alder', 1, 1000)]), tissueFrom(600, 500, 'Birch')],
        [supplier('Alder', { carriage: 700 }), supplier('Birch', { carriage: 800 })],
      ),
    );
    expect(answer).toMatchObject({ goods: 3200, carriage: 700 });
    expect(reasonsFor(answer, 'tissue')).toEqual([
      refill,
      'Dearer here by 2.00 than from Birch, but no second carriage of 8.00.',
    ]);
    expect(reasonsFor(answer, 'board')).toEqual([refill]);
  });

  test('the same where nobody is preferred, and where nothing else is charged', async () => {
    const needs = [need('board', 2, [offer('Alder', 1, 1000)]), tissueFrom(600, 500, null)];
    const answer = await worked(basket(needs, [supplier('Alder'), supplier('Birch', { carriage: 800 })]));
    expect(reasonsFor(answer, 'tissue')).toEqual([
      refill,
      'Dearer here by 2.00 than from Birch, but no carriage of 8.00.',
    ]);
  });

  test('cheaper in all, carriage included', async () => {
    const answer = await worked(
      basket(
        [tissueFrom(1000, 900, 'Alder')],
        [supplier('Alder', { carriage: 700 }), supplier('Birch', { carriage: 800 })],
      ),
    );
    expect(answer.total).toBe(2600);
    expect(reasonsFor(answer, 'tissue')).toEqual([
      refill,
      'Cheaper in all by 1.00 than from Alder, with the rest as it is.',
    ]);
  });

  test('in time', async () => {
    const suppliers = [supplier('Alder', { leadDays: 2 }), supplier('Birch', { leadDays: 9 })];
    const by = forJob(4, 2);
    const two = await worked(basket([tissueFrom(900, 500, 'Birch', { by })], suppliers));
    expect(reasonsFor(two, 'tissue')).toEqual([
      'Needed for J-014 on 8 Oct 2024.',
      'The only one in time for J-014.',
    ]);
    const third = [offer('Cedar', 1, 950)];
    const { offers } = tissueFrom(900, 500, 'Birch');
    const three = await worked(
      basket(
        [need('tissue', 2, [...offers, ...third], { supplier: 'Birch', by })],
        [...suppliers, supplier('Cedar')],
      ),
    );
    expect(reasonsFor(three, 'tissue').at(-1)).toBe(
      'From Birch it would be here only on 13 Oct 2024, too late for J-014.',
    );
  });

  test('a smallest order that would not be reached there', async () => {
    const limited = { most: 3, mostBecause: 'it keeps 90 days' };
    const answer = await worked(
      basket(
        [tissueFrom(500, 600, 'Alder', limited)],
        [supplier('Alder', { minimumOrder: 3000 }), supplier('Birch')],
      ),
    );
    expect(reasonsFor(answer, 'tissue')).toContain(
      'From Alder the order would be 10.00, below its smallest order of 30.00.',
    );
  });

  test('a smallest order here that it makes up', async () => {
    const answer = await worked(
      basket(
        [
          need('board', 2, [offer('Birch', 1, 1000)], { most: 2 }),
          tissueFrom(500, 600, 'Alder', { most: 2 }),
        ],
        [supplier('Alder'), supplier('Birch', { minimumOrder: 3000 })],
      ),
    );
    expect(answer.total).toBe(3200);
    expect(reasonsFor(answer, 'tissue')).toContain('It brings the order to the smallest order of 30.00.');
  });

  test('no row of the preferred supplier', async () => {
    const answer = await worked(
      basket([tissueFrom(500, 600, 'Cedar')], [supplier('Alder'), supplier('Birch')]),
    );
    expect(reasonsFor(answer, 'tissue')).toEqual([refill, 'Cedar has no row for it in Offers.']);
  });
});

describe('of baskets that cost the same', () => {
  test('the one with fewest orders, whoever is preferred', async () => {
    const offers = (alder: number) => [offer('Alder', 1, alder), offer('Birch', 1, 500)];
    const answer = await worked(
      basket(
        [need('board', 1, [offer('Birch', 1, 700)]), need('tissue', 2, offers(500), { supplier: 'Alder' })],
        [supplier('Alder'), supplier('Birch')],
      ),
    );
    expect(answer.orders.map(({ supplier: from }) => from)).toEqual(['Birch']);
    expect(reasonsFor(answer, 'tissue')).toEqual([
      refill,
      'Costs the same as from Alder, with one order fewer.',
    ]);
  });

  test.each(['Alder', 'Birch', 'Cedar'])('then from the preferred supplier: %s', async (preferred) => {
    const names = ['Alder', 'Birch', 'Cedar'];
    const offers = names.map((name) => offer(name, 1, 500));
    const answer = await worked(
      basket(
        [need('tissue', 2, offers, { supplier: preferred })],
        names.map((name) => supplier(name)),
      ),
    );
    expect(answer.orders.map(({ supplier: from }) => from)).toEqual([preferred]);
    expect(reasonsFor(answer, 'tissue')).toEqual([refill]);
  });

  test('then the one that leaves least over', async () => {
    const offers = [offer('Alder', 5, 1000), offer('Alder', 4, 1000), offer('Alder', 8, 1000)];
    const answer = await worked(basket([need('tissue', 4, offers)], [supplier('Alder')]));
    expect(answer.orders[0]?.lines.map(({ packQuantity, packs }) => [packQuantity, packs])).toEqual([[4, 1]]);
  });
});
