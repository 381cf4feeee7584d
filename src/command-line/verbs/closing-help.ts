import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const CLOSING_OPTIONS: Options = WRITING_OPTIONS;

export const CLOSING_HELP = `Usage: jarleaf closing FILE [options]

${WRITING}
${COMMON}`;
