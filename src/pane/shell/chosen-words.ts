import { spokenDay } from '../../core/day.ts';
import { nameOf } from '../../core/records.ts';
import { spokenNumber } from '../../core/wording.ts';
import type { Chosen } from '../../session/session-state.ts';

/** What is chosen in the sheet, in words: its kind, and what it is. */
export function chosenWords(chosen: Chosen): { readonly kind: string; readonly name: string } {
  switch (chosen.kind) {
    case 'material':
      return { kind: 'Material', name: chosen.material.name };
    case 'lot':
      return { kind: 'Lot', name: `${chosen.lot.name}, ${chosen.lot.material.name}` };
    case 'job': {
      const { object } = chosen.job;
      const name = nameOf(chosen.job.job, chosen.job);
      return { kind: 'Job', name: object === null ? name : `${name}, ${object}` };
    }
    case 'entry': {
      const { treatment, record } = chosen.entry;
      return { kind: 'Log entry', name: `${treatment.name}, ${record.job}, ${spokenDay(record.date)}` };
    }
    case 'plan': {
      const { treatment, record } = chosen.plan;
      const extent = `${spokenNumber(record.extent)} ${treatment.record.extentUnit}`;
      return { kind: 'Plan', name: `${treatment.name}, ${extent}, ${record.job}` };
    }
  }
}

/** The job that is chosen, or that what is chosen belongs to; null where it belongs to none. */
export function jobOf(chosen: Chosen): string | null {
  switch (chosen.kind) {
    case 'job':
      return nameOf(chosen.job.job, chosen.job);
    case 'entry':
      return chosen.entry.record.job;
    case 'plan':
      return chosen.plan.record.job;
    default:
      return null;
  }
}
