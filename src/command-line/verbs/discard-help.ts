import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const DISCARD_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  lot: { type: 'string', multiple: true },
  plan: { type: 'boolean' },
};

export const DISCARD_HELP = `Usage: jarleaf discard FILE [--lot LOT]… [options]

Throws away what has gone off: what is left of each such lot is Waste of nobody's job, all under one posting that undo
takes back. It is the studio's own loss. Nothing else about the lots changes.

  --lot LOT         this lot alone; may be given several times (without it: all that has gone off)
  --plan            list what has gone off, and save nothing
  --by NAME         who throws it away
${WRITING}
${COMMON}

Throw away by your local rules and the supplier's safety data sheet.
Ends with 0, also where nothing has gone off; with 2 if nothing was done.`;
