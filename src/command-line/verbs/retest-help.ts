import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const RETEST_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  lot: { type: 'string' },
  until: { type: 'string' },
  date: { type: 'string' },
  ph: { type: 'string' },
};

export const RETEST_HELP = `Usage: jarleaf retest FILE --lot LOT --until YYYY-MM-DD --by NAME [options]

Writes down that somebody tested whether a lot is still good, and until when it was found so. That replaces what limited
the lot before the test: printed date, life sealed, life as made, life opened. What begins afterwards still counts.

  --lot LOT         the lot
  --until YYYY-MM-DD
                    the last day on which it may be used, by the test
  --by NAME         who tested it
  --date YYYY-MM-DD the day of the test (without it: today)
  --ph NUMBER       the pH that was measured
${WRITING}
${COMMON}

Whether a lot is fit for use is for the person to say who tested it, and for the supplier's safety data sheet.
Ends with 0, with 2 if nothing was done.`;
