import type { Day } from '../../core/day.ts';
import { spokenDay } from '../../core/day.ts';
import { drawOrder } from '../../core/draw-order.ts';
import { keyOf } from '../../core/identifier.ts';
import type { Ledger } from '../../core/ledger.ts';
import type { LotFigures, Stock } from '../../core/stock.ts';
import type { Lot, Material } from '../../core/studio.ts';
import type { LotName } from '../route.ts';

/** A material's lots: those that are drawn on, in that order; those on the shelf besides; those that are done with. */
export interface MaterialLots {
  readonly drawn: readonly LotFigures[];
  readonly others: readonly LotFigures[];
  /** Empty or discarded. */
  readonly past: readonly LotFigures[];
}

/** The lots of a material on the stock's day. */
export function lotsOf(ledger: Ledger, stock: Stock, material: Material): MaterialLots {
  const ofMaterial = new Map(
    stock.lots.filter(({ lot }) => lot.material === material).map((figures) => [figures.lot, figures]),
  );
  const drawn = drawOrder(ledger, material, stock.today).flatMap(({ lot }) => {
    const figures = ofMaterial.get(lot);
    return figures === undefined ? [] : [figures];
  });
  const rest = [...ofMaterial.values()].filter((figures) => !drawn.includes(figures));
  const isPast = ({ lot, left, state }: LotFigures): boolean =>
    state === 'Discarded' || (left.equals(0) && lot.record.received <= stock.today);
  return {
    drawn,
    others: rest.filter((figures) => !isPast(figures)),
    past: rest.filter(isPast).toSorted((a, b) => b.lot.record.received - a.lot.record.received),
  };
}

/** How a lot stands, in a word or two: why it isn't drawn on, or Usable. */
export function standingOf({ lot, left, goodUntil, state, usable }: LotFigures, today: Day): string {
  if (usable) return 'Usable';
  if (state !== 'Usable') return state;
  if (lot.record.received > today) return `From ${spokenDay(lot.record.received)}`;
  if (left.compare(0) <= 0) return left.equals(0) ? 'Empty' : 'Overdrawn';
  if (goodUntil !== null && goodUntil < today) return 'Gone off';
  return 'Can’t be told';
}

/** The lot that was opened by name: the one in the same row if it is still called so, else the first of that name. */
export function findLot(lots: readonly Lot[], { name, table, sheetRow }: LotName): Lot | undefined {
  const named = lots.filter((lot) => keyOf(lot.name) === keyOf(name));
  const same = named.find(({ record: { place } }) => place.table === table && place.sheetRow === sheetRow);
  return same ?? named[0];
}
