import type { Day } from '../day.ts';
import { dailyDemand } from '../demand.ts';
import { drawOrder, isTheLotOfItsName } from '../draw-order.ts';
import { type Exact, exact, ONE, sum } from '../exact-number.ts';
import { groupBy } from '../group-by.ts';
import { keyOf } from '../identifier.ts';
import { accountsOf, type Ledger } from '../ledger.ts';
import { goodUntilOn, madeLife, openedOn } from '../life.ts';
import { type LotAccount, smallestLeftFrom, stateOn, worthOn } from '../lot-account.ts';
import { readyDaysOf } from '../make-plan/ready-days.ts';
import { expectedOf } from '../on-order.ts';
import { type PlannedUse, plannedUses, type UndrawnUse } from '../planned-use.ts';
import { nameOf, type OfferRecord } from '../records.ts';
import { replacementPrice } from '../replacement-price.ts';
import type { MaterialFigures, Stock } from '../stock.ts';
import type { Lot, Material, Recipe, Studio } from '../studio.ts';
import { countsPieces } from '../unit.ts';
import { spokenQuantity } from '../wording.ts';
import { jobProblems } from './job-problems.ts';
import type {
  KnownDemand,
  LotSupply,
  MaterialProblem,
  OfferProblem,
  PlanProblem,
  RecipeProblem,
  SupplierProblem,
} from './plan-problem.ts';

const MINUTES_PER_HOUR = 60;

/**
 * Gathers what planning needs of a ledger, as plain values.
 * @param stock the stock on the day from which it is planned
 * @param until the last day that is looked at
 */
export function planProblemOf(ledger: Ledger, stock: Stock, until: Day): PlanProblem {
  const { studio } = ledger;
  const { today } = stock;
  const { settings } = studio;
  const planned = groupBy(plannedUses(ledger, today), (use) => use.material);
  const undrawn = groupBy(stock.undrawn, (use) => use.material);
  const inCoins = coinsIn(studio);
  const { benchRatePerHour } = settings;
  return {
    today,
    until,
    reviewDays: settings.reviewDays,
    coverDays: settings.orderCoverDays,
    minuteCost: benchRatePerHour === null ? null : inCoins(benchRatePerHour) / MINUTES_PER_HOUR,
    serviceMeans: settings.serviceMeans,
    holdingPercent: settings.holdingPercent.valueOf(),
    materials: stock.materials
      .filter(({ material }) => material.counted)
      .map((figures) => {
        const { material } = figures;
        const demands = demandsOf(undrawn.get(material) ?? [], planned.get(material) ?? [], today);
        return materialProblem(ledger, figures, demands, today);
      }),
    suppliers: supplierProblems(studio),
    jobs: jobProblems(ledger, today),
  };
}

/** How money in the main unit reads in coins, not yet rounded. */
function coinsIn({ settings }: Studio): (amount: Exact) => number {
  const coins = 10 ** settings.currency.decimals;
  return (amount) => amount.valueOf() * coins;
}

function demandsOf(
  undrawn: readonly UndrawnUse[],
  planned: readonly PlannedUse[],
  today: Day,
): KnownDemand[] {
  return [
    ...undrawn.map(
      ({ entry, quantity }): KnownDemand => ({
        day: today,
        quantity: quantity.valueOf(),
        kind: 'not drawn',
        job: entry.record.job,
        what: entry.treatment.name,
      }),
    ),
    ...planned.map(
      ({ row, day, quantity }): KnownDemand => ({
        day,
        quantity: quantity.valueOf(),
        kind: 'planned',
        job: row.job?.job ?? row.record.job,
        what: row.treatment.name,
      }),
    ),
  ];
}

function materialProblem(
  ledger: Ledger,
  { material, usable, onOrder, reorder }: MaterialFigures,
  demands: readonly KnownDemand[],
  today: Day,
): MaterialProblem {
  const { studio } = ledger;
  const { record, supplier, recipe, unit } = material;
  const inCoins = coinsIn(studio);
  const price = replacementPrice(material, usualQuantity(material));
  return {
    material: material.name,
    unit: unit.name,
    inPieces: countsPieces(unit),
    daily: dailyDemand(ledger, material, today),
    lots: lotSupplies(ledger, material, today),
    arrivals: expectedOf(studio, material, today).map(({ line, quantity, day }) => ({
      order: nameOf(line.order.order, line.order),
      line: line.record.line,
      supplier: line.order.supplier,
      day,
      quantity: quantity.valueOf(),
    })),
    demands,
    lifeSealedDays: record.lifeSealedDays,
    lifeOpenedDays: record.lifeOpenedDays,
    keepAtLeast: record.keepAtLeast?.valueOf() ?? 0,
    keepAtMost: record.keepAtMost?.valueOf() ?? null,
    servicePercent: record.serviceLevel?.valueOf() ?? null,
    supplier: supplier?.supplier ?? null,
    leadDays: supplier?.leadTimeDays?.valueOf() ?? 0,
    leadSpreadDays: supplier?.leadTimeSpreadDays?.valueOf() ?? 0,
    recipe: recipe === null ? null : recipeProblem(ledger, material, recipe),
    offers: material.offers.flatMap((offer) => offerProblem(material, offer, inCoins) ?? []),
    unitCost: price === null ? null : inCoins(price.pricePerUnit),
    plain: {
      level: reorder.reorderPoint.valueOf(),
      suggestedOrder: reorder.suggestedOrder.valueOf(),
      onOrder: onOrder.valueOf(),
      usable: usable?.valueOf() ?? 0,
    },
  };
}

