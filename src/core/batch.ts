import type { AsUsed } from './as-used.ts';
import { benchQuantity } from './bench-quantity.ts';
import type { Day } from './day.ts';
import { cover, type Need } from './draw-order.ts';
import { type Exact, roundQuantity, sum, ZERO } from './exact-number.ts';
import type { IdentifierMaker } from './identifier.ts';
import { accountIn, costIn, type Ledger, post } from './ledger.ts';
import { goodUntilOn } from './life.ts';
import { totalCost } from './lot-account.ts';
import type { Coins } from './money.ts';
import { type Movement, movementOf } from './movement.ts';
import { nameForMovement } from './movement-name.ts';
import type { LotCertainty } from './records.ts';
import type { Lot, Material, Recipe } from './studio.ts';
import type { Unit } from './unit.ts';

/** What is to be taken of one ingredient. */
export interface PartNeed {
  readonly material: Material;
  /** In `unit`, with at most 6 decimals. */
  readonly quantity: Exact;
  readonly unit: Unit;
  /** The amounts, and the lots that a person named for them; what is not counted has none. */
  readonly needs: readonly Need[];
}

/** One ingredient of a batch, with the lots that it is taken from. */
export interface BatchPart {
  readonly material: Material;
  /** In `unit`, one that a bench uses, or that a person gave. */
  readonly needed: Exact;
  readonly unit: Unit;
  readonly takes: readonly BatchTake[];
  /** What no lot covers, in `unit`; 0 where it is covered, or isn't counted. */
  readonly missing: Exact;
  /** The recipe by which what is missing could be made first; null where it is bought, or nothing is missing. */
  readonly makeFirst: Recipe | null;
}

/** What one lot gives of an ingredient. */
export interface BatchTake {
  readonly lot: Lot;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly lotIs: LotCertainty;
  /** Null for a lot without a cost. */
  readonly cost: Coins | null;
}

/** The ingredients of a batch taken from stock. */
export interface DrawnBatch {
  readonly ledger: Ledger;
  /** Still to be written. */
  readonly movements: readonly Movement[];
  readonly parts: readonly BatchPart[];
  /** The sum of what they cost: null as soon as a lot without a cost is among them, or nothing could be taken at all. */
  readonly cost: Coins | null;
}

/**
 * The ingredients of a recipe for an amount of what it makes: each in proportion to the recipe's yield, an ingredient
 * that stands in several rows once, in a unit that a bench uses, to 6 decimals. Uses are taken whole.
 * @param product what the recipe makes, by whose facts `unit` leads to the unit of the yield
 * @returns null where nothing says how many of the yield's unit one `unit` is
 */
export function scaledParts(recipe: Recipe, product: Material, amount: Exact, unit: Unit): PartNeed[] | null {
  const factor = product.converter.factor(unit, recipe.record.unit);
  if (factor === null) return null;
  const times = amount.mul(factor).div(recipe.record.yield);
  const rows: { material: Material; quantity: Exact; unit: Unit }[] = [];
  for (const { material, record } of recipe.parts) {
    const row = rows.find(
      (each) => each.material === material && material.converter.factor(record.unit, each.unit) !== null,
    );
    const inRow = row === undefined ? null : material.converter.factor(record.unit, row.unit);
    if (row === undefined || inRow === null) {
      rows.push({ material, quantity: record.quantity.mul(times), unit: record.unit });
    } else row.quantity = row.quantity.add(record.quantity.mul(times).mul(inRow));
  }
  return rows.map((row) => {
    const bench = benchQuantity(row.quantity, row.unit);
    const isUse = bench.unit.dimension === 'use';
    const quantity = isUse ? bench.quantity.ceil(0) : roundQuantity(bench.quantity);
    const need = { material: row.material, quantity, unit: bench.unit, whole: isUse, lot: null };
    return { ...need, needs: row.material.counted ? [need] : [] };
  });
}

