import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const COUNT_OPTIONS: Options = WRITING_OPTIONS;

export const COUNT_HELP = `Usage: jarleaf count FILE [options]

${WRITING}
${COMMON}`;
