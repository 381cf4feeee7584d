import { keyOf } from '../core/identifier.ts';
import type { Lot, Studio } from '../core/studio.ts';
import { noSuchName } from './nearest-name.ts';
import type { Refusal } from './writing-desk.ts';

/** The lot that a person names by its identifier. */
export function findLot({ lotsByKey, lots }: Studio, name: string): Lot | Refusal {
  return (
    lotsByKey.get(keyOf(name)) ??
    noSuchName(
      'lot',
      name,
      'the stock tables',
      lots.map((each) => each.name),
    )
  );
}
