import { provisionalRandom } from '../../actions/plan-treatment.ts';
import { type CountWritten, countLots, type LotsToCount, postStocktake } from '../../actions/stocktake.ts';
import { keyOf } from '../../core/identifier.ts';
import type { CountDifference } from '../../core/stocktake-differences.ts';
import type { Lot, Studio } from '../../core/studio.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { MOVED } from '../../session/opened-workbook.ts';
import type { Books, Done } from '../../session/session-state.ts';
import type { PaneSession } from '../pane-session.ts';
import { readNumber } from '../parts/number-text.ts';
import type { CountedPlace } from './count-state.ts';
import { differenceWords, sumWords } from './count-words.ts';

/** How a lot is counted: by what is left of it, or by the weight of its jar. */
export type Way = 'count' | 'weigh';

/** What Enter in a lot's field means. */
export type Entered =
  | { readonly kind: 'blank' }
  /** Another lot was scanned into the field. */
  | { readonly kind: 'lot'; readonly lot: Lot }
  | { readonly kind: 'count'; readonly request: LotsToCount }
  | { readonly kind: 'wrong'; readonly message: string };

/** Reads what was entered for a lot; a text that is no number but names a lot was scanned, and means that lot. */
export function enteredFor(lot: Lot, text: string, way: Way, place: CountedPlace, books: Books): Entered {
  const read = readNumber(text);
  if (read.kind === 'blank') return { kind: 'blank' };
  if (read.kind === 'not a number') {
    const scanned = lotCalled(books.ledger.studio, text);
    return scanned === null ? { kind: 'wrong', message: read.message } : { kind: 'lot', lot: scanned };
  }
  const { number } = read;
  const request: LotsToCount = {
    stocktake: null,
    // One of all places is named after its day alone.
    place: place.kind === 'all' ? '' : place.place,
    counted: [
      {
        lot: lot.name,
        quantity: way === 'count' ? number : null,
        unit: null,
        gross: way === 'weigh' ? number : null,
        note: null,
      },
    ],
    date: books.today,
    by: null,
  };
  const tried = countLots(books.snapshot, request, books.today, provisionalRandom());
  return tried.ok ? { kind: 'count', request } : { kind: 'wrong', message: tried.message };
}

/** The lot that a typed or scanned text names exactly. */
export function lotCalled(studio: Studio, text: string): Lot | null {
  return studio.lotsByKey.get(keyOf(text)) ?? null;
}

/** Writes one count into the table Counts, where it is kept until it is posted. */
export function keepCount(session: PaneSession, request: LotsToCount, { settings }: Books): Promise<Done> {
  return session.carryOut(
    'Keeping the count',
    (snapshot, today, random) => countLots(snapshot, { ...request, date: today }, today, random),
    ({ differences: [one] }) =>
      one === undefined
        ? 'Counted.'
        : `Counted: lot ${one.lot.name}, ${spokenQuantity(one.counted, one.lot.record.unit)}, ${differenceWords(one, settings.currency)}.`,
  );
}

/** Posts what a stocktake found, unless it would come to something else by now than she has been shown. */
export function postCounted(
  session: PaneSession,
  stocktake: string,
  shown: readonly CountDifference[],
  { settings }: Books,
): Promise<Done> {
  return session.carryOut<CountWritten>(
    'Posting the stocktake',
    (snapshot, today, random) => {
      const written = postStocktake(snapshot, { stocktake, by: null }, today, random);
      return written.ok && summary(written.differences) !== summary(shown) ? MOVED : written;
    },
    ({ differences }) => `Posted: stocktake ${stocktake}, ${sumWords(differences, settings.currency)}.`,
  );
}

function summary(differences: readonly CountDifference[]): string {
  return JSON.stringify(
    differences.map(({ lot, difference, cost }) => [lot.name, difference.toFraction(), String(cost)]),
  );
}
