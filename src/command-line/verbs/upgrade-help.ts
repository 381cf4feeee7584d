import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const UPGRADE_OPTIONS: Options = WRITING_OPTIONS;

export const UPGRADE_HELP = `Usage: jarleaf upgrade FILE [options]

${WRITING}
${COMMON}`;
