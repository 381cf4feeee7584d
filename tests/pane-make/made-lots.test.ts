import { describe, expect, test } from 'vitest';
import { emptyBath } from '../../src/actions/bath.ts';
import { provisionalRandom } from '../../src/actions/plan-treatment.ts';
import { quantityNumber } from '../../src/core/exact-number.ts';
import {
  hasGoneOff,
  isBath,
  madeLots,
  sameShares,
  shareOn,
  sharesOf,
} from '../../src/pane/make/made-lots.ts';
import { date } from '../helpers/literal.ts';
import { booksIn, leftOf, opened, today } from '../helpers/opened-session.ts';
import { KITCHEN } from './helpers.ts';

const OLD = {
  Lot: 'P-0',
  Material: 'Wheat starch paste',
  Received: date('2026-03-01'),
  Quantity: 50,
  Unit: 'g',
  Recipe: 'Paste, thick',
};

describe('what was made here and is not used up', () => {
  test('the latest first; what was bought, discarded or used up is not among it; what has gone off is marked', async () => {
    const paste = [
      ...(KITCHEN['Paste'] as readonly object[]),
      OLD,
      { ...OLD, Lot: 'P-9', State: 'Discarded' },
    ];
    const { session } = await opened({ ...KITCHEN, Paste: paste } as typeof KITCHEN);
    const { stock } = booksIn(session);
    const made = madeLots(stock);
    expect(made.map(({ lot }) => lot.name)).toEqual(['B-1', 'P-1', 'P-0']);
    expect(made.map((figures) => hasGoneOff(figures, stock))).toEqual([false, false, true]);
    expect(made.map(({ lot }) => isBath(lot))).toEqual([true, false, false]);
  });
});

describe('emptying a bath', () => {
  test('what is left falls on the jobs that used it, in the proportion of their uses', async () => {
    const { session } = await opened(KITCHEN);
    const { snapshot } = booksIn(session);
    const written = emptyBath(snapshot, { lot: 'B-1', date: today, by: null }, today, provisionalRandom());
    if (!written.ok) throw new Error(written.message);
    // 1 l is left of 2 l for 4 EUR; 600 ml and 400 ml were used.
    expect(
      sharesOf(written).map((share) => [shareOn(share), quantityNumber(share.quantity), share.cost]),
    ).toEqual([
      ['26-014', 0.6, 120n],
      ['26-015, A', 0.4, 80n],
    ]);
    expect(sameShares(sharesOf(written), sharesOf(written))).toBe(true);
    expect(sameShares(sharesOf(written), sharesOf(written).slice(1))).toBe(false);
    const done = await session.carryOut(
      'Emptying',
      (now, day, random) => emptyBath(now, { lot: 'B-1', date: day, by: null }, day, random),
      () => 'Emptied.',
    );
    expect(done.kind).toBe('done');
    expect(leftOf(session, 'B-1')).toBe(0);
  });
});
