import { type ReadonlySignal, signal } from '@preact/signals';
import { keyOf } from '../../core/identifier.ts';
import type { Studio } from '../../core/studio.ts';

/** Which places are counted. */
export type CountedPlace =
  | { readonly kind: 'all' }
  /** Null for what has no place. */
  | { readonly kind: 'one'; readonly place: string | null };

const asked = signal<string | null>(null);

/** The place that is counted; kept while something else is open. */
export const countedPlace = signal<CountedPlace>({ kind: 'all' });
/** What was found besides the list, by the keys of the lots; kept while something else is open. */
export const foundBesides = signal<readonly string[]>([]);
/** What was typed and could not be written, by the keys of the lots. */
export const unwritten = signal<Readonly<Record<string, string>>>({});
/** A lot whose code was scanned while no field had the focus; the stocktake takes it over and sets it to null. */
export const askedLot: ReadonlySignal<string | null> = asked;

/** Lets the stocktake go to a lot; says whether there is one of that name. */
export function askForLot(studio: Studio, code: string): boolean {
  const lot = studio.lotsByKey.get(keyOf(code));
  if (lot !== undefined) asked.value = lot.name;
  return lot !== undefined;
}

/** The stocktake has gone to the lot that was asked for. */
export function lotTaken(): void {
  asked.value = null;
}
