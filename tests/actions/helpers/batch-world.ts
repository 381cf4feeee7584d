import fc from 'fast-check';
import { emptyBath } from '../../../src/actions/bath.ts';
import { booksOf } from '../../../src/actions/books.ts';
import { logTreatment } from '../../../src/actions/log-treatment.ts';
import { type MadeBatch, makeBatch } from '../../../src/actions/make-batch.ts';
import { undoPosting } from '../../../src/actions/undo-posting.ts';
import type { Refusal, Written } from '../../../src/actions/writing-desk.ts';
import { addDays, type Day } from '../../../src/core/day.ts';
import { type Exact, ratio } from '../../../src/core/exact-number.ts';
import type { Random } from '../../../src/core/identifier.ts';
import type { Ledger } from '../../../src/core/ledger.ts';
import { findUnit, type Unit } from '../../../src/core/unit.ts';
import type { WorkbookSnapshot } from '../../../src/workbook/port.ts';
import { withChanges } from '../../../src/workbook/with-changes.ts';
import { randomFrom } from '../../helpers/bench.ts';
import { date, dayOf, type Literal, type LiteralRow } from '../../helpers/literal.ts';
import { snapshotOf } from '../../helpers/snapshot.ts';

/** A studio with random recipes, of bought things and of each other's products, and what happens in it day by day. */

export const FIRST: Day = dayOf('2026-03-01');
export const TODAY: Day = addDays(FIRST, 400);
const MADE = ['Made 1', 'Made 2', 'Made 3', 'Made 4'] as const;
const BOUGHT = ['Powder', 'Liquid', 'Tap water'] as const;
const UNITS = ['g', 'kg', 'mg', 'oz', 'ml', 'l', 'fl oz'] as const;

export interface PartRow {
  readonly material: string;
  readonly quantity: number;
  readonly unit: string;
}

export interface RecipeRow {
  readonly makes: string;
  readonly yields: number;
  readonly unit: string;
  readonly parts: readonly PartRow[];
}

/** Something that a person does; refused where it can't be done. */
export type Act =
  | {
      readonly kind: 'make';
      readonly recipe: number;
      readonly amount: number;
      readonly unit: string;
      readonly yieldPercent: number;
    }
  | { readonly kind: 'use'; readonly recipe: number; readonly amount: number; readonly job: string }
  | { readonly kind: 'empty'; readonly lot: number }
  | { readonly kind: 'undo'; readonly back: number };

export interface World {
  readonly recipes: readonly RecipeRow[];
  /** Of the lots that were bought, in coins. */
  readonly costs: readonly number[];
  readonly acts: readonly Act[];
  readonly seed: number;
}

/** Not so small that half a millionth of a litre would be all of it. */
const hundredths = (most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 100, max: most * 100 }).map((value) => value / 100);

const recipeOf = (makes: string): fc.Arbitrary<RecipeRow> =>
  fc.record({
    makes: fc.constant(makes),
    yields: hundredths(500),
    unit: fc.constantFrom('g', 'kg', 'oz', 'ml'),
    parts: fc.uniqueArray(
      fc.record({
        material: fc.constantFrom(...BOUGHT, ...MADE.filter((name) => name !== makes)),
        quantity: hundredths(60),
        unit: fc.constantFrom(...UNITS),
      }),
      { minLength: 1, maxLength: 4, selector: ({ material }) => material },
    ),
  });

const someAct: fc.Arbitrary<Act> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('make' as const),
      recipe: fc.nat(MADE.length - 1),
      amount: hundredths(400),
      unit: fc.constantFrom('g', 'kg', 'ml', 'fl oz'),
      yieldPercent: fc.integer({ min: 40, max: 120 }),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('use' as const),
      recipe: fc.nat(MADE.length - 1),
      amount: hundredths(100),
      job: fc.constantFrom('J-1', 'J-2'),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('empty' as const), lot: fc.nat(20) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo' as const), back: fc.nat(4) }) },
);

export const someWorld: fc.Arbitrary<World> = fc.record({
  recipes: fc.tuple(...MADE.map(recipeOf)),
  costs: fc.array(fc.integer({ min: 0, max: 9999 }), { minLength: 4, maxLength: 4 }),
  acts: fc.array(someAct, { minLength: 1, maxLength: 12 }),
  seed: fc.integer(),
});

function materialRow(name: string): LiteralRow {
  // So that any unit of mass leads to any of volume.
  return {
    Material: name,
    Kind: 'Buffer',
    'Stock unit': 'g',
    'Density g/ml': 0.8,
    Counted: name === 'Tap water' ? 'no' : 'yes',
  };
}

