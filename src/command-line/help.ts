import { COMMON, WRITING } from './help-parts.ts';
import { BATH_HELP } from './verbs/bath-help.ts';
import { BUY_HELP } from './verbs/buy-help.ts';
import { CARRY_HELP } from './verbs/carry-help.ts';
import { CLOSING_HELP } from './verbs/closing-help.ts';
import { COUNT_HELP } from './verbs/count-help.ts';
import { DISCARD_HELP } from './verbs/discard-help.ts';
import { DISPOSAL_HELP } from './verbs/disposal-help.ts';
import { LOT_HELP } from './verbs/lot-help.ts';
import { MAKE_HELP } from './verbs/make-help.ts';
import { OPEN_HELP } from './verbs/open-help.ts';
import { PLAN_HELP } from './verbs/plan-help.ts';
import { RECEIVE_HELP } from './verbs/receive-help.ts';
import { RETEST_HELP } from './verbs/retest-help.ts';
import { REUSE_HELP } from './verbs/reuse-help.ts';
import { UPGRADE_HELP } from './verbs/upgrade-help.ts';

/** What the command line says of itself. */

export const OVERVIEW = `Jarleaf keeps the materials of a paper-conservation bench in a workbook.

Usage: jarleaf <verb> FILE [options]

  check FILE    what is in stock, and what needs attention
  log FILE      add a treatment to the log, draw its materials from the right lots, save
  draw FILE     draw down every log entry that is not drawn yet, save
  undo FILE     take a posting back by reversing rows, save
  quote FILE    cost the plan of a job; with --freeze keep it as a quote
  plan FILE     what will run out and when, and whether the jobs can be done on their days
  make FILE     when to make how much; with --recipe make a batch, and pour it for a job if you like
  buy FILE      what to order now from whom; with --order write the orders
  receive FILE  what is on its way; take in what came of an order
  bath FILE     empty a bath, charged to the jobs that used it, or keep it with its pH
  open FILE     open a lot, or one container of it
  retest FILE   write down that a lot was tested, by whom, and until when it is good
  discard FILE  throw away what has gone off
  reuse FILE    retire a sheet early; put sheets out of action while wet, and back
  lot FILE      all about one lot
  count FILE    a stocktake: the list, what was counted or weighed, the differences
  closing FILE  the stock at cost on a day
  disposal FILE what was thrown away in a year
  carry FILE    carry a year over into a fresh workbook
  upgrade FILE  add the columns that tables of an earlier version lack

Options of every verb:
${COMMON}

jarleaf <verb> --help tells the options of one verb.
Ends with 0; with 1 if a draw came up short, or check found something to mend first; with 2 if the file or the call
can't be used.
Stock figures say nothing about whether a treatment is safe or right: follow the supplier's safety data sheet, local
codes and your own training.`;

export const VERB_HELP = {
  check: `Usage: jarleaf check FILE [options]

Reads the workbook and prints the stock by material and what needs attention, most pressing first: what must be
mended before figures can be counted on (stop), warnings (warn) and what is good to know (note). It changes nothing.

  --lots            print every lot as well
${COMMON}

Ends with 0, with 1 if there is a stop notice, with 2 if the file or the call can't be used.`,

  log: `Usage: jarleaf log FILE --job JOB --treatment TREATMENT --extent NUMBER [options]

Adds an entry to the treatment log, draws its materials by the usage rates from the lots in draw order (what goes off
first, then what is open), and saves. The entry is kept whatever the stock says; what no lot covers is named.

  --job JOB         a job of Jobs, or STUDIO for work that is nobody's
  --item ITEM       the object, in a job of several
  --treatment NAME  a treatment of Treatments
  --extent NUMBER   how much, in the treatment's own unit
  --date YYYY-MM-DD the day of the treatment (without it: today); a later day is kept and waits
  --use "MATERIAL=QUANTITY UNIT[@LOT]"
                    what was really used of a material, and of which lot; may be given several times.
                    An alternative of the treatment is chosen by naming it here
  --minutes NUMBER  bench time
  --by NAME         who did it
  --notes TEXT      anything else for the log
${WRITING}
${COMMON}

Ends with 0, with 1 after a shortfall, with 2 if nothing was done.`,

  draw: `Usage: jarleaf draw FILE [options]

Draws down every entry of the treatment log that is not drawn yet, or in part only, each as of its own date, and saves.
What is drawn already stays as it is, so drawing twice draws once. Entries dated after today wait.

  --by NAME         who posts it
${WRITING}
${COMMON}

Ends with 0, with 1 after a shortfall, with 2 if nothing was done.`,

  undo: `Usage: jarleaf undo FILE --posting POSTING [options]

Takes back all movements of one posting by rows that reverse them, and saves. Nothing is deleted: the entries of the
treatment log stay, and draw draws them again.

  --posting POSTING the posting that log and draw print, and that stands in Movements
  --by NAME         who takes it back
${WRITING}
${COMMON}

Ends with 0, with 2 if nothing was done.`,

  quote: `Usage: jarleaf quote FILE --job JOB [options]

Costs the plan of a job: consumables line by line, markup, bench time, tax. Every line says how it came about.

  --job JOB         a job of Jobs
  --freeze          write it to Quotes and QuoteLines as a new version, which is never changed again
${WRITING.replace('save to', 'with --freeze: save to')}
${COMMON}

Ends with 0, with 2 if it can't be costed.`,
  plan: PLAN_HELP,
  make: MAKE_HELP,
  buy: BUY_HELP,
  receive: RECEIVE_HELP,
  bath: BATH_HELP,
  open: OPEN_HELP,
  retest: RETEST_HELP,
  discard: DISCARD_HELP,
  reuse: REUSE_HELP,
  lot: LOT_HELP,
  count: COUNT_HELP,
  closing: CLOSING_HELP,
  disposal: DISPOSAL_HELP,
  carry: CARRY_HELP,
  upgrade: UPGRADE_HELP,
} as const;

export type Verb = keyof typeof VERB_HELP;
