import { spokenDay } from '../../core/day.ts';
import { exactWords } from '../../core/forecast/planned-words.ts';
import type { JobAnswer, JobWant } from '../../core/projection/job-readiness.ts';

/** Whether the materials and the days of a job fit, in a sentence; it says nothing of the treatment itself. */
export function answerInWords({ canBeDone, wants }: JobAnswer): string {
  if (!canBeDone) return 'Not as it is planned now.';
  return wants.length === 0
    ? 'Yes: what it takes is there on its days.'
    : 'Yes, if what is missing is made or ordered in time.';
}

/** What a job will not find, and what is to be done about it by when. */
export function wantInWords(want: JobWant): string {
  const { material, unit, day, missing, how, latestBy, supplier, tooLate, onItsWay } = want;
  const lacks = `${material}: ${exactWords(missing, unit)} missing on ${spokenDay(day)}`;
  if (how === 'nowhere' || latestBy === null) return `${lacks}. Nobody sells it, and no recipe makes it.`;
  if (how === 'make' && latestBy === day) return `${lacks}. Make it on that day.`;
  const from = supplier === null ? '' : ` from ${supplier}`;
  const deed = how === 'make' ? 'Make it' : `Order it${from}`;
  if (!tooLate) return `${lacks}. ${deed} by ${spokenDay(latestBy)}.${comingInWords(onItsWay)}`;
  const past = how === 'make' ? 'made' : `ordered${from}`;
  return `${lacks}. To have it then, it was to be ${past} by ${spokenDay(latestBy)}.${comingInWords(onItsWay)}`;
}

function comingInWords(onItsWay: JobWant['onItsWay']): string {
  return onItsWay === null ? '' : ` What is on order should be here on ${spokenDay(onItsWay)}.`;
}
