import { DISPOSAL_CAUTION, discardExpired, expiredLots } from '../../actions/discard-expired.ts';
import { spokenDay } from '../../core/day.ts';
import { totalCost } from '../../core/lot-account.ts';
import type { Lot } from '../../core/studio.ts';
import { counted, spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { worthWords } from '../stocktake/count-words.ts';
import { type Deed, type Doing, doing } from './deed.ts';

/** That the rest of lots that have gone off is thrown away. */
export function throwingAway(lots: readonly string[], { settings: { currency } }: Books): Doing {
  return doing(
    'Throwing it away',
    (snapshot, day, random) => discardExpired(snapshot, lots, day, random, null),
    ({ discarded }) => {
      const worth = worthWords(totalCost(discarded.map((each) => each.worth)), currency);
      const names = discarded.map(({ lot }) => lot.name);
      const what = names.length > 3 ? counted(names.length, 'lot') : `lot ${names.join(', lot ')}`;
      return `Thrown away: ${what}, ${worth}.`;
    },
  );
}

/** Throwing away what is left of a lot that has gone off. */
export function discardDeed(lot: Lot, books: Books): Deed {
  const expired = expiredLots(books.ledger, books.today).find((each) => each.lot === lot);
  const { disposal } = lot.material.record;
  return {
    name: 'discard',
    label: 'Throw away the rest…',
    submit: 'Throw it away',
    fields: [],
    notes: [
      ...(expired === undefined
        ? []
        : [
            `${spokenQuantity(expired.left, lot.record.unit)}, ${worthWords(expired.worth, books.settings.currency)}, good until ${spokenDay(expired.goodUntil)} (${expired.reason}). It is the studio’s loss, no job’s cost.`,
          ]),
      ...(disposal === null ? [] : [`Disposal: ${disposal}`]),
      DISPOSAL_CAUTION,
    ],
    read: () => throwingAway([lot.name], books),
  };
}
