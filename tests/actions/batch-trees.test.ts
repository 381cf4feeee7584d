import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import type { MadeBatch } from '../../src/actions/make-batch.ts';
import { addDays, type Day } from '../../src/core/day.ts';
import { decimal, type Exact, ratio, sum, ZERO } from '../../src/core/exact-number.ts';
import { keyOf } from '../../src/core/identifier.ts';
import { accountIn, type Ledger } from '../../src/core/ledger.ts';
import { goodUntilOn } from '../../src/core/life.ts';
import { leftOn, worthOn } from '../../src/core/lot-account.ts';
import type { MovementKind } from '../../src/core/records.ts';
import {
  type Act,
  type Bench,
  doOn,
  FIRST,
  hundredthsOf,
  openedWorld,
  randomFrom,
  type Step,
  someWorld,
  TODAY,
  unitOf,
  type World,
} from './helpers/batch-world.ts';

const SEED = 20_260_402;
const RUNS = { seed: SEED, numRuns: 120 };

/** What has been charged by movements of some kinds, reversals taken off; lots without a cost charge nothing. */
function chargedBy(ledger: Ledger, kinds: readonly MovementKind[]): bigint {
  let total = 0n;
  for (const { postings } of ledger.accounts.values()) {
    for (const { movement, cost } of postings) if (kinds.includes(movement.kind)) total += cost ?? 0n;
  }
  return total;
}

function worthOfAll(ledger: Ledger): bigint {
  return [...ledger.accounts.values()].reduce(
    (total, account) => total + (worthOn(account, TODAY) ?? 0n),
    0n,
  );
}

/** In the head: what the bought lots cost, in coins. */
function paid({ costs }: World): bigint {
  return costs.reduce<bigint>((total, cost) => total + BigInt(cost), 0n);
}

/** Everything that is said of the lots that a ledger knows, on a few days. */
function figures(ledger: Ledger, lots: readonly string[]): unknown[] {
  return lots.map((name) => {
    const lot = ledger.studio.lotsByKey.get(keyOf(name));
    if (lot === undefined) throw new Error(`lot ${name} is gone`);
    const account = accountIn(ledger, lot);
    return [0, 3, 7, 15, 400].map((offset) => {
      const day = addDays(FIRST, offset);
      return [
        name,
        leftOn(account, day).toFraction(),
        String(worthOn(account, day)),
        goodUntilOn(account, day),
      ];
    });
  });
}

/** Grams of one of a unit, with the density 0.8 that everything has here; factors from the legal definitions. */
const GRAMS: Readonly<Record<string, string>> = {
  g: '1',
  kg: '1000',
  mg: '0.001',
  oz: '28.349523125',
  ml: '0.8',
  l: '800',
  'fl oz': '23.65882365',
};

function grams(quantity: Exact, unit: string): Exact {
  return quantity.mul(decimal(GRAMS[unit] ?? ''));
}

/** What a material's lots hold at the end of time, in grams. */
function heldIn(ledger: Ledger, material: string): Exact {
  return sum(
    ledger.studio.lots
      .filter((lot) => lot.material.name === material)
      .map((lot) => grams(leftOn(accountIn(ledger, lot), TODAY), lot.record.unit.name)),
  );
}

function play(
  world: World,
  dayOf: (place: number) => Day,
  onlyLast: boolean,
): { steps: Step[]; bench: Bench } {
  const random = randomFrom(world.seed);
  let bench: Bench = { snapshot: openedWorld(world), standing: [] };
  const steps: Step[] = [];
  for (const [place, act] of world.acts.entries()) {
    const done = doOn(bench, world, act, dayOf(place), random, onlyLast);
    bench = done.bench;
    if (done.step !== null) steps.push(done.step);
  }
  return { steps, bench };
}

/** Three acts a day. */
const inTurn = (place: number): Day => addDays(FIRST, Math.floor(place / 3));

/** What left the lots of each ingredient is what the scaled recipe says, less what is said to be missing. */
function expectScaled(
  { recipes }: World,
  act: Extract<Act, { kind: 'make' }>,
  made: MadeBatch,
  { before, after }: Step,
): void {
  const recipe = recipes[act.recipe];
  if (recipe === undefined) throw new Error('no such recipe');
  const meant = grams(hundredthsOf(act.amount), act.unit);
  const times = meant.div(grams(hundredthsOf(recipe.yields), recipe.unit));
  for (const row of recipe.parts) {
    const part = made.plan.parts.find(({ material }) => material.name === row.material);
    if (part === undefined) throw new Error(`${row.material} is not among the parts`);
    const isWater = row.material === 'Tap water';
    const wanted = isWater ? ZERO : grams(hundredthsOf(row.quantity), row.unit).mul(times);
    const left = heldIn(before, row.material).sub(heldIn(after, row.material));
    const missing = grams(part.missing, part.unit.name);
    // A millionth of the unit for every quantity that is written: the part, and each lot.
    const step = grams(decimal('0.000001'), part.unit.name).mul(ratio(part.takes.length + 1, 1));
    const off = wanted.sub(missing).sub(left).abs();
    expect(off.compare(step) <= 0, `${row.material}: off by ${off.toString()} g`).toBe(true);
  }
  const lot = after.studio.lotsByKey.get(keyOf(made.lot.name));
  if (lot === undefined) throw new Error('the lot that was made is not there');
  const yielded = hundredthsOf(act.amount).mul(ratio(act.yieldPercent, 100));
  expect(leftOn(accountIn(after, lot), TODAY).equals(yielded)).toBe(true);
}

