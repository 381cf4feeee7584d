import { COMMON } from '../help-parts.ts';
import { COMMON as COMMON_OPTIONS, type Options } from '../option-parts.ts';

export const CLOSING_OPTIONS: Options = COMMON_OPTIONS;

export const CLOSING_HELP = `Usage: jarleaf closing FILE [--on YYYY-MM-DD] [options]

Prints the closing stock at the end of a day, by material and lot: what is left, what a unit of it cost, what it is
worth at cost. Lots that have gone off or are set aside are in it and marked; discarded ones are not. Nothing is
written down: whether stock is carried at less than its cost is for the accountant. It changes nothing.

${COMMON}

Ends with 0, with 2 if the file or the call can't be used.`;
