import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const DISPOSAL_OPTIONS: Options = WRITING_OPTIONS;

export const DISPOSAL_HELP = `Usage: jarleaf disposal FILE [options]

${WRITING}
${COMMON}`;
