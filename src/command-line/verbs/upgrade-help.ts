import { COMMON as COMMON_HELP, WRITING } from '../help-parts.ts';
import { COMMON, type Options } from '../option-parts.ts';

export const UPGRADE_OPTIONS: Options = { ...COMMON, out: { type: 'string' } };

export const UPGRADE_HELP = `Usage: jarleaf upgrade FILE [options]

Brings tables that an earlier version made up to date: the columns that they lack come behind the last one, new tables
on tabs of their own, and Settings says which version the tables have. Every cell that is there stays as it is. Tables
of an earlier version go on working without it.

${WRITING}
${COMMON_HELP}

Ends with 0, also where nothing is to be done; with 2 if the file or the call can't be used, or something stands where
a column would go.`;