describe(`batches of batches, to any depth (seed ${SEED})`, () => {
  test('what was paid for is in the lots or charged to jobs and waste, to the coin; what left the lots is what the recipe says', () => {
    const seen = { makes: 0, deep: 0, undone: 0, short: 0 };
    fc.assert(
      fc.property(someWorld, (world) => {
        for (const step of play(world, inTurn, true).steps) {
          const { after, act, made, undone } = step;
          expect(worthOfAll(after) + chargedBy(after, ['Use', 'Waste'])).toBe(paid(world));
          if (act.kind === 'make' && made !== null) expectScaled(world, act, made, step);
          if (act.kind === 'make') seen.makes += 1;
          if (undone !== null) seen.undone += 1;
          if (made?.drawing.movements.some(({ lot }) => lot.recipe !== null) === true) seen.deep += 1;
          if (made?.plan.parts.some(({ missing }) => missing.compare(ZERO) > 0) === true) seen.short += 1;
        }
      }),
      RUNS,
    );
    // Else the run above says little.
    expect(Math.min(seen.makes, seen.deep, seen.undone, seen.short)).toBeGreaterThan(20);
  });

  test('after taking the latest back, every figure of every lot is as before, and nothing is left of what was made', () => {
    let makes = 0;
    fc.assert(
      fc.property(someWorld, (world) => {
        const acts = world.acts
          .filter(({ kind }) => kind !== 'undo')
          .flatMap((act): Act[] => [act, { kind: 'undo', back: 0 }, act]);
        const random = randomFrom(world.seed);
        let bench: Bench = { snapshot: openedWorld(world), standing: [] };
        let known: { readonly lots: string[]; readonly figures: unknown[] } | null = null;
        for (const [place, act] of acts.entries()) {
          const { ledger } = booksOf(bench.snapshot);
          const lots = ledger.studio.lots.map(({ name }) => name);
          const done = doOn(bench, world, act, addDays(FIRST, Math.floor(place / 3)), random, true);
          if (place % 3 === 0) known = done.step === null ? null : { lots, figures: figures(ledger, lots) };
          if (place % 3 === 1 && known !== null) {
            const after = booksOf(done.bench.snapshot).ledger;
            expect(figures(after, known.lots)).toEqual(known.figures);
            for (const lot of after.studio.lots.filter(({ name }) => !known?.lots.includes(name))) {
              const account = accountIn(after, lot);
              expect([leftOn(account, TODAY).toString(), worthOn(account, TODAY) ?? 0n]).toEqual(['0', 0n]);
              makes += 1;
            }
          }
          if (place % 3 !== 1 || known !== null) bench = done.bench;
        }
      }),
      { ...RUNS, numRuns: 40 },
    );
    expect(makes).toBeGreaterThan(20);
  });

  test('in any order of days and of undoing, only the rounding between movements of one lot moves: a coin each', () => {
    let outOfOrder = 0;
    fc.assert(
      fc.property(someWorld, fc.array(fc.nat(12), { minLength: 14, maxLength: 14 }), (world, offsets) => {
        const { steps } = play(world, (place) => addDays(FIRST, offsets[place] ?? 0), false);
        const last = steps.at(-1)?.after;
        if (last === undefined) return;
        const moved = worthOfAll(last) + chargedBy(last, ['Use', 'Waste']) - paid(world);
        const movements = [...last.accounts.values()].reduce(
          (count, { postings }) => count + postings.length,
          0,
        );
        expect(moved <= BigInt(movements) && moved >= -BigInt(movements)).toBe(true);
        if (steps.some(({ undone }) => undone !== null)) outOfOrder += 1;
        for (const { act, after } of steps) {
          if (act.kind !== 'undo') continue;
          // What went into a batch that was taken back has been given back to the coin, and the batch is worth nothing.
          for (const { lot, postings } of after.accounts.values()) {
            if (!postings.some(({ movement }) => movement.note === 'not made after all')) continue;
            const account = accountIn(after, lot);
            expect([leftOn(account, TODAY).toString(), worthOn(account, TODAY) ?? 0n]).toEqual(['0', 0n]);
          }
        }
      }),
      RUNS,
    );
    expect(outOfOrder).toBeGreaterThan(20);
  });

  test('units are the legal ones', () => {
    for (const [name, inGrams] of Object.entries(GRAMS)) {
      const unit = unitOf(name);
      const density = unit.dimension === 'volume' ? decimal('0.8') : decimal('1');
      expect(unit.inBase.mul(density).equals(decimal(inGrams))).toBe(true);
    }
  });
});
