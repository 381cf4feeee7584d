import { COMMON as COMMON_HELP } from '../help-parts.ts';
import { COMMON, type Options } from '../option-parts.ts';

export const PLAN_OPTIONS: Options = {
  ...COMMON,
  until: { type: 'string' },
  material: { type: 'string' },
  job: { type: 'string' },
};

export const PLAN_HELP = `Usage: jarleaf plan FILE [options]

Says what will run out and when, at which stock to order again, what will go off unused, when to make how much, and
whether the jobs booked and on the bench can be done on their days. It changes nothing. Whether a treatment is right
for an object it does not say.

  --until YYYY-MM-DD the last day that is looked at (without it: 90 days from
                    today, or as far as something is planned)
  --material NAME   one material only, day by day, with how it was worked out
  --job JOB         one job only: what it lacks, and by when that must be made or ordered
${COMMON_HELP}

Ends with 0, with 1 where a job can't be done on its day or something runs out, with 2 if the file or the call can't
be used.`;
