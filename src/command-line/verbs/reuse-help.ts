import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const REUSE_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  lot: { type: 'string' },
  retire: { type: 'boolean' },
  presses: { type: 'string' },
  wet: { type: 'boolean' },
  sheets: { type: 'string' },
  back: { type: 'boolean' },
  uses: { type: 'string' },
  how: { type: 'string' },
  date: { type: 'string' },
};

export const REUSE_HELP = `Usage: jarleaf reuse FILE --lot LOT --retire [--presses NUMBER] [options]
       jarleaf reuse FILE --lot LOT --wet [--sheets NUMBER] [options]
       jarleaf reuse FILE --lot LOT --back --how dried|washed [--uses NUMBER] [options]

What becomes of release papers, webs, blotters and felts between two uses. A sheet that is spoilt early is Waste of the
uses it would still have had. What is wet is set aside. What is dry or washed is in use again, and may have uses put
back: never more than it came with, and none where silicone is named in Materials.

  --lot LOT         the lot
  --retire          one sheet is spoilt before its time
  --presses NUMBER  with --retire: how many presses it has done (without it: half of its uses)
  --wet             it is wet, and out of action from that day on
  --sheets NUMBER   with --wet: this many of it, which become a lot of their own (without it: all of the lot)
  --back            it is in use again
  --how dried|washed
                    with --back: what was done with it
  --uses NUMBER     with --back: how many uses that gives back (without it: none)
  --date YYYY-MM-DD the day (without it: today)
  --by NAME         who did it
${WRITING}
${COMMON}

Ends with 0, with 2 if nothing was done.`;
