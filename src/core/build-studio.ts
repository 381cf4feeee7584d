import { buildEntries, buildPlan, buildTreatments } from './build-work.ts';
import { converterFor, factsOfLot, type MaterialFacts } from './conversion.ts';
import { addDays } from './day.ts';
import { groupBy } from './group-by.ts';
import { keyOf } from './identifier.ts';
import { type Index, indexBy } from './identities.ts';
import { missingConversion, rateNotices, recipeNotices } from './missing-conversions.ts';
import type { Notice } from './notice.ts';
import {
  isUnreadable,
  type LotRecord,
  type MaterialRecord,
  nameOf,
  type PlaceRecord,
  type Records,
  type SupplierRecord,
} from './records.ts';
import type { Settings } from './settings.ts';
import type { Lot, Material, OrderLine, Recipe, Studio } from './studio.ts';

/** Cells of a lot, its material and its recipe without which nobody can tell whether the lot may be used. */
const LOT_BEARING = ['Use by', 'Opened', 'Retested', 'Retested until', 'State', 'State since', 'Recipe'];
const MATERIAL_BEARING = ['Life sealed days', 'Life opened days'];
const RECIPE_BEARING = ['Life days', 'Life cold days', 'Life dark days'];

/**
 * Follows the references between records. Rows that can't be worked out without what they name are left out:
 * a lot without its material, a rate, part, plan row or order line without what it names, an entry without its job
 * or treatment. Names that lead nowhere are noticed elsewhere (see references.ts); here only missing conversions are.
 */
export function buildStudio(
  records: Records,
  settings: Settings,
): { readonly studio: Studio; readonly notices: readonly Notice[] } {
  const notices: Notice[] = [];
  const recipes = records.recipes.map(
    (record): Recipe => ({ record, name: nameOf(record.recipe, record), parts: [] }),
  );
  const materials = buildMaterials(records, recipes);
  const materialsByKey = indexBy(materials, (material) => material.record.material);
  const recipesByKey = indexBy(recipes, (recipe) => recipe.record.recipe);
  for (const record of records.recipeParts) {
    const material = materialsByKey.get(keyOf(record.material));
    if (material !== undefined) recipesByKey.get(keyOf(record.recipe))?.parts.push({ record, material });
  }
  const lots = buildLots(records, materialsByKey, recipesByKey);
  const lotsOfMaterial = groupBy(lots, (lot) => lot.material);
  const treatments = buildTreatments(records, materialsByKey);
  const treatmentsByKey = indexBy(treatments, (treatment) => treatment.record.treatment);
  const jobsByKey = indexBy(records.jobs, (job) => job.job);
  const lotsByKey = indexBy(lots, (lot) => lot.record.lot);
  const { entries, notices: ofEntries } = buildEntries(
    records,
    treatmentsByKey,
    jobsByKey,
    materialsByKey,
    lotsByKey,
  );
  const orderLines = buildOrderLines(records, materialsByKey);
  notices.push(
    ...lots.flatMap((lot) =>
      missingConversion(lot.material, lot.converter, lot.record.unit, lot.record, lot.record.lot),
    ),
    ...treatments.flatMap(({ rates }) =>
      rates.flatMap((rate) => rateNotices(rate, lotsOfMaterial.get(rate.material) ?? [])),
    ),
    ...recipes.flatMap((recipe) => recipeNotices(recipe, materialsByKey)),
    ...materials.flatMap((material) =>
      material.offers.flatMap((offer) =>
        missingConversion(material, material.converter, offer.unit, offer, null),
      ),
    ),
    ...orderLines.notices,
    ...ofEntries,
  );
  return {
    studio: {
      settings,
      materials: [
        ...new Set(materialsByKey.values()),
        ...materials.filter((each) => each.record.material === null),
      ],
      lots,
      treatments,
      entries,
      plan: buildPlan(records, treatmentsByKey, jobsByKey),
      orderLines: orderLines.lines,
      suppliers: records.suppliers,
      orders: records.orders,
      jobs: records.jobs,
      items: records.items,
      places: records.places,
      recipes,
      counts: records.counts,
      quotes: records.quotes,
      materialsByKey,
      lotsByKey,
      treatmentsByKey,
      jobsByKey,
      recipesByKey,
      suppliersByKey: indexBy(records.suppliers, (supplier) => supplier.supplier),
      ordersByKey: indexBy(records.orders, (order) => order.order),
      placesByKey: indexBy(records.places, (place) => place.storage),
      lotsOfMaterial,
      entriesOfTreatment: groupBy(entries, (entry) => entry.treatment),
    },
    notices,
  };
}

