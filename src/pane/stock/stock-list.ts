import { keyOf } from '../../core/identifier.ts';
import { compareText } from '../../core/notice.ts';
import { MATERIAL_KINDS, type MaterialKind } from '../../core/records.ts';
import type { MaterialFigures, Stock } from '../../core/stock.ts';
import type { Lot, Material, Studio } from '../../core/studio.ts';

/** Materials of one kind, by name. */
export interface StockGroup {
  readonly kind: MaterialKind;
  readonly materials: readonly MaterialFigures[];
}

/** The materials in which a search is found, by kind and name. All words must be found; nothing searched is all. */
export function stockGroups(stock: Stock, lotsOf: Studio['lotsOfMaterial'], search: string): StockGroup[] {
  const words = keyOf(search)
    .split(/\s+/)
    .filter((word) => word !== '');
  const found = stock.materials.filter(({ material }) => {
    const text = searchText(material, lotsOf.get(material) ?? []);
    return words.every((word) => text.includes(word));
  });
  return MATERIAL_KINDS.flatMap((kind) => {
    const materials = found
      .filter(({ material }) => material.record.kind === kind)
      .toSorted((a, b) => compareText(keyOf(a.material.name), keyOf(b.material.name)));
    return materials.length === 0 ? [] : [{ kind, materials }];
  });
}

/** What a material is found by: its name, kind and supplier, and the names, places and suppliers of its lots. */
function searchText(material: Material, lots: readonly Lot[]): string {
  const { kind, supplier } = material.record;
  const ofLots = lots.flatMap(({ name, record }) => [name, record.storedAt, record.supplier]);
  return [material.name, kind, supplier, ...ofLots]
    .filter((each) => each !== null)
    .map(keyOf)
    .join('\n');
}

/** What a scanned or typed text names exactly. */
export type Match =
  | { readonly kind: 'lot'; readonly lot: Lot }
  | { readonly kind: 'material'; readonly material: Material }
  | null;

/**
 * What a text opens: the lot or the material that it names exactly, else the only material that a search for it
 * finds.
 */
export function matchOf(studio: Studio, groups: readonly StockGroup[], text: string): Match {
  const key = keyOf(text);
  if (key === '') return null;
  const lot = studio.lotsByKey.get(key);
  if (lot !== undefined) return { kind: 'lot', lot };
  const material = studio.materialsByKey.get(key) ?? onlyOne(groups)?.material;
  return material === undefined ? null : { kind: 'material', material };
}

function onlyOne(groups: readonly StockGroup[]): MaterialFigures | undefined {
  const materials = groups.flatMap((group) => group.materials);
  return materials.length === 1 ? materials[0] : undefined;
}

/** The first of several groups, as far as a number of materials goes. */
export function firstGroups(groups: readonly StockGroup[], most: number): StockGroup[] {
  let room = most;
  return groups.flatMap(({ kind, materials }) => {
    const shown = materials.slice(0, room);
    room -= shown.length;
    return shown.length === 0 ? [] : [{ kind, materials: shown }];
  });
}
