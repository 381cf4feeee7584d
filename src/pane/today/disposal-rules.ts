import type { ExpiredLot } from '../../actions/discard-expired.ts';

/** By which rule each material of some lots is to be thrown away, each once. */
export function disposalRules(
  lots: readonly Pick<ExpiredLot, 'lot' | 'disposal'>[],
): { readonly material: string; readonly rule: string }[] {
  const rules = new Map(lots.map(({ lot, disposal }) => [lot.material.name, disposal]));
  return [...rules].map(([material, rule]) => ({
    material,
    rule: rule ?? 'Materials says nothing about its disposal',
  }));
}
