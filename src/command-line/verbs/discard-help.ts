import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const DISCARD_OPTIONS: Options = WRITING_OPTIONS;

export const DISCARD_HELP = `Usage: jarleaf discard FILE [options]

${WRITING}
${COMMON}`;
