import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const OPEN_OPTIONS: Options = WRITING_OPTIONS;

export const OPEN_HELP = `Usage: jarleaf open FILE [options]

${WRITING}
${COMMON}`;
