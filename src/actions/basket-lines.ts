import type { BasketLine, BasketOrder } from '../core/buying/basket.ts';
import { exact, ratio } from '../core/exact-number.ts';
import { keyOf } from '../core/identifier.ts';
import type { OfferRecord } from '../core/records.ts';
import type { Studio } from '../core/studio.ts';
import { unitNamed } from '../core/unit.ts';
import type { LineToOrder } from './place-order.ts';

/** The lines of a basket as they are ordered: in packs as their rows in Offers say them, at the basket's prices. */
export function basketLines(
  { materialsByKey, settings }: Studio,
  orders: readonly BasketOrder[],
): LineToOrder[] {
  const coins = 10n ** BigInt(settings.currency.decimals);
  return orders.flatMap(({ supplier, lines }) =>
    lines.map((line) => {
      const offers = materialsByKey.get(keyOf(line.material))?.offers ?? [];
      return {
        supplier,
        material: line.material,
        packs: exact(line.packs),
        ...packOf(line, offers),
        packPrice: ratio(BigInt(line.packPrice), coins),
      };
    }),
  );
}

function packOf(
  line: BasketLine,
  offers: readonly OfferRecord[],
): Pick<LineToOrder, 'packQuantity' | 'unit'> {
  const offer = offers.find(({ place }) => `${place.table} ${place.sheetRow}` === line.offer);
  const { packQuantity, unit } = offer ?? {
    packQuantity: exact(line.packQuantity),
    unit: unitNamed(line.unit),
  };
  return { packQuantity, unit };
}
