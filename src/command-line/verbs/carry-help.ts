import { COMMON } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const CARRY_OPTIONS: Options = WRITING_OPTIONS;

export const CARRY_HELP = `Usage: jarleaf carry FILE --on YYYY-MM-DD --out FILE2 [options]

Carries a workbook over to a new file, as of a day. Every lot keeps its identifier, quantity, cost and dates; one
Carried movement stands for what had been drawn of it and is not needed any more. No figure changes, on that day or
later. What stays: the last 365 days, jobs that are not handed back or declined, what made the lots still in use, and
what is still to be drawn, counted or mended. FILE is not touched: keep it with the records of the jobs, as it alone
tells which lots went into the objects handed back, and figures of days before.

  --out FILE2       the new workbook; it must not be there yet
  --by NAME         who does it
${COMMON}

Ends with 0, with 2 if nothing was done.`;
