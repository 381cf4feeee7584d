import { expect, test } from 'vitest';
import type { Basket, BasketLine } from '../../../src/core/buying/basket.ts';
import { basketOf } from '../../../src/core/buying/basket-of.ts';
import type { BasketProblem } from '../../../src/core/buying/basket-problem.ts';
import { currencyOf } from '../../../src/core/money.ts';
import { seededRandom } from '../../../src/core/seeded-random.ts';
import { highsSolver } from '../../../src/solver/highs-solver.ts';
import { loadHighs } from '../../../src/solver/load-highs.ts';
import { randomBasket } from './basket-cases.ts';

/** Each reason is held against a basket that does what it speaks of: everything else is set by hand as it was. */

const EURO = currencyOf('EUR', null);
const solve = highsSolver(loadHighs);
const UNHURRIED = 300_000;
const worked = (problem: BasketProblem): Promise<Basket> => basketOf(problem, solve, EURO);
const linesOf = ({ orders }: Basket): readonly BasketLine[] => orders.flatMap(({ lines }) => lines);
const coins = (text = ''): number => Math.round(Number(text) * 100);

/** The same basket with one material bought from one supplier only. */
function boughtFrom(problem: BasketProblem, basket: Basket, material: string, from: string): Promise<Basket> {
  const others = linesOf(basket).filter((line) => line.material !== material);
  const { needs, ...rest } = held(problem, others);
  const moved = problem.needs.filter((need) => need.material === material);
  const offers = moved.flatMap((need) => need.offers).filter(({ supplier }) => supplier === from);
  const inPlace = needs.map((need) => (need.material === material ? { ...need, offers } : need));
  return worked({ ...rest, needs: inPlace });
}

/** The same basket with so many packs fewer in a line. */
function withFewer(problem: BasketProblem, basket: Basket, line: BasketLine, fewer: number): Promise<Basket> {
  const lines = linesOf(basket).map((each) =>
    each === line ? { ...each, packs: each.packs - fewer } : each,
  );
  return worked(
    held(
      problem,
      lines.filter(({ packs }) => packs > 0),
    ),
  );
}

/** Lines set by hand, and nothing else to buy instead. */
function held(problem: BasketProblem, lines: readonly BasketLine[]): BasketProblem {
  const set = new Set(lines.map(({ offer }) => offer));
  const needs = problem.needs.map((need) => {
    const bought = need.offers.filter(({ offer }) => set.has(offer));
    // The other rows of a pack that is bought say its price for so many.
    const offers = need.offers.filter(({ supplier, packQuantity }) =>
      bought.some((each) => each.supplier === supplier && each.packQuantity === packQuantity),
    );
    return { ...need, offers };
  });
  return { ...problem, needs, byHand: lines.map(({ offer, packs }) => ({ offer, packs })) };
}

test(
  'what reasons say of other suppliers and of fewer packs is so',
  async () => {
    const random = seededRandom(77);
    const count = { cheaper: 0, dearer: 0, carriage: 0, smallest: 0 };
    for (let tried = 0; tried < 900; tried += 1) {
      const some = randomBasket(random);
      const problem = {
        ...some,
        suppliers: some.suppliers.map((each) => ({ ...each, leadDays: 0 })),
        needs: some.needs.map((need) => ({ ...need, most: null })),
        byHand: [],
      };
      const basket = await worked(problem);
      for (const line of linesOf(basket)) {
        const order = basket.orders.find(({ lines }) => lines.includes(line));
        const goods = linesOf(basket)
          .filter(({ material }) => material === line.material)
          .reduce((sum, { amount }) => sum + amount, 0);
        for (const reason of line.reasons) {
          const cheaper = /^Cheaper in all by ([\d.]+) than from (\w+), with the rest as it is\.$/.exec(
            reason,
          );
          const dearer =
            /^Dearer here by ([\d.]+) than from (\w+), but no (second )?carriage of ([\d.]+)\.$/.exec(reason);
          const carriage = /^([\d.]+) more sheets? saves? the carriage of ([\d.]+)\.$/.exec(reason);
          const smallest =
            /^([\d.]+) more sheets? brings? the order to the smallest order of ([\d.]+)\.$/.exec(reason);
          if (cheaper !== null) {
            count.cheaper += 1;
            const other = await boughtFrom(problem, basket, line.material, cheaper[2] ?? '');
            expect({ reason, saved: other.total - basket.total }).toEqual({
              reason,
              saved: coins(cheaper[1]),
            });
          }
          if (dearer !== null) {
            count.dearer += 1;
            const from = dearer[2] ?? '';
            const other = await boughtFrom(problem, basket, line.material, from);
            const there = other.orders.find(({ supplier }) => supplier === from);
            expect({ reason, less: goods - (there?.goods ?? 0), carriage: there?.carriage }).toEqual({
              reason,
              less: coins(dearer[1]),
              carriage: coins(dearer[4]),
            });
            expect(other.total).toBeGreaterThanOrEqual(basket.total);
            expect(basket.orders.some(({ supplier }) => supplier === from)).toBe(false);
            expect(basket.carriage > 0).toBe(dearer[3] !== undefined);
          }
          const extra = carriage ?? smallest;
          if (extra === null) continue;
          const other = await withFewer(problem, basket, line, Number(extra[1]) / line.packQuantity);
          const there = other.orders.find(({ supplier }) => supplier === order?.supplier);
          if (carriage !== null && there !== undefined) {
            count.carriage += 1;
            expect(order?.carriage).toBe(0);
            expect({ reason, carriage: there.carriage }).toEqual({ reason, carriage: coins(carriage[2]) });
          }
          if (smallest !== null && there !== undefined) {
            count.smallest += 1;
            expect({ reason, below: there.goods < coins(smallest[2]) }).toEqual({ reason, below: true });
            expect(order?.goods).toBeGreaterThanOrEqual(coins(smallest[2]));
          }
        }
      }
    }
    for (const checked of Object.values(count)) expect(checked).toBeGreaterThan(5);
  },
  UNHURRIED,
);
