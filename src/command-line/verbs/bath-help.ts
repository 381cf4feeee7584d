import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const BATH_OPTIONS: Options = WRITING_OPTIONS;

export const BATH_HELP = `Usage: jarleaf bath FILE [options]

${WRITING}
${COMMON}`;
