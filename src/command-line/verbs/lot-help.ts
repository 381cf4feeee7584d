import { COMMON } from '../help-parts.ts';
import { COMMON as COMMON_OPTIONS, type Options } from '../option-parts.ts';

export const LOT_OPTIONS: Options = { ...COMMON_OPTIONS, lot: { type: 'string' } };

export const LOT_HELP = `Usage: jarleaf lot FILE --lot LOT [options]

Everything about one lot, as of a day: what it is and where it stands, what is left and what that is worth, uses left,
until when it is good with every limit and which comes first, its pH and hazards, and each movement with what was left
after it. It changes nothing.

  --lot LOT         the lot
${COMMON}

Ends with 0, with 2 if the file or the call can't be used.`;