export function openedWorld({ recipes, costs }: World): WorkbookSnapshot {
  const lots = ['Powder', 'Powder', 'Liquid', 'Liquid'].map((name, place): LiteralRow => {
    return {
      Lot: `L-${place}`,
      Material: name,
      Received: date('2026-02-01'),
      Quantity: [400, 3, 2, 700][place] ?? 1,
      Unit: ['g', 'kg', 'l', 'ml'][place] ?? 'g',
      Cost: (costs[place] ?? 0) / 100,
    };
  });
  const literal: Literal = {
    Materials: [...BOUGHT, ...MADE].map(materialRow),
    Buffers: lots,
    Movements: [],
    TreatmentLog: [],
    Treatments: MADE.map((name) => ({ Treatment: `Bath of ${name}`, 'Extent unit': 'leaf' })),
    UsageRates: MADE.map((name) => ({
      Treatment: `Bath of ${name}`,
      Material: name,
      'Quantity per extent': 1,
      Unit: 'g',
    })),
    Recipes: recipes.map(({ makes, yields, unit }) => ({
      Recipe: `Recipe of ${makes}`,
      Makes: makes,
      Yield: yields,
      Unit: unit,
    })),
    RecipeParts: recipes.flatMap(({ makes, parts }) =>
      parts.map((part) => ({
        Recipe: `Recipe of ${makes}`,
        Material: part.material,
        Quantity: part.quantity,
        Unit: part.unit,
      })),
    ),
    Jobs: ['J-1', 'J-2'].map((job) => ({ Job: job, Stage: 'On the bench' })),
    Settings: [{ Setting: 'currency', Value: 'EUR' }],
  };
  return snapshotOf(literal);
}

export function unitOf(name: string): Unit {
  const unit = findUnit(name);
  if (unit === null) throw new Error(`${name} is no unit`);
  return unit;
}

/** What a person's hands have done so far: the workbook, and the postings that stand, the latest last. */
export interface Bench {
  readonly snapshot: WorkbookSnapshot;
  readonly standing: readonly string[];
}

export interface Step {
  readonly act: Act;
  readonly before: Ledger;
  readonly after: Ledger;
  readonly made: MadeBatch | null;
  /** The posting that was taken back. */
  readonly undone: string | null;
}

/**
 * Does one thing on a day.
 * @param onlyLast whether undo always takes the latest posting back
 * @returns the bench as before and no step where it was refused
 */
export function doOn(
  bench: Bench,
  world: World,
  act: Act,
  day: Day,
  random: Random,
  onlyLast: boolean,
): { readonly bench: Bench; readonly step: Step | null } {
  const { snapshot, standing } = bench;
  const undone =
    act.kind === 'undo'
      ? (standing.at(onlyLast ? -1 : -1 - (act.back % Math.max(standing.length, 1))) ?? null)
      : null;
  const written = answerTo(snapshot, world, act, day, random, undone);
  if (written === null || !written.ok || written.posting === null) return { bench, step: null };
  const next = withChanges(snapshot, written.changes);
  const { posting } = written;
  return {
    bench: {
      snapshot: next,
      standing: undone === null ? [...standing, posting] : standing.filter((each) => each !== undone),
    },
    step: {
      act,
      before: booksOf(snapshot).ledger,
      after: booksOf(next).ledger,
      made: act.kind === 'make' ? (written as MadeBatch) : null,
      undone,
    },
  };
}

/** Exactly the number that was drawn. */
export function hundredthsOf(amount: number): Exact {
  return ratio(Math.round(amount * 100), 100);
}

function answerTo(
  snapshot: WorkbookSnapshot,
  { recipes }: World,
  act: Act,
  day: Day,
  random: Random,
  undone: string | null,
): Written | Refusal | null {
  switch (act.kind) {
    case 'make': {
      const amount = hundredthsOf(act.amount);
      return makeBatch(
        snapshot,
        {
          recipe: `Recipe of ${recipes[act.recipe]?.makes ?? ''}`,
          amount,
          unit: unitOf(act.unit),
          yielded: amount.mul(ratio(act.yieldPercent, 100)),
          date: day,
          storedAt: null,
          asUsed: [],
          by: null,
          notes: null,
          pour: null,
        },
        TODAY,
        random,
      );
    }
    case 'use': {
      const name = recipes[act.recipe]?.makes ?? '';
      const used = { material: name, quantity: hundredthsOf(act.amount) };
      return logTreatment(
        snapshot,
        {
          job: act.job,
          item: null,
          treatment: `Bath of ${name}`,
          extent: ratio(1, 1),
          date: day,
          minutes: null,
          by: null,
          notes: null,
          asUsed: [{ ...used, unit: unitOf('g'), lot: null }],
        },
        TODAY,
        random,
      );
    }
    case 'empty': {
      const { lots } = booksOf(snapshot).ledger.studio;
      const lot = lots[act.lot % lots.length];
      return lot === undefined
        ? null
        : emptyBath(snapshot, { lot: lot.name, date: day, by: null }, TODAY, random);
    }
    case 'undo':
      return undone === null ? null : undoPosting(snapshot, undone, TODAY, random);
  }
}

export { randomFrom };
