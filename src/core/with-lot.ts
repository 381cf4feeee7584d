import { lotOf } from './build-studio.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import { accountOf } from './lot-account.ts';
import type { LotRecord } from './records.ts';
import type { Lot, Material, Recipe } from './studio.ts';

/**
 * The ledger of a studio that has one more lot, without movements yet.
 * @param record its identifier is no other lot's
 */
export function withLot(
  ledger: Ledger,
  record: LotRecord & { readonly lot: string },
  material: Material,
  recipe: Recipe | null,
): { readonly ledger: Ledger; readonly lot: Lot } {
  const { studio } = ledger;
  const place = record.storedAt === null ? undefined : studio.placesByKey.get(keyOf(record.storedAt));
  const lot = lotOf(record, material, recipe, place ?? null);
  const accounts = new Map(ledger.accounts);
  accounts.set(lot, accountOf(lot, [], studio.settings.currency));
  const lotsOfMaterial = new Map(studio.lotsOfMaterial);
  lotsOfMaterial.set(material, [...(lotsOfMaterial.get(material) ?? []), lot]);
  const lotsByKey = new Map(studio.lotsByKey).set(keyOf(record.lot), lot);
  return {
    ledger: {
      ...ledger,
      accounts,
      studio: { ...studio, lots: [...studio.lots, lot], lotsByKey, lotsOfMaterial },
    },
    lot,
  };
}
