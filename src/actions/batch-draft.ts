import type { AsUsed } from '../core/as-used.ts';
import {
  drawBatch,
  earliestOfParts,
  missingParts,
  type PartNeed,
  partsAsUsed,
  scaledParts,
} from '../core/batch.ts';
import { type Day, spokenDay } from '../core/day.ts';
import { type Exact, roundQuantity } from '../core/exact-number.ts';
import { type IdentifierMaker, keyOf } from '../core/identifier.ts';
import { accountIn, type Ledger } from '../core/ledger.ts';
import { goodUntilOn, goodUntilReason } from '../core/life.ts';
import { fromCoins } from '../core/money.ts';
import type { Movement } from '../core/movement.ts';
import type { LotRecord } from '../core/records.ts';
import type { Lot, Material, Recipe, Studio } from '../core/studio.ts';
import { withLot } from '../core/with-lot.ts';
import { spokenQuantity, unitFor } from '../core/wording.ts';
import { STOCK_TABLE_OF_KIND } from '../workbook/tables-stock.ts';
import { batchRemarks } from './batch-remarks.ts';
import type { BatchPlan, BatchToMake } from './batch-to-make.ts';
import { noSuchName } from './nearest-name.ts';
import { lotRecordOf } from './new-lot.ts';
import { findAmount } from './treatment-to-log.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** A batch as it would be made: its new lot in the ledger, the ingredients taken; nothing is written yet. */
export interface BatchDraft {
  readonly ok: true;
  readonly plan: BatchPlan;
  readonly product: Material;
  readonly lot: Lot;
  readonly ledger: Ledger;
  /** The Make movements. */
  readonly movements: readonly Movement[];
}

/**
 * Works a batch out: what it takes, what it costs, how long it keeps. Refused is what can't be made of the words:
 * names that lead nowhere, a unit that doesn't lead to the recipe's, a day that is still to come.
 * @param posting the name of the posting that the lot is written with, asked for once it is known whether there are movements
 */
export function draftBatch(
  ledger: Ledger,
  request: BatchToMake,
  today: Day,
  newIdentifier: IdentifierMaker,
  posting: (isAnyWritten: boolean) => string | null = () => null,
): BatchDraft | Refusal {
  const named = findBatch(ledger.studio, request, today);
  if (!named.ok) return named;
  const { recipe, product, parts } = named;
  const { currency } = ledger.studio.settings;
  const yielded = roundQuantity(request.yielded ?? request.amount);
  const fields = {
    received: request.date,
    quantity: yielded,
    unit: request.unit,
    recipe: recipe.name,
    storedAt: named.storedAt,
    cost: null,
  };
  const blank = lotRecordOf(
    { newIdentifier },
    { snapshot: { name: STOCK_TABLE_OF_KIND[product.record.kind] } },
    product,
    fields,
    currency,
  );
  const drawn = drawBatch(ledger, parts, blank.lot, request.date, newIdentifier);
  const record = {
    ...blank,
    cost: drawn.cost === null ? null : fromCoins(drawn.cost, currency),
    posting: posting(drawn.movements.length > 0),
    notes: notesOf(request.notes, drawn.parts),
  };
  const limited = recipe.record.limitedByParts === true ? earliestOfParts(drawn, request.date) : null;
  const own = withLot(drawn.ledger, record, product, recipe);
  const made = limited === null ? own : limitedTo(limited, own, drawn.ledger, record, request.date);
  const account = accountIn(made.ledger, made.lot);
  const goodUntil = goodUntilOn(account, request.date);
  const plan = {
    ok: true as const,
    recipe,
    date: request.date,
    amount: roundQuantity(request.amount),
    unit: request.unit,
    yielded,
    parts: drawn.parts,
    cost: drawn.cost,
    goodUntil,
    goodUntilBecause: goodUntilReason(account, request.date) ?? KEEPS,
    readyAfterHours: recipe.record.readyAfterHours,
  };
  const remarks = batchRemarks(plan, product, request);
  return { ok: true, plan: { ...plan, remarks }, product, ...made, movements: drawn.movements };
}

const KEEPS = 'nothing says that it goes off';

