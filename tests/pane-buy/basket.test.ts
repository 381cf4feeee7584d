import { beforeEach, expect, test, vi } from 'vitest';
import { basketOf } from '../../src/core/buying/basket-of.ts';
import type { BasketProblem } from '../../src/core/buying/basket-problem.ts';
import {
  offeredBesides,
  packsTyped,
  type SetByHand,
  stillOffered,
  withoutOffers,
  withPacks,
} from '../../src/pane/buy/by-hand.ts';
import type { Planner } from '../../src/pane/planner.ts';
import { highsSolver } from '../../src/solver/highs-solver.ts';
import { loadHighs } from '../../src/solver/load-highs.ts';
import { booksIn, opened } from '../helpers/opened-session.ts';
import { plannerHere, SHOP, withoutPage } from './helpers.ts';

beforeEach(() => {
  withoutPage();
  vi.resetModules();
});

const solve = highsSolver(loadHighs);
const atOnce = (): Promise<void> => Promise.resolve();

/** A planner that prices baskets on this thread, and keeps what it was asked. */
function pricing() {
  const asked: BasketProblem[] = [];
  const planner: Planner = plannerHere((problem, currency) => {
    asked.push(problem);
    return basketOf(problem, solve, currency);
  });
  return { planner, asked };
}

async function planned() {
  const states = await import('../../src/pane/planning/plan-state.ts');
  const baskets = await import('../../src/pane/buy/basket-state.ts');
  const { planner, asked } = pricing();
  const { session, workbook } = await opened(SHOP);
  const books = booksIn(session);
  await states.planFor(planner, books);
  const plan = states.latestPlan.value ?? expect.unreachable();
  return { ...baskets, planner, asked, plan, session, workbook, books };
}

const TISSUE: SetByHand = {
  offer: 'Offers 2',
  material: 'Repair tissue 5',
  supplier: 'Paper mill',
  packWords: '10 sheets',
  packs: 3,
};

test('what lacks is in the basket; a number set by hand is kept and priced, until it is put back', async () => {
  const { basketFor, latestBasket, planner, plan } = await planned();
  await basketFor(planner, plan, []);
  const [order] = latestBasket.value?.basket.orders ?? [];
  expect(order).toMatchObject({
    supplier: 'Paper mill',
    goods: 4500,
    carriage: 600,
    lines: [
      { offer: 'Offers 2', material: 'Repair tissue 5', packs: 1, packWords: '10 sheets', byHand: false },
    ],
  });
  await basketFor(planner, plan, [TISSUE], atOnce);
  expect(latestBasket.value?.basket).toMatchObject({
    goods: 13_500,
    carriage: 600,
    total: 14_100,
    orders: [{ lines: [{ packs: 3, byHand: true }] }],
  });
  await basketFor(planner, plan, [], atOnce);
  expect(latestBasket.value?.basket.total).toBe(5100);
});

test('numbers that are typed quickly are priced once; what was asked before is given up', async () => {
  const { basketFor, planner, asked, plan, latestBasket } = await planned();
  await basketFor(planner, plan, []);
  const release: (() => void)[] = [];
  const held = () => new Promise<void>((resolve) => release.push(resolve));
  const first = basketFor(planner, plan, [{ ...TISSUE, packs: 2 }], held);
  const second = basketFor(planner, plan, [TISSUE], held);
  for (const go of release) go();
  await Promise.all([first, second]);
  expect(asked.map(({ byHand }) => byHand)).toEqual([[], [{ offer: 'Offers 2', packs: 3 }]]);
  expect(latestBasket.value?.basket.goods).toBe(13_500);
});

test('a solver that fails is told, one that is stopped stays so, and both can be asked again', async () => {
  const { basketFor, plan, solveAgain, solving, stopSolving } = await planned();
  const broken = plannerHere(() => Promise.reject(new Error('not loaded')));
  await basketFor(broken, plan, []);
  expect(solving.value).toEqual({ kind: 'failed', message: 'not loaded' });
  const under = solveAgain(
    plannerHere(
      (_, __, signal) =>
        new Promise((___, fail) => signal.addEventListener('abort', () => fail(new Error('stop')))),
    ),
    plan,
    [],
  );
  stopSolving();
  await under;
  expect(solving.value).toEqual({ kind: 'stopped' });
  await solveAgain(pricing().planner, plan, []);
  expect(solving.value).toEqual({ kind: 'at rest' });
});

test('an order is written as it was shown; its text can be sent, and what was set by hand in it is done with', async () => {
  const { basketFor, latestBasket, setByHand, planner, plan, session, workbook, books } = await planned();
  const { orderIt, putAway, textsToSend } = await import('../../src/pane/buy/ordering.ts');
  setByHand.value = [TISSUE, { ...TISSUE, offer: 'Offers 3', packs: 0 }];
  await basketFor(planner, plan, [TISSUE]);
  const [order] = latestBasket.value?.basket.orders ?? [];
  const done = await orderIt(session, books, order ?? expect.unreachable());
  expect(done.kind).toBe('done');
  const [text] = textsToSend.value;
  expect(text?.supplier).toBe('Paper mill');
  expect(text?.text).toContain('Repair tissue 5: 3 packs of 10 sheet');
  const after = booksIn(session).ledger.studio;
  const line = after.orderLines.find(({ record }) => record.order === text?.order);
  expect(line).toMatchObject({ material: { name: 'Repair tissue 5' } });
  expect(line?.quantity.valueOf()).toBe(30);
  expect(after.ordersByKey.get(text?.order.toLowerCase() ?? '')?.expected).toBe(order?.expected);
  expect(setByHand.value.map(({ offer }) => offer)).toEqual(['Offers 3']);
  expect(workbook).toBeDefined();
  putAway(text?.order ?? '');
  expect(textsToSend.value).toEqual([]);
});

test('what is set by hand is kept by its row, and dropped once another pack stands there', async () => {
  const { plan } = await planned();
  const { needs } = plan.answer;
  expect(withPacks([TISSUE], TISSUE, 5)).toEqual([{ ...TISSUE, packs: 5 }]);
  expect(withoutOffers([TISSUE], ['Offers 2'])).toEqual([]);
  expect(stillOffered([TISSUE], needs)).toEqual([TISSUE]);
  for (const other of [
    { ...TISSUE, offer: 'Offers 9' },
    { ...TISSUE, packWords: '5 sheets' },
    { ...TISSUE, supplier: 'Another mill' },
    { ...TISSUE, material: 'Wheat starch' },
  ]) {
    expect(stillOffered([other], needs)).toEqual([]);
  }
});

test('what is offered besides is what the basket leaves', async () => {
  const { basketFor, latestBasket, planner, plan } = await planned();
  const { needs } = plan.answer;
  const none = { orders: [], goods: 0, carriage: 0, total: 0, remarks: [] };
  expect(offeredBesides(needs, none).map(({ offer }) => offer.offer)).toEqual(['Offers 2']);
  await basketFor(planner, plan, []);
  expect(offeredBesides(needs, latestBasket.value?.basket ?? none)).toEqual([]);
});

test.each([
  ['', 0],
  [' 12 ', 12],
  ['1.5', { problem: '1.5 is no number of packs: a whole number is right, 0 for none.' }],
  ['-1', { problem: '-1 is no number of packs: a whole number is right, 0 for none.' }],
])('packs typed as %j', (typed, read) => {
  expect(packsTyped(typed)).toEqual(read);
});
