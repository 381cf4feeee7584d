import { COMMON } from '../help-parts.ts';
import { COMMON as COMMON_OPTIONS, type Options } from '../option-parts.ts';

export const DISPOSAL_OPTIONS: Options = { ...COMMON_OPTIONS, year: { type: 'string' } };

export const DISPOSAL_HELP = `Usage: jarleaf disposal FILE [--year YYYY] [options]

Prints what was thrown away in a calendar year, by material: how much, by which rule of Disposal in Materials, the
hazard codes, and each time it happened. A job's waste is told apart from the studio's own loss. It changes nothing.
It only says what was written down; how something is thrown away follows the supplier's safety data sheet and local
rules.

  --year YYYY       the year (without it: the year of today)
${COMMON}

Ends with 0, with 2 if the file or the call can't be used.`;