/** The lot with the day in Use by on which the first of its parts goes off, where it would keep longer by itself. */
function limitedTo(
  useBy: Day,
  own: { readonly ledger: Ledger; readonly lot: Lot },
  before: Ledger,
  record: LotRecord & { readonly lot: string },
  date: Day,
): { readonly ledger: Ledger; readonly lot: Lot } {
  const { lot } = own;
  const byItself = goodUntilOn(accountIn(own.ledger, lot), date);
  if (lot.recipe === null || (byItself !== null && byItself <= useBy)) return own;
  return withLot(before, { ...record, useBy }, lot.material, lot.recipe);
}

/** The lot's Notes: a person's own words, and what was missing when it was made. */
function notesOf(notes: string | null, parts: BatchPlan['parts']): string | null {
  const missing = missingParts(parts).map(
    (part) => `${spokenQuantity(part.missing, part.unit)} of ${part.material.name}`,
  );
  if (missing.length === 0) return notes;
  const said = `Not covered by any lot when it was made: ${missing.join(', ')}.`;
  return notes === null ? said : `${notes} ${said}`;
}

interface NamedBatch {
  readonly ok: true;
  readonly recipe: Recipe;
  readonly product: Material;
  readonly parts: readonly PartNeed[];
  readonly storedAt: string | null;
}

/** Finds what a request names, or refuses it saying what would be right. */
function findBatch(studio: Studio, request: BatchToMake, today: Day): NamedBatch | Refusal {
  const recipe = studio.recipesByKey.get(keyOf(request.recipe));
  if (recipe === undefined) {
    return noSuchName(
      'recipe',
      request.recipe,
      'Recipes',
      studio.recipes.map(({ name }) => name),
    );
  }
  const product = studio.materialsByKey.get(keyOf(recipe.record.makes));
  const obstacle = obstacleOf(recipe, product, request, today);
  if (obstacle !== null || product === undefined) return refuse(obstacle ?? '');
  const scaled = scaledParts(recipe, product, request.amount, request.unit);
  if (scaled === null) {
    const unit = unitFor('2', recipe.record.unit);
    return refuse(
      `Nothing says how many ${unit} one ${request.unit.name} of ${product.name} is: give the amount in ${unit}, ` +
        `the unit of the recipe, or add to Materials the fact that links them.`,
    );
  }
  const place = request.storedAt === null ? null : studio.placesByKey.get(keyOf(request.storedAt));
  if (place === undefined) {
    const places = studio.places.map(({ storage }) => storage ?? '');
    return noSuchName('place', request.storedAt ?? '', 'Places', places);
  }
  const asUsed: AsUsed[] = [];
  for (const amount of request.asUsed) {
    const found = findAmount(studio, amount);
    if ('ok' in found) return found;
    if (found.material === product) {
      return refuse(
        `${product.name} is what ${recipe.name} makes, so none of it goes in: give the amounts of its ingredients.`,
      );
    }
    asUsed.push(found);
  }
  return { ok: true, recipe, product, parts: partsAsUsed(scaled, asUsed), storedAt: place?.storage ?? null };
}

function obstacleOf(
  recipe: Recipe,
  product: Material | undefined,
  { amount, yielded, date }: BatchToMake,
  today: Day,
): string | null {
  if (product === undefined) {
    return `The recipe ${recipe.name} makes ${recipe.record.makes}, which is not in Materials: add it there first.`;
  }
  if (!product.counted) {
    return `${product.name} is not counted, so no lot of it is kept: clear Counted in Materials to make lots of it.`;
  }
  if (recipe.parts.some(({ material }) => material === product)) return ofItself(recipe, product);
  if (!isAboveZero(amount) || (yielded !== null && !isAboveZero(yielded))) {
    return 'What is made must be more than 0, to 6 decimals.';
  }
  if (date > today) {
    return `The making is dated ${spokenDay(date)}, after today: give the day on which it was made.`;
  }
  return null;
}

function isAboveZero(quantity: Exact): boolean {
  return roundQuantity(quantity).compare(0) > 0;
}

function ofItself(recipe: Recipe, product: Material): string {
  return (
    `The recipe ${recipe.name} has ${product.name} among its own parts. What goes in and what comes out are two ` +
    `materials, a powder and its solution for instance: give them two names in Materials.`
  );
}
