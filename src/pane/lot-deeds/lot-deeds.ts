import { containerOf } from '../../actions/open-lot.ts';
import { roundQuantity } from '../../core/exact-number.ts';
import { accountIn } from '../../core/ledger.ts';
import { openedOn } from '../../core/life.ts';
import type { LotFigures } from '../../core/stock.ts';
import { isSiliconeCoated, usesOfUnit } from '../../core/uses.ts';
import type { Books } from '../../session/session-state.ts';
import { countDeed } from './count-deed.ts';
import type { Deed } from './deed.ts';
import { discardDeed } from './discard-deed.ts';
import { openDeed, opens } from './open-deed.ts';
import { retestDeed } from './retest-deed.ts';
import { backDeed, retireDeed, wetDeed } from './reuse-deeds.ts';

/** What can be done with a lot as it stands on a day: only what fits it. */
export function deedsFor(figures: LotFigures, books: Books): Deed[] {
  const { lot, left, state, goodUntil } = figures;
  const { ledger, today } = books;
  if (lot.record.received > today || state === 'Discarded' || !lot.material.counted) return [];
  const isEmpty = roundQuantity(left).compare(0) <= 0;
  const isExpired = goodUntil !== null && goodUntil < today;
  const isSealed = openedOn(accountIn(ledger, lot), today) === null;
  const container = containerOf(ledger.studio, lot);
  const isSeveral = container !== null && left.compare(container) > 0;
  const isReused = usesOfUnit(lot) !== null && lot.record.unit.dimension !== 'use';
  // Washed without having been set aside before.
  const canRegain = left.compare(lot.record.quantity) < 0 && !isSiliconeCoated(lot.material);
  return [
    ...(isExpired && !isEmpty ? [discardDeed(lot, books)] : []),
    ...(state === 'Usable' && !isEmpty && (isSeveral || (isSealed && opens(lot)))
      ? [openDeed(lot, books)]
      : []),
    ...(goodUntil !== null && !isEmpty ? [retestDeed(lot, books)] : []),
    ...(isReused && !isEmpty ? [retireDeed(lot, books)] : []),
    ...(isReused && !isEmpty && state === 'Usable' ? [wetDeed(lot, books)] : []),
    ...(isReused && (state === 'Set aside' || canRegain) ? [backDeed(lot, books)] : []),
    countDeed(lot, books),
  ];
}
