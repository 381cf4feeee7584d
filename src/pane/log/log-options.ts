import type { LotChoice, LotDoubt } from '../../actions/plan-treatment.ts';
import { spokenDay } from '../../core/day.ts';
import { sum } from '../../core/exact-number.ts';
import { keyOf } from '../../core/identifier.ts';
import { JOB_STAGES, type JobRecord, type JobStage } from '../../core/records.ts';
import { type Material, STUDIO_JOB, type Studio } from '../../core/studio.ts';
import type { Unit } from '../../core/unit.ts';
import { spokenNumber, spokenQuantity } from '../../core/wording.ts';
import type { ComboboxOption } from '../parts/combobox-model.ts';

/** Stages in the order in which their jobs are likely to be meant. */
const LIKELY: readonly JobStage[] = ['On the bench', 'Booked', 'Quoted', 'Enquiry', 'Finished'];

/** The jobs, those on the bench first, and the job that is nobody's. */
export function jobOptions(studio: Studio): ComboboxOption[] {
  const jobs = studio.jobs
    .filter(({ job }) => job !== null && keyOf(job) !== keyOf(STUDIO_JOB))
    .toSorted((a, b) => likelihood(a) - likelihood(b))
    .map((record) => ({ value: record.job ?? '', detail: jobDetail(record) }));
  return [...jobs, { value: STUDIO_JOB, label: `${STUDIO_JOB}: nobody’s (samples, calibration)` }];
}

function likelihood({ stage }: JobRecord): number {
  const place = stage === null ? -1 : LIKELY.indexOf(stage);
  return place < 0 ? JOB_STAGES.length : place;
}

/** A job's second line: its object and how far it is. */
export function jobDetail({ object, stage }: JobRecord): string {
  return [object, stage].filter((part) => part !== null).join(', ');
}

/** The job that is offered: the last one logged that is on the bench; null where there is none. */
export function offeredJob(studio: Studio): string | null {
  const onTheBench = studio.entries.filter(
    ({ record }) => studio.jobsByKey.get(keyOf(record.job))?.stage === 'On the bench',
  );
  const last = onTheBench.toSorted(
    (a, b) => b.record.date - a.record.date || b.record.place.row - a.record.place.row,
  )[0];
  return last === undefined ? null : (studio.jobsByKey.get(keyOf(last.record.job))?.job ?? null);
}

/** The items of a job; none where it is one object. */
export function itemOptions(studio: Studio, job: string): ComboboxOption[] {
  return studio.items.flatMap((record) =>
    record.item !== null && keyOf(record.job) === keyOf(job) ? [{ value: record.item }] : [],
  );
}

/** The treatments with their extent unit, those planned for the job first. */
export function treatmentOptions(studio: Studio, job: string): ComboboxOption[] {
  const planned = studio.plan.filter(
    ({ record }) => record.done !== true && keyOf(record.job) === keyOf(job),
  );
  const options = studio.treatments.map((treatment) => {
    const { extentUnit } = treatment.record;
    const rows = planned.filter((row) => row.treatment === treatment);
    const extent = spokenNumber(sum(rows.map(({ record }) => record.extent)));
    const detail = `per ${extentUnit}`;
    return {
      isPlanned: rows.length > 0,
      option: {
        value: treatment.name,
        detail: rows.length === 0 ? detail : `${detail}; planned for this job: ${extent}`,
      },
    };
  });
  return options.toSorted((a, b) => Number(b.isPlanned) - Number(a.isPlanned)).map(({ option }) => option);
}

/**
 * The lots of a material that can be named, behind the draw order: those that the rules would not pick say why, and
 * the empty ones come last.
 */
export function lotOptions(lots: readonly LotChoice[], unit: Unit): ComboboxOption[] {
  return [
    { value: '', label: IN_DRAW_ORDER },
    ...lots
      .toSorted((a, b) => Number(isEmpty(a)) - Number(isEmpty(b)))
      .map((choice) => {
        const option = {
          value: choice.lot.name,
          detail: `${spokenQuantity(choice.left, unit)} left, ${keepsUntil(choice)}`,
        };
        return choice.doubt === null ? option : { ...option, doubt: doubtWords(choice.doubt, choice) };
      }),
  ];
}

function isEmpty({ left }: LotChoice): boolean {
  return left.compare(0) <= 0;
}

export const IN_DRAW_ORDER = 'in draw order';

/** Until when a lot is good. */
export function keepsUntil({ goodUntil, lot }: Pick<LotChoice, 'goodUntil' | 'lot'>): string {
  if (goodUntil !== null) return `good until ${spokenDay(goodUntil)}`;
  return lot.doubtful ? 'good until: can’t be told' : 'keeps';
}

/** Why the rules would not pick a lot, for a person. */
export function doubtWords(doubt: LotDoubt, { lot, goodUntil }: LotChoice): string {
  switch (doubt) {
    case 'gone off':
      return goodUntil === null ? 'gone off' : `gone off after ${spokenDay(goodUntil)}`;
    case 'not received yet':
      return `not here yet on that day: received ${spokenDay(lot.record.received)}`;
    case 'cannot be told':
      return 'a date or recipe of it can’t be read, so it is not taken by itself';
    case 'empty':
      return 'empty';
    default:
      return doubt;
  }
}

/** Materials by name, with their stock unit. */
export function materialOptions(materials: readonly Material[]): ComboboxOption[] {
  return materials.map(({ name, unit, record }) => ({
    value: name,
    detail: `${record.kind}, in ${unit.name}`,
  }));
}