/** How much of a material is got at a time: a batch as its recipe has it, else one pack, else one unit. */
function usualQuantity({ recipe, offers, converter, unit }: Material): Exact {
  const got =
    recipe !== null
      ? { quantity: recipe.record.yield, unit: recipe.record.unit }
      : offers[0] === undefined
        ? null
        : { quantity: offers[0].packQuantity, unit: offers[0].unit };
  const factor = got === null ? null : converter.factor(got.unit, unit);
  return got === null || factor === null ? ONE : got.quantity.mul(factor);
}

/** The lots that may be used today, in draw order, then those that are still to be received. */
function lotSupplies(ledger: Ledger, material: Material, today: Day): LotSupply[] {
  const later = accountsOf(ledger, material).filter(
    (account) =>
      account.lot.record.received > today &&
      !account.lot.doubtful &&
      stateOn(account, account.lot.record.received) === 'Usable' &&
      isTheLotOfItsName(ledger, account.lot),
  );
  return [
    ...drawOrder(ledger, material, today).flatMap((account) => supplyOf(account, today, today) ?? []),
    ...later.flatMap((account) => supplyOf(account, account.lot.record.received, today) ?? []),
  ];
}

function supplyOf(account: LotAccount, from: Day, today: Day): LotSupply | null {
  const { lot } = account;
  const factor = lot.converter.factor(lot.record.unit, lot.material.unit);
  const left = smallestLeftFrom(account, from);
  if (factor === null || left.compare(0) <= 0) return null;
  const worth = worthOn(account, today);
  const quantity = left.mul(factor).valueOf();
  return {
    lot: lot.name,
    quantity,
    from,
    goodUntil: goodUntilOn(account, from),
    lifeOpenedDays: openedOn(account, from) === null ? lot.material.record.lifeOpenedDays : null,
    unitWorth: worth === null ? null : Number(worth) / quantity,
  };
}

/** How a material is made; null where its recipe's unit doesn't lead to the stock unit, or it has no parts. */
function recipeProblem(ledger: Ledger, material: Material, recipe: Recipe): RecipeProblem | null {
  const { record, name, parts } = recipe;
  const factor = material.converter.factor(record.unit, material.unit);
  if (factor === null || parts.length === 0) return null;
  const made = record.yield.mul(factor);
  const perUnit = new Map<Material, Exact>();
  for (const part of parts) {
    const own = part.material.converter.factor(part.record.unit, part.material.unit);
    if (own === null || !part.material.counted) continue;
    const quantity = part.record.quantity.mul(own).div(made);
    perUnit.set(part.material, sum([perUnit.get(part.material) ?? exact(0), quantity]));
  }
  return {
    recipe: name,
    lifeDays: lifeOfMade(ledger, material, recipe),
    limitedByParts: record.limitedByParts === true,
    smallestBatch: record.smallestBatch?.mul(factor).valueOf() ?? 0,
    minutes: record.minutes?.valueOf() ?? 0,
    readyDays: readyDaysOf(record.readyAfterHours?.valueOf() ?? 0),
    parts: [...perUnit].map(([part, quantity]) => ({ material: part.name, perUnit: quantity.valueOf() })),
  };
}

/**
 * How many days a batch keeps from the day on which it is made: where the last one was kept, by the shortest of the
 * recipe's life and the material's own sealed one.
 */
function lifeOfMade({ studio }: Ledger, material: Material, recipe: Recipe): number | null {
  const last = (studio.lotsOfMaterial.get(material) ?? [])
    .filter((lot) => lot.recipe === recipe)
    .reduce<Lot | null>(
      (latest, lot) => (latest === null || lot.record.received >= latest.record.received ? lot : latest),
      null,
    );
  const made = madeLife(recipe.record, last ?? { cold: false, dark: false });
  const lives = [made?.days ?? null, material.record.lifeSealedDays].filter((life) => life !== null);
  return lives.length === 0 ? null : Math.min(...lives);
}

function offerProblem(
  material: Material,
  offer: OfferRecord,
  inCoins: (amount: Exact) => number,
): OfferProblem | null {
  const factor = material.converter.factor(offer.unit, material.unit);
  if (factor === null) return null;
  return {
    offer: `${offer.place.table} ${offer.place.sheetRow}`,
    supplier: offer.supplier,
    packQuantity: offer.packQuantity.mul(factor).valueOf(),
    packWords: spokenQuantity(offer.packQuantity, offer.unit),
    packPrice: Math.round(inCoins(offer.packPrice)),
    fromPacks: Math.max(offer.fromPacks?.ceil(0).valueOf() ?? 1, 1),
  };
}

/** The suppliers that are named in Suppliers or in Offers; one that has no row has no lead time and no carriage. */
function supplierProblems(studio: Studio): SupplierProblem[] {
  const inCoins = coinsIn(studio);
  const named = new Map<string, string>();
  for (const { supplier } of studio.materials.flatMap(({ offers }) => offers)) {
    if (!named.has(keyOf(supplier))) named.set(keyOf(supplier), supplier);
  }
  return [...named].map(([key, supplier]) => {
    const record = studio.suppliersByKey.get(key);
    const freeOver = record?.carriageFreeOver ?? null;
    return {
      supplier,
      leadDays: record?.leadTimeDays?.valueOf() ?? 0,
      minimumOrder: Math.round(record?.minimumOrder ? inCoins(record.minimumOrder) : 0),
      carriage: Math.round(record?.carriage ? inCoins(record.carriage) : 0),
      carriageFreeOver: freeOver === null ? null : Math.round(inCoins(freeOver)),
    };
  });
}
