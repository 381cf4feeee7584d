import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type OrderingWay,
  type OrderTogether,
  orderTogether,
  type RegularMaterial,
} from '../../../src/core/buying/order-together.ts';
import { runs, SEED } from '../helpers/random-studio.ts';

function regular(material: string, yearlyUse: number, price: number, ownOrderCost: number): RegularMaterial {
  return { material, yearlyUse, price, ownOrderCost };
}

function found(answer: OrderTogether | null): OrderTogether {
  if (answer === null) throw new Error('no way was found');
  return answer;
}

describe('a published example', () => {
  // Chopra & Meindl, Supply Chain Management, on lots ordered for several products: from memory, recomputed. An order
  // costs 4000 and 1000 for each product in it, holding 20 % of 500 a year.
  const ways = found(
    orderTogether(
      [
        regular('First', 12_000, 500, 1000),
        regular('Second', 1200, 500, 1000),
        regular('Third', 120, 500, 1000),
      ],
      4000,
      20,
    ),
  );
  const quantities = ({ materials }: OrderingWay) => materials.map(({ quantity }) => Math.round(quantity));

  test('each alone', () => {
    expect(quantities(ways.alone)).toEqual([1095, 346, 110]);
    expect(Math.round(ways.alone.yearlyCost)).toBe(155_140);
    expect(ways.alone.materials.map(({ everyOrders }) => everyOrders)).toEqual([null, null, null]);
  });

  test('all together', () => {
    expect(quantities(ways.together)).toEqual([1230, 123, 12]);
    for (const { ordersPerYear } of ways.together.materials) expect(ordersPerYear).toBeCloseTo(9.754, 3);
    // With the orders a year rounded to 9.75 the book prints 136 528.
    expect(Math.round(ways.together.yearlyCost)).toBe(136_558);
  });

  test('each in as many orders as suits it', () => {
    expect(ways.tailored.materials.map(({ everyOrders }) => everyOrders)).toEqual([1, 2, 5]);
    expect(ways.tailored.materials[0]?.ordersPerYear).toBeCloseTo(11.47, 2);
    expect(Math.round(ways.tailored.yearlyCost)).toBe(130_767);
  });
});

const anyMaterials = fc
  .array(
    fc.tuple(
      fc.integer({ min: 1, max: 5000 }),
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 0, max: 300 }),
    ),
    { minLength: 1, maxLength: 5 },
  )
  .map((all) => all.map(([use, price, own], place) => regular(`M${place}`, use, price, own)));
const anyOrderCost = fc.integer({ min: 1, max: 2000 });
const anyPercent = fc.integer({ min: 1, max: 50 });

/** What ordering and holding cost in a year, from nothing but each material's orders a year. */
function plainCost(
  way: OrderingWay,
  materials: readonly RegularMaterial[],
  orderCost: number,
  percent: number,
  speed = 1,
): number {
  const perYear = way.materials.map(({ ordersPerYear }) => ordersPerYear * speed);
  const shared = way.materials.every(({ everyOrders }) => everyOrders !== null);
  const orders = shared
    ? Math.max(...way.materials.map(({ everyOrders }, place) => (perYear[place] ?? 0) * (everyOrders ?? 0)))
    : perYear.reduce((total, each) => total + each, 0);
  return materials.reduce((total, { yearlyUse, price, ownOrderCost }, place) => {
    const often = perYear[place] ?? Number.NaN;
    return total + often * ownOrderCost + ((yearlyUse / often / 2) * price * percent) / 100;
  }, orders * orderCost);
}

describe(`properties of every way (seed ${SEED})`, () => {
  test('it costs what its orders cost, covers the year, and is cheaper neither oftener nor more seldom', () => {
    fc.assert(
      fc.property(anyMaterials, anyOrderCost, anyPercent, (materials, orderCost, percent) => {
        const ways = found(orderTogether(materials, orderCost, percent));
        for (const way of [ways.alone, ways.together, ways.tailored]) {
          const near = (speed: number) => plainCost(way, materials, orderCost, percent, speed);
          expect(way.yearlyCost / near(1)).toBeCloseTo(1, 9);
          expect(near(1)).toBeLessThanOrEqual(Math.min(near(0.98), near(1.02)));
          for (const [place, { material, quantity, ordersPerYear }] of way.materials.entries()) {
            expect(material).toBe(materials[place]?.material);
            expect(quantity * ordersPerYear).toBeCloseTo(materials[place]?.yearlyUse ?? Number.NaN, 6);
          }
        }
        const multiples = ways.tailored.materials.map(({ everyOrders }) => everyOrders ?? 0);
        expect(Math.min(...multiples)).toBe(1);
        expect(multiples.every((each) => Number.isInteger(each))).toBe(true);
        expect(ways.together.materials.every(({ everyOrders }) => everyOrders === 1)).toBe(true);
      }),
      runs(1000),
    );
  });

  test('of one material all ways are the same', () => {
    fc.assert(
      fc.property(anyMaterials, anyOrderCost, anyPercent, ([first], orderCost, percent) => {
        if (first === undefined) throw new Error('there is always one');
        const { alone, together, tailored } = found(orderTogether([first], orderCost, percent));
        expect(together.yearlyCost).toBeCloseTo(alone.yearlyCost, 6);
        expect(tailored).toEqual(together);
      }),
      runs(200),
    );
  });

  test('a multiple that is whole is not rounded up for the noise of doubles', () => {
    // √(27·20·0.2 ÷ 2) ÷ √(3·20·0.2 ÷ 2) is 3, and in doubles a little more.
    const { tailored } = found(orderTogether([regular('A', 27, 20, 0), regular('B', 3, 20, 1)], 1, 20));
    expect(tailored.materials.map(({ everyOrders }) => everyOrders)).toEqual([1, 3]);
  });

  test('materials that are alike and add nothing to an order are in every order', () => {
    const alike = [regular('A', 100, 20, 0), regular('B', 100, 20, 0), regular('C', 10, 20, 0)];
    const { alone, together, tailored } = found(orderTogether(alike, 50, 20));
    expect(tailored).toEqual(together);
    expect(together.yearlyCost).toBeLessThan(alone.yearlyCost);
  });
});

describe('where no way is best', () => {
  test('what is not used, or costs nothing to hold, is left out', () => {
    const used = regular('A', 100, 20, 5);
    const ways = found(orderTogether([used, regular('B', 0, 20, 5), regular('C', 10, 0, 5)], 50, 20));
    expect(ways).toEqual(orderTogether([used], 50, 20));
    expect(orderTogether([regular('B', 0, 20, 5)], 50, 20)).toBeNull();
    expect(orderTogether([used], 50, 0)).toBeNull();
  });

  test('orders that cost nothing have no best frequency', () => {
    expect(orderTogether([regular('A', 100, 20, 5)], 0, 20)).toBeNull();
  });
});