function factsOf(record: MaterialRecord): MaterialFacts {
  const { stockUnit, sheetWidth, sheetHeight, grammage, density, usesPerUnit } = record;
  return { stockUnit, sheetWidth, sheetHeight, grammage, density, usesPerUnit };
}

function buildMaterials(records: Records, recipes: readonly Recipe[]): Material[] {
  const suppliers: Index<SupplierRecord> = indexBy(records.suppliers, (supplier) => supplier.supplier);
  const offers = groupBy(records.offers, (offer) => keyOf(offer.material));
  const recipeOf = indexBy(recipes, (recipe) => recipe.record.makes);
  return records.materials.map((record) => {
    const key = record.material === null ? null : keyOf(record.material);
    return {
      record,
      name: nameOf(record.material, record),
      unit: record.stockUnit,
      counted: record.counted ?? true,
      converter: converterFor(factsOf(record)),
      supplier: record.supplier === null ? null : (suppliers.get(keyOf(record.supplier)) ?? null),
      offers: key === null ? [] : (offers.get(key) ?? []),
      recipe: key === null ? null : (recipeOf.get(key) ?? null),
    };
  });
}

function buildLots(records: Records, materials: Index<Material>, recipes: Index<Recipe>): Lot[] {
  const places = indexBy(records.places, (place) => place.storage);
  return records.lots.flatMap((record): Lot[] => {
    const material = materials.get(keyOf(record.material));
    if (material === undefined) return [];
    const recipe = record.recipe === null ? null : (recipes.get(keyOf(record.recipe)) ?? null);
    const place = record.storedAt === null ? undefined : places.get(keyOf(record.storedAt));
    return [lotOf(record, material, recipe, place ?? null)];
  });
}

/** A lot with what its row names. */
export function lotOf(
  record: LotRecord,
  material: Material,
  recipe: Recipe | null,
  place: PlaceRecord | null,
): Lot {
  return {
    record,
    name: nameOf(record.lot, record),
    material,
    converter: converterFor(factsOfLot(factsOf(material.record), record), record.unit),
    recipe,
    place,
    cold: place?.cold ?? false,
    dark: place?.dark ?? false,
    doubtful:
      isUnreadable(record, LOT_BEARING) ||
      isUnreadable(material.record, MATERIAL_BEARING) ||
      (recipe !== null && isUnreadable(recipe.record, RECIPE_BEARING)) ||
      (record.recipe !== null && recipe === null),
  };
}

function buildOrderLines(
  records: Records,
  materials: Index<Material>,
): { readonly lines: readonly OrderLine[]; readonly notices: readonly Notice[] } {
  const orders = indexBy(records.orders, (order) => order.order);
  const lines: OrderLine[] = [];
  const notices: Notice[] = [];
  for (const record of records.orderLines) {
    const order = orders.get(keyOf(record.order));
    const material = materials.get(keyOf(record.material));
    if (order === undefined || material === undefined) continue;
    notices.push(...missingConversion(material, material.converter, record.unit, record, record.line));
    const factor = material.converter.factor(record.unit, material.unit);
    if (factor === null) continue;
    const lead = material.supplier?.leadTimeDays ?? null;
    const quantity = record.packs.mul(record.packQuantity).mul(factor);
    const expected =
      order.expected ?? (lead === null ? null : addDays(order.orderedOn, Math.ceil(lead.valueOf())));
    lines.push({ record, order, material, quantity, expected });
  }
  return { lines, notices };
}
