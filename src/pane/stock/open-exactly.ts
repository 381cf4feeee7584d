import type { Studio } from '../../core/studio.ts';
import { openLot, openMaterial } from '../route.ts';
import { matchOf } from './stock-list.ts';

/** Opens the lot or the material that a text names exactly; says whether there is one. */
export function openExactly(studio: Studio, text: string): boolean {
  const match = matchOf(studio, [], text);
  if (match === null) return false;
  if (match.kind === 'lot') openLot(match.lot);
  else openMaterial(match.material);
  return true;
}
