import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const RECEIVE_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  order: { type: 'string' },
  line: { type: 'string', multiple: true },
  place: { type: 'string' },
  date: { type: 'string' },
  carriage: { type: 'string' },
  cancel: { type: 'boolean' },
};

export const RECEIVE_HELP = `Usage: jarleaf receive FILE [options]
       jarleaf receive FILE --order ORDER [--line LINE] … [options]
       jarleaf receive FILE --order ORDER --cancel [options]

Without --order: lists what is on its way, order by order, when it is expected and what is late. With --order: takes
in what came, and saves. Each line becomes a lot in the stock table of its material, with its cost and its share of the
carriage, shared by the value of the goods. What is still to come stays on order. With --cancel: nothing more of the
order will come, so that the rest of it is not on order any more; what has come stays.

  --order ORDER     an order of Orders
  --line TEXT       what came of one line, named by its identifier or its material; may be given several times, also
                    twice for one line (without it: everything that is still to come). From the number on all is optional:
                      "LINE=NUMBER UNIT for GOODS @SUPPLIERLOT until YYYY-MM-DD in PLACE"
                    such as "H2=2 packs@KT-88 until 2027-01-31", "gelatine=50 g for 12.40", "H2=all in Plan chest".
                    Without a unit the number means packs; GOODS is what it cost without carriage, where that is not
                    what the order says; until is the printed date
  --place PLACE     where it is put, of lines that don't say
  --date YYYY-MM-DD when it came (without it: today)
  --carriage NUMBER what was charged for bringing it
  --by NAME         who took it in; kept in the Notes of the lots
  --cancel          closes the order instead of taking anything in: its State becomes Cancelled
${WRITING}
${COMMON}

Ends with 0, with 1 if some of what is still to come could not be taken in, with 2 if nothing was done. undo takes a
delivery back, as long as nothing was taken from its lots.`;
