import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const BATH_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  lot: { type: 'string' },
  empty: { type: 'boolean' },
  keep: { type: 'boolean' },
  date: { type: 'string' },
  ph: { type: 'string' },
};

export const BATH_HELP = `Usage: jarleaf bath FILE --lot LOT --empty [options]
       jarleaf bath FILE --lot LOT --keep [--ph NUMBER] [options]

What becomes of the rest of a bath. Emptied, it is Waste of the jobs that used it, in proportion to what each used; what
no job used, or what has gone off, is the studio's own loss. Kept, it stays in stock with the pH measured in it.

  --lot LOT         the bath
  --empty           throw away what is left of it
  --date YYYY-MM-DD with --empty: the day on which it was emptied (without it: today)
  --keep            keep it for another time
  --ph NUMBER       with --keep: its pH now
  --by NAME         with --empty: who emptied it
${WRITING}
${COMMON}

Throw away by the supplier's safety data sheet and local rules.
Ends with 0, with 2 if nothing was done.`;
