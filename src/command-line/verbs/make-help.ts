import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const MAKE_OPTIONS: Options = WRITING_OPTIONS;

export const MAKE_HELP = `Usage: jarleaf make FILE [options]

${WRITING}
${COMMON}`;
