import { type Converter, converterFor, factsOfLot, type MaterialFacts } from './conversion.ts';
import { addDays } from './day.ts';
import { keyOf } from './identifier.ts';
import { type Notice, notice } from './notice.ts';
import type { JobRecord, MaterialRecord, Records, Row, SupplierRecord } from './records.ts';
import { type Index, indexBy } from './references.ts';
import type { Settings } from './settings.ts';
import {
  type Entry,
  type Lot,
  type Material,
  type OrderLine,
  type PlanRow,
  type Recipe,
  type RecipePart,
  STUDIO_JOB,
  type Studio,
  type Treatment,
  type UsageRate,
} from './studio.ts';
import type { Unit } from './unit.ts';
import { unitFor } from './wording.ts';

/** Cells of a lot, its material and its recipe without which nobody can tell whether the lot may be used. */
const LOT_BEARING = ['Use by', 'Opened', 'State', 'State since', 'Recipe'];
const MATERIAL_BEARING = ['Life sealed days', 'Life opened days'];
const RECIPE_BEARING = ['Life days', 'Life cold days'];

/** Cells of a usage rate without which its quantity can't be worked out. */
const RATE_BEARING = ['Fixed quantity', 'Fixed per', 'Waste %', 'Whole'];

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
  const entries = buildEntries(records, treatmentsByKey, jobsByKey);
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
      jobs: records.jobs,
      items: records.items,
      quotes: records.quotes,
      materialsByKey,
      lotsByKey: indexBy(lots, (lot) => lot.record.lot),
      treatmentsByKey,
      jobsByKey,
      lotsOfMaterial,
      entriesOfTreatment: groupBy(entries, (entry) => entry.treatment),
    },
    notices,
  };
}

function nameOf(identifier: string | null, row: Row): string {
  return identifier ?? String(row.place.sheetRow);
}

function groupBy<T, K>(values: readonly T[], keyOfValue: (value: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const value of values) {
    const key = keyOfValue(value);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [value]);
    else group.push(value);
  }
  return groups;
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
    return [
      {
        record,
        name: nameOf(record.lot, record),
        material,
        converter: converterFor(factsOfLot(factsOf(material.record), record), record.unit),
        recipe,
        cold: place?.cold ?? false,
        doubtful:
          isUnreadable(record, LOT_BEARING) ||
          isUnreadable(material.record, MATERIAL_BEARING) ||
          (recipe !== null && isUnreadable(recipe.record, RECIPE_BEARING)) ||
          (record.recipe !== null && recipe === null),
      },
    ];
  });
}

function isUnreadable(record: Row, headers: readonly string[]): boolean {
  return record.unreadable.size > 0 && headers.some((header) => record.unreadable.has(header));
}

function buildTreatments(records: Records, materials: Index<Material>): Treatment[] {
  const rates = new Map<string, UsageRate[]>();
  for (const record of records.usageRates) {
    const material = materials.get(keyOf(record.material));
    if (material === undefined || isUnreadable(record, RATE_BEARING)) continue;
    const key = keyOf(record.treatment);
    const rate: UsageRate = { record, material, fixedPer: record.fixedPer ?? 'entry' };
    const others = rates.get(key);
    if (others === undefined) rates.set(key, [rate]);
    else others.push(rate);
  }
  return records.treatments.map((record) => ({
    record,
    name: nameOf(record.treatment, record),
    rates: record.treatment === null ? [] : (rates.get(keyOf(record.treatment)) ?? []),
  }));
}

function jobIsKnown(job: string, jobs: Index<JobRecord>): boolean {
  return keyOf(job) === keyOf(STUDIO_JOB) || jobs.has(keyOf(job));
}

function buildEntries(records: Records, treatments: Index<Treatment>, jobs: Index<JobRecord>): Entry[] {
  const seen = new Set<string>();
  return records.entries.flatMap((record): Entry[] => {
    const key = record.entry === null ? null : keyOf(record.entry);
    const isFirst = key === null || !seen.has(key);
    if (key !== null) seen.add(key);
    const treatment = treatments.get(keyOf(record.treatment));
    if (treatment === undefined || !jobIsKnown(record.job, jobs)) return [];
    return [{ record, name: nameOf(record.entry, record), key: isFirst ? key : null, treatment }];
  });
}

function buildPlan(records: Records, treatments: Index<Treatment>, jobs: Index<JobRecord>): PlanRow[] {
  return records.plan.flatMap((record): PlanRow[] => {
    const treatment = treatments.get(keyOf(record.treatment));
    if (treatment === undefined || !jobIsKnown(record.job, jobs)) return [];
    return [{ record, job: jobs.get(keyOf(record.job)) ?? null, treatment }];
  });
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

function missingConversion(
  material: Material,
  converter: Converter,
  unit: Unit,
  row: Row,
  subject: string | null,
): Notice[] {
  if (converter.factor(unit, material.unit) !== null) return [];
  return [
    notice(
      'no-conversion',
      subject,
      row,
      'Unit',
      noPath(material, unit, material.unit, 'the totals miss this row'),
    ),
  ];
}

/** The sentence for a unit that leads nowhere: what is missing, and what follows from it. */
export function noPath(material: Material, from: Unit, to: Unit, consequence: string): string {
  return (
    `Unit holds ${from.name}, and nothing says how many ${unitFor('', to)} of ${material.name} one ${from.name} is: ` +
    `give the size of the sheet, the grammage, the density or the uses that link them, or another unit. Until then ${consequence}.`
  );
}

/** Whether anything can be drawn by a rate: its unit leads to the stock unit, or to that of some lot. */
export function isConvertible(rate: UsageRate, lots: readonly Lot[]): boolean {
  return (
    rate.material.converter.factor(rate.record.unit, rate.material.unit) !== null ||
    lots.some((lot) => lot.converter.factor(rate.record.unit, lot.record.unit) !== null)
  );
}

function rateNotices(rate: UsageRate, lots: readonly Lot[]): Notice[] {
  const { material, record } = rate;
  if (!material.counted || isConvertible(rate, lots)) return [];
  const message = noPath(material, record.unit, material.unit, 'nothing is drawn for it');
  return [notice('no-conversion', null, record, 'Unit', message)];
}

function recipeNotices(recipe: Recipe, materials: Index<Material>): Notice[] {
  const made = materials.get(keyOf(recipe.record.makes));
  const ofYield =
    made === undefined
      ? []
      : missingConversion(made, made.converter, recipe.record.unit, recipe.record, recipe.record.recipe);
  const ofParts = recipe.parts
    .filter((part: RecipePart) => part.material.counted)
    .flatMap(({ material, record }) =>
      missingConversion(material, material.converter, record.unit, record, null),
    );
  return [...ofYield, ...ofParts];
}
