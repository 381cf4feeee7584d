import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const LOT_OPTIONS: Options = WRITING_OPTIONS;

export const LOT_HELP = `Usage: jarleaf lot FILE [options]

${WRITING}
${COMMON}`;