/** The ingredients with the amounts in place that a person says she took; those of other materials come last. */
export function partsAsUsed(scaled: readonly PartNeed[], asUsed: readonly AsUsed[]): PartNeed[] {
  const kept = scaled.filter(({ material }) => !asUsed.some((used) => used.material === material));
  const given = [...new Set(asUsed.map(({ material }) => material))].flatMap((material) => {
    const own = asUsed.filter((used) => used.material === material);
    return [...new Set(own.map(({ unit }) => unit))].map((unit): PartNeed => {
      const amounts = own.filter((used) => used.unit === unit);
      return {
        material,
        unit,
        quantity: sum(amounts.map(({ quantity }) => quantity)),
        needs: amounts.map((amount) => ({ ...amount, whole: false })),
      };
    });
  });
  const order = [...new Set([...scaled, ...given].map(({ material }) => material))];
  return order.flatMap((material) => [...kept, ...given].filter((part) => part.material === material));
}

/**
 * Takes ingredients from stock for a batch, in draw order as of the day of making: each as a Make into the new lot.
 * What no lot covers is missing; the rest is taken all the same.
 * @param into the identifier of the lot that is made
 */
export function drawBatch(
  ledger: Ledger,
  parts: readonly PartNeed[],
  into: string,
  date: Day,
  newIdentifier: IdentifierMaker,
): DrawnBatch {
  let after = ledger;
  const drawn = parts.map((part) => {
    const missing: Exact[] = [];
    const movements = part.needs
      .filter(({ quantity }) => quantity.compare(0) > 0)
      .flatMap((need) => {
        const covered = cover(after, need, date);
        missing.push(covered.missing);
        const taken = covered.takes.map((take) => {
          const name = nameForMovement(accountIn(after, take.lot), date, newIdentifier);
          return makeMovement({ ...take, unit: need.unit, date, into, name });
        });
        after = post(after, taken);
        return taken;
      });
    return { part, movements, missing: sum(missing) };
  });
  const movements = drawn.flatMap((each) => each.movements);
  const isShort = drawn.some(({ missing }) => missing.compare(0) > 0);
  return {
    ledger: after,
    movements,
    parts: drawn.map(
      (each): BatchPart => ({
        material: each.part.material,
        needed: each.part.quantity,
        unit: each.part.unit,
        takes: each.movements.map((movement) => ({
          lot: movement.lot,
          quantity: movement.quantity,
          unit: movement.unit,
          lotIs: movement.lotIs ?? 'assumed',
          cost: costIn(after, movement),
        })),
        missing: each.missing,
        makeFirst: each.missing.compare(0) > 0 ? each.part.material.recipe : null,
      }),
    ),
    cost:
      movements.length === 0 && isShort
        ? null
        : totalCost(movements.map((movement) => costIn(after, movement))),
  };
}

function makeMovement(take: {
  readonly lot: Lot;
  readonly quantity: Exact;
  readonly unit: Unit;
  readonly lotIs: LotCertainty;
  readonly date: Day;
  readonly into: string;
  readonly name: string;
}): Movement {
  const nobodys = { job: null, item: null, entry: null, note: null, reverses: null, record: null };
  const movement = movementOf({ ...take, ...nobodys, kind: 'Make' });
  if (movement === null) throw new Error(`${take.unit.name} leads to no unit of lot ${take.lot.name}`);
  return movement;
}

/**
 * The day on which the first of the parts that were made here goes off, as known on the day of making.
 * @returns null where none was made here, or they keep
 */
export function earliestOfParts({ ledger, movements }: DrawnBatch, date: Day): Day | null {
  const days = [...new Set(movements.map(({ lot }) => lot))]
    .filter((lot) => lot.recipe !== null)
    .flatMap((lot) => goodUntilOn(accountIn(ledger, lot), date) ?? []);
  return days.length === 0 ? null : (Math.min(...days) as Day);
}

/** What of a batch no lot covered. */
export function missingParts(parts: readonly BatchPart[]): BatchPart[] {
  return parts.filter(({ missing }) => missing.compare(ZERO) > 0);
}
