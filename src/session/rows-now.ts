import { keyOf } from '../core/identifier.ts';
import type { Entry, Lot, Studio } from '../core/studio.ts';
import type { Books } from './session-state.ts';

/** The rows of the treatment log in which entries stand now; they may have moved since they were shown. */
export function rowsNow(entries: readonly Entry[], { ledger }: Books): number[] {
  const keys = new Set(entries.map(({ key }) => key));
  // Only those without an identifier go by their row: in the row of another may stand something else by now.
  const rows = new Set(entries.flatMap(({ key, record }) => (key === null ? [record.place.row] : [])));
  return ledger.studio.entries
    .filter(({ key, record }) => (key === null ? rows.has(record.place.row) : keys.has(key)))
    .map(({ record }) => record.place.row);
}

/** A lot as it stands now; of two rows with one identifier the one that was shown. */
export function lotNow(lot: Lot, studio: Studio): Lot {
  const { place } = lot.record;
  const same = studio.lots.find(
    ({ name, record }) =>
      keyOf(name) === keyOf(lot.name) && record.place.table === place.table && record.place.row === place.row,
  );
  return same ?? studio.lotsByKey.get(keyOf(lot.name)) ?? lot;
}
