import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const REUSE_OPTIONS: Options = WRITING_OPTIONS;

export const REUSE_HELP = `Usage: jarleaf reuse FILE [options]

${WRITING}
${COMMON}`;
