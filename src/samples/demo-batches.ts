import { addDays, type Day } from '../core/day.ts';
import { rateQuantity, ratesInForce } from '../core/entry-needs.ts';
import { exact, ZERO } from '../core/exact-number.ts';
import type { Material, Studio } from '../core/studio.ts';
import { dayOf } from './demo-jobs.ts';
import type { DemoEntry } from './demo-log.ts';

/** When the studio made its pastes and solutions: as its log needed them, in half batches. */

export interface Batch {
  readonly material: Material;
  readonly made: Day;
  /** How many times the recipe was made at once: halves. */
  readonly times: number;
}

interface Need {
  readonly day: Day;
  readonly material: string;
  /** In the material's stock unit. */
  readonly quantity: number;
}

/** What was made besides: for a sheet of remoistenable tissue, and to have some ready. */
export const REMOISTENABLE_MADE = dayOf('2026-03-31');
const BESIDES: readonly Need[] = [
  { day: REMOISTENABLE_MADE, material: 'wheat starch paste', quantity: 12 },
  { day: REMOISTENABLE_MADE, material: 'methylcellulose 5 %', quantity: 12 },
  { day: REMOISTENABLE_MADE, material: 'remoistenable tissue', quantity: 0.8 },
  { day: dayOf('2026-11-03'), material: 'limewater', quantity: 0.8 },
  { day: dayOf('2026-11-05'), material: 'methylcellulose 5 %', quantity: 30 },
  { day: dayOf('2026-11-10'), material: 'magnesium bicarbonate', quantity: 3 },
];

/** More than is reckoned with, as some stays in the pot. */
const RESERVE = 1.15;

/** The batches that cover a log, a pot for as long as it keeps. */
export function batchesFor(studio: Studio, entries: readonly DemoEntry[]): Batch[] {
  const needs = [...entries.flatMap((entry) => needsOf(studio, entry)), ...BESIDES].toSorted(
    (a, b) => a.day - b.day,
  );
  return studio.materials.flatMap((material): Batch[] => {
    const { recipe } = material;
    if (recipe === null) return [];
    const { lifeColdDays, lifeDays, yield: yieldOfOne } = recipe.record;
    const life = lifeColdDays ?? lifeDays ?? 0;
    const batches: Batch[] = [];
    let rest = needs.filter((need) => need.material === material.name);
    for (let first = rest[0]; first !== undefined; first = rest[0]) {
      const made = first.day;
      const covered = rest.filter(({ day }) => day <= addDays(made, life));
      const wanted = covered.reduce((total, { quantity }) => total + quantity, 0) * RESERVE;
      const halves = Math.max(1, Math.ceil((2 * wanted) / yieldOfOne.valueOf()));
      batches.push({ material, made, times: halves / 2 });
      rest = rest.slice(covered.length);
    }
    return batches;
  });
}

function needsOf(studio: Studio, { day, treatment, extent, asUsed }: DemoEntry): Need[] {
  const given = asUsed.map(([material, quantity]) => ({ day, material, quantity }));
  const chosen = new Set(asUsed.map(([material]) => material));
  const rates = studio.treatmentsByKey.get(treatment)?.rates ?? [];
  const byRate = ratesInForce(rates, ({ material }) => chosen.has(material.name))
    .filter(({ material }) => material.counted && !chosen.has(material.name))
    .map((rate) => ({
      day,
      material: rate.material.name,
      quantity: rateQuantity(rate, exact(extent), true)
        .mul(rate.material.converter.factor(rate.record.unit, rate.material.unit) ?? ZERO)
        .valueOf(),
    }));
  return [...given, ...byRate];
}
