import type { BasketProblem, BuyNeed, NeedBy } from '../../../src/core/buying/basket-problem.ts';
import { addDays, type Day } from '../../../src/core/day.ts';
import type { Random } from '../../../src/core/identifier.ts';
import type { OfferProblem, SupplierProblem } from '../../../src/core/planning/plan-problem.ts';

export const TODAY = 20_000 as Day;

export const day = (days: number): Day => addDays(TODAY, days);

export function supplier(name: string, more: Partial<SupplierProblem> = {}): SupplierProblem {
  return { supplier: name, leadDays: 0, minimumOrder: 0, carriage: 0, carriageFreeOver: null, ...more };
}

let row = 0;
export function offer(
  from: string,
  packQuantity: number,
  packPrice: number,
  more: Partial<OfferProblem> = {},
): OfferProblem {
  row += 1;
  return {
    offer: `Offers ${row}`,
    supplier: from,
    packQuantity,
    packWords: `${packQuantity} sheets`,
    packPrice,
    fromPacks: 1,
    ...more,
  };
}

/** A need for so much by today, to refill the stock. */
export function need(
  material: string,
  quantity: number,
  offers: readonly OfferProblem[],
  more: Partial<BuyNeed> = {},
): BuyNeed {
  return {
    material,
    unit: 'sheet',
    inPieces: true,
    supplier: null,
    by: [{ day: day(30), quantity, job: null }],
    most: null,
    mostBecause: null,
    offers,
    because: 'Order when down to 2 sheets.',
    ...more,
  };
}

export function basket(
  needs: readonly BuyNeed[],
  suppliers: readonly SupplierProblem[],
  byHand: BasketProblem['byHand'] = [],
): BasketProblem {
  return { today: TODAY, needs, suppliers, byHand };
}

const oneOf = <T>(random: Random, values: readonly T[]): T => {
  const value = values[Math.floor(random() * values.length)];
  if (value === undefined) throw new Error('nothing to choose from');
  return value;
};

/** A small basket problem of any kind: few packs, so that all of them can be tried. */
export function randomBasket(random: Random): BasketProblem {
  const chance = (part: number) => random() < part;
  const suppliers = ['A', 'B', 'C'].slice(0, 1 + Math.floor(random() * 3)).map((name) =>
    supplier(name, {
      leadDays: oneOf(random, [0, 2, 5]),
      minimumOrder: chance(0.4) ? oneOf(random, [500, 900, 1400]) : 0,
      carriage: chance(0.6) ? oneOf(random, [200, 450, 800]) : 0,
      carriageFreeOver: chance(0.5) ? oneOf(random, [600, 1000, 1500]) : null,
    }),
  );
  const needs = ['M1', 'M2', 'M3'].slice(0, 1 + Math.floor(random() * 2.4)).map((material) => {
    const offers = Array.from({ length: 1 + Math.floor(random() * 2.5) }, () => {
      const from = oneOf(random, suppliers).supplier;
      return offer(from, oneOf(random, [1, 2, 2.5, 5, 10]), oneOf(random, [150, 230, 240, 255, 490, 600]));
    });
    const breaks = offers
      .filter(() => chance(0.3))
      .map((base) =>
        offer(base.supplier, base.packQuantity, Math.round(base.packPrice * oneOf(random, [0.7, 0.9, 1.1])), {
          fromPacks: oneOf(random, [2, 3, 5]),
        }),
      );
    return need(material, 0, [...offers, ...breaks], {
      // Of what nothing asks for only what is set by hand is bought.
      by: chance(0.15) ? [] : randomNeeds(random),
      most: chance(0.5) ? oneOf(random, [0, 1, 3, 5, 8, 12, 20]) : null,
      mostBecause: 'it keeps 90 days',
      supplier: chance(0.5) ? oneOf(random, suppliers).supplier : null,
    });
  });
  const byHand = needs
    .flatMap(({ offers }) => offers)
    .filter(() => chance(0.12))
    .map(({ offer: name }) => ({ offer: name, packs: Math.floor(random() * 4) }));
  return basket(needs, suppliers, byHand);
}

function randomNeeds(random: Random): NeedBy[] {
  const needs: NeedBy[] = [];
  let quantity = 0;
  let last = 0;
  for (let index = 0; index <= Math.floor(random() * 2.5); index += 1) {
    quantity += oneOf(random, [0.5, 1, 2, 3, 4.5, 6]);
    last += Math.floor(random() * 4);
    needs.push({ day: day(last), quantity, job: random() < 0.5 ? `J-${index}` : null });
  }
  return needs;
}
