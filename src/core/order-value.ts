import type { Exact } from './exact-number.ts';
import { type Coins, type Currency, toCoins } from './money.ts';
import type { OrderLineRecord, SupplierRecord } from './records.ts';

/** What so many packs cost, to the coin; null where nothing says what one costs. */
export function valueOfPacks(packs: Exact, packPrice: Exact | null, currency: Currency): Coins | null {
  return packPrice === null ? null : toCoins(packs.mul(packPrice), currency);
}

/**
 * What a part of an order line costs without carriage: the value of all that has come with it less the value of what
 * came before, so that deliveries of a line add up to its value however it is split.
 * @param before what came of the line before, in the line's unit
 * @param quantity what comes now, in the line's unit
 * @returns null where the line has no pack price
 */
export function valueOfDelivery(
  { packQuantity, packPrice }: OrderLineRecord,
  before: Exact,
  quantity: Exact,
  currency: Currency,
): Coins | null {
  const upTo = (all: Exact): Coins | null => valueOfPacks(all.div(packQuantity), packPrice, currency);
  const after = upTo(before.add(quantity));
  const earlier = upTo(before);
  return after === null || earlier === null ? null : after - earlier;
}

/** What a supplier will probably charge for carriage: nothing from a value of goods on that is free. */
export function carriageExpected(supplier: SupplierRecord, goods: Coins, currency: Currency): Coins {
  const { carriage, carriageFreeOver } = supplier;
  const isFree = carriageFreeOver !== null && goods >= toCoins(carriageFreeOver, currency);
  return carriage === null || isFree ? 0n : toCoins(carriage, currency);
}
