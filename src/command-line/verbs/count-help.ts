import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const COUNT_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  place: { type: 'string' },
  stocktake: { type: 'string' },
  counted: { type: 'string', multiple: true },
  gross: { type: 'string', multiple: true },
  date: { type: 'string' },
  post: { type: 'boolean' },
};

export const COUNT_HELP = `Usage: jarleaf count FILE [--place PLACE] [options]
       jarleaf count FILE --counted "LOT=NUMBER UNIT" … --gross "LOT=GRAMS" … [--post] [options]
       jarleaf count FILE --post [options]

Without anything counted: prints the lots to count in walking order (Places), with what is expected of each, to be
filled in by hand. With --counted or --gross: keeps what was found in the table Counts, where it waits; counting a lot
again replaces its row. With --post: posts the differences as Count movements. What was entered meanwhile is reckoned
with: for days before the count it was in the jar already, for that day or later it came after it.

  --place PLACE     only the lots that are kept there
  --stocktake NAME  which one (without it: the one under way, else a new one by day and place)
  --counted TEXT    what is left of a lot: "P-014=12.5 g", or "P-014=12.5" in the lot's own unit; for each lot once
  --gross TEXT      what it weighs in grams, jar and all: "P-014=130"; the lot's Tare g is taken off
  --date YYYY-MM-DD when it was counted (without it: today)
  --post            post what was counted
  --by NAME         who counted
${WRITING}
${COMMON}

Ends with 0, also where nothing is to be posted; with 1 if a counted row could not be posted; with 2 if nothing was
done.`;
