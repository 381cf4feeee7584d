import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const CARRY_OPTIONS: Options = WRITING_OPTIONS;

export const CARRY_HELP = `Usage: jarleaf carry FILE [options]

${WRITING}
${COMMON}`;
