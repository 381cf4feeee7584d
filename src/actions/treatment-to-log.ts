import { type AmountUsed, type AsUsed, notesWithAmounts } from '../core/as-used.ts';
import type { Day } from '../core/day.ts';
import { type Exact, roundQuantity } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import type { EntryRecord } from '../core/records.ts';
import { type Material, STUDIO_JOB, type Studio, type Treatment } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import { unitFor } from '../core/wording.ts';
import { noSuchName } from './nearest-name.ts';
import { type Refusal, refuse } from './writing-desk.ts';

/** A treatment to be logged, in a person's words. */
export interface TreatmentToLog {
  readonly job: string;
  readonly item: string | null;
  readonly treatment: string;
  readonly extent: Exact;
  readonly date: Day;
  readonly minutes: Exact | null;
  readonly by: string | null;
  readonly notes: string | null;
  readonly asUsed: readonly AmountUsed[];
}

/** A treatment to be logged, with its names found in the workbook. */
export interface NamedTreatment {
  readonly ok: true;
  readonly job: string;
  readonly item: string | null;
  readonly treatment: Treatment;
  readonly asUsed: readonly AsUsed[];
}

/** Finds what a request names, or refuses it with the names that may have been meant. */
export function findNamed(studio: Studio, request: TreatmentToLog): NamedTreatment | Refusal {
  const job = studio.jobsByKey.get(keyOf(request.job))?.job ?? null;
  const isStudio = keyOf(request.job) === keyOf(STUDIO_JOB);
  if (job === null && !isStudio)
    return noSuchName(
      'job',
      request.job,
      'Jobs',
      studio.jobs.map((each) => each.job ?? ''),
    );
  const treatment = studio.treatmentsByKey.get(keyOf(request.treatment));
  if (treatment === undefined) {
    return noSuchName(
      'treatment',
      request.treatment,
      'Treatments',
      studio.treatments.map(({ name }) => name),
    );
  }
  const items = studio.items
    .filter((each) => keyOf(each.job) === keyOf(request.job))
    .map(({ item }) => item ?? '');
  const item = request.item === null ? null : items.find((each) => keyOf(each) === keyOf(request.item ?? ''));
  if (item === undefined) return noSuchName(`item of job ${request.job}`, request.item ?? '', 'Items', items);
  const asUsed: AsUsed[] = [];
  for (const amount of request.asUsed) {
    const found = findAmount(studio, amount);
    if ('ok' in found) return found;
    asUsed.push(found);
  }
  return { ok: true, job: job ?? STUDIO_JOB, item, treatment, asUsed };
}

/** Finds what an amount names, or refuses it with what would be right. */
export function findAmount(studio: Studio, amount: AmountUsed): AsUsed | Refusal {
  const material = studio.materialsByKey.get(keyOf(amount.material));
  if (material === undefined) {
    return noSuchName(
      'material',
      amount.material,
      'Materials',
      studio.materials.map(({ name }) => name),
    );
  }
  if (!material.counted) {
    return refuse(
      `${material.name} is not counted, so no amount of it is drawn: leave out what was used of it.`,
    );
  }
  const lots = studio.lotsOfMaterial.get(material) ?? [];
  const lot = amount.lot === null ? null : lots.find(({ name }) => keyOf(name) === keyOf(amount.lot ?? ''));
  if (lot === undefined) {
    const other = studio.lotsByKey.get(keyOf(amount.lot ?? ''));
    if (other !== undefined) {
      return refuse(`Lot ${other.name} is a lot of ${other.material.name}, not of ${material.name}.`);
    }
    return noSuchName(
      `lot of ${material.name}`,
      amount.lot ?? '',
      'the stock tables',
      lots.map(({ name }) => name),
    );
  }
  if (!converts(material, amount.unit, studio, lot)) {
    return refuse(
      `Nothing says how many ${unitFor('2', material.unit)} one ${amount.unit.name} of ${material.name} is: ` +
        `give the amount in ${unitFor('2', material.unit)}, or add to Materials the fact that links them.`,
    );
  }
  return { material, quantity: roundQuantity(amount.quantity), unit: amount.unit, lot };
}

function converts(material: Material, unit: Unit, studio: Studio, named: AsUsed['lot']): boolean {
  const lots = named === null ? (studio.lotsOfMaterial.get(material) ?? []) : [named];
  return lots.length === 0
    ? material.converter.factor(unit, material.unit) !== null
    : lots.some((lot) => lot.converter.factor(unit, lot.record.unit) !== null);
}

/**
 * The record of the log entry that a request makes.
 * @param table the name of the treatment log, as the workbook spells it
 */
export function entryRecordOf(
  request: TreatmentToLog,
  { job, item, treatment, asUsed }: NamedTreatment,
  identifier: string,
  table: string,
): EntryRecord & { readonly entry: string } {
  return {
    entry: identifier,
    date: request.date,
    job,
    item,
    treatment: treatment.name,
    extent: roundQuantity(request.extent),
    minutes: request.minutes,
    notes: notesWithAmounts(request.notes, asUsed.map(written)),
    drawn: null,
    drawnFor: null,
    place: { table, row: -1, sheetRow: 0 },
    unreadable: new Set(),
  };
}

function written({ material, quantity, unit, lot }: AsUsed): AmountUsed {
  return { material: material.name, quantity, unit, lot: lot?.name ?? null };
}
