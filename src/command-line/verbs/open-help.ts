import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const OPEN_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  lot: { type: 'string' },
  quantity: { type: 'string' },
  date: { type: 'string' },
};

export const OPEN_HELP = `Usage: jarleaf open FILE --lot LOT [--quantity "NUMBER UNIT"] [options]

Writes down that a lot was opened, from which day on its life opened runs. Where the lot is several containers, the
quantity of one splits it off into a lot of its own, with its share of the cost; the others stay sealed.

  --lot LOT         the lot
  --quantity "NUMBER UNIT"
                    what one container holds, such as "500 ml" (without it: all of the lot is open)
  --date YYYY-MM-DD the day on which it was opened (without it: today)
  --by NAME         who opened it
${WRITING}
${COMMON}

Ends with 0, with 2 if nothing was done.`;
