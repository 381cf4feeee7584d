import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const RETEST_OPTIONS: Options = WRITING_OPTIONS;

export const RETEST_HELP = `Usage: jarleaf retest FILE [options]

${WRITING}
${COMMON}`;
