import { COMMON, WRITING } from '../help-parts.ts';
import { type Options, WRITING as WRITING_OPTIONS } from '../option-parts.ts';

export const MAKE_OPTIONS: Options = {
  ...WRITING_OPTIONS,
  recipe: { type: 'string' },
  amount: { type: 'string' },
  yield: { type: 'string' },
  date: { type: 'string' },
  place: { type: 'string' },
  use: { type: 'string', multiple: true },
  notes: { type: 'string' },
  job: { type: 'string' },
  item: { type: 'string' },
  treatment: { type: 'string' },
  extent: { type: 'string' },
  pour: { type: 'string' },
  plan: { type: 'boolean' },
  until: { type: 'string' },
};

export const MAKE_HELP = `Usage: jarleaf make FILE [--until YYYY-MM-DD] [options]
       jarleaf make FILE --recipe RECIPE --amount "NUMBER UNIT" [options]

Without --recipe: says when to make how much of what is made here, so that every planned treatment has fresh material
at the least waste and effort, beside a batch for each job and one a week. It changes nothing; it ends with 1 where
something can't be ready on its day.

  --until YYYY-MM-DD the last day that is looked at (without it: 90 days from
                    today, or as far as something is planned)

With --recipe: makes a batch: scales the recipe to the amount, takes the ingredients from their lots in draw order, adds the new lot
with its cost and how long it keeps, and saves. It is made whatever the stock says; what no lot covers is named.

  --recipe RECIPE   a recipe of Recipes
  --amount "NUMBER UNIT"
                    how much is meant to be made, such as "500 ml"; the ingredients are scaled to it
  --yield "NUMBER UNIT"
                    what was weighed or measured in the end (without it: the amount)
  --date YYYY-MM-DD the day of making (without it: today)
  --place PLACE     where it is kept, a place of Places: what is cold or dark keeps by its own life
  --use "MATERIAL=QUANTITY UNIT[@LOT]"
                    what was really taken of an ingredient, and of which lot; may be given several times
  --notes TEXT      anything else for the lot
  --plan            print what it would take, and save nothing
  --by NAME         who made it

To pour it out at once for a job, under the same posting:
  --job JOB --treatment NAME --extent NUMBER [--item ITEM]
                    the treatment, as log takes it; it must use what is made
  --pour "NUMBER UNIT"
                    how much is poured out (without it: all)
${WRITING}
${COMMON}

Ends with 0, with 1 after a shortfall, with 2 if nothing was done.`;
